import { describe, expect, it } from "vitest";
import { addLoss, changeLoss } from "../../../www/src/network/blank";
import { draft, type Path, put, type Sheet } from "../../../www/src/network/edit";
import { lookAlong, profile } from "../../../www/src/schedule/along";
import {
	inOrder,
	outOfOrder,
	putRows,
	readRows,
	withBend,
	withStation,
} from "../../../www/src/schedule/rows";
import type { KindInfo } from "../../../www/src/solver/types";
import { CATALOGUE, SHEET } from "../table/fixture";

const LOSSES: Path = ["network", "branches", 1, "losses"];
const SCHEDULE: KindInfo = { ...(CATALOGUE.losses[0] as KindInfo), kind: "schedule", fields: [] };
const stationsAt = (sheet: Sheet, at: number) => readRows(sheet, [...LOSSES, at, "stations"]);
const values = (sheet: Sheet, at: number) => stationsAt(sheet, at).map((row) => row.values);

describe("a new section schedule", () => {
	it("has two stations of the section before it", () => {
		expect(values(addLoss(SHEET, LOSSES, SCHEDULE), 2)).toEqual([
			{ at: 0, area: 0.001 },
			{ at: 0.1, area: 0.001 },
		]);
	});

	it("is as long as the duct in whose place it comes, and gives its sections back", () => {
		const made = changeLoss(SHEET, LOSSES, 1, SCHEDULE);
		expect(values(made, 1)).toEqual([
			{ at: 0, area: 0.001 },
			{ at: 0.12, area: 0.001 },
		]);
		const narrow = put(made, [...LOSSES, 1, "stations", 1, "area"], 0.0008);
		const opening = CATALOGUE.losses[1] as KindInfo;
		const behind = addLoss(narrow, LOSSES, opening);
		expect(behind.study.network.branches[1]?.losses[2]).toMatchObject({ area: 0.0008 });
	});

	it("asks for its sections where nothing beside it has one", () => {
		const bare = put(SHEET, LOSSES, []);
		expect(stationsAt(addLoss(bare, LOSSES, SCHEDULE), 0).map(({ texts }) => texts)).toEqual([
			{ area: "" },
			{ area: "" },
		]);
	});
});

describe("the rows of a schedule", () => {
	const path: Path = [...LOSSES, 1, "stations"];
	const made = changeLoss(SHEET, LOSSES, 1, SCHEDULE);

	it("keep text that is no value while rows come and go", () => {
		const typed = draft(made, [...path, 1, "area"], "wide");
		const more = putRows(typed, path, withStation(readRows(typed, path), 0), true);
		expect(readRows(more, path).map(({ values, texts }) => [values.at, texts])).toEqual([
			[0, {}],
			[0.06, {}],
			[0.12, { area: "wide" }],
		]);
	});

	it("go on by the last step behind the last one", () => {
		expect(withStation(readRows(made, path), 1)[2]?.values.at).toBe(0.24);
	});

	it("are put in order along the way, and two at one station stay as they stand", () => {
		const rows = [0.1, 0, 0.1].map((at, area) => ({ values: { at, area }, texts: {} }));
		expect(outOfOrder(rows)).toBe(true);
		expect(inOrder(rows).map((row) => row.values.area)).toEqual([1, 0, 2]);
	});

	it("of bends leave the radius open, and a list without bends is none", () => {
		const bends: Path = [...LOSSES, 1, "bends"];
		const bent = putRows(made, bends, withBend([], readRows(made, path), 1), false);
		expect(readRows(bent, bends)).toEqual([
			{ values: { at: 0.06, angle: 1, radius: 0 }, texts: { radius: "" } },
		]);
		expect(putRows(bent, bends, [], false).study).toEqual(made.study);
	});
});

describe("the area along the way", () => {
	const stations = (...rows: [number, number][]) => rows.map(([at, area]) => ({ at, area }));

	it("has its first smallest section marked", () => {
		expect(lookAlong(stations([0, 2], [1, 1], [2, 1])).smallest).toBe(1);
		expect(lookAlong([]).smallest).toBeNull();
	});

	it("jumps where it changes by more than 15 % within a tenth of a diameter, or at one station", () => {
		// A circle of 1000 mm2 is 35.7 mm across.
		const jumps = (way: number, area: number) => lookAlong(stations([0, 0.001], [way, area])).jumps;
		expect(jumps(0.0035, 0.0012)).toEqual([{ to: 1, change: expect.closeTo(0.2, 10) }]);
		expect(jumps(0.0037, 0.0012)).toEqual([]);
		expect(jumps(0.0035, 0.00114)).toEqual([]);
		expect(jumps(0, 0.00101)).toHaveLength(1);
	});

	it("is drawn from no area up, over the width that there is", () => {
		const drawn = profile(stations([0, 0.001], [0.1, 0.0005]), 216);
		expect(drawn?.points).toEqual([
			{ x: 8, y: 18 },
			{ x: 208, y: 48 },
		]);
		expect(profile(stations([0, 0.001], [0, 0.001]), 216)).toBeNull();
	});
});
