import { expect, type Locator, type Page, test } from "@playwright/test";
import { violations } from "./axe";
import { cell, open, saved, sentence } from "./sheet";

const panel = (page: Page): Locator => page.locator("section.sweep");
const button = (page: Page, name: string | RegExp): Locator =>
	panel(page).getByRole("button", { name });
const says = (page: Page): Locator => panel(page).locator(".says").first();
const undo = (page: Page) => page.getByRole("button", { name: "Undo" }).click();

/** Sweeps a cell, and waits for what comes of it. */
async function sweep(page: Page, which: Locator, key = "Alt+Shift+S") {
	await which.focus();
	await page.keyboard.press(key);
	await expect(panel(page).getByRole("heading", { name: "Sweep" })).toBeFocused();
}

async function setField(page: Page, name: string, text: string) {
	const field = panel(page).getByRole("textbox", { name });
	await field.fill(text);
	await field.press("Enter");
}

/** Waits for what comes of a sweep: a busy machine takes its time to load and solve it. */
const told = (page: Page, text: string | RegExp) =>
	expect(says(page)).toContainText(text, { timeout: 20_000 });

const starved = (page: Page) => cell(page, "window 7, loss 1, opening in a wall, area, mm²");

test("a cell is swept from the table, and the best point becomes a variant that undo takes back", async ({
	page,
}) => {
	await open(page);
	const before = ((await sentence(page).textContent()) ?? "").trim();
	await sweep(page, starved(page));
	await told(page, "The least spread is");
	await expect(says(page)).toContainText("no proof");
	await expect(panel(page).locator("path.line-over")).toHaveCount(9);
	await expect(panel(page).locator("svg")).toContainText("study, 900");
	await setField(page, "From", "800");
	await setField(page, "To, mm²", "2800");
	await setField(page, "Points", "11");
	await expect(panel(page)).toContainText("; 11 points.", { timeout: 20_000 });
	const best = /at (\d+)\smm²/.exec((await says(page).textContent()) ?? "")?.[1] ?? "";
	expect(Number(best)).toBeGreaterThan(900);

	// The point that is made a variant is what the sheet then answers.
	await button(page, "Make the best point a variant").click();
	await expect(page.getByLabel("Name of the variant")).toHaveValue(`Window 7 area ${best} mm²`);
	await expect(starved(page)).toHaveValue(best);
	const spread = /The least spread is (\S+)/.exec((await says(page).textContent()) ?? "")?.[1];
	await expect(page.locator(".draws label").first()).toContainText(`spread ${spread}`);
	await expect(sentence(page)).toContainText(`Variant Window 7 area ${best} mm²:`);
	await undo(page);
	await expect(starved(page)).toHaveValue("900");
	await expect(sentence(page)).toHaveText(before);

	// A point chosen by keyboard goes into the study itself.
	const slider = panel(page).getByRole("slider", { name: "Window 7 area to read off" });
	await slider.press("Home");
	await expect(slider).toHaveAttribute("aria-valuetext", /^800\smm², spread \d+\.\d+\s%$/);
	await slider.press("ArrowRight");
	await button(page, "Put this point into the study").click();
	await expect(starved(page)).toHaveValue("1000");
	expect(await saved(page)).not.toHaveProperty("variants");
	await undo(page);
	await expect(starved(page)).toHaveValue("900");

	// An edit elsewhere is followed by itself.
	const last = (await says(page).textContent()) ?? "";
	await cell(page, "window 5, loss 1, opening in a wall, area, mm²").fill("700");
	await expect(says(page)).not.toHaveText(last, { timeout: 20_000 });
	await undo(page);
	await expect(says(page)).toHaveText(last, { timeout: 20_000 });
	expect(await violations(page, ".sweep", ".tools")).toEqual([]);
	const [drawing] = await Promise.all([
		page.waitForEvent("download"),
		button(page, "Save SVG of the sweep").click(),
	]);
	expect(drawing.suggestedFilename()).toMatch(/sweep\.svg$/);
	await button(page, "Close the sweep").click();
	await expect(panel(page)).toHaveCount(0);
	await expect(starved(page)).toBeFocused();
});

