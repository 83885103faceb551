/** What the page's tests share: opening the page and finding things on it as a reader does. */
import { expect, type Locator, type Page } from "@playwright/test";

/** Opens the page and waits for the first answer, and for the last part of the page. */
export async function open(page: Page) {
	await page.goto("./");
	await expect(sentence(page)).toContainText("Cylinder");
	await expect(page.locator(".title-block")).toBeAttached();
}

/** The verdict sentence. */
export function sentence(page: Page): Locator {
	return page.locator(".sentence");
}

/** A cell by what it is called: the row, then the field with its unit. */
export function cell(page: Page, name: string): Locator {
	return page.getByRole("textbox", { name, exact: true });
}

/** A cell that names a node, with the names there are as suggestions. */
export function nodeCell(page: Page, name: string): Locator {
	return page.getByRole("combobox", { name, exact: true });
}

/** The area of the first window, the cell that most tests type into. */
export function windowArea(page: Page): Locator {
	return cell(page, "window 1, loss 1, opening in a wall, area, mm²");
}

/** The deviations of the cylinders, as shown. */
export function deviations(page: Page): Promise<string[]> {
	return page.locator("table.shares tbody td:nth-of-type(2)").allInnerTexts();
}

/** A figure as shown, as a number. */
export function toNumber(text: string): number {
	return Number(text.replace("−", "-").replace("±", ""));
}

/** Opens a file that holds this text. */
export async function openText(page: Page, text: string, name = "study.json") {
	await page.getByLabel("Study file to open").setInputFiles({
		name,
		mimeType: "application/json",
		buffer: Buffer.from(text),
	});
}

/** The study that the page would save. */
export async function saved(page: Page): Promise<Record<string, unknown>> {
	const [download] = await Promise.all([
		page.waitForEvent("download"),
		page.getByRole("button", { name: "Save file" }).click(),
	]);
	const chunks: Buffer[] = [];
	for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
	return JSON.parse(Buffer.concat(chunks).toString()) as Record<string, unknown>;
}

/** Gives rows out of sight, whose height is guessed until they are scrolled to, the one they have then. */
export async function renderAll(page: Page) {
	await page.evaluate(() =>
		document.styleSheets[0]?.insertRule(".row { content-visibility: visible !important; }"),
	);
	await expect(page.locator(".title-block")).toBeAttached();
	// Rows come bit by bit and parts of the page are loaded, until there is no more to come.
	let before = -1;
	await expect
		.poll(
			async () => {
				const now = await page.evaluate(() => document.documentElement.scrollHeight);
				const still = now === before;
				before = now;
				return still;
			},
			{ intervals: [300], timeout: 10_000 },
		)
		.toBe(true);
}
