import { expect, type Locator, type Page, test } from "@playwright/test";
import { violations } from "./axe";
import { cell, open, saved } from "./sheet";

/** Opens the example that holds values from CAD; all of them agree. */
async function openLid(page: Page) {
	await open(page);
	await page.locator("summary", { hasText: "Examples" }).click();
	await page.getByRole("button", { name: "Symmetric lid" }).click();
	await expect(outcome(page)).toHaveText(/^Of 19 values from CAD, 19 agree within 2\s%\.$/);
}

/** The part of the page with the check; its tables are loaded when they are wanted. */
function check(page: Page): Locator {
	return page.getByRole("region", { name: "Check against CAD" });
}

/** The sentence on all comparisons. */
function outcome(page: Page): Locator {
	return check(page).locator(".outcome");
}

/** The row that begins with this name, as it reads. */
function row(page: Page, name: string): Locator {
	return check(page).getByRole("row", { name: new RegExp(`^${name}`) });
}

/** That example with one volume and one section that differ from CAD, and one that is not entered. */
async function spoil(page: Page) {
	await cell(page, "lid CAD volume, cc").fill("2.6 L");
	await cell(page, "upper volume, cc").fill("");
	await cell(page, "port 7 CAD section, mm²").fill("d 48");
	await expect(outcome(page)).toContainText("2 differ by more than 2");
}

test("what differs from CAD is told by word and shape, what cannot be compared says why", async ({
	page,
}) => {
	await openLid(page);
	await spoil(page);
	await expect(row(page, "lid")).toHaveText(/2400\.0\s+2600\.0\s+−7\.69\s+≠\s*differs/);
	await expect(row(page, "upper")).toContainText("no volume entered");
	await expect(row(page, "In all")).toContainText("not all is entered");
	await expect(check(page)).toContainText(
		"In all counts nothing for upper: no volume is entered there.",
	);
	// A round section of 48 mm has 1810 mm².
	await expect(row(page, "port 7")).toHaveText(/1664\s+1810\s+−8\.04\s+≠\s*differs/);
	const study = (await saved(page)) as { network: { nodes: Record<string, unknown>[] } };
	expect(study.network.nodes.find(({ id }) => id === "lid")).toMatchObject({ cadVolume: 0.0026 });
	for (let edit = 0; edit < 3; edit += 1) await page.getByRole("button", { name: "Undo" }).click();
	await expect(outcome(page)).toContainText("19 agree");
});

test("a figure leads to the row that it comes from", async ({ page }) => {
	await openLid(page);
	await row(page, "port 7").getByRole("link", { name: "runner 7, loss 1" }).click();
	await expect(page.getByRole("combobox", { name: "runner 7, loss 1, kind" })).toBeFocused();
	await row(page, "lid").getByRole("link", { name: "lid" }).click();
	await expect(cell(page, "Node 3, name")).toBeFocused();
});

test("without values from CAD the figures come by a button, and the whole is compared", async ({
	page,
}) => {
	await open(page);
	await check(page).getByRole("button", { name: "Add up what is entered" }).click();
	await expect(row(page, "port 7")).toContainText("window 7, loss 1");
	await expect(row(page, "lid")).toHaveText(/–\s+–\s+–\s+–\s*no CAD value/);
	for (const node of ["upper", "lid", ...[1, 2, 3, 4, 5, 6, 7, 8].map((each) => `pocket ${each}`)])
		await cell(page, `${node} volume, cc`).fill("600");
	await expect(check(page)).not.toContainText("no volume is entered");
	// Ten chambers of 600 cc, a neck of 942.5, ducts of 1530.9 and bends of 569.2.
	const whole = page.getByLabel("CAD volume in all, cc");
	await whole.fill("9 L");
	await expect(row(page, "In all")).toHaveText(/9042\.6\s+9000\.0\s+\+0\.47\s+=\s*agrees/);
	await page.getByLabel("differs beyond, %").fill("0.4");
	await expect(row(page, "In all")).toContainText("differs");
	await whole.fill("-5");
	await expect(page.locator("#errors li")).toContainText("CAD volume in all must lie between");
	await whole.fill("");
	await expect(outcome(page)).toHaveText("No value from CAD is typed yet.");
	await expect(whole).toBeFocused();
});

for (const scheme of ["light", "dark"] as const) {
	test(`everybody can use the check, ${scheme}, and on a phone nothing is wider than it`, async ({
		page,
	}) => {
		await page.emulateMedia({ colorScheme: scheme });
		await openLid(page);
		await spoil(page);
		expect(await violations(page, ".check")).toEqual([]);
		await page.setViewportSize({ width: 320, height: 640 });
		const wide = await check(page)
			.locator(".box")
			.evaluateAll((boxes) => boxes.filter((box) => box.scrollWidth > box.clientWidth).length);
		expect(wide).toBe(0);
	});
}

test("on paper the check stands where it was asked for, and only there", async ({ page }) => {
	await open(page);
	await expect(check(page).getByRole("button")).toBeVisible();
	await page.emulateMedia({ media: "print" });
	await expect(page.locator(".check")).toBeHidden();
	// A field that is left empty is not printed by its name alone.
	await expect(page.locator(".nodes .field:visible", { hasText: "cylinder" })).toHaveCount(8);
	await expect(page.locator(".nodes .field:visible", { hasText: "CAD" })).toHaveCount(0);
	await page.emulateMedia({ media: "screen" });
	await openLid(page);
	await page.emulateMedia({ media: "print" });
	await expect(row(page, "port 8")).toBeVisible();
	await expect(page.locator(".nodes .field:visible", { hasText: "CAD section" })).toHaveCount(8);
});
