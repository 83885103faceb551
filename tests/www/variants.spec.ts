import { expect, type Locator, type Page, test } from "@playwright/test";
import { violations } from "./axe";
import { cell, open, openText, renderAll, saved, sentence, windowArea } from "./sheet";

/** What chooses a version. */
const version = (page: Page, name: string | RegExp): Locator =>
	page
		.getByRole("group", { name: "Version on the sheet" })
		.getByRole("radio", { name, exact: true });

async function newVariant(page: Page, name: string) {
	await page.getByRole("button", { name: "New variant" }).click();
	await page.getByLabel("Name of the variant").fill(name);
}

const thickness = (page: Page) =>
	cell(page, "window 1, loss 1, opening in a wall, discharge coefficient");
const undo = (page: Page) => page.getByRole("button", { name: "Undo" }).click();

test("a variant is made, changed and marked, and the answer is that of the version on the sheet", async ({
	page,
}) => {
	await open(page);
	const before = ((await sentence(page).textContent()) ?? "").trim();
	await newVariant(page, "Wide windows");
	await expect(sentence(page)).toHaveText(`Variant Wide windows: ${before}`);
	await windowArea(page).fill("2400");
	await expect(sentence(page)).not.toContainText(before);
	await expect(windowArea(page)).toHaveAccessibleDescription(
		"In the base: 2100 mm²; here +300 mm², +14.3 %.",
	);
	await expect(page.locator('[data-row="window 1"] .differs')).toHaveText("△");
	await expect(page.getByRole("complementary", { name: "Help" })).toContainText("here +300 mm²");
	await version(page, "Base").check();
	await expect(windowArea(page)).toHaveValue("2100");
	await expect(page.locator(".differs")).toHaveCount(0);
	await expect(sentence(page)).toHaveText(`Base: ${before}`);
	await page.keyboard.press("ArrowRight");
	await expect(version(page, "Wide windows")).toBeChecked();
	await expect(windowArea(page)).toHaveValue("2400");
	await expect(page.locator(".title-block")).toContainText("Variant Wide windows");
});

test("what differs is taken back cell by cell and row by row", async ({ page }) => {
	await open(page);
	await newVariant(page, "Less");
	await windowArea(page).fill("2400");
	await windowArea(page).press("Enter");
	await windowArea(page).focus();
	await page.keyboard.press("Alt+Shift+B");
	await expect(windowArea(page)).toHaveValue("2100");
	await expect(page.locator(".differs")).toHaveCount(0);
	await page.locator('[data-row="row window 1-3"] button[aria-label^="Remove branch"]').click();
	await expect(page.locator('[data-row="row window 1-3"]')).toHaveCount(0);
	await page.getByRole("button", { name: "Bring back row window 1-3" }).click();
	await expect(page.locator('[data-row="row window 1-3"]')).toHaveCount(1);
	await expect(page.locator(".left-out")).toHaveCount(0);
	await expect(page.locator(".row.changed")).toHaveCount(0);
});

test("an edit of the base reaches what a variant has not changed, and an undo takes both back", async ({
	page,
}) => {
	await open(page);
	await newVariant(page, "Wide windows");
	await windowArea(page).fill("2400");
	await version(page, "Base").check();
	await windowArea(page).fill("1900");
	await thickness(page).fill("0.6");
	await version(page, "Wide windows").check();
	await expect(windowArea(page)).toHaveValue("2400");
	await expect(thickness(page)).toHaveValue("0.6");
	await version(page, "Base").check();
	await page.getByRole("button", { name: "Remove branch window 1", exact: true }).click();
	await expect(page.locator('[data-row="window 1"]')).toHaveCount(0);
	await version(page, "Wide windows").check();
	await expect(windowArea(page)).toHaveValue("2400");
	await expect(page.locator('[data-row="window 1"] .differs')).toHaveText("+");
	// The edit was made in the base, so its undo shows there.
	await undo(page);
	await expect(version(page, "Base")).toBeChecked();
	await expect(windowArea(page)).toHaveValue("1900");
	await undo(page);
	await undo(page);
	await expect(windowArea(page)).toHaveValue("2100");
	await undo(page);
	await expect(windowArea(page)).toHaveValue("2100");
	await expect(version(page, "Wide windows")).toBeChecked();
	await undo(page);
	await undo(page);
	await expect(
		page.getByRole("group", { name: "Version on the sheet" }).getByRole("radio"),
	).toHaveCount(1);
	await expect(page.getByRole("button", { name: "Undo" })).toBeDisabled();
});

