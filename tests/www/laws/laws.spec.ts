import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "@playwright/test";
import { violations } from "../axe";
import { cell, open, windowArea } from "../sheet";

for (const scheme of ["light", "dark"] as const) {
	test(`everybody can read the laws, ${scheme}, checks unfolded`, async ({ page }) => {
		test.slow();
		await page.emulateMedia({ colorScheme: scheme });
		await page.goto("./laws.html");
		await expect(page.getByRole("heading", { level: 1 })).toHaveText("Laws and sources");
		expect(await violations(page, "header", "nav", 'section:has(> [id="device-bend"])')).toEqual(
			[],
		);
		const bellmouth = page.locator("#entry-flared-idelchik");
		await bellmouth.getByText("Checked against").click();
		await expect(bellmouth.getByRole("cell", { name: "K at r/d 0.05", exact: true })).toBeVisible();
		expect(await violations(page, "#entry-flared-idelchik")).toEqual([]);
	});
}

test("it is read from disk as from a host, and asks for nothing but its style sheet", async ({
	page,
}) => {
	const failed: string[] = [];
	const asked: string[] = [];
	page.on("requestfailed", (request) => failed.push(request.url()));
	page.on("console", (message) => failed.push(message.text()));
	page.on("request", (request) => asked.push(request.url()));
	await page.goto(pathToFileURL(resolve("dist/laws.html")).href);
	// Only the style sheet draws the frame.
	await expect(page.locator("main")).toHaveCSS("border-top-width", "2px");
	expect(failed).toEqual([]);
	expect(asked.filter((url) => !/laws(-[\w-]+)?\.(html|css)$|icon\.svg$/.test(url))).toEqual([]);
	await expect(page.locator("meta[http-equiv=Content-Security-Policy]")).toHaveAttribute(
		"content",
		/default-src 'none'/,
	);
});

for (const [what, width, height] of [
	["on a phone", 360, 740],
	["at 320 px", 320, 640],
] as const) {
	test(`no law has to be scrolled sideways ${what}`, async ({ page }) => {
		await page.setViewportSize({ width, height });
		await page.goto("./laws.html");
		const wide = await page.evaluate(() => document.documentElement.scrollWidth);
		expect(wide).toBeLessThanOrEqual(width);
	});
}

test("the foot of the sheet leads to it, and the help on a cell to the law of that cell", async ({
	page,
}) => {
	await open(page);
	await expect(page.getByRole("link", { name: "All laws, with sources" })).toHaveAttribute(
		"href",
		"./laws.html",
	);
	await windowArea(page).focus();
	const link = page.getByRole("link", { name: "The law in full" });
	const [laws] = await Promise.all([page.waitForEvent("popup"), link.click()]);
	await expect(laws).toHaveURL(/laws\.html#opening$/);
	await expect(
		laws.getByRole("heading", { name: "Opening in a wall", exact: true }),
	).toBeInViewport();
	// The press has taken the focus from no cell: one goes on typing where one was.
	await expect(windowArea(page)).toBeFocused();
	await cell(page, "runner 1, loss 2, duct friction, length, mm").focus();
	await expect(link).toHaveAttribute("href", "./laws.html#duct");
	// By keyboard the link is gone to, and stays while it has the focus.
	await link.focus();
	await expect(link).toBeFocused();
});

test("every place that the help can lead to is there", async ({ page }) => {
	await page.goto("./laws.html");
	const ids = await page.locator("h3[id]").evaluateAll((all) => all.map(({ id }) => id));
	await open(page);
	const kinds = await page.getByRole("combobox", { name: "neck, loss 1, kind" }).locator("option");
	const names = await kinds.evaluateAll((all) =>
		all.map((each) => (each as HTMLOptionElement).value),
	);
	expect(names.length).toBeGreaterThan(15);
	expect(names.filter((name) => name !== "typedK" && !ids.includes(name))).toEqual([]);
});
