/** What the tests of the shelf share. */
import type { Page } from "@playwright/test";

/** The names of the studies that are kept, in order of the alphabet. */
export async function names(page: Page): Promise<string[]> {
	await page.locator("header").getByRole("button", { name: "Studies" }).click();
	const dialog = page.getByRole("dialog", { name: "Studies" });
	await dialog.locator("li, p:text('None yet')").first().waitFor();
	const found = await dialog.locator("li strong").allInnerTexts();
	await dialog.getByRole("button", { name: "Close" }).click();
	return found.sort();
}
