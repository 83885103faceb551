import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { cell, deviations, nodeCell, open, saved, windowArea } from "../sheet";

interface Saved {
	readonly settings: { readonly units?: Record<string, string> };
	readonly network: {
		readonly nodes: { readonly id: string; readonly kind: string }[];
		readonly branches: {
			readonly id: string;
			readonly from: string;
			readonly losses: { readonly kind: string; readonly area?: number }[];
		}[];
	};
}

async function study(page: Page): Promise<Saved> {
	return (await saved(page)) as unknown as Saved;
}

/** The names of the branches as shown; the focus stays where it is. */
function ids(page: Page): Promise<string[]> {
	return values(page, /^Branch \d+, name$/);
}

/** The same once all rows of the example are there: those below the first come bit by bit. */
async function allIds(page: Page): Promise<string[]> {
	await expect.poll(async () => (await ids(page)).length).toBe(26);
	return ids(page);
}

function values(page: Page, name: RegExp): Promise<string[]> {
	const cells = page.getByRole("textbox", { name });
	return cells.evaluateAll((all) => all.map((each) => (each as HTMLInputElement).value));
}

/** The areas of the openings from the lid into the pockets, in the study's order. */
function windows(page: Page): Promise<string[]> {
	return values(page, /^window \d, loss 1, opening in a wall, area, mm²$/);
}

/** Puts a text where the keys paste it from, as a spreadsheet does. */
async function onClipboard(page: Page, text: string) {
	await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
	await page.evaluate((given) => navigator.clipboard.writeText(given), text);
}

function clipboard(page: Page): Promise<string> {
	return page.evaluate(() => navigator.clipboard.readText());
}

function number(page: Page, row: string, loss?: number) {
	const place = page.locator(`[data-row="${row}"] .place`);
	return loss === undefined ? place.first() : place.nth(loss);
}

function marked(page: Page) {
	return page.locator('.branches [aria-selected="true"]');
}

test("a cell is selected or edited: typing replaces, F2 edits, Escape takes back", async ({
	page,
}) => {
	await open(page);
	const name = cell(page, "Branch 3, name");
	await name.focus();
	await page.keyboard.type("w1");
	await expect(name).toHaveValue("w1");
	await page.keyboard.press("Escape");
	await expect(name).toHaveValue("window 1");
	await page.keyboard.press("F2");
	await page.keyboard.press("ArrowLeft");
	await page.keyboard.type("0");
	await expect(name).toHaveValue("window 01");
	await page.keyboard.press("Escape");
	await expect(name).toHaveValue("window 1");
	// What is typed after an undo replaces the whole again.
	await page.keyboard.type("w1");
	await page.keyboard.press("Control+z");
	await expect(name).toHaveValue("window 1");
	// An arrow leaves what has been typed over, and keeps it.
	await page.keyboard.type("w2");
	await page.keyboard.press("ArrowRight");
	await expect(name).toHaveValue("w2");
	await expect(nodeCell(page, "w2, from node")).toBeFocused();
	await page.keyboard.press("ArrowLeft");
	await name.dblclick();
	await page.keyboard.press("End");
	await page.keyboard.type("!");
	await expect(name).toHaveValue("w2!");
});

test("the arrows pass over a list without changing it, and Enter and Tab go on", async ({
	page,
}) => {
	await open(page);
	const kind = page.getByRole("combobox", { name: "window 1, loss 1, kind" });
	await kind.focus();
	await page.keyboard.press("ArrowRight");
	await expect(windowArea(page)).toBeFocused();
	await page.keyboard.press("ArrowLeft");
	await page.keyboard.press("ArrowDown");
	await expect(cell(page, "Branch 4, name")).toBeFocused();
	await expect(kind).toHaveValue("opening");
	await windowArea(page).focus();
	await page.keyboard.type("2000");
	await page.keyboard.press("Tab");
	await expect(
		cell(page, "window 1, loss 1, opening in a wall, discharge coefficient"),
	).toBeFocused();
	await page.keyboard.press("Home");
	await expect(kind).toBeFocused();
	await page.keyboard.press("Control+Home");
	await expect(cell(page, "Branch 1, name")).toBeFocused();
});

