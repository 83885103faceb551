import { readFileSync } from "node:fs";
import { expect, type Locator, type Page, test } from "@playwright/test";
import { nodeCell, open, openText, saved, windowArea } from "./sheet";

function part(page: Page, id: string): Locator {
	return page.locator(`.drawing [data-part="${id}"]`);
}

function row(page: Page, id: string): Locator {
	return page.locator(`[data-row="${id}"]`);
}

async function drawn(page: Page) {
	await open(page);
	await expect(part(page, "window 7")).toBeAttached();
}

/** Where every part of the drawing stands. */
function places(page: Page): Promise<string[]> {
	return page
		.locator(".drawing :is(.edge, .body)")
		.evaluateAll((all) =>
			all.map((each) =>
				["d", "x", "y", "cx", "cy", "r", "width"].map((name) => each.getAttribute(name)).join(),
			),
		);
}

interface Networked {
	network: { nodes: object[]; branches: { id: string; from: string }[] };
}

/** Opens a network too deep for an engine's shape: a log behind a chain of chambers. */
async function openChain(page: Page) {
	await page.locator("summary", { hasText: "Examples" }).click();
	await page.getByRole("button", { name: "Inline log" }).click();
	await expect(page.locator(".title-block .large")).toContainText(/inline/i);
	const study = (await saved(page)) as unknown as Networked;
	const { nodes, branches } = study.network;
	const first = branches.find(({ id }) => id === "run 1");
	if (!first) throw new Error("the example has no run 1");
	for (let box = 1; box <= 9; box += 1) {
		nodes.push({ id: `box ${box}`, kind: "plenum" });
		const losses = [{ kind: "duct", area: 0.004, length: 0.1, roughness: 0.0001 }];
		const from = box === 1 ? "blower" : `box ${box - 1}`;
		branches.push({ id: `pipe ${box}`, from, to: `box ${box}`, losses } as never);
	}
	first.from = "box 9";
	await openText(page, JSON.stringify({ ...study, name: "Chain" }));
}

test("the engine is drawn from above: ports by bank, deviations at them by sign, figure and word", async ({
	page,
}) => {
	await drawn(page);
	await expect(page.getByRole("heading", { name: "Engine from above" })).toBeVisible();
	await expect(page.locator(".drawing .node.port")).toHaveCount(8);
	await expect(page.locator(".drawing .way")).toHaveCount(26);
	const box = async (id: string) => {
		const found = await part(page, id).locator(".body").boundingBox();
		return found ?? { x: 0, y: 0 };
	};
	expect((await box("port 1")).y).toBeGreaterThan((await box("port 2")).y + 50);
	expect((await box("port 1")).x).toBeLessThan((await box("port 3")).x);
	const shares = page.locator("table.shares tbody tr");
	for (const [state, shape, word] of [
		["starved", "▼", "starved"],
		["overfed", "▲", "overfed"],
		["tooCloseToTell", "≈", "too close"],
	] as const) {
		const gauges = page.locator(`.drawing .gauge.${state}`);
		await expect(gauges).toHaveCount(await shares.and(page.locator(`.${state}`)).count());
		await expect(gauges.first()).toContainText(shape);
		await expect(gauges.first()).toContainText(word);
		await expect(gauges.first()).toContainText("%");
	}
	await expect(page.locator(".sketch .key")).toContainText(/widest \d+\.\d+ g\/s/);
	await expect(page.locator(".sketch .key")).toContainText(/darkest \d+\.\d+ kPa/);
});

test("air that goes against its branch has another arrowhead, and the caption says so", async ({
	page,
}) => {
	await drawn(page);
	const against = page.locator(".drawing .way:has(.head.against)").first();
	await expect(against).toBeAttached();
	await against.locator(".hit").click({ force: true });
	await expect(page.locator(".looked-at")).toContainText("against its own direction");
	await part(page, "core").locator(".hit").click({ force: true });
	await expect(page.locator(".looked-at")).toContainText("upper to lid");
	await expect(page.locator(".looked-at")).not.toContainText("against its own direction");
});

test("only widths and darkness change while one types, and nothing moves", async ({ page }) => {
	await drawn(page);
	const before = await places(page);
	const look = () => part(page, "window 1").getAttribute("style");
	const was = await look();
	await windowArea(page).fill("900");
	await expect.poll(look).not.toBe(was);
	expect(await places(page)).toEqual(before);
	await page.getByRole("radio", { name: "Bench, all ports open" }).check();
	expect(await places(page)).toEqual(before);
});

