/** The list of the studies that the browser keeps. */
import { expect, type Page, test } from "@playwright/test";
import { violations } from "../axe";
import { open, openText, saved, windowArea } from "../sheet";
import { names } from "./studies";

function called(page: Page) {
	return page.getByRole("textbox", { name: "Name", exact: true });
}

async function example(page: Page, name: string) {
	await page.locator("summary", { hasText: "Examples" }).click();
	await page.getByRole("button", { name, exact: true }).click();
	await expect(page.locator(".title-block .large")).toHaveText(
		new RegExp(name.split(" ")[0] ?? "", "i"),
	);
}

/** Keeps three studies, the newest of which is on the sheet: First, Second, Third. */
async function three(page: Page) {
	await open(page);
	const study = await saved(page);
	for (const name of ["First", "Second", "Third"]) {
		await openText(page, JSON.stringify({ ...study, name }));
		await expect(called(page)).toHaveValue(name);
	}
}

async function list(page: Page) {
	await page.locator("header").getByRole("button", { name: "Studies" }).click();
	return page.getByRole("dialog", { name: "Studies" });
}

test("the invented example is kept as soon as it is edited, not before", async ({ page }) => {
	await open(page);
	expect(await names(page)).toEqual([]);
	await windowArea(page).fill("1750");
	expect(await names(page)).toEqual(["V8 lid"]);
});

test("an example starts a study of its own, which stays only if it is edited", async ({ page }) => {
	await open(page);
	await windowArea(page).fill("1750");
	await example(page, "Inline log");
	expect(await names(page)).toEqual(["Inline log", "V8 lid"]);
	await page.reload();
	await expect(called(page)).toHaveValue("Inline log");
	await example(page, "Tapered log");
	expect(await names(page)).toEqual(["Tapered log", "V8 lid"]);
	await called(page).fill("My log");
	await example(page, "Symmetric lid");
	expect(await names(page)).toEqual(["My log", "Symmetric lid", "V8 lid"]);
	const dialog = await list(page);
	await dialog.getByRole("button", { name: "Open V8 lid" }).click();
	await expect(windowArea(page)).toHaveValue("1750");
	expect(await names(page)).toEqual(["My log", "V8 lid"]);
});

test("a file starts a study of its own; undo leads back, and what is edited then is the former one", async ({
	page,
}) => {
	await three(page);
	expect(await names(page)).toEqual(["First", "Second", "Third"]);
	await page.keyboard.press("Control+z");
	await expect(called(page)).toHaveValue("Second");
	await windowArea(page).fill("1234");
	await windowArea(page).press("Tab");
	const dialog = await list(page);
	await expect(dialog.locator("li").first()).toContainText("Second");
	await expect(dialog.locator("li").first()).toContainText("on the sheet");
	await dialog.getByRole("button", { name: "Open Third" }).click();
	await expect(windowArea(page)).toHaveValue("2100");
	await page.keyboard.press("Control+z");
	await expect(windowArea(page)).toHaveValue("1234");
	expect(await names(page)).toEqual(["First", "Second", "Third"]);
});

test("the list says when each was kept, and the name field renames it there", async ({ page }) => {
	await three(page);
	await called(page).fill("Third, mended");
	const row = (await list(page)).locator("li", { hasText: "Third, mended" });
	await expect(row).toContainText(/\d{4}-\d\d-\d\d \d\d:\d\d/);
	await expect(row).toContainText("on the sheet");
	await expect(row.getByRole("button", { name: "Open Third" })).toBeDisabled();
});

