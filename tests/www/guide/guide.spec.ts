import { expect, type Page, test } from "@playwright/test";
import { violations } from "../axe";
import { cell, open, sentence } from "../sheet";

const guide = (page: Page) => page.getByRole("region").filter({ has: page.locator(".told") });
const told = (page: Page) => page.locator(".guide .told");
const heading = (page: Page) => page.locator(".guide h2");
const press = (page: Page, name: string) =>
	page.locator(".guide").getByRole("button", { name }).click();
const title = (page: Page) => page.locator(".title-block .large");

/** The spread that the page shows for a draw. */
async function spread(page: Page, draw: string): Promise<string> {
	const label = page.locator(".draws label", { hasText: draw });
	const text = await label.locator(".numbers").textContent();
	return /spread ([\d.]+)/.exec(text ?? "")?.[1] ?? "none";
}

async function start(page: Page) {
	await open(page);
	await page.getByRole("button", { name: "See a log found uneven and mended" }).click();
	await expect(heading(page)).toBeFocused();
}

test("from start to finish: read, explained, mended, compared, and everything comes back", async ({
	page,
}) => {
	await start(page);
	await press(page, "Lay it on the sheet");
	await expect(title(page)).toHaveText("Inline log");
	await expect(heading(page)).toHaveText("Read the verdict");
	await expect(told(page)).toContainText("cylinder 1 gets least");
	const found = await spread(page, "Running");
	await expect(told(page)).toContainText(`The spread is ${found} %, over the limit`);
	await press(page, "Next");
	await expect(told(page)).toContainText("the longer the way from the source, the more");
	await expect(page.getByRole("radio", { name: "Bench, all ports open" })).toBeChecked();
	await press(page, "Next");
	await expect(told(page)).toContainText("header log 1");
	await expect(told(page)).toContainText("Acrivos");
	await expect(page.locator(".pointed")).toContainText("What makes the gap");
	await expect(page.locator(".pointed tbody tr").first()).toContainText("log 1");
	await press(page, "Next");
	await press(page, "Widen the log");
	await expect(told(page)).toContainText("fell from");
	const wider = await spread(page, "Running");
	await expect(told(page)).toContainText(`fell from ${found} % to ${wider} %: within the limit`);
	const benchWider = await spread(page, "Bench, one port at a time");
	await press(page, "Next");
	await press(page, "Taper the log");
	await expect(title(page)).toHaveText("Tapered log");
	await expect(told(page)).toContainText("On the bench with one port open");
	const benchTapered = await spread(page, "Bench, one port at a time");
	await expect(told(page)).toContainText(
		`spreads by ${benchTapered} %, more than the wider log's ${benchWider} % and over the limit`,
	);
	await press(page, "Next");
	const rows = page.locator(".guide tbody tr");
	await expect(rows).toHaveCount(3);
	await expect(rows.nth(0)).toContainText(`${found} %`);
	await expect(rows.nth(1)).toContainText(`${wider} %`);
	await expect(rows.nth(2)).toContainText(`${benchTapered} %`);
	await press(page, "Bring back the wider log");
	await expect(title(page)).toHaveText("Inline log");
	await expect.poll(() => spread(page, "Running")).toBe(wider);
	await press(page, "Bring back my study");
	await expect(title(page)).toHaveText("V8 lid");
	await page.getByRole("button", { name: "Close the guide" }).click();
	await expect(guide(page)).toHaveCount(0);
	await expect(page.locator(".pointed")).toHaveCount(0);
});

test("each change of the guide is one edit, and its sentences follow the sheet", async ({
	page,
}) => {
	await start(page);
	await press(page, "Lay it on the sheet");
	for (let step = 0; step < 3; step += 1) await press(page, "Next");
	await press(page, "Widen the log");
	await expect(told(page)).toContainText("fell from");
	await page.keyboard.press("Control+z");
	await expect(told(page)).toContainText("is as before");
	await page.keyboard.press("Control+Shift+z");
	await expect(told(page)).toContainText("fell from");
	await press(page, "Back");
	await press(page, "Back");
	await press(page, "Back");
	await expect(told(page)).toContainText("over the limit");
	const before = (await told(page).textContent()) ?? "";
	await cell(page, "runner 1, loss 1, duct friction, length, mm").fill("600");
	await expect(told(page)).not.toHaveText(before);
	await expect(told(page)).toContainText(`The spread is ${await spread(page, "Running")} %`);
	await cell(page, "runner 1, loss 1, duct friction, length, mm").fill("long");
	await expect(told(page)).toContainText("something to be put right first");
	for (let step = 0; step < 2; step += 1) await page.keyboard.press("Control+z");
	await expect(title(page)).toHaveText("V8 lid");
});

test("the guide leads on to one's own engine, by keyboard", async ({ page }) => {
	await start(page);
	const names = [
		"Lay it on the sheet",
		"Next",
		"Next",
		"Next",
		"Widen the log",
		"Next",
		"Taper the log",
		"Next",
	];
	for (const name of names) {
		const button = page.locator(".guide").getByRole("button", { name });
		await expect(button).toBeEnabled();
		await button.press("Enter");
	}
	await page
		.locator(".guide")
		.getByRole("button", { name: "Begin with your own engine" })
		.press("Enter");
	await expect(page.getByRole("dialog", { name: "Begin with your own engine" })).toBeVisible();
	await expect(guide(page)).toHaveCount(0);
});

test("an example that cannot be loaded is said, and the sheet stays as it was", async ({
	page,
}) => {
	await start(page);
	await page.route("**/network-*.js", (route) => route.abort());
	await press(page, "Lay it on the sheet");
	await expect(told(page)).toContainText("could not be loaded");
	await expect(heading(page)).toHaveText("An uneven log, found and mended");
	await expect(title(page)).toHaveText("V8 lid");
});

test("the guide can be had from the examples too", async ({ page }) => {
	await open(page);
	await page.locator("summary", { hasText: "Examples" }).click();
	await page.getByRole("button", { name: "Guide: an uneven log, mended" }).click();
	await expect(heading(page)).toBeFocused();
});

test("on a phone the card leaves what it speaks of in sight", async ({ page }) => {
	await page.setViewportSize({ width: 360, height: 740 });
	await start(page);
	await press(page, "Lay it on the sheet");
	await expect(sentence(page)).toBeInViewport();
	const card = await page.locator(".guide").boundingBox();
	const verdict = await page.locator(".sentence").boundingBox();
	expect(verdict?.y).toBeLessThan((card?.y ?? 0) - 60);
	expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
	await expect(page.locator(".guide").getByRole("button", { name: "Next" })).toBeInViewport({
		ratio: 1,
	});
});

for (const scheme of ["light", "dark"] as const) {
	test(`everybody can use the guide, ${scheme}`, async ({ page }) => {
		await page.emulateMedia({ colorScheme: scheme });
		await start(page);
		expect(await violations(page, ".guide")).toEqual([]);
		await press(page, "Lay it on the sheet");
		await expect(told(page)).toContainText("over the limit");
		expect(await violations(page, ".guide", ".pointed")).toEqual([]);
		for (let step = 0; step < 3; step += 1) await press(page, "Next");
		await press(page, "Widen the log");
		await press(page, "Next");
		await press(page, "Taper the log");
		await press(page, "Next");
		await expect(page.locator(".guide table")).toBeVisible();
		expect(await violations(page, ".guide")).toEqual([]);
	});
}
