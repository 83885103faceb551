import { expect, type Page, test } from "@playwright/test";
import { violations } from "../axe";
import { cell, nodeCell, open, renderAll, windowArea } from "../sheet";

const help = (page: Page) => page.getByRole("complementary", { name: "Help on the cell in use" });

test("the cell in use explains itself: what to type, its law, where that comes from and holds", async ({
	page,
}) => {
	await open(page);
	await expect(help(page)).toHaveCount(0);
	await windowArea(page).focus();
	await expect(help(page)).toContainText("area: cross-section of the air's way here");
	await expect(help(page)).toContainText("between 0.001 and 10000000 mm²");
	await expect(help(page)).toContainText("St Venant");
	await expect(help(page)).toContainText("holds for C_d from 0.5 to 1");
	await page.keyboard.press("Tab");
	await expect(help(page)).toContainText("discharge coefficient: the jet at its narrowest");
	await page.getByRole("combobox", { name: "runner 1, loss 3, kind" }).focus();
	await expect(help(page)).toContainText("bend of constant section");
	await nodeCell(page, "neck, from node").focus();
	await expect(help(page)).toContainText("flow out of it counts as positive");
	await page.getByLabel("speed, rpm").focus();
	await expect(help(page)).toContainText("crankshaft speed");
	await page.getByRole("button", { name: "Save file" }).focus();
	await expect(help(page)).toHaveCount(0);
});

test("it follows the unit of the page and the kind of a loss", async ({ page }) => {
	await open(page);
	await page.locator("summary", { hasText: "Units" }).click();
	await page.getByLabel("Length", { exact: true }).selectOption("in");
	await page.keyboard.press("Escape");
	await cell(page, "runner 1, loss 2, duct friction, length, in").focus();
	await expect(help(page)).toContainText("3937.008 in");
	const kind = page.getByRole("combobox", { name: "neck, loss 1, kind" });
	await kind.selectOption("entrySharp");
	await kind.focus();
	await expect(help(page)).toContainText("K = 0.5");
});

for (const [what, width, height] of [
	["at a desk", 1360, 900],
	["on a phone", 360, 740],
] as const) {
	test(`${what} it moves nothing and never covers the cell in use`, async ({ page }) => {
		await page.setViewportSize({ width, height });
		await page.emulateMedia({ reducedMotion: "reduce" });
		await open(page);
		await expect(page.locator(".title-block")).toBeAttached();
		await renderAll(page);
		const tall = await page.evaluate(() => document.documentElement.scrollHeight);
		await page.getByRole("combobox", { name: "neck, loss 1, kind" }).focus();
		for (let press = 0; press < 60; press += 1) {
			await page.keyboard.press("Tab");
			const gap = await page.evaluate(() => {
				const line = document.querySelector(".help aside")?.getBoundingClientRect();
				const used = document.activeElement?.getBoundingClientRect();
				return line && used ? line.top - used.bottom : 0;
			});
			expect(gap).toBeGreaterThanOrEqual(-1);
		}
		expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
			width,
		);
		await page.getByRole("button", { name: "Save file" }).focus();
		expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBe(tall);
	});
}

for (const scheme of ["light", "dark"] as const) {
	test(`everybody can use the help line, ${scheme}`, async ({ page }) => {
		await page.emulateMedia({ colorScheme: scheme });
		await open(page);
		await windowArea(page).focus();
		await expect(help(page)).toBeVisible();
		expect(await violations(page, ".help")).toEqual([]);
	});
}

test("there is no help line on paper", async ({ page }) => {
	await open(page);
	await windowArea(page).focus();
	await page.emulateMedia({ media: "print" });
	await expect(help(page)).toBeHidden();
});
