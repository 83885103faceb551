import { describe, expect, it } from "vitest";
import { draft, type Path, put, type Sheet } from "../../../www/src/network/edit";
import type { Node, Valve } from "../../../www/src/solver/types";
import { readBlock } from "../../../www/src/table/block";
import { curve } from "../../../www/src/valve/curve";
import { pointFaults } from "../../../www/src/valve/faults";
import { pastePoints } from "../../../www/src/valve/paste";
import {
	countValves,
	followed,
	putPoints,
	readPoints,
	toAllValves,
	usualPoints,
	withPoint,
} from "../../../www/src/valve/points";
import { BOOK, SHEET } from "../table/fixture";
import { catalogue } from "../wasm";

const VALVE: Valve = { diameter: 0.035, lift: 0.008, count: 1 };
const OWN: [number, number][] = [
	[0.1, 0.6],
	[0.2, 0.55],
];
const { valveCurve } = catalogue;

function port(id: string, valve?: Valve): Node {
	return { id, kind: "port", cylinder: id, ...(valve && { valve }) };
}

/** Four ports: one without a valve, the others with these. */
function sheet(first: Valve, second: Valve = VALVE, third: Valve = VALVE): Sheet {
	const nodes = [port("1", first), port("2"), port("3", second), port("4", third)];
	return put({ study: SHEET.study, drafts: {} }, ["network", "nodes"], nodes);
}

function valveAt({ study }: Sheet, index: number): Valve | undefined {
	const node = study.network.nodes[index];
	return node?.kind === "port" ? node.valve : undefined;
}

const FIRST: Path = ["network", "nodes", 0, "valve"];
const TABLE: Path = [...FIRST, "dischargeTable"];

function paste(text: string, place = { row: 0, column: 0 }) {
	const before = sheet({ ...VALVE, dischargeTable: OWN });
	const pasted = pastePoints(readPoints(before, TABLE), place, readBlock(text), BOOK.units);
	if (pasted.kind === "refused") throw new Error(pasted.reason);
	const { points, unplaced } = pasted;
	const after = putPoints(before, FIRST, points);
	return { table: valveAt(after, 0)?.dischargeTable, drafts: after.drafts, unplaced };
}

describe("two columns pasted from a spreadsheet", () => {
	it("with a heading take the place of the whole table", () => {
		expect(paste("L/D\tCd\n0,05\t0,65\n0,15\t0,6\n0,25\t0,5").table).toEqual([
			[0.05, 0.65],
			[0.15, 0.6],
			[0.25, 0.5],
		]);
	});

	it("of more points than a study takes are refused as a whole", () => {
		const text = Array.from({ length: 500 }, (_, row) => `${row}\t0.6`).join("\n");
		expect(() => paste(text, { row: 1, column: 0 })).toThrow("these would be 501");
	});

	it("without one go over the cells from the one they are pasted in, and add points", () => {
		expect(paste("0.3\t0.5\n0.4\t0.4", { row: 1, column: 0 }).table).toEqual([
			[0.1, 0.6],
			[0.3, 0.5],
			[0.4, 0.4],
		]);
		expect(paste("0.7\n0.6", { row: 0, column: 1 }).table).toEqual([
			[0.1, 0.7],
			[0.2, 0.6],
		]);
	});

	it("keep text that is no value in its cell, and name what has no cell", () => {
		const { table, drafts, unplaced } = paste("0.1\twide\tnote\n0.2\t0.5");
		expect(table).toEqual([
			[0.1, 0.6],
			[0.2, 0.5],
		]);
		expect(drafts).toEqual({ "network.nodes.0.valve.dischargeTable.0.1": "wide" });
		expect(unplaced).toEqual(["note"]);
	});
});