test("a choked way says so", async ({ page }) => {
	await drawn(page);
	await page.getByRole("radio", { name: "Bench, all ports open" }).check();
	await page.getByLabel("depression, kPa").fill("70");
	await windowArea(page).fill("60");
	await expect(part(page, "window 1").locator(".remark")).toHaveText("choked");
});

test("a refused draw is drawn without flow and names the ways to look at", async ({ page }) => {
	await drawn(page);
	await page.getByRole("textbox", { name: /^neck, loss 1, .* area/ }).fill("500");
	await page.getByRole("textbox", { name: /^neck, loss 2, .* area/ }).fill("500");
	await expect(page.locator(".drawing .remark").first()).toContainText(/too small|look here/);
	await expect(page.locator(".drawing .head")).toHaveCount(0);
	await expect(page.locator(".sketch .key")).toContainText("no flow to draw");
	await expect(page.getByText("There is no budget without a solved draw.")).toBeVisible();
	await expect(page.getByText("There is no gap without a solved draw.")).toBeVisible();
});

test("a click on a way marks its row and brings it into view, a click on a port shows its budget", async ({
	page,
}) => {
	await page.setViewportSize({ width: 1360, height: 900 });
	await drawn(page);
	await part(page, "cross window 7-8").locator(".hit").click({ force: true });
	await expect(part(page, "cross window 7-8")).toHaveAttribute("aria-pressed", "true");
	await expect(row(page, "cross window 7-8")).toHaveAttribute("aria-current", "true");
	await expect(row(page, "cross window 7-8")).toBeInViewport();
	await expect(page.locator("[data-row][aria-current]")).toHaveCount(1);
	await part(page, "port 4").click();
	await expect(page.locator("table.budget caption")).toContainText("port 4");
	await expect(row(page, "port 4")).toHaveAttribute("aria-current", "true");
	await expect(row(page, "port 4")).toBeInViewport();
	await expect(page.locator(".looked-at")).toContainText("kPa abs");
});

test("a row that gets the focus is marked in the sketch, a loss at its place on the way", async ({
	page,
}) => {
	await drawn(page);
	await nodeCell(page, "neck, from node").focus();
	await expect(part(page, "neck")).toHaveAttribute("aria-pressed", "true");
	await expect(part(page, "neck").locator(".at")).toHaveCount(0);
	await page.getByRole("combobox", { name: "runner 7, loss 3, kind" }).focus();
	await expect(part(page, "runner 7")).toHaveAttribute("aria-pressed", "true");
	await expect(part(page, "neck")).toHaveAttribute("aria-pressed", "false");
	await expect(part(page, "runner 7").locator(".at")).toHaveCount(1);
	await page.getByRole("combobox", { name: "lid, kind" }).focus();
	await expect(part(page, "lid")).toHaveAttribute("aria-pressed", "true");
});

test("a step of the stair marks its loss in table and sketch", async ({ page }) => {
	await page.setViewportSize({ width: 1360, height: 900 });
	await drawn(page);
	const steps = page.locator("table.budget tbody tr");
	const place = (await steps.allInnerTexts()).findIndex((text) =>
		text.includes("runner 7, loss 2"),
	);
	await page.locator(`.stair [data-step="${place}"] .number`).click();
	const loss = row(page, "runner 7").locator('[data-loss="1"]');
	await expect(loss).toHaveAttribute("aria-current", "true");
	await expect(loss).toBeInViewport();
	await expect(steps.nth(place)).toHaveAttribute("aria-current", "true");
	await expect(part(page, "runner 7").locator(".at")).toHaveCount(1);
});

test("the keyboard goes from part to part, chooses one, and goes on to its row", async ({
	page,
}) => {
	await drawn(page);
	const stops = page.locator('.drawing [tabindex="0"]');
	await expect(stops).toHaveCount(1);
	await stops.focus();
	await part(page, "port 1").focus();
	await page.keyboard.press("ArrowUp");
	await expect(part(page, "runner 1")).toBeFocused();
	await page.keyboard.press("ArrowUp");
	await expect(part(page, "pocket 1")).toBeFocused();
	await page.keyboard.press("ArrowUp");
	await page.keyboard.press("Enter");
	await expect(part(page, "window 1")).toHaveAttribute("aria-pressed", "true");
	await expect(part(page, "window 1")).toBeFocused();
	await expect(part(page, "window 1")).toHaveAttribute("tabindex", "0");
	await expect(row(page, "window 1")).toHaveAttribute("aria-current", "true");
	await page.keyboard.press("Enter");
	await expect(row(page, "window 1").locator("input").first()).toBeFocused();
});

