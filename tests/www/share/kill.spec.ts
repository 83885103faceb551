/** Tabs and whole browsers that die in the middle of an edit. */
import { type BrowserContext, expect, type Page, test } from "@playwright/test";

// Recording what happens would take longer than what happens.
test.use({ trace: "off" });

/** What is typed may be lost until it is this old [ms]. */
const GRACE = 100;

/** Fifty kills, in two halves that run side by side. */
const KILLS = 25;

for (const half of ["first", "second"]) {
	test(`a tab killed fifty times in mid-edit loses nothing, ${half} half`, async ({ context }) => {
		// A round takes two seconds on two busy cores.
		test.setTimeout(300_000);
		let page = await context.newPage();
		for (let round = 0; round < KILLS; round += 1) {
			await page.goto("./");
			if (round > 0) await isBack(page, round - 1);
			await edit(page, round);
			page = await crash(context, page);
		}
		await page.goto("./");
		await isBack(page, KILLS - 1);
	});
}

test("a browser that is killed with all its tabs loses nothing either", async ({
	playwright,
	baseURL,
}, info) => {
	const folder = info.outputPath("profile");
	const launch = () =>
		playwright.chromium.launchPersistentContext(folder, {
			...info.project.use.launchOptions,
			baseURL,
		});
	for (let round = 0; round < 4; round += 1) {
		const context = await launch();
		const page = await context.newPage();
		await page.goto("./");
		if (round > 0) await isBack(page, round - 1);
		await edit(page, round);
		const session = await context.browser()?.newBrowserCDPSession();
		expect(session).toBeDefined();
		const gone = new Promise((resolve) => context.once("close", resolve));
		session?.send("Browser.crash").catch(() => {});
		await gone;
	}
});

/** Each round leaves a committed edit; every other one is killed with a cell open, in mid-word. */
async function edit(page: Page, round: number) {
	await area(page).fill(String(1500 + round));
	await area(page).press("Tab");
	if (round % 2 === 0) return;
	await radius(page).focus();
	await page.keyboard.type(`old ${round}`);
	await page.waitForTimeout(GRACE);
	await page.keyboard.type(" and new");
}

async function isBack(page: Page, round: number) {
	await expect(area(page)).toHaveValue(String(1500 + round));
	if (round % 2 === 1)
		expect(await radius(page).inputValue()).toMatch(new RegExp(`^old ${round}\\b`));
}

// Cells are found by their place in the study: by their names it takes twice as long.
function radius(page: Page) {
	return page.locator('[data-path="network.branches.0.losses.0.radius"]');
}

function area(page: Page) {
	return page.locator('[data-path="network.branches.2.losses.0.area"]');
}

async function crash(context: BrowserContext, page: Page): Promise<Page> {
	const session = await context.newCDPSession(page);
	const crashed = page.waitForEvent("crash");
	// There is nobody left to answer.
	session.send("Page.crash").catch(() => {});
	await crashed;
	await page.close();
	return context.newPage();
}
