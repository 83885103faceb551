import { readFileSync } from "node:fs";
import { expect, type Locator, type Page, test } from "@playwright/test";
import { violations } from "../axe";
import { cell, open, saved, windowArea } from "../sheet";
import { names } from "./studies";

/** The file that a press hands over. */
async function handed(page: Page, button: Locator): Promise<{ name: string; path: string }> {
	const [download] = await Promise.all([page.waitForEvent("download"), button.click()]);
	return { name: download.suggestedFilename(), path: await download.path() };
}

async function fromMenu(page: Page, name: string) {
	await page.locator("summary", { hasText: "Hand over" }).click();
	return handed(page, page.getByRole("button", { name }));
}

/** Lets go of files over a part of the page, as a hand does. */
async function drop(page: Page, over: string, ...files: [name: string, text: string][]) {
	const transfer = await page.evaluateHandle((given) => {
		const data = new DataTransfer();
		for (const [name, text] of given)
			data.items.add(new File([text], name, { type: "application/json" }));
		return data;
	}, files);
	for (const type of ["dragenter", "dragover"])
		await page.dispatchEvent(over, type, { dataTransfer: transfer });
	await expect(page.getByText("Let go to open the file")).toBeVisible();
	await page.dispatchEvent(over, "drop", { dataTransfer: transfer });
	await expect(page.getByText("Let go to open the file")).toHaveCount(0);
}

test("results are saved as CSV of the draw looked at", async ({ page }) => {
	await open(page);
	await page.getByRole("textbox", { name: "Name", exact: true }).first().fill("=1+1");
	await page.getByRole("radio", { name: "Bench, all ports open" }).check();
	await page.locator("summary", { hasText: "Hand over" }).click();
	expect(await violations(page, "nav.commands")).toEqual([]);
	const file = await handed(page, page.getByRole("button", { name: "Save results as CSV" }));
	expect(file.name).toBe("1-1-Bench-all-ports-open-results.csv");
	const text = readFileSync(file.path, "utf8");
	expect(text).toContain("Study,'=1+1\r\n");
	expect(text).toContain('Draw,"Bench, all ports open"\r\n');
	expect(text).toMatch(/\r\nwindow 1,-?\d/);
});

test("every chart is saved as lines and as a picture", async ({ page }) => {
	await page.emulateMedia({ colorScheme: "dark" });
	await open(page);
	for (const what of ["sketch", "shares", "pressure budget", "gap"]) {
		const lines = await handed(page, page.getByRole("button", { name: `Save SVG of the ${what}` }));
		const text = readFileSync(lines.path, "utf8");
		expect(text).toContain("Estimate, not a measurement");
		for (const foreign of ["var(", "class=", "style=", "aria-", "NaN"])
			expect(text, what).not.toContain(foreign);
		const [, width, height] =
			/^<\?xml[^>]*>\n<svg[^>]* width="([\d.]+)" height="([\d.]+)"/.exec(text) ?? [];
		const picture = await handed(
			page,
			page.getByRole("button", { name: `Save PNG of the ${what}` }),
		);
		expect(picture.name).toBe(lines.name.replace(".svg", ".png"));
		const dots = readFileSync(picture.path);
		expect(dots.subarray(1, 4).toString()).toBe("PNG");
		// Two dots for a pixel; browsers take whole pixels of a drawing.
		expect(Math.abs(dots.readUInt32BE(16) - 2 * Number(width))).toBeLessThanOrEqual(2);
		expect(Math.abs(dots.readUInt32BE(20) - 2 * Number(height))).toBeLessThanOrEqual(2);
	}
});

test("a file that is let go over the page is opened, and undo brings the sheet back; a wrong one is told", async ({
	page,
}) => {
	await open(page);
	const study = await saved(page);
	await windowArea(page).fill("1750");
	await drop(page, ".answer", ["other.json", JSON.stringify({ ...study, name: "Dropped" })]);
	await expect(page.locator(".title-block .large")).toHaveText("Dropped");
	await expect(windowArea(page)).toHaveValue("2100");
	await drop(
		page,
		"#network",
		["wrong.txt", "bore;stroke"],
		["third.json", JSON.stringify({ ...study, name: "Third" })],
	);
	await expect(page.getByRole("dialog")).toContainText("wrong.txt was not opened");
	await page.keyboard.press("Escape");
	await expect(page.locator(".title-block .large")).toHaveText("Third");
	await page.getByRole("button", { name: "Undo" }).click();
	await page.getByRole("button", { name: "Undo" }).click();
	await expect(windowArea(page)).toHaveValue("1750");
	expect(await names(page)).toEqual(["Dropped", "Third", "V8 lid"]);
});

test("all studies go out in one file and come in again, what is unfinished too; what is wrong is told", async ({
	page,
	browser,
}) => {
	await open(page);
	const study = await saved(page);
	await cell(page, "window 2, loss 1, opening in a wall, area, mm²").fill("about 900");
	await drop(page, ".answer", ["other.json", JSON.stringify({ ...study, name: "Second" })]);
	await expect(page.locator(".title-block .large")).toHaveText("Second");
	const file = await fromMenu(page, "Save all studies in one file");
	expect(file.name).toMatch(/^evenport-studies-\d{4}-\d\d-\d\d\.json$/);
	const all = JSON.parse(readFileSync(file.path, "utf8"));
	all.studies.push({ name: "Odd", study: { format: "evenport-study", version: 99 } });

	const context = await browser.newContext();
	const other = await context.newPage();
	await other.goto(page.url());
	await expect(other.locator(".sentence")).toContainText("Cylinder");
	await other.getByLabel("Study file to open").setInputFiles({
		name: "all.json",
		mimeType: "application/json",
		buffer: Buffer.from(JSON.stringify(all)),
	});
	const list = other.getByRole("dialog", { name: "Studies" });
	await expect(list.getByRole("status")).toContainText(
		"all.json: 2 of 3 studies put among these. ⚠ Not Odd (",
	);
	await list.getByRole("button", { name: "Open V8 lid" }).click();
	await expect(cell(other, "window 2, loss 1, opening in a wall, area, mm²")).toHaveValue(
		"about 900",
	);
	await context.close();
});