test("a selection goes down the losses of one kind; it is filled, cleared, and taken back at once", async ({
	page,
}) => {
	await open(page);
	const before = await windows(page);
	await windowArea(page).focus();
	for (let step = 0; step < 3; step += 1) await page.keyboard.press("Shift+ArrowDown");
	await expect(marked(page)).toHaveCount(4);
	await page.keyboard.press("Control+d");
	await expect
		.poll(() => windows(page))
		.toEqual(["2100", "2100", "2100", "2100", ...before.slice(4)]);
	await page.keyboard.press("Control+z");
	await expect.poll(() => windows(page)).toEqual(before);
	await page.keyboard.press("Delete");
	await expect(page.getByText("A value is needed.")).toHaveCount(4);
	await page.keyboard.press("Control+z");
	await expect(page.getByText("A value is needed.")).toHaveCount(0);
	await expect.poll(() => windows(page)).toEqual(before);
});

test("the pointer selects cells by dragging and with Shift, rows by their numbers", async ({
	page,
}) => {
	await open(page);
	const to = nodeCell(page, "core, to node");
	await nodeCell(page, "neck, from node").hover();
	await page.mouse.down();
	await to.hover();
	await page.mouse.up();
	await expect(marked(page)).toHaveCount(4);
	await nodeCell(page, "neck, from node").click();
	await expect(marked(page)).toHaveCount(1);
	await to.click({ modifiers: ["Shift"] });
	await expect(marked(page)).toHaveCount(4);
	await number(page, "window 1").click();
	await number(page, "runner 1").click({ modifiers: ["Shift"] });
	// Two branches of three cells in sight, and their losses: a kind and its fields each.
	await expect(marked(page)).toHaveCount(6 + 5 + 3 + 5 + 6);
});

test("copied cells are tab-separated text, and a spreadsheet's block is pasted in one edit", async ({
	page,
}) => {
	await open(page);
	const before = await deviations(page);
	await windowArea(page).focus();
	await page.keyboard.press("Shift+ArrowDown");
	await page.keyboard.press("Shift+ArrowRight");
	await onClipboard(page, "");
	await page.keyboard.press("Control+c");
	await expect.poll(() => clipboard(page)).toBe("2100\t0.7\n1500\t0.7");
	await onClipboard(page, "1000\t0.65\r\n2 in²\t0,6\r\nwide\t0.5\r\n");
	await windowArea(page).focus();
	await page.keyboard.press("Control+v");
	await expect
		.poll(async () => (await windows(page)).slice(0, 3))
		.toEqual(["1000", "1290.32", "wide"]);
	await expect(page.getByText("Not an area.")).toBeVisible();
	await page.keyboard.press("Control+z");
	await expect(windowArea(page)).toHaveValue("2100");
	await expect.poll(() => deviations(page)).toEqual(before);
	await expect(page.getByText("Not an area.")).toHaveCount(0);
});

test("what a browser hands to the selected text instead of the focus is pasted at the focus", async ({
	page,
}) => {
	await open(page);
	const all = await allIds(page);
	// As Firefox does it for a button.
	await page.getByRole("button", { name: "+ branch" }).focus();
	await page.evaluate(() => {
		const clipboardData = new DataTransfer();
		clipboardData.setData("text/plain", "spare\tlid\tpocket 1\n");
		const pasted = { clipboardData, bubbles: true, cancelable: true };
		document.querySelector(".sentence")?.dispatchEvent(new ClipboardEvent("paste", pasted));
	});
	await expect.poll(() => ids(page)).toEqual([...all, "spare"]);
});

