import { createHash } from "node:crypto";
import { expect, type Page, test } from "@playwright/test";
import { violations } from "../axe";
import { cell, open, openText, saved, sentence, windowArea } from "../sheet";
import { margins, overlapping, printed } from "./paper";

const PAPERS = [
	// ISO 216: 210 x 297 mm. ANSI/ASME Y14.1: 8.5 x 11 in.
	{ paper: "A4, 210 × 297 mm", width: (210 / 25.4) * 72, height: (297 / 25.4) * 72 },
	{ paper: "Letter, 8.5 × 11 in", width: 8.5 * 72, height: 11 * 72 },
];

const PARTS = [
	"How evenly the intake manifold feeds its cylinders",
	"V8 lid",
	"What its author says",
	"Engine from above",
	"Shares by cylinder",
	"What makes the gap",
	"Versions side by side",
	"How sure it is that one version is more even than another",
	"Worth a look",
	"Before anything is cast or run",
	"All that was entered",
	"“Wide last window” has otherwise than the base",
	"Laws used, with their sources",
	"This study on the page",
];

async function openReport(page: Page) {
	await page.locator("header summary", { hasText: "Hand over" }).click();
	await page.getByRole("button", { name: "Report for paper" }).click();
	await expect(page.locator(".report h1")).toBeVisible();
}

/** A variant beside the base, and its report with every figure there. */
async function reportOfTwo(page: Page) {
	await open(page);
	await page.getByRole("button", { name: "New variant" }).click();
	await page.getByLabel("Name of the variant").fill("Wide last window");
	await cell(page, "window 7, loss 1, opening in a wall, area, mm²").fill("2100");
	await expect(sentence(page)).toContainText("Variant Wide last window:");
	await openReport(page);
	await expect(page.locator(".report .splits dd").last()).toContainText("%", { timeout: 30_000 });
	await expect(page.locator(".report .address")).toContainText("#study=1.");
}

for (const { paper, width, height } of PAPERS) {
	test(`the report goes to ${paper}: whole, in order, nothing cut, nothing on another, its code leads back`, async ({
		page,
	}) => {
		await reportOfTwo(page);
		await page.getByLabel("Paper").selectOption(paper);
		const link = (await page.locator(".report .address").textContent()) ?? "";
		const sheets = await printed(page, "This study on the page");
		expect(sheets.length).toBeGreaterThan(3);
		for (const [place, sheet] of sheets.entries()) {
			// Printers are told whole dots.
			expect(Math.abs(sheet.width - width)).toBeLessThan(1);
			expect(Math.abs(sheet.height - height)).toBeLessThan(1);
			expect(sheet.text).toContain(`Page ${place + 1} of ${sheets.length}`);
			const { left, right, top } = margins(sheet);
			// 12 mm at the sides and 13 mm above are left free; thick frames reach half their width out.
			expect(left).toBeGreaterThan((11.5 / 25.4) * 72);
			expect(right).toBeGreaterThan((11.5 / 25.4) * 72);
			expect(top).toBeGreaterThan((12.5 / 25.4) * 72);
		}
		const text = sheets.map((each) => each.text).join(" ");
		let from = 0;
		for (const part of PARTS) {
			expect(text.slice(from), part).toContain(part);
			from = text.indexOf(part, from) + part.length;
		}
		expect(text).toContain("Evenport 0.1.0");
		expect(sheets.flatMap(({ code }) => code ?? [])).toEqual([link]);

		// As wide as what is between the edges of the paper, and with its style.
		await page.emulateMedia({ media: "print" });
		await page.setViewportSize({
			width: Math.floor(((width - (24 / 25.4) * 72) / 72) * 96),
			height: 900,
		});
		expect(await overlapping(page, ".report")).toEqual([]);
		expect(
			await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
		).toBeLessThanOrEqual(0);
	});
}

test("the report's own link opens the study it is of", async ({ page }) => {
	await reportOfTwo(page);
	const link = (await page.locator(".report .address").textContent()) ?? "";
	await page.goto("about:blank");
	await page.goto(link);
	await expect(page.getByText("You read a study that came in a link")).toBeVisible();
	await page.getByRole("button", { name: "Report for paper" }).click();
	await expect(page.locator(".report h1")).toBeFocused();
	await expect(page.getByRole("region", { name: "All that was entered" })).toContainText(
		"runner 8",
	);
});

test("inputs, laws and the draw are chosen, and the sheet is as it was afterwards", async ({
	page,
}) => {
	await open(page);
	await windowArea(page).fill("1750");
	await expect(page.locator("[data-row]").first()).toBeVisible();
	await openReport(page);
	await expect(page).toHaveTitle("V8 lid, Evenport report");
	const report = page.locator("main.report");
	await expect(report).toContainText("opening in a wall; area 1750 mm²");
	await expect(report.getByRole("region", { name: "Laws used" })).toContainText(
		"Rennels and Hudson, Pipe Flow, 2012",
	);
	// What is not part of the study's network is no law of its answer.
	await expect(report.getByRole("region", { name: "Laws used" })).not.toContainText("tee");
	await page.getByLabel("With all inputs").uncheck();
	await page.getByLabel("With the laws used").uncheck();
	await expect(report.getByRole("region", { name: "All that was entered" })).toHaveCount(0);
	await expect(report.getByRole("region", { name: "Laws used" })).toHaveCount(0);
	await page.getByRole("radio", { name: "Bench, one port at a time" }).check();
	await expect(report.locator(".sentence")).toContainText("on the bench, one port at a time");
	await expect(report.getByRole("link")).toHaveCount(0);
	await expect(report.locator("button:visible")).toHaveCount(0);
	await page.getByRole("button", { name: "Back to the sheet" }).press("Enter");
	await expect(windowArea(page)).toHaveValue("1750");
	await expect(page).toHaveTitle("Evenport");
	await expect(page.locator("header summary", { hasText: "Hand over" })).toBeFocused();
});

test("a study that is too long for a link says so, and one with errors what its answer is of", async ({
	page,
}) => {
	await open(page);
	const study = await saved(page);
	const incompressible = Array.from({ length: 200 }, (_, at) =>
		createHash("sha256").update(String(at)).digest("base64"),
	);
	await openText(page, JSON.stringify({ ...study, notes: incompressible.join("") }));
	await expect(page.locator(".title-block .large")).toHaveText("V8 lid");
	await openReport(page);
	await expect(page.locator(".report .link")).toContainText("too long for a link");
	await page.getByRole("button", { name: "Back to the sheet" }).click();
	await windowArea(page).fill("wide");
	await openReport(page);
	await expect(page.locator(".report .standing")).toContainText("to be put right");
});

for (const scheme of ["light", "dark"] as const) {
	test(`everybody can read the report, ${scheme}, on a phone too`, async ({ page }) => {
		await page.emulateMedia({ colorScheme: scheme });
		await reportOfTwo(page);
		expect(await violations(page)).toEqual([]);
		await page.setViewportSize({ width: 360, height: 740 });
		expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
			360,
		);
	});
}