test("cells of one field are tied together, and what cannot be swept is told", async ({ page }) => {
	await open(page);
	const name = cell(page, "window 1, loss 1, opening in a wall, area, mm²");
	await name.focus();
	await page.keyboard.press("Shift+ArrowDown");
	await page.keyboard.press("Alt+Shift+S");
	await expect(panel(page)).toContainText("2 of 16 cells tied together");
	await expect(panel(page).getByLabel("each times the same factor")).toBeChecked();
	await told(page, "times");
	await panel(page).locator("summary", { hasText: "cells tied together" }).click();
	await panel(page).getByLabel("window 5, loss 1, area").check();
	await expect(panel(page)).toContainText("3 of 16 cells tied together");
	await panel(page).getByLabel("all at the same value").check();
	await expect(panel(page).getByRole("textbox", { name: "From, mm²" })).toBeVisible();
	await setField(page, "From, mm²", "9000");
	await expect(panel(page)).toContainText("The first value must be less than the last one.");
	await expect(button(page, "Solve again")).toBeDisabled();
	await setField(page, "From, mm²", "wide");
	await expect(panel(page)).toContainText("Not an area");
	await expect(panel(page).getByRole("textbox", { name: "From, mm²" })).toHaveValue("wide");

	await cell(page, "window 1, loss 1, opening in a wall, area, mm²").focus();
	await page.keyboard.press("Shift+ArrowRight");
	await page.keyboard.press("Alt+Shift+S");
	await expect(page.getByRole("alert")).toContainText("select cells that measure the same");

	// A number of the engine is swept from the help line; it is in no version's own.
	await page.getByLabel("speed, rpm", { exact: true }).focus();
	await page.getByRole("button", { name: "Sweep this cell" }).click();
	await expect(button(page, "Put this point into the study")).toBeVisible({ timeout: 20_000 });
	await expect(panel(page).locator("legend")).toHaveText("Speed");
	await expect(button(page, "a variant")).toHaveCount(0);
});

test("two dimensions make a map that is read by keyboard, copied and stopped", async ({
	page,
	context,
}) => {
	test.slow();
	await context.grantPermissions(["clipboard-read", "clipboard-write"]);
	await open(page);
	await sweep(page, starved(page));
	await told(page, "The least spread");
	await sweep(page, cell(page, "window 5, loss 1, opening in a wall, area, mm²"), "Alt+Shift+M");
	await expect(panel(page).locator(".shades li").first()).toBeVisible({ timeout: 30_000 });
	await expect(panel(page)).toContainText("225 points");
	await expect(panel(page).locator("rect.best")).toHaveCount(1);
	await expect(says(page)).toContainText(/window 7 area \d+.mm² and window 5 area \d+.mm²/);
	const up = panel(page).getByRole("slider", { name: "Window 5 area to read off" });
	await up.press("Home");
	await expect(up).toHaveAttribute("aria-valuetext", /window 5 area 1000\smm², spread/);
	await panel(page).locator("summary", { hasText: "Figures of the sweep" }).click();
	await expect(panel(page).locator("table tbody tr")).toHaveCount(15);
	await button(page, "Copy the table").click();
	const copied = await page.evaluate(() => navigator.clipboard.readText());
	expect(copied.split("\n")).toHaveLength(16);
	expect(copied).toContain("\t600\t");
	expect(await violations(page, ".sweep")).toEqual([]);

	await page.emulateMedia({ colorScheme: "dark", reducedMotion: "reduce" });
	await page.setViewportSize({ width: 360, height: 740 });
	expect(await violations(page, ".sweep")).toEqual([]);
	expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
	await page.setViewportSize({ width: 1360, height: 900 });

	// A variant of a point of the map has both dimensions.
	await panel(page)
		.locator("svg[role=img]")
		.click({ position: { x: 80, y: 20 } });
	await button(page, "Make this point a variant").click();
	await expect(page.getByLabel("Name of the variant")).toHaveValue(
		/^Window 7 area 600 mm², Window 5 area \d+ mm²$/,
	);
	await expect(starved(page)).toHaveValue("600");

	// Stopping leaves what was there, and nothing goes on behind it.
	await panel(page).getByRole("textbox", { name: "Points" }).first().fill("31");
	await panel(page).getByRole("textbox", { name: "Points" }).first().press("Enter");
	await panel(page).getByRole("textbox", { name: "Points" }).last().fill("31");
	await panel(page).getByRole("textbox", { name: "Points" }).last().press("Enter");
	await button(page, "Stop").click();
	await expect(panel(page)).toContainText(/Stopped after \d+ points; what is shown/);
	await expect(button(page, "Stop")).toHaveCount(0);
	await expect(button(page, "Solve again")).toBeEnabled();
	await expect(panel(page).locator("rect.tile")).toHaveCount(225 + (await shades(page)));
});

const shades = (page: Page): Promise<number> => panel(page).locator(".shades rect.tile").count();