test("rows are copied and pasted as new rows, cut, and brought by a spreadsheet", async ({
	page,
}) => {
	await open(page);
	const all = await allIds(page);
	await onClipboard(page, "");
	await number(page, "runner 1").click();
	await page.keyboard.press("Control+c");
	await expect
		.poll(() => clipboard(page))
		.toContain("runner 1\tpocket 1\tport 1\n\trounded entry\t1664\t6\n");
	await page.keyboard.press("Control+v");
	await expect.poll(() => ids(page)).toEqual(all.toSpliced(4, 0, "runner 9"));
	await page.keyboard.press("Control+x");
	await expect.poll(() => ids(page)).toEqual(all);
	await page.keyboard.press("Control+z");
	const { branches } = (await study(page)).network;
	expect(branches[4]?.losses).toEqual(branches[3]?.losses);
	await page.keyboard.press("Control+z");
	await onClipboard(
		page,
		"new 1\tlid\tpocket 1\n\topening in a wall\t300\t0.6\nnew 2\tlid\tpocket 2\n",
	);
	await page.getByRole("button", { name: "+ branch" }).focus();
	await page.keyboard.press("Control+v");
	const brought = await study(page);
	expect(brought.network.branches.slice(-2)).toMatchObject([
		{ id: "new 1", from: "lid", losses: [{ kind: "opening", area: 0.0003 }] },
		{ id: "new 2", losses: [] },
	]);
	await page.keyboard.press("Control+z");
	await expect.poll(() => ids(page)).toEqual(all);
	await onClipboard(page, "vent\tplenum\nend\tport\t3\n");
	await page.getByRole("button", { name: "+ node" }).focus();
	await page.keyboard.press("Control+v");
	expect((await study(page)).network.nodes.slice(-2)).toEqual([
		{ id: "vent", kind: "plenum" },
		{ id: "end", kind: "port", cylinder: "3" },
	]);
});

test("rows are inserted, duplicated, moved and removed, by keys and by buttons", async ({
	page,
}) => {
	await open(page);
	const all = await allIds(page);
	await cell(page, "Branch 3, name").focus();
	await page.keyboard.press("Control+Enter");
	await expect(cell(page, "Branch 4, name")).toBeFocused();
	await expect.poll(() => ids(page)).toEqual(all.toSpliced(3, 0, "b1"));
	await page.keyboard.press("Control+Delete");
	await expect.poll(() => ids(page)).toEqual(all);
	const rows = page.getByRole("group", { name: "Selected rows of branches" });
	await cell(page, "Branch 3, name").focus();
	await rows.getByRole("button", { name: "Duplicate" }).click();
	await expect.poll(() => ids(page)).toEqual(all.toSpliced(3, 0, "window 9"));
	await page.keyboard.press("Control+z");
	await cell(page, "Branch 3, name").focus();
	await page.keyboard.press("Alt+Shift+ArrowDown");
	await expect.poll(() => ids(page)).toEqual(all.toSpliced(2, 1).toSpliced(3, 0, "window 1"));
	await rows.getByRole("button", { name: "Move the selected rows up" }).click();
	await expect.poll(() => ids(page)).toEqual(all);
	// A loss moves along its branch.
	await page.getByRole("combobox", { name: "neck, loss 2, kind" }).focus();
	await page.keyboard.press("Alt+Shift+ArrowUp");
	await expect(page.getByRole("combobox", { name: "neck, loss 1, kind" })).toHaveValue("duct");
});

test("whole branches are filled loss by loss, and keep their names and ends", async ({ page }) => {
	await open(page);
	await cell(page, "window 1, loss 1, opening in a wall, discharge coefficient").fill("0.62");
	await cell(page, "Branch 3, name").focus();
	await page.keyboard.press("Shift+Space");
	await page.keyboard.press("Shift+ArrowDown");
	await page.keyboard.press("Shift+ArrowDown");
	await page.keyboard.press("Control+d");
	await expect
		.poll(async () => (await windows(page)).slice(0, 3))
		.toEqual(["2100", "2100", "1500"]);
	await expect(
		cell(page, "window 3, loss 1, opening in a wall, discharge coefficient"),
	).toHaveValue("0.62");
	await expect.poll(() => ids(page)).toContain("window 3");
});

