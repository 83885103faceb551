/** The page when all is not well, or not there yet. */
import { expect, type Page, test } from "@playwright/test";
import { violations } from "./axe";
import { cell, open, openText, saved, sentence, windowArea } from "./sheet";

const VERDICT = [".verdict", 'section[aria-labelledby="shares-title"]'];

function standing(page: Page) {
	return page.locator(".standing");
}

/** Opens the page so that what is asked of the solver from now on waits for as long as `delay` says [ms]. */
async function openSlow(page: Page) {
	await page.addInitScript(() => {
		const Real = window.Worker;
		window.Worker = class extends Real {
			override postMessage(...message: [unknown]) {
				const delay = (window as unknown as { delay?: number }).delay ?? 0;
				if (delay) setTimeout(() => super.postMessage(...message), delay);
				else super.postMessage(...message);
			}
		};
	});
	await openWhole(page);
}

/** Opens the page and waits for the draws out of sight too: the solver has nothing left to do. */
async function openWhole(page: Page) {
	await open(page);
	await expect(page.locator(".draws .awaited")).toHaveCount(0);
}

async function delay(page: Page, time: number) {
	await page.evaluate((delay) => Object.assign(window, { delay }), time);
}

/** Lets the solver fail as it would for want of memory. */
async function fail(page: Page) {
	await page.workers()[0]?.evaluate(() => {
		setTimeout(() => {
			throw new Error("out of memory");
		});
	});
}

async function noMoreSolver(page: Page) {
	await page.route(/worker.*\.js/, (route) => route.abort());
}

/** Takes every node and branch out of the sheet. */
async function empty(page: Page) {
	await open(page);
	await page.locator("summary", { hasText: "Examples" }).click();
	await page.getByRole("button", { name: "Inline log" }).click();
	await expect(page.locator(".title-block .large")).toHaveText(/inline/i);
	for (const name of [/^Remove branch/, /^Remove node/]) {
		const remove = page.getByRole("button", { name });
		while ((await remove.count()) > 0) await remove.first().click();
	}
}

/** The states, each brought about on a page of its own. */
const STATES: readonly (readonly [string, (page: Page) => Promise<void>])[] = [
	[
		"loading",
		async (page) => {
			await page.route(/\.wasm$/, () => {});
			await page.goto("./");
			await expect(sentence(page)).toContainText("Loading the solver");
		},
	],
	[
		"without a solver",
		async (page) => {
			await noMoreSolver(page);
			await page.goto("./");
			await expect(sentence(page)).toContainText("There is no answer");
			await expect(standing(page).getByRole("button")).toHaveText("Load the page again");
		},
	],
	[
		"with a solver that stopped",
		async (page) => {
			await openWhole(page);
			await noMoreSolver(page);
			await fail(page);
			await windowArea(page).fill("1700");
			await expect(standing(page)).toContainText("What is shown is of an earlier version");
		},
	],
	[
		"while an answer takes long",
		async (page) => {
			await openSlow(page);
			await delay(page, 60_000);
			await windowArea(page).fill("1700");
			await expect(standing(page)).toContainText("Solving");
		},
	],
	[
		"with a refused draw",
		async (page) => {
			await open(page);
			await cell(page, "neck, loss 2, duct friction, area, mm²").fill("200");
			await expect(page.getByText("This draw is refused")).toBeVisible();
		},
	],
	[
		"with nothing on the sheet",
		async (page) => {
			await empty(page);
			await expect(sentence(page)).toContainText("There is nothing to solve yet");
		},
	],
];

for (const [what, bring] of STATES) {
	for (const scheme of ["light", "dark"] as const) {
		test(`everybody can use the page ${what}, ${scheme}`, async ({ page }) => {
			await page.emulateMedia({ colorScheme: scheme });
			await bring(page);
			expect(await violations(page, ...VERDICT)).toEqual([]);
			for (const [width, height] of [
				[360, 740],
				[640, 400],
			] as const) {
				await page.setViewportSize({ width, height });
				const wide = await page.evaluate(() => document.documentElement.scrollWidth);
				expect(wide).toBeLessThanOrEqual(width);
			}
		});
	}
}

test("a solver that stops is started again by itself, which is said until the next answer", async ({
	page,
}) => {
	await openWhole(page);
	await fail(page);
	await windowArea(page).fill("1700");
	await expect(standing(page)).toContainText("had stopped (out of memory) and has been started");
	await expect(page.locator('[data-row="window 1"]')).toContainText("1.631");
	await windowArea(page).fill("2100");
	await expect(standing(page)).toHaveText(/of the study as it stands\.\s*$/);
});

test("a solver that stops while it is asked answers after all", async ({ page }) => {
	await openSlow(page);
	await delay(page, 60_000);
	await windowArea(page).fill("1700");
	await expect(standing(page)).toContainText("Solving");
	await delay(page, 0);
	await fail(page);
	await expect(standing(page)).toContainText("has been started again");
	await expect(page.locator('[data-row="window 1"]')).toContainText("1.631");
});

test("a newer edit does not wait for an older one whose answer takes long", async ({ page }) => {
	await openSlow(page);
	await delay(page, 60_000);
	await windowArea(page).fill("1500");
	await expect(standing(page)).toContainText("Solving");
	await delay(page, 0);
	await windowArea(page).fill("1700");
	await expect(page.locator('[data-row="window 1"]')).toContainText("1.631");
	await expect(standing(page)).toHaveText(/of the study as it stands\.\s*$/);
	// The worker that took over answers what else is asked, and is not spoken of.
	await openText(page, JSON.stringify({ ...(await saved(page)), name: "Once more" }));
	await expect(page.locator(".title-block .large")).toHaveText("Once more");
});