test("another numbering is one edit of the cylinders' banks, and can be undone", async ({
	page,
}) => {
	await drawn(page);
	const before = await places(page);
	const choice = page.getByLabel("Numbering");
	await expect(choice).toHaveValue("oddLeft");
	await choice.selectOption("firstHalfLeft");
	const banks = (study: Record<string, unknown>) =>
		(study.engine as { cylinders: { id: string; bank: string }[] }).cylinders.map(
			({ id, bank }) => `${id} ${bank}`,
		);
	expect(banks(await saved(page)).slice(3, 5)).toEqual(["4 left", "5 right"]);
	await expect.poll(() => places(page)).not.toEqual(before);
	const y = async (id: string) => (await part(page, id).boundingBox())?.y ?? 0;
	expect(await y("port 4")).toBeGreaterThan((await y("port 5")) + 50);
	await page.getByRole("button", { name: "Undo" }).click();
	await expect(choice).toHaveValue("oddLeft");
	expect(await places(page)).toEqual(before);
	await choice.selectOption("rearToFront");
	await expect(page.locator(".drawing .note")).toHaveText(["◂ front"]);
	expect((await part(page, "port 8").boundingBox())?.x).toBeLessThan(
		(await part(page, "port 1").boundingBox())?.x ?? 0,
	);
});

test("a network that has no engine's shape is drawn in layers, and says why", async ({ page }) => {
	await open(page);
	await openChain(page);
	await expect(page.getByRole("heading", { name: "Network in layers" })).toBeVisible();
	await expect(page.getByText(/^Drawn in layers, because some nodes are more than/)).toBeVisible();
	await expect(part(page, "box 5")).toBeVisible();
	await expect(page.locator(".drawing .gauge")).toHaveCount(4);
	await part(page, "pipe 5").locator(".hit").click({ force: true });
	await expect(row(page, "pipe 5")).toHaveAttribute("aria-current", "true");
	const from = (await part(page, "blower").boundingBox())?.y ?? 0;
	expect((await part(page, "box 9").boundingBox())?.y).toBeGreaterThan(from);
});

test("the reader can have an engine in layers too, and larger", async ({ page }) => {
	await drawn(page);
	await page.getByLabel("Drawing", { exact: true }).selectOption("layers");
	await expect(page.getByRole("heading", { name: "Network in layers" })).toBeVisible();
	await expect(part(page, "lid")).toBeVisible();
	await page.getByLabel("Drawing", { exact: true }).selectOption("engine");
	const names = page.locator(".drawing .way-name");
	const few = await names.count();
	await page.getByLabel("Size").selectOption({ label: "3 times" });
	await expect.poll(() => names.count()).toBeGreaterThan(few);
	const wide = await page.evaluate(
		() => document.documentElement.scrollWidth <= document.documentElement.clientWidth,
	);
	expect(wide).toBe(true);
});

test("the drawing is saved as an SVG file that stands alone", async ({ page }) => {
	await page.emulateMedia({ colorScheme: "dark" });
	await drawn(page);
	const [download] = await Promise.all([
		page.waitForEvent("download"),
		page.getByRole("button", { name: "Save SVG of the sketch" }).click(),
	]);
	expect(download.suggestedFilename()).toBe("V8-lid-sketch.svg");
	const text = readFileSync(await download.path(), "utf8");
	for (const foreign of ["var(", "<script", "class=", "style=", "href", "url(", "tabindex", "NaN"])
		expect(text).not.toContain(foreign);
	const colours = new Set([...text.matchAll(/(?:fill|stroke)="([^"]*)"/g)].map(([, one]) => one));
	for (const colour of colours) expect(colour).toMatch(/^(none|#[0-9a-f]{6})$/);
	// The paper of the light sheet, though the page is dark.
	expect(colours).toContain("#f8f5ec");
	// A page without a policy may read it as a document.
	const reader = await page.context().newPage();
	const found = await reader.evaluate((svg) => {
		const root = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
		const texts = [...root.querySelectorAll("text")].map((each) => each.textContent);
		return {
			name: root.localName,
			title: root.querySelector(":scope > title")?.textContent ?? "",
			desc: root.querySelector(":scope > desc")?.textContent ?? "",
			font: root.getAttribute("font-family"),
			texts,
		};
	}, text);
	expect(found.name).toBe("svg");
	expect(found.title).toContain("V8 lid");
	expect(found.desc).toContain("8 cylinders");
	expect(found.font).toBe("sans-serif");
	expect(found.texts.some((each) => each?.includes("starved"))).toBe(true);
	expect(found.texts.some((each) => each?.includes("g/s"))).toBe(true);
});
