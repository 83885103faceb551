import { expect, type Page, test } from "@playwright/test";
import { violations } from "../axe";
import { cell, open, sentence, windowArea } from "../sheet";

async function askForLink(page: Page) {
	await page.locator("header summary", { hasText: "Hand over" }).click();
	await page.getByRole("button", { name: "Link to this study" }).click();
}

/** The link of the study on the sheet. */
async function linkOf(page: Page): Promise<string> {
	await askForLink(page);
	const link = page.getByRole("textbox", { name: "Link", exact: true });
	await expect(link).toHaveValue(/#study=1\./);
	const text = await link.inputValue();
	await page.getByRole("button", { name: "Close" }).click();
	return text;
}

/** How many studies the browser keeps. */
const kept = (page: Page) =>
	page.evaluate(async () => {
		// To open it would make it.
		if ((await indexedDB.databases()).length === 0) return 0;
		const open = indexedDB.open("evenport");
		const database = await new Promise<IDBDatabase>((resolve) => {
			open.onsuccess = () => resolve(open.result);
		});
		if (!database.objectStoreNames.contains("studies")) return 0;
		const count = database.transaction("studies").objectStore("studies").count();
		return new Promise<number>((resolve) => {
			count.onsuccess = () => resolve(count.result);
		});
	});

test("a customer reads the verdict by a link, keeps nothing, and edits a copy", async ({
	page,
	browser,
}) => {
	await open(page);
	await page.getByRole("button", { name: "New variant" }).click();
	await page.getByLabel("Name of the variant").fill("Wide last window");
	await cell(page, "window 7, loss 1, opening in a wall, area, mm²").fill("2100");
	await expect(sentence(page)).toContainText("Variant Wide last window:");
	const link = await linkOf(page);
	expect(link.length).toBeLessThan(2000);

	const theirs = await browser.newContext({ viewport: { width: 360, height: 740 } });
	const reader = await theirs.newPage();
	await reader.goto(link);
	await expect(sentence(reader)).toContainText("Base: Cylinder");
	await expect(reader.getByText("You read a study that came in a link")).toBeVisible();
	await expect(reader.getByRole("region", { name: "Versions side by side" })).toContainText(
		"Wide last window",
	);
	await expect(
		reader.getByRole("region", { name: "Before anything is cast or run" }),
	).toBeVisible();
	await expect(reader.locator("[data-row]")).toHaveCount(0);
	expect(await reader.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(
		false,
	);
	expect(await violations(reader)).toEqual([]);
	// Another version is looked at without a change to the study, and a place on the page costs no link.
	await reader.getByRole("button", { name: "Wide last window" }).first().click();
	await expect(sentence(reader)).toContainText("Variant Wide last window:");
	await reader.evaluate(() => {
		location.hash = "#cautions-title";
	});
	await expect.poll(() => reader.url()).toBe(link);
	expect(await kept(reader)).toBe(0);
	await reader.reload();
	await expect(sentence(reader)).toContainText("Base: Cylinder");

	await reader.getByRole("button", { name: "Edit a copy" }).click();
	await expect(reader.getByLabel("Name", { exact: true })).toHaveValue(/\(copy [\d: -]+\)$/);
	await expect(reader.locator("[data-row]").first()).toBeVisible();
	expect(reader.url()).not.toContain("#study");
	await expect.poll(() => kept(reader)).toBe(1);
	await reader.reload();
	await expect(reader.getByLabel("Name", { exact: true })).toHaveValue(/\(copy [\d: -]+\)$/);
	await theirs.close();
});

test("a link that is not whole leaves the reader's own work as it was", async ({ page }) => {
	await open(page);
	await windowArea(page).fill("1234");
	await windowArea(page).press("Enter");
	const link = await linkOf(page);
	await page.goto("about:blank");
	await page.goto(link.slice(0, -40));
	await expect(page.getByRole("alert")).toContainText("cut short or altered");
	await expect(windowArea(page)).toHaveValue("1234");
	await page.getByRole("button", { name: "Understood" }).click();
	await expect(page.getByRole("alert")).toHaveCount(0);
	expect(page.url()).not.toContain("#study");
	// A whole one that is opened in the same tab is read, and undo leads back.
	await page.evaluate((whole) => {
		location.href = whole;
	}, link);
	await expect(page.getByText("You read a study that came in a link")).toBeVisible();
	await page.reload();
	await expect(page.getByText("You read a study that came in a link")).toBeVisible();
	await page.goto("about:blank");
	await page.goto("./");
	await expect(windowArea(page)).toHaveValue("1234");
});

test("a link to a study with an error warns who makes it, and tells its reader what is wrong", async ({
	page,
}) => {
	await open(page);
	await windowArea(page).fill("0");
	await expect(windowArea(page)).toHaveAttribute("aria-invalid", "true");
	await askForLink(page);
	const dialog = page.getByRole("dialog");
	await expect(dialog).toContainText("Something is wrong with this study");
	const link = await dialog.getByRole("textbox", { name: "Link", exact: true }).inputValue();
	await page.goto("about:blank");
	await page.goto(link);
	await expect(page.getByText("You read a study that came in a link")).toBeVisible();
	await expect(page.locator(".sentence")).toHaveText(/There is no answer yet/);
	await expect(page.locator(".errors")).toContainText("window 1");
	await page.getByRole("button", { name: "Edit a copy" }).click();
	await expect(windowArea(page)).toHaveAttribute("aria-invalid", "true");
	await windowArea(page).fill("2100");
	await expect(page.locator(".sentence")).toContainText("Cylinder 7");
});

test("a study that is too long for a link is handed over as its file", async ({ page }) => {
	await open(page);
	// Text that nothing can make shorter.
	const words = Array.from({ length: 2000 }, (_, at) =>
		((at * 2654435761) % 4294967296).toString(36),
	);
	await page.getByLabel("Notes", { exact: true }).fill(words.join(" "));
	await askForLink(page);
	await expect(page.getByText("Hand over its file instead")).toBeVisible();
	const download = page.waitForEvent("download");
	await page.getByRole("dialog").getByRole("button", { name: "Save file" }).click();
	expect((await download).suggestedFilename()).toMatch(/\.json$/);
});
