import { expect, test } from "@playwright/test";
import { violations } from "../axe";
import { cell, open } from "../sheet";

test("a valve's discharge over lift is pasted, told by point, given to all ports and taken back", async ({
	page,
	context,
}) => {
	await context.grantPermissions(["clipboard-read", "clipboard-write"]);
	await open(page);
	for (const port of ["port 1", "port 2"]) {
		await page.getByRole("button", { name: `Add a valve to ${port}` }).click();
	}
	const row = page.locator('[data-row="port 1"]');
	const table = row.getByRole("button", { name: "port 1, valve, discharge over lift" });
	await table.focus();
	await page.keyboard.press("Enter");
	await expect(row.getByText(/follows the usual curve.*from memory/)).toBeVisible();
	await expect(row.getByRole("row", { name: /^Curtain area, mm² 880$/ })).toBeVisible();
	await expect(row.getByText("The inlet Mach index needs bore and stroke")).toBeVisible();
	expect(await violations(page, '[data-row="port 1"]')).toEqual([]);

	await row.getByRole("button", { name: "A table of its own" }).click();
	const point = (number: number, field: string) => cell(page, `port 1, point ${number}, ${field}`);
	await expect(point(1, "lift over seat diameter")).toBeFocused();
	const text = "L/D\tCd\n0.05\t0.3\n0.15\t0.25\n0.25\tlow\n";
	await page.evaluate((text) => navigator.clipboard.writeText(text), text);
	await page.keyboard.press("Control+v");
	await expect(row.getByText("Discharge coefficient, point 3: “low”: Not a number.")).toBeVisible();
	await point(3, "discharge coefficient").fill("0.2");
	await expect(
		row.getByRole("img", { name: /0\.3 at 0\.05, 0\.25 at 0\.15, 0\.2 at 0\.25/ }),
	).toBeVisible();
	await expect(row.getByText("by a table of 3 lifts")).toBeVisible();
	await expect(row.getByRole("row", { name: /^Effective area, mm² 185$/ })).toBeVisible();
	await point(1, "lift over seat diameter").fill("0.5");
	await expect(row.locator(".faults")).toContainText("Point 2: 0.15 does not come after 0.5.");
	await page.emulateMedia({ colorScheme: "dark" });
	expect(await violations(page, '[data-row="port 1"]')).toEqual([]);
	await point(1, "lift over seat diameter").fill("0.05");

	const other = page.locator('[data-row="port 2"]');
	await row.getByRole("button", { name: "The same for all 2 ports’ valves" }).click();
	await expect(other.getByText("by a table of 3 lifts")).toBeVisible();
	await row.getByRole("button", { name: "Back to the usual curve" }).click();
	await expect(row.getByText("by a table of 3 lifts")).toHaveCount(0);
	await page.keyboard.press("Control+z");
	await expect(row.getByText("by a table of 3 lifts")).toBeVisible();
	await page.keyboard.press("Control+z");
	await expect(other.getByText("by a table of 3 lifts")).toHaveCount(0);
	await expect(row.getByText("by a table of 3 lifts")).toBeVisible();
});
