import { expect, type Page, test } from "@playwright/test";
import { violations } from "../axe";
import { deviations, sentence, windowArea } from "../sheet";
import { type Host, host } from "./host";

test.use({ serviceWorkers: "allow" });

let at: Host;
test.beforeEach(async () => {
	at = await host();
});
test.afterEach(() => at.stop());

/** Opens the page and waits until the browser has all of it. */
async function visit(page: Page) {
	await page.goto(at.address);
	await expect(sentence(page)).toContainText("Cylinder");
	await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}

/** Asks for a newer version, as a browser does by itself now and then. */
async function lookForNewer(page: Page) {
	await page.evaluate(async () => {
		await (await navigator.serviceWorker.getRegistration())?.update().catch(() => {});
	});
}

function versions(page: Page): Promise<number> {
	return page.evaluate(async () => (await caches.keys()).length);
}

test("after one visit the page works with its host gone: it loads, solves, and opens its parts and laws", async ({
	page,
}) => {
	await visit(page);
	await windowArea(page).fill("1750");
	await at.stop();
	await page.reload();
	await expect(windowArea(page)).toHaveValue("1750");
	await expect(sentence(page)).toContainText("Cylinder");
	const before = await deviations(page);
	await windowArea(page).fill("700");
	await expect.poll(() => deviations(page)).not.toEqual(before);
	// A part that is loaded when it is asked for, and the second solver behind it.
	await page.getByRole("button", { name: "New", exact: true }).click();
	await expect(page.getByRole("dialog")).toBeVisible();
	await page.keyboard.press("Escape");
	await page.locator("section.range summary").click();
	await expect(page.locator(".range svg").first()).toBeVisible({ timeout: 20_000 });
	// So is what a study is handed over in.
	const whole = await page.evaluate(
		async () => (await (await fetch("./evenport.html")).text()).length,
	);
	expect(whole).toBeGreaterThan(1_000_000);
	await page.goto(`${at.address}laws.html`);
	await expect(page.getByRole("heading", { level: 1 })).toHaveText("Laws and sources");
	await page.goto(`${at.address}index.html?from=a-bookmark`);
	await expect(windowArea(page)).toHaveValue("700");
});

test("a newer version says so, waits, and takes over when it is asked to, with the edit kept", async ({
	page,
}) => {
	await visit(page);
	at.renew("Evenport, newer");
	await lookForNewer(page);
	const bar = page.locator("p.bar", { hasText: "A newer version of this page is ready" });
	await expect(bar).toBeVisible();
	expect(await violations(page, ".keeping")).toEqual([]);
	await windowArea(page).fill("1800");
	expect(await versions(page)).toBe(2);
	await page.reload();
	await expect(page).toHaveTitle("Evenport");
	const other = await page.context().newPage();
	await other.goto(at.address);
	await expect(sentence(other)).toContainText("Cylinder");
	await bar.getByRole("button", { name: "Load it now" }).click();
	await expect(page).toHaveTitle("Evenport, newer");
	await expect(windowArea(page)).toHaveValue("1800");
	// The other tab goes on as it was, with all parts of its version, until it is closed.
	await expect(other.locator("p.bar", { hasText: "A newer version" })).toBeVisible();
	expect(await other.title()).toBe("Evenport");
	expect(await versions(page)).toBe(2);
	await other.close();
	await expect(async () => {
		await page.reload();
		expect(await versions(page)).toBe(1);
	}).toPass();
});

test("files of two versions are never mixed: what does not fit is not laid in", async ({
	page,
}) => {
	await visit(page);
	at.mix("Evenport, half");
	await lookForNewer(page);
	await expect
		.poll(() =>
			page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.installing),
		)
		.toBeNull();
	expect(await versions(page)).toBe(1);
	await page.reload();
	await expect(page.locator("p.bar", { hasText: "A newer version" })).toHaveCount(0);
	await expect(page).toHaveTitle("Evenport");
});
