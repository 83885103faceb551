import AxeBuilder from "@axe-core/playwright";
import { expect, test } from "@playwright/test";

/** The page with the first example solved. */
async function open(page: import("@playwright/test").Page) {
	await page.goto("./");
	await expect(page.locator(".verdict .sentence")).toContainText("while running");
}

test("opens on a solved, invented V8 lid and says which cylinder is worst first", async ({
	page,
}) => {
	await open(page);
	await expect(page.locator(".verdict .sentence")).toContainText(
		"Cylinder 7 is starved while running",
	);
	await expect(page.locator("body")).toContainText("imbalance");
});

test("an edited cell changes the answer, and undo brings the old one back", async ({ page }) => {
	await open(page);
	const sentence = page.locator(".verdict .sentence");
	const before = await sentence.textContent();
	// The window of pocket 7 is the smallest; made as large as its neighbours it starves no more.
	const cell = page.locator('[data-cell*="window 7"] input').first();
	await cell.fill("1500");
	await expect(sentence).not.toHaveText(before);
	await cell.blur();
	await page.getByRole("button", { name: "Undo" }).click();
	await expect(sentence).toHaveText(before);
});

test("a cell that cannot be read keeps its text and says why, and the last answer stays", async ({
	page,
}) => {
	await open(page);
	const sentence = page.locator(".verdict .sentence");
	const before = await sentence.textContent();
	const cell = page.locator('[data-cell*="window 7"] input').first();
	await cell.fill("wide");
	await cell.blur();
	await expect(cell).toHaveValue("wide");
	await expect(page.locator(".verdict .standing")).toContainText("Last good study");
	await expect(sentence).toHaveText(before);
	await expect(page.locator('[data-cell*="window 7"]').first()).toContainText(/\w+/);
});

test("another draw has its own verdict", async ({ page }) => {
	await open(page);
	await page.locator("label", { hasText: "Bench, one port at a time" }).click();
	await expect(page.locator(".verdict .sentence")).toContainText(
		"on the bench, one port at a time",
	);
});

test("an edit outlives a reload", async ({ page }) => {
	await open(page);
	const cell = page.locator('[data-cell*="window 7"] input').first();
	await cell.fill("1234");
	await cell.blur();
	await page.waitForTimeout(500);
	await page.reload();
	await expect(page.locator('[data-cell*="window 7"] input').first()).toHaveValue(/1.?234/);
});

test("nothing leaves the page's own origin, and the policy blocks what tries", async ({
	page,
	baseURL,
}) => {
	const outside: string[] = [];
	page.on("request", (request) => {
		const url = request.url();
		if (!url.startsWith(baseURL ?? "") && !url.startsWith("data:") && !url.startsWith("blob:"))
			outside.push(url);
	});
	await open(page);
	expect(outside).toEqual([]);
	const blocked = await page.evaluate(() =>
		fetch("http://127.0.0.1:9/elsewhere").then(
			() => "let through",
			() => "refused",
		),
	);
	const violation = await page.evaluate(
		() =>
			new Promise<string>((resolve) => {
				document.addEventListener("securitypolicyviolation", (event) =>
					resolve(event.effectiveDirective),
				);
				const image = document.createElement("img");
				image.src = "http://127.0.0.1:9/elsewhere.png";
				document.body.append(image);
			}),
	);
	expect(blocked).toBe("refused");
	expect(violation).toBe("img-src");
});

test("a phone shows the page without sideways scrolling", async ({ page }) => {
	await page.setViewportSize({ width: 360, height: 740 });
	await open(page);
	const wider = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
	expect(wider).toBeLessThanOrEqual(0);
});

for (const colorScheme of ["light", "dark"] as const) {
	test(`no accessibility violation in ${colorScheme}`, async ({ page }) => {
		await page.emulateMedia({ colorScheme });
		await open(page);
		const found = await new AxeBuilder({ page }).analyze();
		expect(found.violations.map((violation) => violation.id)).toEqual([]);
	});
}
