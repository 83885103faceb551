import { readFileSync } from "node:fs";
import { expect, type Page, test } from "@playwright/test";
import { violations } from "./axe";
import { cell, deviations, nodeCell, open, openText, saved, sentence } from "./sheet";

const BLOWN = readFileSync("../examples/blown_v8/network.json", "utf8");
const TABLE = "\t1\t1.5\t2.5\n3000\t90\t80\t60\n12000\t95\t92\t88";

interface Saved {
	readonly engine: Record<string, unknown> & { readonly fuel?: Record<string, unknown> };
	readonly settings: Record<string, unknown>;
	readonly coolers?: readonly { readonly series?: readonly string[] }[];
	readonly network: {
		readonly nodes: readonly Record<string, unknown>[];
		readonly branches: readonly (Record<string, unknown> & {
			readonly id: string;
			readonly blower?: Record<string, unknown>;
		})[];
	};
}

async function study(page: Page): Promise<Saved> {
	return (await saved(page)) as unknown as Saved;
}

async function openBlown(page: Page) {
	await open(page);
	await openText(page, BLOWN);
	await expect(page.getByRole("heading", { name: "Blower", exact: true })).toBeVisible();
	await expect(sentence(page)).toContainText("Cylinder 7 is starved");
}

/** Waits until the shares are others than these. */
async function changed(page: Page, before: readonly string[]) {
	await expect(page.locator(".standing")).toContainText("of the study as it stands");
	await expect.poll(() => deviations(page), { timeout: 15_000 }).not.toEqual(before);
}

async function paste(page: Page, text: string) {
	await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
	await page.evaluate((given) => navigator.clipboard.writeText(given), text);
	await page.keyboard.press("Control+V");
}

test("a blower is put in, driven and measured by keys alone, and one undo takes it out", async ({
	page,
}) => {
	await open(page);
	const before = await deviations(page);
	const feed = page.getByRole("button", { name: "Feed by a blower instead of “blower”" });
	await feed.focus();
	await page.keyboard.press("Enter");
	const size = page.getByLabel("Displacement a turn, cc");
	// The form is loaded first.
	await expect(size).toBeFocused({ timeout: 20_000 });
	await changed(page, before);
	await expect(page.getByText("To be put right")).toHaveCount(0);
	await page.keyboard.type("3000");
	await page.getByLabel("Its drive is given by").selectOption({ label: "the two pulleys" });
	await expect(cell(page, "drive ratio")).toHaveCount(0);
	await page.getByLabel("Blower pulley, mm").fill("50");
	const { network } = await study(page);
	const { blower } = network.branches.find((each) => each.blower) ?? {};
	expect(blower).toMatchObject({ displacement: 0.003, crankPulley: 0.15, blowerPulley: 0.05 });
	expect(blower).not.toHaveProperty("driveRatio");
	for (let step = 0; step < 4; step += 1) {
		await page.getByRole("button", { name: "Undo" }).click();
	}
	await expect(page.getByRole("heading", { name: "Blower", exact: true })).toHaveCount(0);
	await expect(feed).toBeVisible();
});

test("a table pasted from a spreadsheet changes the answer; what is wrong in it is told", async ({
	page,
}) => {
	await openBlown(page);
	const before = await deviations(page);
	const speed = cell(page, "Volumetric efficiency, row 1, speed, rpm").or(
		cell(page, "volumetric efficiency, row 1, speed, rpm"),
	);
	await speed.focus();
	await paste(page, TABLE);
	await changed(page, before);
	await speed.focus();
	await page.keyboard.press("ArrowDown");
	await expect(cell(page, "volumetric efficiency, row 2, speed, rpm")).toBeFocused();
	await page.keyboard.press("ArrowUp");
	await expect(speed).toBeFocused();
	const blower = (await study(page)).network.branches.find((each) => each.blower)?.blower;
	expect(blower?.volumetricTable).toEqual({
		speeds: [50, 200],
		ratios: [1, 1.5, 2.5],
		values: [0.9, 0.8, 0.6, 0.95, 0.92, 0.88],
	});
	await cell(page, "volumetric efficiency, row 2, speed, rpm").fill("2000");
	const told = page.locator(".faults");
	await expect(told).toContainText("Speed, row 2: 2000 does not come after 3000.");
	await page.keyboard.press("Escape");
	await expect(told).toHaveCount(0);
});

