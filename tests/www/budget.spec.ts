import { expect, type Page, test } from "@playwright/test";
import { open, toNumber } from "./sheet";

async function column(page: Page, rows: string, place: number): Promise<number[]> {
	const texts = await page.locator(`${rows} td.figure:nth-last-child(${place})`).allInnerTexts();
	return texts.map(toNumber);
}

function sum(values: number[]): number {
	return values.reduce((left, right) => left + right, 0);
}

for (const draw of ["Running", "Bench, one port at a time", "Bench, all ports open"]) {
	test(`in the draw ${draw} each port's budget adds up to its total`, async ({ page }) => {
		await open(page);
		await page.getByRole("radio", { name: draw }).check();
		const ports = page.getByRole("group", { name: "of the port of cylinder" }).getByRole("radio");
		await expect(ports).toHaveCount(8);
		for (const port of await ports.all()) {
			await port.check();
			const parts = await column(page, ".budget tbody", 2);
			const [total] = await column(page, ".budget tfoot", 2);
			expect(parts.length).toBeGreaterThan(3);
			// Each figure is rounded to a thousandth.
			expect(Math.abs(sum(parts) - (total ?? Number.NaN))).toBeLessThan(
				0.0005 * (parts.length + 1),
			);
		}
	});
}

test("the parts of the gap add up to the gap", async ({ page }) => {
	await open(page);
	const parts = await column(page, ".gap tbody", 1);
	const [total] = await column(page, ".gap tfoot", 1);
	expect(Math.abs(sum(parts) - (total ?? Number.NaN))).toBeLessThan(0.0005 * (parts.length + 1));
});

test("the budget begins with the worst cylinder, and a port is chosen by click or by key", async ({
	page,
}) => {
	await open(page);
	const caption = page.locator("table.budget caption");
	await expect(caption).toContainText("port 7");
	await page.locator("table.shares").getByRole("button", { name: "4", exact: true }).click();
	await expect(caption).toContainText("port 4");
	await page.getByRole("radio", { name: "4", exact: true }).press("ArrowRight");
	await expect(caption).toContainText("port 6");
	await expect(page.getByRole("img", { name: /^Pressure falls by/ })).toBeVisible();
});

test("a line of the budget leads to its cell in the table", async ({ page }) => {
	await open(page);
	await page.locator("table.budget").getByRole("link", { name: "runner 7, loss 2" }).click();
	await expect(page.locator('[data-row="runner 7"] .loss:nth-child(2) select')).toBeFocused();
});