test("a comma that a block does not explain is asked about, with both readings, and nothing is lost", async ({
	page,
}) => {
	await open(page);
	await onClipboard(page, "1,234\n1,500\n");
	await windowArea(page).focus();
	await page.keyboard.press("Control+v");
	const question = page.getByRole("alert");
	await expect(question).toContainText("“1,234” and 1 more can be read in two ways");
	await question.getByRole("button", { name: "Leave as text" }).click();
	await expect.poll(async () => (await windows(page)).slice(0, 2)).toEqual(["1,234", "1,500"]);
	await expect(page.getByText("“1,234” can mean 1.234 mm² or 1234 mm².")).toBeVisible();
	await page.keyboard.press("Control+z");
	await windowArea(page).focus();
	await page.keyboard.press("Control+v");
	await question.getByRole("button", { name: "Commas part thousands: 1234" }).click();
	await expect.poll(async () => (await windows(page)).slice(0, 2)).toEqual(["1234", "1500"]);
	// The paste and its answer are one edit.
	await page.keyboard.press("Control+z");
	await expect.poll(async () => (await windows(page)).slice(0, 2)).toEqual(["2100", "1500"]);
	await onClipboard(page, "1,234\n2,5\n");
	await windowArea(page).focus();
	await page.keyboard.press("Control+v");
	await expect(question).toHaveCount(0);
	await expect.poll(async () => (await windows(page)).slice(0, 2)).toEqual(["1.234", "2.5"]);
});

test("a typed comma that can be read in two ways keeps its text until one is chosen", async ({
	page,
}) => {
	await open(page);
	await windowArea(page).fill("1,234");
	await expect(page.getByText("“1,234” can mean 1.234 mm² or 1234 mm².")).toBeVisible();
	await expect(page.locator(".standing")).toContainText("Last good study");
	await page.getByRole("button", { name: "1234 mm²", exact: true }).click();
	await expect(windowArea(page)).toHaveValue("1234");
	await expect(page.locator("#errors")).toHaveCount(0);
	await page.keyboard.press("Control+z");
	await expect(windowArea(page)).toHaveValue("1,234");
});

test("sorting and filtering leave the study alone, and say what is hidden", async ({ page }) => {
	await open(page);
	const before = await study(page);
	await page.getByLabel("Sort by").first().selectOption("mach");
	await page.getByRole("button", { name: "rising" }).click();
	const machs = await page
		.locator(".branch:not(.headings) .figure:nth-last-child(3)")
		.evaluateAll((all) => all.map((each) => Number(each.lastChild?.textContent?.trim())));
	expect(machs).toEqual(machs.toSorted((left, right) => right - left));
	await page.getByLabel("Show only").first().fill("runner");
	await expect(page.locator(".sighted")).toContainText("8 of 26 branches shown, 18 hidden");
	await expect(page.locator(".branches [data-row]")).toHaveCount(8);
	expect(await study(page)).toEqual(before);
	// A row that moves while it is edited would be lost to the eye.
	await cell(page, "Branch 4, name").fill("pipe");
	await expect(cell(page, "Branch 4, name")).toBeVisible();
	await page.keyboard.press("Alt+Shift+ArrowDown");
	await page.getByRole("button", { name: "Show all in the study's order" }).click();
	await expect(page.locator(".branches [data-row]")).toHaveCount(26);
});

test("a hidden row that is wrong is told, and can be reached", async ({ page }) => {
	await open(page);
	await windowArea(page).fill("-5");
	await cell(page, "window 3, loss 1, opening in a wall, area, mm²").fill("wide");
	await expect(page.locator("#errors li")).toHaveCount(2);
	await page.getByLabel("Show only").first().fill("runner");
	await expect(page.locator(".sighted")).toContainText("2 of them to be put right");
	await expect(windowArea(page)).toHaveCount(0);
	await page.locator("#errors").getByRole("link", { name: "window 1, loss 1" }).click();
	await expect(windowArea(page)).toBeFocused();
	await page.locator("#errors").getByRole("link", { name: "wide" }).click();
	await expect(cell(page, "window 3, loss 1, opening in a wall, area, mm²")).toBeFocused();
	await expect(page.locator(".sighted")).toContainText("10 of 26 branches shown");
});

