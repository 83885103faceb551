/** Two tabs on one study. */
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { violations } from "../axe";
import { open, windowArea } from "../sheet";
import { names } from "./studies";

/** A tab with an edited study, and a second one that opens on it. */
async function two(context: BrowserContext): Promise<[Page, Page]> {
	const first = await context.newPage();
	await open(first);
	await windowArea(first).fill("1750");
	await windowArea(first).press("Tab");
	const second = await context.newPage();
	await second.goto("./");
	await expect(windowArea(second)).toHaveValue("1750");
	await expect(bar(second)).toContainText("Another tab has this study open");
	return [first, second];
}

function bar(page: Page) {
	return page.locator(".keeping");
}

function called(page: Page) {
	return page.getByRole("textbox", { name: "Name", exact: true });
}

test("the second tab is told, and watches", async ({ context }) => {
	const [first, second] = await two(context);
	await expect(bar(first).locator(".bar")).toHaveCount(0);
	for (const colorScheme of ["light", "dark"] as const) {
		await second.emulateMedia({ colorScheme });
		expect(await violations(second, ".keeping")).toEqual([]);
	}
	await bar(second).getByRole("button", { name: "Watch" }).click();
	await expect(bar(second)).toContainText("Watching");
	await windowArea(first).fill("1600");
	await expect(windowArea(second)).toHaveValue("1600");
	await windowArea(first).fill("16 or so");
	await expect(windowArea(second)).toHaveValue("16 or so");
	expect(await names(second)).toEqual(["V8 lid"]);
});

test("a tab that watches looks at the version that it likes", async ({ context }) => {
	const first = await context.newPage();
	await open(first);
	await first.getByRole("button", { name: "New variant" }).click();
	await windowArea(first).fill("1750");
	await windowArea(first).press("Tab");
	const second = await context.newPage();
	await second.goto("./");
	await expect(windowArea(second)).toHaveValue("1750");
	await expect(bar(second)).toContainText("Another tab has this study open");
	await second.getByRole("radio", { name: "Base" }).check();
	await expect(windowArea(second)).toHaveValue("2100");
	await windowArea(first).fill("1600");
	await windowArea(first).press("Tab");
	await second.getByRole("radio", { name: "Variant 1" }).check();
	await expect(windowArea(second)).toHaveValue("1600");
	await expect(bar(second)).toContainText("Another tab has this study open");
	expect(await names(second)).toEqual(["V8 lid"]);
});

test("the second tab carries on, and the first one says that it only watches", async ({
	context,
}) => {
	const [first, second] = await two(context);
	// Typed the moment before: the first tab hands it over with the rest.
	await windowArea(first).fill("1650");
	await bar(second).getByRole("button", { name: "Carry on here" }).click();
	await expect(bar(second).locator(".bar")).toHaveCount(0);
	await expect(windowArea(second)).toHaveValue("1650");
	await expect(bar(first)).toContainText("Another tab carries on with this study");
	await windowArea(second).fill("1550");
	await expect(windowArea(first)).toHaveValue("1550");
	await bar(first).getByRole("button", { name: "Carry on here" }).click();
	await expect(bar(second)).toContainText("Another tab carries on");
	await windowArea(first).fill("1450");
	await expect(windowArea(second)).toHaveValue("1450");
	expect(await names(first)).toEqual(["V8 lid"]);
});

test("what is typed into a tab that watches becomes a copy, and nothing is overwritten", async ({
	context,
}) => {
	const [first, second] = await two(context);
	await windowArea(second).press("F2");
	await second.keyboard.type("0");
	await expect(called(second)).toHaveValue(/^V8 lid \(copy \d{4}-\d\d-\d\d \d\d:\d\d\)$/);
	await expect(bar(second)).toContainText("goes on as a study of its own");
	await second.keyboard.type("0");
	await expect(windowArea(second)).toHaveValue("175000");
	await expect(windowArea(first)).toHaveValue("1750");
	await expect(bar(first).locator(".bar")).toHaveCount(0);
	await windowArea(first).fill("1234");
	await expect(windowArea(second)).toHaveValue("175000");
	expect(await names(first)).toEqual(["V8 lid", expect.stringMatching(/^V8 lid \(copy /)]);
	await second.reload();
	await expect(windowArea(second)).toHaveValue("175000");
	await expect(bar(second).locator(".bar")).toHaveCount(0);
});

test("a copy can be opened by a button", async ({ context }) => {
	const [first, second] = await two(context);
	await bar(second).getByRole("button", { name: "Open a copy" }).click();
	await expect(called(second)).toHaveValue(/\(copy /);
	await windowArea(second).fill("1111");
	await expect(windowArea(first)).toHaveValue("1750");
	expect(await names(first)).toHaveLength(2);
});

for (const end of ["closed", "killed"] as const) {
	test(`a study is free again when the tab that had it is ${end}`, async ({ context }) => {
		const [first, second] = await two(context);
		if (end === "closed") await first.close();
		else {
			const session = await context.newCDPSession(first);
			session.send("Page.crash").catch(() => {});
		}
		await expect(bar(second)).toContainText("it is edited here again");
		await windowArea(second).fill("1300");
		await bar(second).getByRole("button", { name: "Close" }).click();
		await second.reload();
		await expect(windowArea(second)).toHaveValue("1300");
		await expect(bar(second).locator(".bar")).toHaveCount(0);
	});
}

test("a tab that does not answer is overruled; what it had not written yet becomes a copy", async ({
	context,
}) => {
	const [first, second] = await two(context);
	// The tab is held up for longer than the other one waits, with a keystroke that is not written yet.
	const stuck = first.evaluate(() => {
		const cell = document.querySelector<HTMLInputElement>(
			'[data-path="network.branches.2.losses.0.area"]',
		);
		if (!cell) throw new Error("no cell");
		cell.value = "1999";
		cell.dispatchEvent(new InputEvent("input", { bubbles: true }));
		const end = performance.now() + 3000;
		return Promise.resolve().then(() => {
			while (performance.now() < end);
		});
	});
	await bar(second).getByRole("button", { name: "Carry on here" }).click();
	await expect(bar(second).locator(".bar")).toHaveCount(0);
	await windowArea(second).fill("1400");
	await windowArea(second).press("Tab");
	await stuck;
	await expect(bar(first).locator(".bar")).not.toHaveCount(0);
	const kept = await names(second);
	expect(kept).toEqual(["V8 lid", expect.stringMatching(/\(copy /)]);
	await expect(windowArea(second)).toHaveValue("1400");
	// Whichever tab shows it, both figures are on the shelf.
	await second.getByRole("button", { name: "Studies" }).click();
	await second.getByRole("button", { name: /^Open V8 lid \(copy/ }).click();
	await expect(windowArea(second)).toHaveValue("1999");
});

test("two tabs that open studies of their own do not disturb each other", async ({ context }) => {
	const [first, second] = await two(context);
	await second.locator("summary", { hasText: "Examples" }).click();
	await second.getByRole("button", { name: "Symmetric lid" }).click();
	await expect(called(second)).toHaveValue(/symmetric/i);
	await expect(bar(second).locator(".bar")).toHaveCount(0);
	await second.keyboard.press("Control+z");
	await expect(bar(second)).toContainText("Another tab has this study open");
	await expect(windowArea(first)).toHaveValue("1750");
});