describe("what is wrong with a table", () => {
	it("is told by point and column", () => {
		const table: [number, number][] = [
			[0.2, 0.6],
			[0.1, 1.4],
			[0.3, 0.5],
		];
		const now = draft(sheet({ ...VALVE, dischargeTable: table }), [...TABLE, 2, 1], "half");
		const faults = pointFaults(readPoints(now, TABLE), valveCurve.fields, BOOK.units);
		expect(faults.map(({ row, column, message }) => [row, column, message])).toEqual([
			[1, 1, "Discharge coefficient, point 2: must lie between 0.01 and 1."],
			[1, 0, "Point 2: 0.1 does not come after 0.2."],
			[2, 1, "Discharge coefficient, point 3: “half”: Not a number."],
		]);
	});

	it("is nothing for the usual curve", () => {
		expect(pointFaults(usualPoints(valveCurve), valveCurve.fields, BOOK.units)).toEqual([]);
	});
});

describe("a valve's discharge", () => {
	it("follows its own table, one number, or the usual curve", () => {
		expect(followed({ ...VALVE, dischargeTable: OWN }, valveCurve)).toEqual(OWN);
		expect(followed({ ...VALVE, dischargeCoefficient: 0.6 }, valveCurve)).toEqual([]);
		expect(followed(VALVE, valveCurve)).toEqual(valveCurve.usual);
	});

	it("goes back to the usual curve with neither table, number nor text of theirs", () => {
		const own = draft(sheet({ ...VALVE, dischargeTable: OWN }), [...TABLE, 0, 1], "wide");
		expect(putPoints(own, FIRST, [])).toEqual(sheet(VALVE));
		expect(putPoints(sheet({ ...VALVE, dischargeCoefficient: 0.6 }), FIRST, [])).toEqual(
			sheet(VALVE),
		);
	});

	it("is given to every valve and to no port without one", () => {
		const number = { ...VALVE, diameter: 0.03, dischargeCoefficient: 0.5 };
		const own = { ...VALVE, dischargeTable: OWN };
		expect(toAllValves(sheet(own, number), 0)).toEqual(
			sheet(own, { ...VALVE, diameter: 0.03, dischargeTable: OWN }, own),
		);
		expect(toAllValves(sheet(number, own), 0)).toEqual(
			sheet(
				number,
				{ ...VALVE, dischargeCoefficient: 0.5 },
				{ ...VALVE, dischargeCoefficient: 0.5 },
			),
		);
		expect(toAllValves(sheet(VALVE, own, number), 0)).toEqual(
			sheet(VALVE, VALVE, { ...VALVE, diameter: 0.03 }),
		);
		expect(countValves(sheet(own).study.network.nodes)).toBe(3);
	});

	it("gets a point halfway to the next, and a step on behind the last", () => {
		const points = readPoints(sheet({ ...VALVE, dischargeTable: OWN }), TABLE);
		const values = (row: number) =>
			withPoint(points, row).map((point) => point.map(({ value }) => value));
		expect(values(0)).toEqual([
			[0.1, 0.6],
			[0.15, 0.575],
			[0.2, 0.55],
		]);
		expect(values(1).at(-1)).toEqual([0.3, 0.55]);
	});
});

describe("the drawing", () => {
	it("is level before the first point and beyond the last, and marks the lift", () => {
		const drawn = curve(OWN, { ratio: 0.25, coefficient: 0.55 }, 344);
		expect(drawn).toMatchObject({ ratio: 0.3, coefficient: 0.6, ground: 90 });
		const [first, last] = drawn?.points ?? [];
		expect(drawn?.line).toBe(
			`M34 ${first?.y}L${first?.x} ${first?.y}L${last?.x} ${last?.y}L334 ${last?.y}`,
		);
		expect(drawn?.lift).toEqual({ x: 284, y: last?.y });
	});

	it("needs lifts that rise", () => {
		const flat = [
			[0.1, 0.6],
			[0.1, 0.5],
		];
		expect(curve(flat, { ratio: 0.1, coefficient: 0.6 }, 300)).toBeNull();
	});
});