test("numbers are typed with units and as sums, pressures gauge or absolute", async ({ page }) => {
	await open(page);
	const area = windowArea(page);
	for (const [typed, shown] of [
		["d 1.75 in", "1551.79"],
		["44 x 60 mm", "2640"],
		["3*12.5", "37.5"],
		["12+3/4", "12.75"],
		["21 cm2", "2100"],
	] as const) {
		await area.fill(typed);
		await area.press("Tab");
		await expect(area).toHaveValue(new RegExp(`^${shown}`));
	}
	const pressure = cell(page, "blower pressure, kPa abs");
	await pressure.fill("10 psi gauge");
	await pressure.press("Tab");
	await expect(pressure).toHaveValue("170.2726");
	await pressure.fill("10 psi");
	await expect(page.getByText("Say which: “psi gauge” or “psi abs”.")).toBeVisible();
	await page.keyboard.press("Escape");
	await page.getByLabel("depression, kPa").fill("25 inH2O");
	await expect(page.locator("#errors")).toHaveCount(0);
	expect(await saved(page)).toHaveProperty("settings.bench.depression", 6221);
});

test("pressures are shown gauge against the room pressure, which stays absolute", async ({
	page,
}) => {
	await open(page);
	await page.locator("summary", { hasText: "Units" }).click();
	await page.getByLabel("Pressure", { exact: true }).selectOption("psi gauge");
	await page.getByLabel("Mass flow").selectOption("cfm");
	await expect(page.locator("details[open]")).toContainText("room pressure, 101.325 kPa abs");
	await page.keyboard.press("Escape");
	await expect(cell(page, "blower pressure, psi gauge")).toHaveValue("12.28107");
	await expect(page.getByLabel("room pressure, psi abs")).toHaveValue("14.69595");
	await expect(page.getByRole("columnheader", { name: "Flow, cfm at 20 °C" })).toBeVisible();
	await expect(page.locator("section", { has: page.locator("#branches-title") })).toContainText(
		"1 cfm is taken at 101.325 kPa abs and 20 °C",
	);
	const { settings } = await study(page);
	expect(settings.units).toEqual({ massFlow: "cfm", pressure: "psi gauge" });
});

for (const scheme of ["light", "dark"] as const) {
	test(`everybody can use a table with a selection, a filter and a question, ${scheme}`, async ({
		page,
	}) => {
		await page.emulateMedia({ colorScheme: scheme });
		await open(page);
		await page.getByLabel("Show only").first().fill("window 1");
		await onClipboard(page, "1,234\t0.6\t\t\t2\t7\n");
		await windowArea(page).focus();
		await page.keyboard.press("Control+v");
		await expect(page.getByRole("alert")).toContainText("There was no cell for: “7”.");
		await number(page, "window 1").click();
		await page.locator("summary", { hasText: "Keys in the tables" }).click();
		const section = 'section:has(> [id="branches-title"])';
		const found = await new AxeBuilder({ page })
			.withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"])
			.include(section)
			.analyze();
		expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
	});
}

test("when all rows are removed, the keys go on behind the table", async ({ page }) => {
	await open(page);
	await cell(page, "Branch 1, name").focus();
	await page.keyboard.press("Control+a");
	await page.keyboard.press("Control+Delete");
	await expect(page.locator(".branches [data-row]")).toHaveCount(0);
	await expect(page.getByRole("button", { name: "+ branch" })).toBeFocused();
	await page.keyboard.press("Control+z");
	await expect(page.locator(".branches [data-row]")).toHaveCount(26);
});

test("the keyboard gets past a table, and a filter's notice is printed", async ({ page }) => {
	await open(page);
	await page.getByRole("button", { name: "Past the table of branches" }).focus();
	await page.keyboard.press("Enter");
	await expect(page.getByRole("button", { name: "+ branch" })).toBeFocused();
	await page.getByLabel("Show only").first().fill("runner");
	await page.emulateMedia({ media: "print" });
	await expect(page.locator(".sighted")).toBeVisible();
	await expect(page.locator("button:visible")).toHaveCount(0);
});