test("variants are named, copied, moved, made the base and deleted, with the keyboard where it was", async ({
	page,
}) => {
	await open(page);
	await newVariant(page, "One");
	await windowArea(page).fill("2400");
	await page.getByRole("button", { name: "Duplicate", exact: true }).first().click();
	const names = () =>
		page.getByRole("group", { name: "Version on the sheet" }).locator("label").allInnerTexts();
	expect(await names()).toEqual(["Base", "One", "One 2"]);
	await page.getByRole("button", { name: "Move the variant forward" }).click();
	expect(await names()).toEqual(["Base", "One 2", "One"]);
	await page.getByLabel("Name of the variant").fill("One");
	await expect(page.getByText("Another variant has this name")).toBeVisible();
	await page.getByLabel("Name of the variant").fill("Two");
	await page.getByLabel("Note on the variant").fill("From the second casting");
	await page.getByRole("button", { name: "Make it the base" }).click();
	expect(await names()).toEqual(["Base", "Former base", "One"]);
	await expect(version(page, "Base")).toBeFocused();
	await expect(windowArea(page)).toHaveValue("2400");
	await version(page, "Former base").check();
	await expect(windowArea(page)).toHaveValue("2100");
	await page.getByRole("button", { name: "Delete", exact: true }).click();
	expect(await names()).toEqual(["Base", "One"]);
	await expect(version(page, "Base")).toBeFocused();
	const { network, variants } = await saved(page);
	expect(JSON.stringify(network)).toContain("0.0024");
	expect(variants).toEqual([{ name: "One", notes: "", nodes: [], branches: [], removed: [] }]);
});

test("a reload brings back the version on the sheet, and unreadable cells of each", async ({
	page,
}) => {
	await open(page);
	await windowArea(page).fill("2200");
	await newVariant(page, "Wide windows");
	await windowArea(page).fill("wide");
	await version(page, "Base").check();
	await expect(windowArea(page)).toHaveValue("2200");
	await expect(version(page, /Wide windows \(cells to be put right\)/)).toBeVisible();
	await version(page, /Wide windows/).check();
	await expect(windowArea(page)).toHaveValue("wide");
	await page.reload();
	await expect(windowArea(page)).toHaveValue("wide");
	await expect(version(page, "Wide windows")).toBeChecked();
	await version(page, "Base").check();
	await expect(windowArea(page)).toHaveValue("2200");
	await page.reload();
	await expect(version(page, "Base")).toBeChecked();
	// Whatever is wrong with a variant meanwhile, the study comes back.
	await version(page, /Wide windows/).check();
	await page.getByLabel("Name of the variant").fill("");
	await page.reload();
	await expect(page.getByText("A variant needs a name")).toBeVisible();
	await expect(windowArea(page)).toHaveValue("wide");
});

test("a file with a variant that is wrong is refused and the variant named", async ({ page }) => {
	await open(page);
	await newVariant(page, "Wide windows");
	await windowArea(page).fill("2400");
	const study = await saved(page);
	const [variant] = study.variants as { branches: { to: string }[] }[];
	if (variant?.branches[0]) variant.branches[0].to = "nowhere";
	await openText(page, JSON.stringify(study));
	await expect(page.getByRole("dialog")).toContainText(
		"in variant Wide windows: no node is called nowhere",
	);
});

for (const scheme of ["light", "dark"] as const) {
	test(`everybody can use variants, ${scheme}, on a phone too`, async ({ page }) => {
		test.slow();
		await page.emulateMedia({ colorScheme: scheme });
		await open(page);
		await newVariant(page, "A variant with a name that goes on and on beyond any phone's width");
		await windowArea(page).fill("2400");
		await page.locator('[data-row="row window 1-3"] button[aria-label^="Remove branch"]').click();
		await page.getByRole("button", { name: "+ node" }).click();
		await renderAll(page);
		const parts = [".verdict", ".versions", '[data-row="window 1"]', ".left-out"];
		expect(await violations(page, ...parts)).toEqual([]);
		await page.setViewportSize({ width: 360, height: 740 });
		expect(await violations(page, ...parts)).toEqual([]);
		const width = await page.evaluate(() => document.documentElement.scrollWidth);
		expect(width).toBeLessThanOrEqual(360);
	});
}

test("on paper the version is named, with its note and its marks", async ({ page }) => {
	await open(page);
	await newVariant(page, "Wide windows");
	await page.getByLabel("Note on the variant").fill("From the second casting");
	await windowArea(page).fill("2400");
	await page.emulateMedia({ media: "print" });
	await expect(sentence(page)).toContainText("Variant Wide windows:");
	await expect(page.locator(".title-block")).toContainText("Variant Wide windows");
	await expect(page.locator(".versions .printed")).toHaveText("From the second casting");
	await expect(page.locator(".differs").first()).toBeVisible();
	await expect(page.getByText("differs from the base")).toBeVisible();
	await expect(page.locator("button:visible, textarea:visible")).toHaveCount(0);
});
