import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, type Page, test } from "@playwright/test";
import { violations } from "../axe";
import { cell, deviations, open, sentence, windowArea } from "../sheet";

/** A note that would end the element that holds it, and begin a script, if it were markup. */
const NOTE = "</script><script>document.title = 'run'</script><!-- <script> \u2028 \\u003c";

/** The file that the page hands over, where it is saved. */
async function savedPage(page: Page, path: string): Promise<string> {
	await page.locator("summary", { hasText: "Hand over" }).click();
	const [download] = await Promise.all([
		page.waitForEvent("download"),
		page.getByRole("button", { name: "Save as a page that opens by itself" }).click(),
	]);
	expect(download.suggestedFilename()).toMatch(/^[\w-]+\.html$/);
	await download.saveAs(path);
	return pathToFileURL(path).href;
}

function databases(page: Page): Promise<string[]> {
	return page.evaluate(async () => {
		const found = await indexedDB.databases();
		return [...found.map(({ name = "" }) => name), ...Object.keys(sessionStorage)];
	});
}

test("a saved page opens from disk with all of the study, solves it, and stores nothing until asked", async ({
	page,
	browser,
}, info) => {
	await open(page);
	await windowArea(page).fill("1750");
	await page.getByLabel("Notes").fill(NOTE);
	await page.getByRole("button", { name: "New variant" }).click();
	await cell(page, "window 2, loss 1, opening in a wall, area, mm²").fill("about 900");
	const first = await savedPage(page, info.outputPath("first.html"));

	const context = await browser.newContext({ offline: true });
	const alone = await context.newPage();
	const said: string[] = [];
	alone.on("console", (message) => said.push(message.text()));
	const asked: string[] = [];
	alone.on("request", (request) => asked.push(request.url()));
	await alone.goto(first);
	await expect(sentence(alone)).toContainText("Cylinder");
	await expect(alone).toHaveTitle("Evenport");
	await expect(alone.getByLabel("Notes", { exact: true })).toHaveValue(NOTE);
	await expect(windowArea(alone)).toHaveValue("1750");
	await expect(cell(alone, "window 2, loss 1, opening in a wall, area, mm²")).toHaveValue(
		"about 900",
	);
	expect(asked.filter((url) => !/^(blob|data):/.test(url))).toEqual([first]);
	expect(await violations(alone, ".keeping")).toEqual([]);

	await cell(alone, "window 2, loss 1, opening in a wall, area, mm²").fill("900");
	const before = await deviations(alone);
	await windowArea(alone).fill("700");
	await expect.poll(() => deviations(alone)).not.toEqual(before);
	await expect(alone.locator("p.bar")).toContainText("in this tab only");
	expect(await databases(alone)).toEqual([]);

	// What is saved from the file is such a file again.
	const second = await savedPage(alone, info.outputPath("second.html"));
	await alone.getByRole("button", { name: "Keep in this browser" }).click();
	await expect(alone.locator("p.bar")).toHaveCount(0);
	await expect.poll(() => databases(alone)).toContain("evenport");
	await alone.goto(second);
	await expect(windowArea(alone)).toHaveValue("700");
	await expect(sentence(alone)).toContainText("Cylinder");
	expect(said).toEqual([]);
	await context.close();
});

test("the file of the build opens from disk with the example, and brings the laws along", async ({
	page,
}) => {
	const said: string[] = [];
	page.on("console", (message) => said.push(message.text()));
	await page.goto(pathToFileURL(resolve("dist/evenport.html")).href);
	await expect(sentence(page)).toContainText("Cylinder");
	const [laws] = await Promise.all([
		page.waitForEvent("popup"),
		page.getByRole("link", { name: "All laws, with sources" }).click(),
	]);
	await expect(laws.getByRole("heading", { level: 1 })).toHaveText("Laws and sources");
	await expect(laws.locator("main")).toHaveCSS("border-top-width", "2px");
	expect(said).toEqual([]);
});
