import { expect, test } from "@playwright/test";
import { violations } from "../axe";
import { cell, open, saved } from "../sheet";

const SECTION = 'section[aria-labelledby="conditions-title"]';

test("readings pasted from another bench become those of this one, are copied and taken back", async ({
	page,
	context,
}) => {
	await context.grantPermissions(["clipboard-read", "clipboard-write"]);
	await open(page);
	await page.getByRole("button", { name: "Readings at another depression" }).click();
	const add = page.getByRole("button", { name: "+ reading" });
	await add.focus();
	const text = "Depression (inH2O)\tFlow (g/s)\n10\t100\n25\tx\n";
	await page.evaluate((text) => navigator.clipboard.writeText(text), text);
	await page.keyboard.press("Control+v");
	const row = (number: number) => page.locator(SECTION).getByRole("row").nth(number);
	// From 10 to 28 inches of water: 1.632 compressibly, 1.673 by the square root rule.
	await expect(row(1)).toContainText("163.21");
	await expect(row(1)).toContainText("167.33");
	await expect(row(1)).toContainText("+2.5");
	await expect(
		page.locator(SECTION).getByText("Reading 2, air read: “x”: Not a number."),
	).toBeVisible();
	const air = cell(page, "Reading 2, air read, g/s");
	await air.fill("150");
	await expect(row(2)).toContainText("158.");
	await air.press("ArrowUp");
	await expect(cell(page, "Reading 1, air read, g/s")).toBeFocused();
	await cell(page, "Reading 1, depression, kPa").fill("95");
	await expect(
		page.locator(SECTION).getByText("Reading 1: depression must lie between 0.001 and 90 kPa."),
	).toBeVisible();
	await cell(page, "Reading 1, depression, kPa").fill("2.4884");
	expect(await violations(page, SECTION)).toEqual([]);
	await page.emulateMedia({ colorScheme: "dark" });
	expect(await violations(page, SECTION)).toEqual([]);

	await page.getByRole("button", { name: "Copy readings and what they become" }).click();
	await expect(page.getByText("Copied, with its headings.")).toBeVisible();
	const copied = await page.evaluate(() => navigator.clipboard.readText());
	expect(copied.split("\n")[1]).toMatch(
		/^2\.488\t100\.00\t101\.33\t20\.0\t163\.21\t167\.33\t2\.5\t/,
	);

	const readings = async () =>
		((await saved(page)).settings as { bench: { readings?: unknown[] } }).bench.readings;
	expect(await readings()).toHaveLength(2);
	for (let step = 0; step < 4; step += 1) await page.keyboard.press("Control+z");
	expect(await readings()).toBeUndefined();
});
