import { expect, test } from "@playwright/test";
import { deviations, open, openText, saved, windowArea } from "../sheet";

test("a bad file is not opened, lists what is wrong with it, and leaves the sheet alone", async ({
	page,
}) => {
	await open(page);
	const before = await deviations(page);
	const study = structuredClone(await saved(page)) as {
		network: { branches: { losses: { area: unknown }[] }[] };
		engine: { speed: unknown };
	};
	const loss = study.network.branches[0]?.losses[0];
	if (loss) loss.area = "wide";
	study.engine.speed = -1;
	await openText(page, JSON.stringify(study), "bad.json");
	const dialog = page.getByRole("dialog");
	await expect(dialog).toContainText("bad.json was not opened");
	await expect(dialog.getByRole("listitem")).toHaveCount(2);
	await expect(dialog).toContainText("neck, losses[0].area");
	await expect(dialog).toContainText("engine, speed");
	await dialog.getByRole("button", { name: "Close" }).click();
	await expect(dialog).toHaveCount(0);
	expect(await deviations(page)).toEqual(before);
	await expect(page.getByRole("button", { name: "Undo" })).toBeDisabled();
});

for (const [what, text] of [
	["a file that is no JSON", "bore;stroke\n86;86\n"],
	["a list", "[1, 2, 3]"],
	["another program's object", '{"format": "something-else"}'],
] as const) {
	test(`${what} is refused with a reason`, async ({ page }) => {
		await open(page);
		await openText(page, text);
		await expect(page.getByRole("dialog").getByRole("listitem")).toHaveCount(1);
		await page.keyboard.press("Escape");
		await expect(page.getByRole("dialog")).toHaveCount(0);
	});
}

test("a saved file opens as it was saved", async ({ page }) => {
	await open(page);
	await windowArea(page).fill("1750");
	const study = await saved(page);
	await page.keyboard.press("Control+z");
	await expect(windowArea(page)).toHaveValue("2100");
	await openText(page, JSON.stringify(study));
	await expect(windowArea(page)).toHaveValue("1750");
	expect(await saved(page)).toEqual(study);
});
