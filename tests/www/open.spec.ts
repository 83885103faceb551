import { expect, test } from "@playwright/test";
import { deviations, open, saved, sentence } from "./sheet";

test("the page opens with an invented example, solved, and its verdict is read first", async ({
	page,
}) => {
	await open(page);
	await expect(sentence(page)).toContainText(/limit of 0\.4/);
	await expect(page.getByLabel("Notes")).toHaveValue(/^Invented/);
	expect(await deviations(page)).toHaveLength(8);
	const first = await page.locator("main").evaluate((main) => main.querySelector("p")?.className);
	expect(first).toContain("sentence");
});

test("every example in the menu opens and is solved, and undo brings the first one back", async ({
	page,
}) => {
	await open(page);
	const menu = page.locator("details", { hasText: "Examples" });
	for (const name of ["Inline log", "Symmetric lid", "Tapered log"]) {
		await menu.locator("summary").click();
		await menu.getByRole("button", { name }).click();
		await expect(page.locator(".title-block .large")).toHaveText(
			new RegExp(name.split(" ")[0] ?? "", "i"),
		);
		await expect(page.locator(".title-block")).toContainText("closure");
		await expect(page.locator("#errors")).toHaveCount(0);
	}
	for (let step = 0; step < 3; step += 1) await page.keyboard.press("Control+z");
	await expect(page.locator(".title-block .large")).toHaveText("V8 lid");
});

test("the switch shows another draw, with its own sentence, limit and title block", async ({
	page,
}) => {
	await open(page);
	const before = await deviations(page);
	await page.getByRole("radio", { name: "Bench, one port at a time" }).check();
	await expect(sentence(page)).toContainText(/bench/i);
	await expect(page.locator(".title-block")).toContainText("Bench, one port at a time");
	expect(await deviations(page)).not.toEqual(before);
	await page.getByRole("radio", { name: "Bench, one port at a time" }).press("ArrowDown");
	await expect(page.getByRole("radio", { name: "Bench, all ports open" })).toBeChecked();
	await expect(sentence(page)).toContainText(/all/i);
});

test("a state is told by a word and a shape", async ({ page }) => {
	await open(page);
	await expect(page.locator("tr.starved").first()).toContainText(/▼\s*starved/);
	await expect(page.locator("tr.overfed").first()).toContainText(/▲\s*overfed/);
});

test("the saved file is the study, and names its format", async ({ page }) => {
	await open(page);
	expect(await saved(page)).toMatchObject({
		format: "evenport-study",
		version: 1,
		name: "V8 lid",
	});
});
