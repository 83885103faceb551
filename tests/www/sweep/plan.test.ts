import { describe, expect, it } from "vitest";
import { type Path, put, remove, valueAt } from "../../../www/src/network/edit";
import { sheetOf } from "../../../www/src/network/versions";
import type { Study } from "../../../www/src/solver/types";
import {
	areOfNetwork,
	labelOf,
	likeCells,
	pathOf,
	type Swept,
	sweptAt,
	togetherOf,
} from "../../../www/src/sweep/cells";
import {
	type Axis,
	areAlike,
	axisFault,
	axisOf,
	pointsOf,
	presentOf,
	putAt,
	tied,
	unitOf,
	valuesOf,
	valueText,
} from "../../../www/src/sweep/plan";
import { chosenUnits } from "../../../www/src/units";
import { fieldAt } from "../../../www/src/view/bounds";
import { catalogue, example } from "../wasm";

const STUDY = example("v8_lid");
const UNITS = chosenUnits(undefined);

function place(study: Study, id: string): number {
	return study.network.branches.findIndex((branch) => branch.id === id);
}

function windowAt(id: string, field = "area", study = STUDY): Swept {
	const path: Path = ["network", "branches", place(study, id), "losses", 0, field];
	const info = fieldAt({ element: id, field: `losses[0].${field}` }, study, catalogue);
	if (!info) throw new Error(`${id} has no ${field}`);
	return sweptAt(study, path, info);
}

const axis = (cells: readonly Swept[], changed: Partial<Axis> = {}): Axis => ({
	...axisOf(STUDY, cells, UNITS, 21),
	...changed,
});

const area = (study: Study, id: string) =>
	valueAt(study, ["network", "branches", place(study, id), "losses", 0, "area"]) as number;

describe("cells of a sweep", () => {
	it("are found again when rows before them are gone, and not when their own is", () => {
		const cell = windowAt("window 3");
		const sheet = sheetOf(STUDY);
		const first = remove(sheet, ["network", "branches"], 0).study;
		expect(pathOf(first, cell)).toEqual([
			"network",
			"branches",
			place(STUDY, "window 3") - 1,
			"losses",
			0,
			"area",
		]);
		const without = remove(sheet, ["network", "branches"], place(STUDY, "window 3")).study;
		expect(pathOf(without, cell)).toBeNull();
		expect(axisFault(without, axis([cell]), 101)).toContain("no longer has window 3, area");
	});

	it("are no longer there when their loss has become one of another kind", () => {
		const path = ["network", "branches", place(STUDY, "window 3"), "losses", 0];
		const { study } = put(sheetOf(STUDY), path, { kind: "duct", area: 0.002, length: 0.1 });
		expect(pathOf(study, windowAt("window 3"))).toBeNull();
	});

	it("can be tied to all others of the same field in losses of the same kind, in the study's order", () => {
		const like = likeCells(STUDY, [windowAt("window 3")]).map(({ row }) => row);
		const expected = STUDY.network.branches.flatMap(({ id, losses }) =>
			losses.filter(({ kind }) => kind === "opening").map(() => id),
		);
		expect(like).toEqual(expected);
		expect(like.length).toBeGreaterThan(8);
	});

	it("are named by the words that their rows share", () => {
		expect(labelOf(windowAt("window 3"))).toBe("window 3, loss 1, area");
		expect(togetherOf([windowAt("window 3")])).toBe("window 3 area");
		expect(togetherOf(["window 1", "window 3"].map((id) => windowAt(id)))).toBe("window area");
		expect(togetherOf(["window 1", "row window 1-3"].map((id) => windowAt(id)))).toBe(
			"area of 2 cells",
		);
	});

	it("of the engine are in no version's own", () => {
		const info = fieldAt({ element: "engine", field: "speed" }, STUDY, catalogue);
		if (!info) throw new Error("the engine has no speed");
		const speed = sweptAt(STUDY, ["engine", "speed"], info);
		expect(pathOf(STUDY, speed)).toEqual(["engine", "speed"]);
		expect(areOfNetwork([speed])).toBe(false);
		expect(areOfNetwork([windowAt("window 1")])).toBe(true);
	});
});

