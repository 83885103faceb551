import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { open, windowArea } from "./sheet";

const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

async function violations(page: Page): Promise<string[]> {
	const found = await new AxeBuilder({ page }).withTags(TAGS).analyze();
	return found.violations.map(
		({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`,
	);
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
		expect(await violations(page)).toEqual([]);
		await page.locator("summary", { hasText: "Units" }).click();
		expect(await violations(page)).toEqual([]);
	});
}

for (const [what, width, height] of [
	["on a phone", 360, 740],
	["at 200 % of a small desk", 640, 400],
	["at 320 px", 320, 640],
] as const) {
	test(`the page never scrolls sideways ${what}; a wide table does so in its own box`, async ({
		page,
	}) => {
		await page.setViewportSize({ width, height });
		await open(page);
		const page_width = await page.evaluate(() => document.documentElement.scrollWidth);
		expect(page_width).toBeLessThanOrEqual(width);
		const box = page.locator(".box", { has: page.locator(".branches") });
		expect(await box.evaluate((each) => each.scrollWidth > each.clientWidth)).toBe(true);
		expect(await violations(page)).toEqual([]);
	});
}

test("the verdict and the shares are in sight at a desk without scrolling", async ({ page }) => {
	await page.setViewportSize({ width: 1280, height: 800 });
	await open(page);
	await expect(page.locator(".sentence")).toBeInViewport({ ratio: 1 });
	await expect(page.locator("table.shares")).toBeInViewport({ ratio: 1 });
	await windowArea(page).scrollIntoViewIfNeeded();
	await page.getByLabel("speed, rpm").scrollIntoViewIfNeeded();
	await expect(page.locator(".sentence")).toBeInViewport({ ratio: 1 });
});

test("nothing jumps while answers change", async ({ page }) => {
	await page.setViewportSize({ width: 1440, height: 900 });
	await open(page);
	const places = () =>
		page.evaluate(() =>
			["table.shares", ".stair", "table.budget", ".branches"].map(
				(name) => document.querySelector(name)?.getBoundingClientRect().top,
			),
		);
	const before = await places();
	for (const value of ["2000", "1500", "1000", "3000"]) {
		await windowArea(page).fill(value);
		await page.waitForTimeout(150);
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
