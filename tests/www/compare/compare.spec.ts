import { readFile } from "node:fs/promises";
import { type Download, expect, type Page, test } from "@playwright/test";
import { violations } from "../axe";
import { cell, nodeCell, open, windowArea } from "../sheet";

const section = (page: Page) => page.getByRole("region", { name: "Versions side by side" });
const figures = (page: Page) =>
	section(page).getByRole("table", { name: "Figures of all versions" });
const lastWindow = (page: Page) => cell(page, "window 7, loss 1, opening in a wall, area, mm²");

async function newVariant(page: Page, name: string) {
	await page.getByRole("button", { name: "New variant" }).click();
	await page.getByLabel("Name of the variant").fill(name);
}

/** Figures of one row, by version. */
async function row(page: Page, name: string): Promise<string[]> {
	const cells = figures(page).getByRole("row").filter({ hasText: name }).getByRole("cell");
	return (await cells.allInnerTexts()).map((text) => text.trim());
}

async function textOf(download: Download): Promise<string> {
	return readFile(await download.path(), "utf8");
}

test("versions stand side by side: spreads, differences, budgets, and the base in the sketch", async ({
	page,
	context,
}) => {
	await context.grantPermissions(["clipboard-read", "clipboard-write"]);
	await open(page);
	await expect(section(page)).toHaveCount(0);
	await newVariant(page, "As it is");
	await expect(figures(page).getByRole("columnheader").getByRole("button")).toHaveText([
		"Base",
		"As it is",
	]);
	await newVariant(page, "Wide last window");
	await lastWindow(page).fill("2100");
	const one = "Bench, one port at a time";
	await expect.poll(async () => (await row(page, one)).length).toBe(3);
	const [base, same, wide] = await row(page, one);
	await expect.poll(async () => Number((await row(page, one))[2])).toBeLessThan(Number(base));
	expect(same).toBe(base);
	expect(wide).not.toBe("");
	await expect(page.locator(".sketch .base").first()).toBeVisible();

	await section(page).getByLabel("Differences from the base").check();
	await expect
		.poll(async () => (await row(page, one)).slice(1))
		.toEqual(["±0.00", expect.stringMatching(/^−/)]);
	await section(page).getByRole("button", { name: "Copy the comparison" }).click();
	await expect(section(page).getByText("Copied, with its headings.")).toBeVisible();
	const copied = await page.evaluate(() => navigator.clipboard.readText());
	expect(
		copied
			.split("\n")[0]
			?.split("\t")
			.slice(1)
			.map((text) => text.trim()),
	).toEqual(["Base", "As it is", "Wide last window"]);

	const [file] = await Promise.all([
		page.waitForEvent("download"),
		section(page).getByRole("button", { name: "Save the comparison as CSV" }).click(),
	]);
	expect(file.suggestedFilename()).toMatch(/versions\.csv$/);
	const [head, ...lines] = (await textOf(file)).replace("\ufeff", "").split("\r\n");
	expect(head).toBe(",Base,As it is,Wide last window");
	expect(lines.find((line) => line.includes(one))).toMatch(/one port at a time",[\d.]+,0\.00,-/);
	const [drawing] = await Promise.all([
		page.waitForEvent("download"),
		section(page).getByRole("button", { name: "Save SVG of the comparison" }).click(),
	]);
	expect(await textOf(drawing)).toContain("Wide last window");

	await section(page).getByText("Pressure budget of").click();
	const budget = section(page).getByRole("table", { name: /Stagnation pressure lost/ });
	await expect(budget.getByRole("row").last()).toContainText("Whole fall to the port");

	await section(page).getByRole("button", { name: "Base" }).first().click();
	await expect(lastWindow(page)).toHaveValue("900");
	await expect(page.locator(".sketch .base")).toHaveCount(0);
});

test("a version with an error says so and leaves the others their figures", async ({ page }) => {
	await open(page);
	await newVariant(page, "Broken");
	await expect(figures(page).getByRole("columnheader").getByRole("button")).toHaveText([
		"Base",
		"Broken",
	]);
	await nodeCell(page, "window 1, from node").fill("nowhere");
	await page.getByRole("button", { name: "Duplicate" }).first().waitFor();
	await page
		.getByRole("group", { name: "Version on the sheet" })
		.getByRole("radio", { name: "Base", exact: true })
		.check();
	await expect(section(page).getByText("has an error")).toContainText("no node is called nowhere");
	await expect
		.poll(async () => Number((await row(page, "Bench, one port at a time"))[0]))
		.toBeGreaterThan(1);
});

test("how sure it is: too close to tell for the same, told for a cut, stopped and drawn again", async ({
	page,
}) => {
	await open(page);
	await newVariant(page, "As it is");
	await newVariant(page, "Wide last window");
	await lastWindow(page).fill("2100");
	await section(page).getByText("How sure it is").click();
	const chances = section(page).getByRole("table", { name: /Probability/ });
	const says = section(page).locator(".doubt .says");
	await expect(says).toContainText(
		"Base and As it is are too close to tell: Base has the smaller spread in 50 %",
		// Hundreds of networks are solved before it is told, on a machine that other tests use too.
		{ timeout: 30_000 },
	);
	await chances.getByRole("button", { name: "Wide last window more even than Base" }).click();
	await expect(says).toContainText("Wide last window is more even than Base: in > 99 %");
	await expect(section(page).getByText("2000 possible truths, running")).toBeVisible({
		timeout: 30_000,
	});
	await expect(section(page).getByText("If a law were off by the same everywhere")).toBeVisible();

	// Stop ends it within a part; what has been told stays.
	await section(page).getByLabel("Confidence asked for").selectOption({ label: "99 %" });
	await section(page).getByRole("button", { name: "Stop" }).click();
	await expect(section(page).getByRole("progressbar")).toHaveCount(0);
	const told = await section(page)
		.getByText(/possible truths, running/)
		.textContent();
	await page.waitForTimeout(600);
	expect(
		await section(page)
			.getByText(/possible truths, running/)
			.textContent(),
	).toBe(told);
	await section(page).getByRole("button", { name: "Draw again" }).click();
	await expect(section(page).getByRole("progressbar")).toBeVisible();

	// An edit makes it of an earlier form until it has been drawn anew.
	await windowArea(page).fill("2300");
	await expect(section(page).getByText("Of an earlier form of the versions")).toBeVisible();
	await expect(section(page).getByText(/^\d+ possible truths, running/)).toBeVisible({
		timeout: 20_000,
	});
});

for (const colorScheme of ["light", "dark"] as const) {
	test(`everybody can use the comparison, ${colorScheme}, and on a phone it scrolls in its own box`, async ({
		page,
	}) => {
		await page.emulateMedia({ colorScheme });
		await open(page);
		await newVariant(page, "Wide last window");
		await lastWindow(page).fill("2100");
		await section(page).getByText("How sure it is").click();
		await expect(section(page).getByRole("table", { name: /Probability/ })).toBeVisible({
			timeout: 20_000,
		});
		await section(page).getByText("Band of each cylinder").click();
		await section(page).getByText("Pressure budget of").click();
		expect(await violations(page, ".side-by-side")).toEqual([]);
		await page.setViewportSize({ width: 360, height: 740 });
		const wider = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
		expect(wider).toBe(false);
	});
}
