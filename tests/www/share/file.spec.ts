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

test("a file that was saved in the middle of an edit can be put right on the sheet", async ({
	page,
}) => {
	await open(page);
	const before = await deviations(page);
	await windowArea(page).fill("0");
	await page.getByLabel("Branch 4, name").fill("");
	const study = await saved(page);
	await page.getByRole("button", { name: "Undo" }).click();
	await page.getByRole("button", { name: "Undo" }).click();
	await expect(windowArea(page)).toHaveValue("2100");

	await openText(page, JSON.stringify(study), "half.json");
	const dialog = page.getByRole("dialog");
	await expect(dialog).toContainText("half.json was not opened");
	expect(await deviations(page)).toEqual(before);
	await dialog.getByRole("button", { name: "Put it on the sheet as it is" }).click();
	await expect(dialog).toHaveCount(0);
	await expect(windowArea(page)).toHaveValue("0");
	await expect(windowArea(page)).toHaveAttribute("aria-invalid", "true");
	await expect(page.getByLabel("Branch 4, name")).toHaveValue("");
	expect(await saved(page)).toEqual(study);
	await page.getByRole("button", { name: "Undo" }).click();
	await expect(windowArea(page)).toHaveValue("2100");
	expect(await deviations(page)).toEqual(before);
});

test("what is too large for the sheet, or has a value of another type, cannot be put there", async ({
	page,
}) => {
	await open(page);
	const study = (await saved(page)) as { network: { nodes: object[]; branches: object[] } };
	const [branch] = study.network.branches;
	const branches = Array.from({ length: 3000 }, (_, at) => ({ ...branch, id: `way ${at}` }));
	const large = { ...study, network: { ...study.network, branches } };
	for (const wrong of [large, { ...study, notes: 3 }]) {
		await openText(page, JSON.stringify(wrong), "wrong.json");
		const dialog = page.getByRole("dialog");
		await expect(dialog).toContainText("wrong.json was not opened");
		await expect(dialog.getByRole("button")).toHaveText(["Close"]);
		await page.keyboard.press("Escape");
		await expect(dialog).toHaveCount(0);
	}
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
