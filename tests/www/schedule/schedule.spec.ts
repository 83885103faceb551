import { expect, test } from "@playwright/test";
import { violations } from "../axe";
import { cell, deviations, open } from "../sheet";

test("areas pasted from CAD become a schedule's stations, drawn, told by row, and taken back at once", async ({
	page,
	context,
}) => {
	await context.grantPermissions(["clipboard-read", "clipboard-write"]);
	await open(page);
	const before = await deviations(page);
	await page.getByRole("combobox", { name: "runner 1, loss 2, kind" }).selectOption("schedule");
	const row = page.locator('[data-row="runner 1"]');
	await row.getByRole("button", { name: /section schedule, stations$/ }).click();
	const station = (number: number, field: string) =>
		cell(page, `runner 1, loss 2, section schedule, station ${number}, ${field}`);
	// It starts as the duct that it takes the place of.
	await expect(station(2, "station, mm")).toHaveValue("110");
	await expect(station(2, "area, mm²")).toHaveValue("1664");
	const text = "Station [mm]\tArea [cm^2]\n0\t16,64\n50\t16,6\n50,5\t9\n110\twide\n";
	await page.evaluate((text) => navigator.clipboard.writeText(text), text);
	await station(1, "area, mm²").focus();
	await page.keyboard.press("Control+v");
	await expect(station(3, "area, mm²")).toHaveValue("900");
	await expect(station(1, "area, mm²")).toBeFocused();
	await page.keyboard.press("ArrowDown");
	await expect(station(2, "area, mm²")).toBeFocused();
	await page.keyboard.press("Enter");
	await expect(station(3, "area, mm²")).toBeFocused();
	await page.keyboard.press("Shift+Enter");
	await expect(station(2, "area, mm²")).toBeFocused();
	await expect(row.getByText("Station 4, area: “wide”: Not an area.")).toBeVisible();
	await station(4, "area, mm²").fill("1664");
	await expect(
		row.getByRole("img", {
			name: /smallest 900 mm² at 50\.5 mm, station 3; .*jump from station 2 to 3, −46 %$/,
		}),
	).toBeVisible();
	await expect(row.getByRole("row", { name: /^3 .*smallest/ })).toContainText("jump −46 %");
	await expect.poll(() => deviations(page)).not.toEqual(before);
	await station(2, "station, mm").fill("60");
	await expect(row.getByText("Station 3: lies before the station above it")).toBeVisible();
	expect(await violations(page, '[data-row="runner 1"]')).toEqual([]);
	await page.emulateMedia({ colorScheme: "dark" });
	expect(await violations(page, '[data-row="runner 1"]')).toEqual([]);
	await row.getByRole("button", { name: "Put in order" }).click();
	await expect(station(3, "area, mm²")).toHaveValue("1660");
	for (let step = 0; step < 5; step += 1) await page.keyboard.press("Control+z");
	await expect.poll(() => deviations(page)).toEqual(before);
});

test("a section that no wall can have is warned of by its station", async ({ page }) => {
	await open(page);
	await page.getByRole("combobox", { name: "runner 1, loss 2, kind" }).selectOption("schedule");
	const row = page.locator('[data-row="runner 1"]');
	await row.getByRole("button", { name: /section schedule, stations$/ }).click();
	const perimeter = cell(page, "runner 1, loss 2, section schedule, station 2, perimeter, mm");
	await perimeter.fill("100");
	const warning = page.getByRole("listitem").filter({ hasText: "perimeter squared over area" });
	await expect(warning).toContainText("below the law's 12.566");
	const link = warning.getByRole("link", { name: "runner 1, loss 2, station 2", exact: true });
	await link.click();
	await expect(perimeter).toBeFocused();
	await perimeter.fill("168");
	await expect(warning).toHaveCount(0);
});

test("a bend is placed by its station, its author chosen, and the whole schedule copied to another runner by keys", async ({
	page,
	context,
}) => {
	await context.grantPermissions(["clipboard-read", "clipboard-write"]);
	await open(page);
	for (const runner of ["runner 1", "runner 2"]) {
		await page.getByRole("combobox", { name: `${runner}, loss 2, kind` }).selectOption("schedule");
	}
	const stations = (runner: string) =>
		page.getByRole("button", { name: `${runner}, loss 2, section schedule, stations` });
	await page.getByRole("combobox", { name: "runner 1, loss 2, kind" }).focus();
	await page.keyboard.press("ArrowRight");
	await page.keyboard.press("ArrowRight");
	await expect(stations("runner 1")).toBeFocused();
	await page.keyboard.press("Enter");
	const fall = page.locator('[data-row="runner 1"] [data-loss="1"] > .figure');
	const before = (await fall.textContent()) ?? "";
	await page
		.getByRole("button", { name: "runner 1, loss 2, section schedule, add a bend" })
		.click();
	const bend = (field: string) =>
		cell(page, `runner 1, loss 2, section schedule, bend 1, ${field}`);
	await bend("station, mm").fill("40");
	await bend("angle, °").fill("90");
	await bend("radius, mm").fill("50");
	await expect(fall).not.toHaveText(before);
	const rennels = (await fall.textContent()) ?? "";
	await page.getByRole("button", { name: "More fields of runner 1" }).click();
	await page
		.getByRole("combobox", { name: "runner 1, loss 2, section schedule, loss by" })
		.selectOption({ label: "Crane TP-410" });
	await expect(fall).not.toHaveText(rennels);

	await stations("runner 1").focus();
	await page.keyboard.press("Control+c");
	const other = page.locator('[data-row="runner 2"]');
	await expect(other.getByText("1 bend")).toHaveCount(0);
	await expect
		.poll(() => page.evaluate(() => navigator.clipboard.readText()))
		.toMatch(/^stations mm mm²: 0 \S+; 110 \S+ bends mm °: 40 90 50$/);
	await stations("runner 2").focus();
	await page.keyboard.press("Control+v");
	await expect(other.getByText(/^2 stations, 110 mm long, .*, 1 bend$/)).toBeVisible();
	await page.keyboard.press("Control+z");
	await expect(other.getByText("1 bend")).toHaveCount(0);
});