describe("values of a sweep", () => {
	it("begin about what there is, inside the catalogue's bounds, at figures one would type", () => {
		const { from, to, tie, count } = axis([windowAt("window 1")]);
		expect([from, to]).toEqual([0.0014, 0.0028]);
		expect([tie, count]).toEqual(["same", 21]);
		const coefficient = axis([windowAt("window 1", "dischargeCoefficient")]);
		expect(coefficient.to).toBeLessThanOrEqual(1);
	});

	it("begin somewhere even where there is nothing", () => {
		const cell = windowAt("window 1");
		const path = pathOf(STUDY, cell) ?? [];
		const { study } = put(sheetOf(STUDY), path, 0);
		const { from, to } = axisOf(study, [cell], UNITS, 21);
		expect(to).toBeGreaterThan(from);
		expect(from).toBeGreaterThanOrEqual(cell.info.minimum);
	});

	it("go in equal steps from end to end, rounded to what one would type", () => {
		const its = axis([windowAt("window 1")], { from: 0.0015, to: 0.0027, count: 5 });
		const unit = unitOf(its, UNITS);
		expect(valuesOf(its, unit).map((each) => valueText(each, unit))).toEqual([
			"1500",
			"1800",
			"2100",
			"2400",
			"2700",
		]);
		const odd = axis([windowAt("window 1")], { from: 0.00150123, to: 0.0027, count: 8 });
		expect(valueText(valuesOf(odd, unit)[1] ?? 0, unit)).toBe("1672");
		expect(valuesOf(odd, unit)[0]).toBe(0.00150123);
	});

	it("of cells that differ are multiples of each, unless all are to be at one value", () => {
		const cells = ["window 1", "window 7"].map((id) => windowAt(id));
		const its = axis(cells);
		expect(its.tie).toBe("factor");
		expect([its.from, its.to]).toEqual([0.7, 1.3]);
		expect(presentOf(STUDY, its)).toBe(1);
		const doubled = putAt(sheetOf(STUDY), [its], [2]).study;
		for (const id of ["window 1", "window 7"])
			expect(area(doubled, id)).toBeCloseTo(2 * area(STUDY, id), 12);
		const same = tied(STUDY, { ...its, tie: "same" }, UNITS);
		expect(presentOf(STUDY, same)).toBeNull();
		const level = putAt(sheetOf(STUDY), [same], [0.002]).study;
		expect([area(level, "window 1"), area(level, "window 7")]).toEqual([0.002, 0.002]);
		expect(area(level, "window 3")).toBe(area(STUDY, "window 3"));
	});

	it("as multiples are of the study that was swept, whatever it has become since", () => {
		const cells = ["window 1", "window 7"].map((id) => windowAt(id));
		const its = axis(cells);
		const once = putAt(sheetOf(STUDY), [its], [1.1]);
		const again = putAt(once, [its], [1.2], STUDY).study;
		expect(area(again, "window 1")).toBeCloseTo(1.2 * area(STUDY, "window 1"), 12);
	});

	it("outside what the cells may hold, of no range or of too few points are told", () => {
		const cells = [windowAt("window 1", "dischargeCoefficient")];
		const most = cells[0]?.info.maximum ?? 0;
		expect(axisFault(STUDY, axis(cells), 101)).toBe("");
		expect(axisFault(STUDY, axis(cells, { to: most * 1.01 }), 101)).toContain("reach beyond");
		expect(axisFault(STUDY, axis(cells, { from: 0.9, to: 0.8 }), 101)).toContain("less than");
		expect(axisFault(STUDY, axis(cells, { count: 4 }), 101)).toContain("Between 5 and 101");
		expect(axisFault(STUDY, axis(cells, { count: 41 }), 31)).toContain("Between 5 and 31");
		expect(axisFault(STUDY, axis(cells, { cells: [] }), 101)).toContain("tick one");
	});

	it("of two dimensions make a grid, the first running fastest", () => {
		const plan = [
			axis([windowAt("window 1")], { from: 0.001, to: 0.002, count: 5 }),
			axis([windowAt("window 2")], { from: 0.003, to: 0.004, count: 6 }),
		] as const;
		const points = pointsOf(plan, UNITS);
		expect(points).toHaveLength(30);
		expect(points[1]).toEqual([0.00125, 0.003]);
		expect(points[5]).toEqual([0.001, 0.0032]);
		const { study } = putAt(sheetOf(STUDY), plan, points[5] ?? []);
		expect([area(study, "window 1"), area(study, "window 2")]).toEqual([0.001, 0.0032]);
	});

	it("hold for every study that differs in nothing but the swept cells", () => {
		const plan = [axis([windowAt("window 1")])] as const;
		const moved = putAt(sheetOf(STUDY), plan, [0.0025]).study;
		expect(areAlike(STUDY, moved, plan)).toBe(true);
		const other = putAt(sheetOf(STUDY), [axis([windowAt("window 2")])], [0.0025]).study;
		expect(areAlike(STUDY, other, plan)).toBe(false);
	});
});
