import { readFileSync } from "node:fs";
import { expect, type Locator, type Page, test } from "@playwright/test";
import { violations } from "../axe";
import { open, openText, sentence } from "../sheet";

/** From the folder of the page, where the tests are started. */
const EXAMPLE = "../examples/blown_v8/network.json";

interface Blown {
	name: string;
	engine: { cylinders: { id: string }[]; fuel: { setting: string } };
	network: {
		nodes: { cylinder?: string }[];
		branches: { id: string; blower?: Record<string, unknown> }[];
	};
}

/** Opens the example with the blower, or what has been made of it. */
async function openBlown(page: Page, changed?: (study: Blown) => void) {
	await open(page);
	if (changed) {
		const study = JSON.parse(readFileSync(EXAMPLE, "utf8")) as Blown;
		changed(study);
		await openText(page, JSON.stringify(study));
	} else {
		await page.locator("summary", { hasText: "Examples" }).click();
		await page.getByRole("button", { name: "Blown V8" }).click();
	}
	await expect(page.locator(".title-block .large")).toContainText("Blown V8");
	await expect(page.getByRole("heading", { name: "Speed range" })).toBeVisible();
}

async function openRange(page: Page): Promise<Locator> {
	await page.locator("summary", { hasText: "Running draw from" }).click();
	const slider = page.getByRole("slider", { name: "Speed to read off" });
	await expect(slider).toBeVisible({ timeout: 20_000 });
	return slider;
}

function blower(study: Blown): Record<string, unknown> {
	return study.network.branches.find(({ id }) => id === "blower")?.blower ?? {};
}

async function textOf(page: Page, button: Locator): Promise<{ name: string; text: string }> {
	const [download] = await Promise.all([page.waitForEvent("download"), button.click()]);
	const chunks: Buffer[] = [];
	for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
	return { name: download.suggestedFilename(), text: Buffer.concat(chunks).toString() };
}

test("operating point, mixture and speed range of a blown engine; a speed is made the study's by keyboard", async ({
	page,
}) => {
	test.slow();
	await openBlown(page);
	const row = (section: string, name: string | RegExp) =>
		page.getByRole("region", { name: section }).locator("tr", { hasText: name });
	await expect(row("Operating point", "Boost at lid front, static")).toContainText("72.2");
	await expect(row("Operating point", "Power it gives to the air, kW")).toContainText("46.5");
	await expect(row("Operating point", "Heat it takes from the air, kW")).toContainText("24.39");
	await expect(row("Operating point", "core rear")).toBeVisible();
	const mixture = page.getByRole("region", { name: "Mixture" });
	await expect(mixture.locator(".says").first()).toContainText("Cylinder 4 is most at risk");
	await expect(mixture.locator("tbody tr", { hasText: "▲lean" }).first()).toContainText("+0.88");
	await expect(mixture.locator("tbody tr", { hasText: "▼rich" }).last()).toContainText("−2.70");
	await expect(mixture.locator("tbody tr", { hasText: "◆hot" })).toHaveCount(1);
	await expect(mixture).toContainText("with e = 0.50");

	const slider = await openRange(page);
	const range = page.locator("section.range");
	await expect(range.locator(".says").first()).toContainText(/^Worst at 6600\srpm: spread 3\.9/);
	await expect(range.locator("path.line-over")).toHaveCount(13);
	await expect(range).toContainText("Of the study as it stands.");
	await slider.press("Home");
	await expect(range.locator(".reading")).toContainText("At 1800 rpm");
	await slider.press("ArrowRight");
	await expect(range.locator(".reading")).toContainText("At 1881 rpm");
	await expect(slider).toHaveAttribute("aria-valuetext", /^1881 rpm, spread 0\.\d+ %$/);
	await slider.press("Enter");
	await expect(page.getByLabel("speed, rpm", { exact: true })).toHaveValue("1881");
	await expect(row("Operating point", /^Speed, rpm\s*1881/)).toHaveCount(1);
	await expect(range.locator(".reading")).toContainText("the study's speed");
	await expect(range).toContainText("Of the study as it stands.");
	await page.getByRole("button", { name: "Undo" }).click();
	await expect(page.getByLabel("speed, rpm", { exact: true })).toHaveValue("6500");

	// What is wrong has no range: the last one stays, and says so.
	const place = () =>
		range.evaluate((section) => {
			const { top } = section.getBoundingClientRect();
			const drawing = section.querySelector("svg")?.getBoundingClientRect();
			return [section.clientHeight, drawing?.height, (drawing?.top ?? 0) - top];
		});
	const before = await place();
	await page.getByLabel("speed, rpm", { exact: true }).fill("-1");
	await expect(range).toContainText("Of the study before the last edit.");
	expect(await place()).toEqual(before);
	await page.getByRole("button", { name: "Undo" }).click();
	await expect(range).toContainText("Of the study as it stands.");
	expect(await place()).toEqual(before);

	// One click on a speed does it too, and undo takes it back.
	await range.locator("svg").click({ position: { x: 150, y: 60 } });
	await expect(page.getByLabel("speed, rpm", { exact: true })).not.toHaveValue("6500");
	await page.getByRole("button", { name: "Undo" }).click();
	await expect(page.getByLabel("speed, rpm", { exact: true })).toHaveValue("6500");

	await page.locator("summary", { hasText: "Figures of the whole engine" }).click();
	const figures = page.getByRole("group", { name: "Figures over speed" });
	await expect(figures.locator("tbody tr")).toHaveCount(60);
	await expect(figures.locator("tbody tr").last()).toContainText("6600");
	await page.locator("summary", { hasText: "Share of each cylinder over" }).click();
	await expect(page.getByRole("group", { name: "Shares over speed" }).locator("th")).toHaveCount(
		69,
	);
	const drawing = await textOf(page, range.getByRole("button", { name: "Save SVG" }));
	expect(drawing.name).toBe("Blown-V8-speed-range.svg");
	expect(drawing.text).toContain("Estimate, not a measurement");
	expect(drawing.text).toContain("stroke-dasharray");
	expect(drawing.text).not.toContain("class=");
});

