/** Storage that is full, or not to be had. */
import { expect, type Page, test } from "@playwright/test";
import { violations } from "../axe";
import { open, windowArea } from "../sheet";

function bar(page: Page) {
	return page.locator(".keeping");
}

/**
 * Sets what the browser allows the page to keep [bytes]; without a size, what it usually does. It looks
 * again only when it has said no, or after a while, so this has to come before the first edit.
 */
async function allow(page: Page, quotaSize?: number) {
	const session = await page.context().newCDPSession(page);
	const origin = new URL(page.url()).origin;
	await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize });
}

for (const scheme of ["light", "dark"] as const) {
	test(`full storage is said, the file can be taken out there, and it is kept as soon as there is room, ${scheme}`, async ({
		page,
	}) => {
		await page.emulateMedia({ colorScheme: scheme });
		await open(page);
		await allow(page, 1);
		await windowArea(page).scrollIntoViewIfNeeded();
		const before = await windowArea(page).boundingBox();
		await windowArea(page).fill("1600");
		await expect(bar(page)).toContainText("Not kept. The browser's storage is full");
		// What is told lies over the foot of the page; the cell in use stays where it is.
		expect(await windowArea(page).boundingBox()).toEqual(before);
		expect(await violations(page, ".keeping")).toEqual([]);
		const [download] = await Promise.all([
			page.waitForEvent("download"),
			bar(page).getByRole("button", { name: "Save file" }).click(),
		]);
		expect(download.suggestedFilename()).toBe("V8-lid.json");
		await allow(page);
		await bar(page).getByRole("button", { name: "Try again" }).click();
		await expect(bar(page).locator(".bar")).toHaveCount(0);
		await page.reload();
		await expect(windowArea(page)).toHaveValue("1600");
	});
}

test("with full storage the next edit that finds room is kept without being asked to", async ({
	page,
}) => {
	await open(page);
	await allow(page, 1);
	await windowArea(page).fill("1600");
	await expect(bar(page)).toContainText("Not kept");
	await allow(page);
	await windowArea(page).fill("1500");
	await expect(bar(page).locator(".bar")).toHaveCount(0);
	await page.reload();
	await expect(windowArea(page)).toHaveValue("1500");
});

test("closing a tab that is not kept is asked about first", async ({ page }) => {
	await open(page);
	await allow(page, 1);
	await windowArea(page).fill("1600");
	await expect(bar(page)).toContainText("Not kept");
	const asked = page.waitForEvent("dialog");
	await page.close({ runBeforeUnload: true });
	const dialog = await asked;
	expect(dialog.type()).toBe("beforeunload");
	await dialog.dismiss();
	await expect(windowArea(page)).toHaveValue("1600");
});

test("a browser that keeps nothing is said, and the page works on", async ({ page }) => {
	await page.addInitScript(() => {
		Object.defineProperty(IDBFactory.prototype, "open", {
			value() {
				throw new DOMException("The operation is insecure.", "SecurityError");
			},
		});
	});
	await open(page);
	await expect(bar(page)).toContainText("This browser keeps nothing for this page");
	await windowArea(page).fill("1600");
	await expect(page.locator(".standing")).toContainText("of the study as it stands");
	await expect(bar(page).getByRole("button", { name: "Save file" })).toBeVisible();
	await page.getByRole("button", { name: "Studies" }).first().click();
	await expect(page.getByRole("dialog")).toContainText("The studies cannot be read");
});
