import { expect, type Page, test } from "@playwright/test";
import { violations as found } from "./axe";
import { cell, open, renderAll, windowArea } from "./sheet";

/** What is hard to use on the page with all its rows, or in these parts of it. */
async function violations(page: Page, ...parts: string[]): Promise<string[]> {
	await renderAll(page);
	return found(page, ...parts);
}

for (const scheme of ["light", "dark"] as const) {
	test(`everybody can use the page, ${scheme}: with an answer, with errors, with a menu open`, async ({
		page,
	}) => {
		test.slow();
		await page.emulateMedia({ colorScheme: scheme });
		await open(page);
		expect(await violations(page)).toEqual([]);
		await windowArea(page).fill("x");
		await page.getByLabel("speed, rpm").fill("-1");
		await expect(page.locator("#errors li")).toHaveCount(2);
		const changed = [
			".verdict",
			"#errors",
			'[data-row="window 1"]',
			'section:has(> [id="engine-title"])',
		];
		expect(await violations(page, ...changed)).toEqual([]);
		await page.locator("summary", { hasText: "Units" }).click();
		expect(await violations(page, "header")).toEqual([]);
	});
}

for (const [what, width, height] of [
	["on a phone", 360, 740],
	["at 200 % of a small desk", 640, 400],
	["at 320 px", 320, 640],
] as const) {
	test(`nothing has to be scrolled sideways ${what}`, async ({ page }) => {
		test.slow();
		await page.setViewportSize({ width, height });
		await open(page);
		await expect(page.locator(".title-block")).toBeVisible();
		const wide = await page.evaluate(() =>
			[document.documentElement, ...document.querySelectorAll(".box")]
				.filter((each) => each.scrollWidth > each.clientWidth)
				.map((each) => each.innerHTML.slice(0, 80)),
		);
		expect(wide).toEqual([]);
		expect(await violations(page)).toEqual([]);
		for (const menu of ["Examples", "Units"]) {
			await page.locator("summary", { hasText: menu }).click();
			const place = await page.locator("details[open] .panel").boundingBox();
			expect(place?.x).toBeGreaterThanOrEqual(0);
			expect((place?.x ?? 0) + (place?.width ?? 0)).toBeLessThanOrEqual(width);
		}
	});
}

test("a table that names too long have made wide scrolls in its own box, also by keyboard", async ({
	page,
}) => {
	await page.setViewportSize({ width: 360, height: 740 });
	await open(page);
	const name = "cylinder_with_a_name_that_does_not_fit_a_phone";
	await cell(page, "Cylinder 1, name").fill(name);
	const box = page.locator(".box", { has: page.locator(".air") });
	await expect(box).toContainText(name);
	await box.focus();
	await expect(box).toBeFocused();
	const page_width = await page.evaluate(() => document.documentElement.scrollWidth);
	expect(page_width).toBeLessThanOrEqual(360);
});

test("26 branches take at most two and a half screens of a small desk, and no loss two lines", async ({
	page,
}) => {
	await page.setViewportSize({ width: 1360, height: 900 });
	await open(page);
	await expect(page.locator(".branches [data-row]")).toHaveCount(26);
	await renderAll(page);
	const height = await page.locator(".branches").evaluate((table) => table.clientHeight);
	expect(height).toBeLessThan(2.5 * 900);
	for (const row of ["runner 1", "window 1"]) {
		const losses = page.locator(`[data-row="${row}"] .loss`);
		for (const height of await losses.evaluateAll((all) => all.map((each) => each.clientHeight)))
			expect(height).toBeLessThan(40);
	}
});

test("the verdict and each cylinder's deviation are in sight at a desk without scrolling", async ({
	page,
}) => {
	await page.setViewportSize({ width: 1360, height: 900 });
	await open(page);
	await expect(page.locator(".sentence")).toBeInViewport({ ratio: 1 });
	await expect(page.locator(".drawing .gauge")).toHaveCount(8);
	for (const gauge of await page.locator(".drawing .gauge").all())
		await expect(gauge).toBeInViewport({ ratio: 0.99 });
	await windowArea(page).scrollIntoViewIfNeeded();
	await page.getByLabel("speed, rpm").scrollIntoViewIfNeeded();
	await expect(page.locator(".sentence")).toBeInViewport({ ratio: 1 });
});

test("nothing jumps while answers change", async ({ page }) => {
	await page.setViewportSize({ width: 1440, height: 900 });
	await open(page);
	// Typing brings the cell into view first; from then on nothing may move.
	await windowArea(page).focus();
	await expect(page.locator(".title-block")).toBeAttached();
	const places = () =>
		page.evaluate(() =>
			[".drawing", "table.shares", ".stair", "table.budget", ".branches"].map(
				(name) => document.querySelector(name)?.getBoundingClientRect().top,
			),
		);
	const before = await places();
	for (const value of ["2000", "1500", "1000", "3000"]) {
		await windowArea(page).fill(value);
		await page.waitForTimeout(150);
		expect(await places()).toEqual(before);
	}
	// The draws have sentences of different lengths.
	for (const draw of ["Cycle mean", "Bench, one port at a time", "Bench, all ports open"]) {
		await page.getByRole("radio", { name: draw }).check();
		expect(await places()).toEqual(before);
	}
});

test("on paper the inputs are plain text and there are no controls", async ({ page }) => {
	await open(page);
	await page.emulateMedia({ media: "print" });
	await page.setViewportSize({ width: 720, height: 1000 });
	await expect(page.locator(".sentence")).toBeVisible();
	await expect(page.getByRole("img", { name: /^Pressure falls by/ })).toBeVisible();
	await expect(windowArea(page)).toBeVisible();
	await expect(windowArea(page)).toHaveCSS("border-bottom-width", "0px");
	await expect(page.locator("p.printed")).toContainText("Invented");
	await expect(page.locator("button:visible, textarea:visible, .commands:visible")).toHaveCount(0);
	const width = await page.evaluate(() => document.documentElement.scrollWidth);
	expect(width).toBeLessThanOrEqual(720);
	expect(await page.screenshot({ fullPage: true })).not.toHaveLength(0);
});

test("no motion for readers who ask for none", async ({ page }) => {
	await page.emulateMedia({ reducedMotion: "reduce" });
	await open(page);
	await expect(page.locator("html")).toHaveCSS("scroll-behavior", "auto");
});

test("on paper a total stands once, at the end of its table", async ({ page }) => {
	await open(page);
	await page.emulateMedia({ media: "print" });
	for (const name of [".budget tfoot", ".gap tfoot"])
		await expect(page.locator(name)).toHaveCSS("display", "table-row-group");
});

test("on paper a heading stays whole and with what it heads", async ({ page }) => {
	await open(page);
	await page.emulateMedia({ media: "print" });
	const heading = page.locator("#budget-title");
	await expect(heading).toHaveCSS("break-inside", "avoid");
	await expect(heading).toHaveCSS("break-after", "avoid");
});
