import { expect, type Locator, type Page, test } from "@playwright/test";
import { violations } from "../axe";
import { open, saved, sentence, windowArea } from "../sheet";

const dialog = (page: Page) => page.getByRole("dialog", { name: "Begin with your own engine" });
const preview = (page: Page) => dialog(page).getByRole("status");
const title = (page: Page) => page.locator(".title-block .large");

async function begin(page: Page): Promise<Locator> {
	await page.getByRole("button", { name: "New", exact: true }).click();
	await expect(dialog(page)).toBeVisible();
	return dialog(page);
}

async function focused(page: Page): Promise<string> {
	return page.evaluate(() => {
		const active = document.activeElement as HTMLInputElement | null;
		return active?.labels?.[0]?.textContent?.trim() ?? active?.textContent?.trim() ?? "";
	});
}

/** Goes on with the Tab key until the control of this name is in use. */
async function tabTo(page: Page, name: RegExp) {
	for (let press = 0; press < 60; press += 1) {
		if (name.test(await focused(page))) return;
		await page.keyboard.press("Tab");
	}
	throw new Error(`the Tab key does not lead to ${name}`);
}

test("from the first page to a verdict on a V8 of one's own by keyboard alone, and back by undo", async ({
	page,
}) => {
	await open(page);
	const before = (await sentence(page).textContent()) ?? "";
	await tabTo(page, /^Begin with your own engine$/);
	await page.keyboard.press("Enter");
	await expect(dialog(page)).toBeVisible();
	expect(await focused(page)).toBe("layout");
	await page.keyboard.type("V8");
	await tabTo(page, /^displacement/);
	await page.keyboard.type("6200");
	await tabTo(page, /from above, through a core/);
	await page.keyboard.press("ArrowDown");
	await expect(dialog(page).getByLabel("at the front end")).toBeChecked();
	await tabTo(page, /^runner section/);
	await page.keyboard.type("d 48");
	await expect(preview(page)).toContainText("A V8 of 6.2 L");
	await expect(preview(page)).toContainText("fed at the front end");
	await page.keyboard.press("Enter");
	await expect(dialog(page)).toHaveCount(0);
	await expect(title(page)).toHaveText("V8, fed at the front end");
	await expect(sentence(page)).not.toHaveText(before);
	await expect(page.locator("#errors")).toHaveCount(0);
	const study = (await saved(page)) as {
		engine: { cylinders: { sweptVolume: number; bank: string }[]; firingOrder: string[] };
	};
	expect(study.engine.cylinders.map(({ bank }) => bank).join(" ")).toMatch(/^(left right ?){4}$/);
	expect(study.engine.cylinders[0]?.sweptVolume).toBeCloseTo(0.0062 / 8, 9);
	expect(study.engine.firingOrder).toHaveLength(8);
	await page.keyboard.press("Control+z");
	await expect(title(page)).toHaveText("V8 lid");
	await expect(sentence(page)).toHaveText(before);
});

test("the sheet that was there comes back with all that was typed into it", async ({ page }) => {
	await open(page);
	await windowArea(page).fill("12 apples");
	await begin(page);
	await dialog(page).getByRole("button", { name: "Build it" }).click();
	await expect(title(page)).toHaveText("V8, fed from above, through a core");
	await page.getByRole("button", { name: "Undo" }).click();
	await expect(windowArea(page)).toHaveValue("12 apples");
	await page.getByRole("button", { name: "Redo" }).click();
	await expect(title(page)).toHaveText("V8, fed from above, through a core");
});

test("every layout, feed and kind of pockets can be chosen, and the preview says so", async ({
	page,
}) => {
	await open(page);
	await begin(page);
	const layouts = await dialog(page).getByLabel("layout").locator("option").allInnerTexts();
	expect(layouts).toHaveLength(11);
	for (const layout of layouts.slice(0, -1)) {
		await dialog(page).getByLabel("layout").selectOption(layout);
		await expect(preview(page)).toContainText(` ${layout} of `);
	}
	for (const group of ["the air comes in", "before the runners"]) {
		const radios = dialog(page).getByRole("radiogroup", { name: group }).getByRole("radio");
		for (const radio of await radios.all()) {
			const before = (await preview(page).textContent()) ?? "";
			const was = await radio.isChecked();
			await radio.check();
			if (!was) await expect(preview(page)).not.toHaveText(before);
		}
	}
});

test("a single bank of any number is asked for its number", async ({ page }) => {
	await open(page);
	await begin(page);
	await expect(dialog(page).getByLabel("cylinders", { exact: true })).toHaveCount(0);
	await dialog(page).getByLabel("layout").selectOption("single bank of any number");
	const count = dialog(page).getByLabel("cylinders", { exact: true });
	await count.fill("2.5");
	await expect(dialog(page)).toContainText("A whole number from 1 to 16.");
	await count.fill("7");
	await expect(preview(page)).toContainText("A single bank of 7 of 3.5 L");
	await dialog(page).getByRole("button", { name: "Build it" }).click();
	await expect(title(page)).toHaveText("Single bank of 7, fed from above, through a core");
	await expect(page.locator("table.shares tbody tr")).toHaveCount(7);
});