test("a study is duplicated under a name that says so", async ({ page }) => {
	await three(page);
	const dialog = await list(page);
	await dialog.getByRole("button", { name: "Duplicate First" }).click();
	await expect(dialog.getByRole("status")).toHaveText("First has a copy.");
	await dialog.getByRole("button", { name: /^Open First \(copy / }).click();
	await expect(called(page)).toHaveValue(/^First \(copy /);
	expect(await names(page)).toHaveLength(4);
});

test("a removed study can be put back, also the one on the sheet", async ({ page }) => {
	await three(page);
	const dialog = await list(page);
	await dialog.getByRole("button", { name: "Remove First" }).click();
	await expect(dialog.locator("li", { hasText: "First" })).toContainText("removed");
	await dialog.getByRole("button", { name: "Remove Third" }).click();
	await expect(dialog.locator("li", { hasText: "Third" })).toContainText("removed");
	await dialog.getByRole("button", { name: "Put back Third" }).click();
	await expect(dialog.getByRole("status")).toHaveText("Third is back.");
	await dialog.getByRole("button", { name: "Close" }).click();
	await expect(called(page)).toHaveValue("V8 lid");
	expect(await names(page)).toEqual(["Second", "Third"]);
	await page.reload();
	expect(await names(page)).toEqual(["Second", "Third"]);
});

test("undo brings a removed study back to the sheet and to the list", async ({ page }) => {
	await three(page);
	const dialog = await list(page);
	await dialog.getByRole("button", { name: "Remove Third" }).click();
	await expect(dialog.getByRole("status")).toContainText("Third is removed");
	await dialog.getByRole("button", { name: "Close" }).click();
	await page.keyboard.press("Control+z");
	await expect(called(page)).toHaveValue("Third");
	await expect.poll(() => names(page)).toEqual(["First", "Second", "Third"]);
});

test("text that is no value goes with its study", async ({ page }) => {
	await three(page);
	await windowArea(page).fill("about 15");
	const dialog = await list(page);
	await dialog.getByRole("button", { name: "Open First" }).click();
	await expect(windowArea(page)).toHaveValue("2100");
	await (await list(page)).getByRole("button", { name: "Open Third" }).click();
	await expect(windowArea(page)).toHaveValue("about 15");
});

test("a study that can no longer be read stays, says so, and can be taken out as a file", async ({
	page,
}) => {
	await three(page);
	await page.evaluate(damage, ["Third"]);
	await page.reload();
	await expect(page.locator(".keeping")).toContainText("Third could not be opened");
	const text = () => page.waitForEvent("download").then((download) => download.path());
	const [path] = await Promise.all([
		text(),
		page.getByRole("button", { name: "Save it as a file" }).click(),
	]);
	expect(path).toBeTruthy();
	expect(await violations(page, ".keeping")).toEqual([]);
	await page.locator(".keeping").getByRole("button", { name: "Studies" }).click();
	const row = page.getByRole("dialog").locator("li", { hasText: "Third" });
	await expect(row).toContainText("Cannot be opened");
	await expect(row.getByRole("button", { name: "Open Third" })).toBeDisabled();
	await expect(row.getByRole("button", { name: "Save file of Third" })).toBeEnabled();
	await page.getByRole("dialog").getByRole("button", { name: "Close" }).click();
	await windowArea(page).fill("1750");
	expect(await names(page)).toEqual(["First", "Second", "Third", "V8 lid"]);
});

test("the list is used by keyboard alone", async ({ page }) => {
	await three(page);
	await page.getByRole("button", { name: "Studies" }).focus();
	await page.keyboard.press("Enter");
	const dialog = page.getByRole("dialog", { name: "Studies" });
	await expect(dialog.locator("li")).toHaveCount(3);
	for (let step = 0; step < 20; step += 1) {
		await page.keyboard.press("Tab");
		const at = await page.evaluate(() => document.activeElement?.getAttribute("aria-label"));
		if (at === "Open First") break;
	}
	await page.keyboard.press("Enter");
	await expect(called(page)).toHaveValue("First");
	await expect(dialog).toHaveCount(0);
	await page.getByRole("button", { name: "Studies" }).press("Enter");
	await expect(dialog).toBeVisible();
	await page.keyboard.press("Escape");
	await expect(dialog).toHaveCount(0);
});

for (const scheme of ["light", "dark"] as const) {
	test(`everybody can use the list, ${scheme}, also on a phone`, async ({ page }) => {
		await page.emulateMedia({ colorScheme: scheme });
		await three(page);
		const dialog = await list(page);
		await dialog.getByRole("button", { name: "Remove First" }).click();
		await expect(dialog.getByRole("status")).toContainText("removed");
		expect(await violations(page, "dialog")).toEqual([]);
		await page.setViewportSize({ width: 360, height: 740 });
		expect(await violations(page, "dialog")).toEqual([]);
		const wide = await dialog.evaluate((each) => each.scrollWidth > each.clientWidth);
		expect(wide).toBe(false);
	});
}

/** Runs in the page: cuts the text of a kept study off, as a damaged disk would. */
function damage([name]: string[]): Promise<void> {
	return new Promise((resolve, reject) => {
		const request = indexedDB.open("evenport");
		request.onsuccess = () => {
			const transaction = request.result.transaction("studies", "readwrite");
			const store = transaction.objectStore("studies");
			const all = store.getAll();
			all.onsuccess = () => {
				const entry = all.result.find((each) => each.name === name);
				store.put({ ...entry, text: entry.text.slice(0, 100) });
			};
			transaction.oncomplete = () => resolve();
			transaction.onabort = () => reject(transaction.error);
		};
	});
}
