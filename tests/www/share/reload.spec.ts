import { expect, test } from "@playwright/test";
import { nodeCell, open, windowArea } from "../sheet";

test("a reload keeps the edit", async ({ page }) => {
	await open(page);
	await windowArea(page).fill("1750");
	await page.reload();
	await expect(windowArea(page)).toHaveValue("1750");
});

test("a reload keeps a cell that holds no value, and says so again", async ({ page }) => {
	await open(page);
	await windowArea(page).fill("17 and a bit");
	await page.reload();
	await expect(windowArea(page)).toHaveValue("17 and a bit");
	await expect(page.locator(".fault", { hasText: "Not an area" })).toBeVisible();
});

test("a reload keeps a study that is wrong as a whole", async ({ page }) => {
	await open(page);
	await nodeCell(page, "window 1, to node").fill("nowhere");
	await windowArea(page).fill("-5");
	await page.reload();
	await expect(nodeCell(page, "window 1, to node")).toHaveValue("nowhere");
	await expect(windowArea(page)).toHaveValue("-5");
	await expect(page.locator("#errors")).toBeVisible();
});

test("reloads one upon the other keep the last edit", async ({ page }) => {
	await open(page);
	for (let round = 0; round < 10; round += 1) {
		const area = String(1500 + round);
		await windowArea(page).fill(area);
		await page.reload();
		await expect(windowArea(page)).toHaveValue(area);
	}
});

test("an edit that does not reach the database before the page goes is there all the same", async ({
	page,
}) => {
	await open(page);
	await windowArea(page).fill("1750");
	await page.evaluate(() => {
		// As on a busy machine: what is written from now on is lost with the page.
		IDBObjectStore.prototype.put = () =>
			new Promise(() => {}) as unknown as IDBRequest<IDBValidKey>;
		IDBTransaction.prototype.commit = IDBTransaction.prototype.abort;
	});
	await windowArea(page).fill("1760");
	await page.reload();
	await expect(windowArea(page)).toHaveValue("1760");
	await page.reload();
	await expect(windowArea(page)).toHaveValue("1760");
});