test("what cannot be used is said beside its field and gone to; nothing is built, nothing is lost", async ({
	page,
}) => {
	await open(page);
	await begin(page);
	const boost = dialog(page).getByLabel(/^boost at the source/);
	const order = dialog(page).getByLabel("firing order");
	await boost.fill("a lot");
	await order.fill("1 8 4 3 6 5 7 9");
	await expect(dialog(page)).toContainText("Not a number.");
	await expect(dialog(page)).toContainText("There is no cylinder 9.");
	await expect(preview(page)).toContainText("2 answers need a look");
	await dialog(page).getByRole("button", { name: "Build it" }).click();
	await expect(order).toBeFocused();
	await expect(dialog(page)).toBeVisible();
	await page.keyboard.press("Escape");
	await expect(dialog(page)).toHaveCount(0);
	await expect(title(page)).toHaveText("V8 lid");
	await expect(page.getByRole("button", { name: "Undo" })).toBeDisabled();
	await begin(page);
	await expect(boost).toHaveValue("a lot");
	await expect(order).toHaveValue("1 8 4 3 6 5 7 9");
	await boost.fill("-500");
	await expect(dialog(page)).toContainText(/Must lie between −?-?\d/);
	await boost.fill("50");
	await order.fill("");
	await expect(preview(page)).toContainText("151.3 kPa abs at the source");
	await dialog(page).getByRole("button", { name: "Build it" }).click();
	await expect(title(page)).toContainText("V8, fed");
	await expect(page.getByLabel("Firing order")).toHaveValue("");
});

test("undo while an answer is typed leaves the sheet behind alone", async ({ page }) => {
	await open(page);
	await windowArea(page).fill("1750");
	await begin(page);
	await dialog(page)
		.getByLabel(/^neck length/)
		.fill("200");
	await page.keyboard.press("Control+z");
	await page.keyboard.press("Escape");
	await expect(dialog(page)).toHaveCount(0);
	await expect(windowArea(page)).toHaveValue("1750");
});

test("a size that is emptied takes its typical value again, and the notes name what nobody typed", async ({
	page,
}) => {
	await open(page);
	await begin(page);
	const neck = dialog(page).getByLabel(/^neck length/);
	const usual = await neck.inputValue();
	await neck.fill("200");
	await neck.fill("");
	await page.keyboard.press("Tab");
	await expect(neck).toHaveValue(usual);
	await dialog(page)
		.getByLabel(/^runner length/)
		.fill("150");
	await dialog(page).getByRole("button", { name: "Build it" }).click();
	await expect(page.getByLabel("Notes")).toHaveValue(
		/common practice without a source.*neck length/,
	);
	await expect(page.getByLabel("Notes")).not.toHaveValue(/runner length/);
});

test("units are those of the study, and go on with it", async ({ page }) => {
	await open(page);
	await page.locator("summary", { hasText: "Units" }).click();
	await page.getByLabel("Section area").selectOption("in2");
	await page.getByLabel("Volume", { exact: true }).selectOption("L");
	await page.keyboard.press("Escape");
	await begin(page);
	await dialog(page).getByLabel("displacement, L").fill("6,2");
	await expect(dialog(page).getByLabel("runner section, in²")).toHaveValue("2.883");
	await dialog(page).getByRole("button", { name: "Build it" }).click();
	await expect(title(page)).toContainText("V8, fed");
	expect(await saved(page)).toMatchObject({ settings: { units: { area: "in2", volume: "L" } } });
});

test("a first-time reader is invited to begin, until there is something of their own", async ({
	page,
}) => {
	await open(page);
	const invitation = page.getByRole("complementary", { name: "How to begin" });
	await expect(invitation).toContainText("an invented example");
	await invitation.getByRole("button", { name: "Begin with your own engine" }).click();
	await dialog(page).getByRole("button", { name: "Build it" }).click();
	await expect(title(page)).toContainText("V8, fed");
	await expect(invitation).toHaveCount(0);
	await page.keyboard.press("Control+z");
	await expect(invitation).toBeVisible();
});

test("a part of the page that cannot be loaded says so, and the sheet works on", async ({
	page,
}) => {
	await open(page);
	await page.route("**/Starter-*.js", (route) => route.abort());
	await page.getByRole("button", { name: "New", exact: true }).click();
	await expect(page.getByRole("alert")).toContainText("could not be loaded");
	await expect(sentence(page)).toContainText("Cylinder");
});

for (const [what, width, height] of [
	["on a phone", 360, 740],
	["at 200 % of a small desk", 640, 400],
] as const) {
	test(`the starter is used ${what} without scrolling sideways`, async ({ page }) => {
		await page.setViewportSize({ width, height });
		await open(page);
		await begin(page);
		await dialog(page).getByLabel("at both ends").check();
		await dialog(page)
			.getByLabel(/^log section/)
			.fill("60 x 80");
		const wide = await page.evaluate(() =>
			[...document.querySelectorAll("dialog, dialog *")].some(
				(each) =>
					each.scrollWidth > each.clientWidth + 1 && getComputedStyle(each).overflowX !== "visible",
			),
		);
		expect(wide).toBe(false);
		const build = dialog(page).getByRole("button", { name: "Build it" });
		await expect(build).toBeInViewport({ ratio: 1 });
		await build.click();
		await expect(title(page)).toHaveText("V8, fed at both ends");
		await expect(sentence(page)).toBeInViewport();
	});
}

for (const scheme of ["light", "dark"] as const) {
	test(`everybody can use the starter, ${scheme}`, async ({ page }) => {
		await page.emulateMedia({ colorScheme: scheme });
		await open(page);
		expect(await violations(page, "header")).toEqual([]);
		await begin(page);
		expect(await violations(page, "dialog")).toEqual([]);
		await dialog(page)
			.getByLabel(/^neck length/)
			.fill("x");
		await dialog(page).getByLabel("layout").selectOption("single bank of any number");
		expect(await violations(page, "dialog")).toEqual([]);
	});
}