test("a solver that cannot be started any more is tried again by a button", async ({ page }) => {
	await openWhole(page);
	await noMoreSolver(page);
	await fail(page);
	await windowArea(page).fill("1700");
	await expect(standing(page)).toContainText("The solver stopped: it could not be loaded");
	await page.unroute(/worker.*\.js/);
	await standing(page).getByRole("button", { name: "Try again" }).click();
	await expect(page.locator('[data-row="window 1"]')).toContainText("1.631");
	await expect(standing(page)).toContainText("of the study as it stands");
});

test("without a solver nothing that is kept is lost", async ({ page }) => {
	await open(page);
	await windowArea(page).fill("1700");
	await noMoreSolver(page);
	await page.reload();
	await expect(standing(page)).toContainText("could not be loaded");
	await page.locator("header").getByRole("button", { name: "Studies" }).click();
	await expect(page.getByRole("dialog")).toContainText("V8 lid");
	await page.keyboard.press("Escape");
	await page.unroute(/worker.*\.js/);
	await standing(page).getByRole("button", { name: "Load the page again" }).click();
	await expect(windowArea(page)).toHaveValue("1700");
});

test("an answer that takes long is counted, the older one is paler meanwhile, and the solver can be started anew", async ({
	page,
}) => {
	await openSlow(page);
	await expect(page.locator(".title-block")).toBeVisible();
	await delay(page, 120_000);
	const table = page.locator("table.shares");
	const ink = await table.evaluate((each) => getComputedStyle(each).color);
	await windowArea(page).focus();
	// Within the answer: the page itself may scroll, so that the help never covers the cell in use.
	const height = () =>
		table.evaluate((each) => {
			const top = each.closest(".answer")?.getBoundingClientRect().top ?? 0;
			return each.getBoundingClientRect().top - top;
		});
	const before = await height();
	await windowArea(page).fill("1700");
	await expect(standing(page)).toContainText("What is shown is of an earlier version");
	expect(await table.evaluate((each) => getComputedStyle(each).color)).not.toBe(ink);
	await expect(standing(page)).toContainText("Solving for 2 s");
	const again = standing(page).getByRole("button", { name: "Start the solver again" });
	await expect(again).toBeVisible({ timeout: 15_000 });
	expect(await height()).toBe(before);
	await delay(page, 0);
	await again.click();
	await expect(page.locator('[data-row="window 1"]')).toContainText("1.631");
	expect(await table.evaluate((each) => getComputedStyle(each).color)).toBe(ink);
});

test("a refused draw leads to the rows to look at", async ({ page }) => {
	await open(page);
	await cell(page, "neck, loss 2, duct friction, area, mm²").fill("200");
	await expect(sentence(page)).toContainText("chokes");
	const shares = page.locator('section[aria-labelledby="shares-title"]');
	await shares.getByRole("link", { name: "neck", exact: true }).click();
	await expect(page.locator('[data-row="neck"] :focus')).toHaveCount(1);
});

test("an empty sheet says how to go on, and undo brings everything back", async ({ page }) => {
	await empty(page);
	await expect(page.locator("#errors")).toHaveCount(0);
	await expect(standing(page)).toContainText("of an earlier version");
	await standing(page).getByRole("button", { name: "begin with your own engine" }).click();
	await expect(page.getByRole("dialog")).toBeVisible();
	await page.keyboard.press("Escape");
	await page.keyboard.press("Control+z");
	await expect(sentence(page)).not.toContainText("nothing to solve");
});

test("with 240 branches the cell takes what is typed while the answer is still an earlier one's", async ({
	page,
}) => {
	// Two hundred and forty rows take half a minute on two busy cores.
	test.slow();
	await openSlow(page);
	await openText(page, large(await saved(page), 240));
	await expect(page.locator(".title-block .large")).toHaveText("Large");
	await expect(page.locator(".branches [data-row]")).toHaveCount(240);
	await expect(standing(page)).toContainText("of the study as it stands");
	const row = page.locator('[data-row="window 1"]');
	const before = await row.textContent();
	await windowArea(page).focus();
	await delay(page, 5000);
	for (const key of ["1", "7", "5", "0"]) await page.keyboard.press(key);
	await expect(windowArea(page)).toHaveValue("1750");
	await expect(standing(page)).toContainText("What is shown is of an earlier version");
	expect(await row.textContent()).toBe(before);
	await delay(page, 0);
	await expect(standing(page)).toContainText("of the study as it stands", { timeout: 15_000 });
	expect(await row.textContent()).not.toBe(before);
});

/** A study with further chambers behind the pockets of the V8 lid, invented. */
function large(study: Record<string, unknown>, count: number): string {
	const { nodes, branches } = study.network as { nodes: object[]; branches: object[] };
	const opening = (id: string, from: string, to: string, area: number) =>
		branches.push({
			id,
			from,
			to,
			losses: [{ kind: "opening", area, dischargeCoefficient: 0.65 }],
		});
	for (let at = 0; branches.length < count; at += 1) {
		const id = `cell ${at}`;
		nodes.push({ id, kind: "plenum" });
		opening(`window to ${id}`, at < 8 ? `pocket ${at + 1}` : `cell ${at - 8}`, id, 0.0009);
		opening(`leak to ${id}`, "lid", id, 0.0002);
	}
	return JSON.stringify({ ...study, name: "Large" });
}