test("everybody can use the engine's panels, in light and dark", async ({ page }) => {
	test.slow();
	await openBlown(page, (study) => {
		blower(study).driveRatio = 2.4;
		blower(study).greatestSpeed = 50;
	});
	const slider = await openRange(page);
	await page.locator("summary", { hasText: "Figures of the whole engine" }).click();
	await slider.press("Home");
	await slider.press("Enter");
	await expect(page.locator(".verdict")).toContainText("Past its limit");
	const titles = ["Verdict", "Operating point", "Mixture", "Speed range", "Worth a look"];
	const parts = await Promise.all(
		titles.map(async (name) => {
			const heading = await page.getByRole("region", { name }).getAttribute("aria-labelledby");
			return `section[aria-labelledby="${heading}"]`;
		}),
	);
	for (const colorScheme of ["light", "dark"] as const) {
		await page.emulateMedia({ colorScheme });
		expect(await violations(page, ...parts)).toEqual([]);
	}
});

test("speeds past the blower's table are a gap with its reason, and a passed limit stands first", async ({
	page,
}) => {
	await openBlown(page, (study) => {
		blower(study).driveRatio = 2.4;
		blower(study).greatestSpeed = 50;
	});
	await expect(sentence(page)).toContainText("blower runs above its table's greatest speed");
	await expect(page.locator('section[aria-labelledby="shares-title"]')).toContainText(
		"are not guessed beyond it",
	);
	const slider = await openRange(page);
	await expect(page.locator(".range .gap-reason")).toContainText(
		/From 6\d{3} to 6600\srpm there is a gap\. .*table's greatest speed/,
	);
	await expect(page.locator(".range rect.refused").first()).toBeVisible();
	await slider.press("End");
	await expect(page.locator(".reading")).toContainText("Refused");
	await slider.press("Home");
	await page.getByRole("button", { name: "Make it the study's speed" }).click();
	await expect(page.locator(".verdict .standing")).toContainText(
		/⚠ Past its limit: blower\s+turns at 4320\srpm, above its limit of 3000\srpm: do not run it so\./,
	);
	const first = page.getByRole("region", { name: "Worth a look" }).locator("li").first();
	await expect(first).toContainText("⚠ Past its limit at blower");
	await expect(
		page.getByRole("region", { name: "Operating point" }).locator("td.past"),
	).toContainText("▲past its limit");
});

test("the trims are saved as CSV, in which no cylinder's name can be reckoned; upstream fuel has none", async ({
	page,
}) => {
	const evil = '=HYPERLINK("http://x")';
	const rename = (study: Blown) => {
		for (const node of study.network.nodes) if (node.cylinder === "4") node.cylinder = evil;
		for (const each of study.engine.cylinders) if (each.id === "4") each.id = evil;
		const order = (study.engine as unknown as { firingOrder: string[] }).firingOrder;
		order.splice(order.indexOf("4"), 1, evil);
	};
	await openBlown(page, rename);
	const { name, text } = await textOf(
		page,
		page.getByRole("button", { name: "Save trims as CSV" }),
	);
	expect(name).toBe("Blown-V8-trim.csv");
	const lines = text.replace("\ufeff", "").trimEnd().split("\r\n");
	expect(lines[0]).toContain('Cylinder,"Speed, rpm","Trim of fuel, %","Air from mean, %",Lambda');
	expect(lines).toHaveLength(9);
	expect(lines[4]).toMatch(/^"'=HYPERLINK\(""http:\/\/x""\)",6500,1\.15,1\.15,0\.860,12\.64,/);
	expect(lines[7]).toMatch(/^7,6500,-2\.70,-2\.70,/);

	await openBlown(page, (study) => {
		study.engine.fuel.setting = "upstream";
	});
	const mixture = page.getByRole("region", { name: "Mixture" });
	await expect(mixture).toContainText("No trim column");
	await expect(mixture.locator("th", { hasText: "Trim" })).toHaveCount(0);
	await expect(mixture.getByRole("button")).toHaveCount(0);
	await expect(mixture.locator("tbody")).not.toContainText(/lean|rich/);
});

test("the panels fit a phone", async ({ page }) => {
	await page.setViewportSize({ width: 360, height: 740 });
	await openBlown(page);
	await openRange(page);
	const wide = await page
		.locator("html, .box:has(.found), .box:has(.mixture), .chart")
		.evaluateAll((all) =>
			all.filter((each) => each.scrollWidth > each.clientWidth).map((each) => each.className),
		);
	expect(wide).toEqual([]);
});