test("the engine's volumetric efficiency becomes a table that says the same until it is filled", async ({
	page,
}) => {
	await openBlown(page);
	const before = await deviations(page);
	await page
		.getByLabel("Volumetric efficiency as")
		.last()
		.selectOption({ label: "a table over speed" });
	const first = cell(page, "volumetric efficiency, row 1, speed, rpm").last();
	await expect(first).toHaveValue("6500");
	expect(await deviations(page)).toEqual(before);
	await first.focus();
	await paste(page, "3000\t70\n6000\t80\n7000\t90");
	await changed(page, before);
	expect((await study(page)).engine).toMatchObject({
		volumetricTable: { values: [0.7, 0.8, 0.9] },
	});
});

test("a source's pressure is found for a boost, or is that of the ambient air", async ({
	page,
}) => {
	await open(page);
	const before = await deviations(page);
	const way = page.getByRole("combobox", { name: "blower, its pressure is" });
	await way.selectOption({ label: "found for a boost" });
	await expect(cell(page, "blower pressure, kPa abs")).toHaveCount(0);
	await cell(page, "blower boost, kPa").fill("120");
	await expect(nodeCell(page, "blower, boost read at")).toHaveValue("lid");
	await changed(page, before);
	expect((await study(page)).network.nodes[0]).toMatchObject({ boost: 120_000, boostNode: "lid" });
	await way.selectOption({ label: "ambient air" });
	await expect(cell(page, "blower boost, kPa")).toHaveCount(0);
	expect((await study(page)).network.nodes[0]).toEqual({
		id: "blower",
		kind: "source",
		ambient: true,
	});
});

test("the coolant takes its passages in another order, and a tick leads round the blower", async ({
	page,
}) => {
	await openBlown(page);
	const before = await deviations(page);
	await page.getByRole("button", { name: "Let the coolant pass core rear earlier" }).click();
	await changed(page, before);
	await cell(page, "Branch 5, name").fill("rear half");
	expect((await study(page)).coolers?.[0]?.series).toEqual(["rear half", "core front"]);
	const tick = page.getByRole("checkbox", { name: "bypass leads round the blower" });
	await tick.uncheck();
	await expect(page.locator("#errors")).toContainText("air can go round this blower");
	await tick.check();
	await expect(page.locator("#errors")).toHaveCount(0);
});

test("fuel, cycle and ambient air stand in the file only where they are typed", async ({
	page,
}) => {
	await open(page);
	await page.getByLabel("Cycle", { exact: true }).selectOption({ label: "two-stroke" });
	await page.getByLabel("Lambda").fill("0.9");
	await page.getByLabel("Altitude, m").fill("1500");
	let now = await study(page);
	expect(now.engine).toMatchObject({ cycle: "twoStroke", fuel: { lambda: 0.9 } });
	expect(now.settings.ambient).toEqual({ altitude: 1500 });
	await page.getByLabel("Cycle", { exact: true }).selectOption({ label: "four-stroke" });
	await page.getByLabel("Lambda").fill("");
	await page.getByLabel("Altitude, m").fill("");
	now = await study(page);
	expect(now.engine).not.toHaveProperty("cycle");
	expect(now.engine).not.toHaveProperty("fuel");
	expect(now.settings).not.toHaveProperty("ambient");
});

for (const colorScheme of ["light", "dark"] as const) {
	test(`the forms are accessible in ${colorScheme}`, async ({ page }) => {
		await page.emulateMedia({ colorScheme });
		await openBlown(page);
		await expect(page.locator(".inset").first()).toBeVisible();
		const parts = [".blowers", ".coolers", "[aria-labelledby=engine-title] .form"];
		expect(await violations(page, ...parts)).toEqual([]);
	});
}
