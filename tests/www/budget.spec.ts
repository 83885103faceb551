import { expect, type Page, test } from "@playwright/test";
import { open, openText, saved, toNumber } from "./sheet";

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

test("behind a blower the parts of all losses add up to all, and what it adds stands apart", async ({
	page,
}) => {
	await open(page);
	await page.locator("summary", { hasText: "Examples" }).click();
	await page.getByRole("button", { name: "Blown V8" }).click();
	await expect(page.getByRole("img", { name: /^Pressure rises by/ })).toBeVisible();
	const blower = page.locator(".budget tbody tr", { hasText: "blower (gained)" });
	await expect(blower.locator("td.figure").last()).toHaveText("–");
	const others = page.locator(".budget tbody tr", { hasNotText: "(gained)" });
	const parts = (await others.locator("td.figure:last-child").allInnerTexts()).map(toNumber);
	expect(Math.min(...parts)).toBeGreaterThanOrEqual(0);
	expect(Math.abs(sum(parts) - 100)).toBeLessThan(0.05 * (parts.length + 1));
	const [lost = 0, gained = 0, whole = 0] = await column(page, ".budget tfoot", 2);
	expect(gained).toBeLessThan(0);
	expect(Math.abs(lost + gained - whole)).toBeLessThan(0.002);
	await expect(page.locator(".budget tfoot tr td:last-child")).toHaveText(["100.0", "–", "–"]);
});

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

test("another cylinder's budget stands beside it, and the differences add up", async ({ page }) => {
	await open(page);
	const caption = page.locator("table.versus caption");
	await expect(caption).toContainText("Cylinder 7 beside cylinder 4, which gets most");
	for (const cylinder of ["7", "4", "1"]) {
		await page.getByRole("radio", { name: cylinder, exact: true }).check();
		await expect(caption).toContainText(`Cylinder ${cylinder} beside`);
		const more = await column(page, ".versus tbody", 1);
		const [own, other, total] = await Promise.all(
			[3, 2, 1].map(async (place) => (await column(page, ".versus tfoot", place))[0] ?? Number.NaN),
		);
		const close = 0.0005 * (more.length + 2);
		expect(Math.abs(sum(more) - (total ?? Number.NaN))).toBeLessThan(close);
		expect((own ?? 0) - (other ?? 0)).toBeCloseTo(total ?? Number.NaN, 2);
	}
	await page.getByRole("radio", { name: "4", exact: true }).check();
	await expect(caption).toContainText("beside cylinder 7, which gets least");
	await expect(
		page.getByRole("img", { name: /to the port of cylinder 7 it falls by/ }),
	).toBeVisible();
});

test("with one cylinder there is a budget and nothing beside it", async ({ page }) => {
	await open(page);
	const study = (await saved(page)) as {
		engine: { cylinders: { id: string }[]; firingOrder?: string[] };
		network: { nodes: { id: string; cylinder?: string }[]; branches: { to: string }[] };
	};
	study.engine.cylinders = study.engine.cylinders.slice(0, 1);
	delete study.engine.firingOrder;
	const gone = new Set(["2", "3", "4", "5", "6", "7", "8"]);
	study.network.nodes = study.network.nodes.filter(({ cylinder }) => !gone.has(cylinder ?? ""));
	const left = new Set(study.network.nodes.map(({ id }) => id));
	study.network.branches = study.network.branches.filter(({ to }) => left.has(to));
	await openText(page, JSON.stringify(study));
	await expect(page.getByText("There is no other cylinder to put beside it.")).toBeVisible();
	await expect(page.getByText("One cylinder has nothing to differ from.")).toBeVisible();
	await expect(page.locator("table.versus")).toHaveCount(0);
	await expect(page.locator("table.budget tbody tr").first()).toBeVisible();
	await expect(page.locator(".drawing .node.port")).toHaveCount(1);
});

test("an even engine's two budgets fall alike, and so does its gap", async ({ page }) => {
	await open(page);
	await page.locator("summary", { hasText: "Examples" }).click();
	await page.getByRole("button", { name: "Symmetric lid" }).click();
	await expect(page.locator(".title-block .large")).toContainText(/symmetric/i);
	await page.getByRole("radio", { name: "Cycle mean" }).check();
	await expect(page.locator("table.versus")).toBeVisible();
	for (const more of await column(page, ".versus tbody", 1)) expect(Math.abs(more)).toBe(0);
	expect(await column(page, ".versus tfoot", 1)).toEqual([0]);
	expect(await column(page, ".gap tfoot", 1)).toEqual([0]);
});

test("a line of the budget leads to its cell in the table", async ({ page }) => {
	await open(page);
	await page.locator("table.budget").getByRole("link", { name: "runner 7, loss 2" }).click();
	await expect(page.locator('[data-row="runner 7"] .loss:nth-child(2) select')).toBeFocused();
});
