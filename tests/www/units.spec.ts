import { expect, test } from "@playwright/test";
import { cell, deviations, open, saved, toNumber, windowArea } from "./sheet";

test("another unit changes what is shown and leaves the study's values alone", async ({ page }) => {
	await open(page);
	const before = await saved(page);
	const shares = await deviations(page);
	await expect(windowArea(page)).toHaveValue("2100");
	const [total] = await page.locator(".budget tfoot td.figure").allInnerTexts();
	await page.locator("summary", { hasText: "Units" }).click();
	await page.getByLabel("Section area").selectOption("in2");
	await page.getByLabel("Pressure difference").selectOption("inH2O");
	await page.getByLabel("Temperature", { exact: true }).selectOption("degF");
	await page.keyboard.press("Escape");

	const inches = cell(page, "window 1, loss 1, opening in a wall, area, in²");
	await expect(inches).toHaveValue("3.255007");
	const [water] = await page.locator(".budget tfoot td.figure").allInnerTexts();
	expect(toNumber(water ?? "")).toBeCloseTo((toNumber(total ?? "") * 1000) / 248.84, 1);
	await expect(page.getByRole("columnheader", { name: "Temp., °F" })).toBeVisible();
	expect(await deviations(page)).toEqual(shares);

	const after = await saved(page);
	expect(after.network).toEqual(before.network);
	expect(after.engine).toEqual(before.engine);
	expect(after).toHaveProperty("settings.units.area", "in2");

	await inches.fill("3");
	await inches.press("Tab");
	await expect(inches).toHaveValue("3");
	for (let step = 0; step < 4; step += 1) await page.keyboard.press("Control+z");
	await expect(windowArea(page)).toHaveValue("2100");
});

test("every pressure says that it is absolute", async ({ page }) => {
	await open(page);
	const tables = [
		page.getByRole("grid", { name: "Nodes" }),
		page.getByRole("group", { name: "Sources as found" }),
	];
	for (const table of tables)
		await expect(table.getByRole("columnheader", { name: "Pressure, kPa abs" })).toBeVisible();
	await expect(page.getByLabel("room pressure, kPa abs")).toHaveValue("101.325");
	await expect(cell(page, "blower pressure, kPa abs")).toHaveValue("186");
});
