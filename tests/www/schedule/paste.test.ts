import { describe, expect, it } from "vitest";
import { type Columns, pasteRows } from "../../../www/src/schedule/paste";
import type { Row } from "../../../www/src/schedule/rows";
import { readBlock } from "../../../www/src/table/block";
import { chosenUnits } from "../../../www/src/units";

const UNITS = chosenUnits(undefined);
const OLD: Row[] = [
	{ values: { at: 0, area: 0.001, perimeter: 0.2 }, texts: {} },
	{ values: { at: 0.1, area: 0.001 }, texts: {} },
];

function paste(text: string, columns: Columns = "perimeter", place = { row: 0, column: 0 }) {
	const pasted = pasteRows(OLD, place, readBlock(text), columns, UNITS);
	if (pasted.kind === "refused") throw new Error(pasted.reason);
	return pasted;
}

function values(...given: Parameters<typeof paste>) {
	return paste(...given).rows.map((row) => row.values);
}

function reason(text: string, columns: Columns = "perimeter"): string {
	const pasted = pasteRows(OLD, { row: 0, column: 0 }, readBlock(text), columns, UNITS);
	return pasted.kind === "refused" ? pasted.reason : "";
}

describe("stations pasted from a spreadsheet", () => {
	it("go over the rows from the cell on, and rows are added; two columns leave the perimeter alone", () => {
		expect(values("0\t1200\n50\t1100\n100\t1000")).toEqual([
			{ at: 0, area: 0.0012, perimeter: 0.2 },
			{ at: 0.05, area: 0.0011 },
			{ at: 0.1, area: 0.001 },
		]);
		expect(values("0\t1200\t140\n50\t1100\t", "perimeter", { row: 1, column: 0 })).toEqual([
			OLD[0]?.values,
			{ at: 0, area: 0.0012, perimeter: 0.14 },
			{ at: 0.05, area: 0.0011 },
		]);
	});

	it("go down one column from its cell", () => {
		expect(values("900\n800", "perimeter", { row: 0, column: 1 }).map(({ area }) => area)).toEqual([
			0.0009, 0.0008,
		]);
	});

	it("have a decimal comma when the block tells so", () => {
		expect(values("0,5\t1200,25\n1,25\t1.100,5").map(({ at, area }) => [at, area])).toEqual([
			[0.0005, 0.00120025],
			[0.00125, 0.0011005],
		]);
	});

	it("are round by diameter, and then have no perimeter of their own", () => {
		const [first] = values("0\t40", "diameter");
		expect(first?.area).toBeCloseTo((Math.PI / 4) * 0.04 ** 2, 11);
		expect(first).not.toHaveProperty("perimeter");
	});

	it("are rectangles by width and height, with their perimeter", () => {
		expect(values("0\t40\t25", "sides")[0]).toEqual({ at: 0, area: 0.001, perimeter: 0.13 });
	});

	it("with a heading take the place of the old list, in the columns and units that it names", () => {
		const text = "Area [cm^2]\tname\tx / in\n12\ta\t0\n9\tb\t2\n8\tc\t4";
		const pasted = paste(text, "diameter");
		expect(pasted.rows.map((row) => row.values)).toEqual([
			{ at: 0, area: 0.0012 },
			{ at: 0.0508, area: 0.0009 },
			{ at: 0.1016, area: 0.0008 },
		]);
		expect(pasted.unplaced).toEqual(["a", "b", "c"]);
		expect(values("Station (cm)\tHeight cm\tWidth cm\n1\t2\t5")).toEqual([
			{ at: 0.01, area: 0.001, perimeter: 0.14 },
		]);
	});

	it("keep text that is no number in its cell, and ask for what a row leaves out", () => {
		const { rows } = paste("0\t1200\n50\twide\n100");
		expect(rows.map(({ texts }) => texts)).toEqual([{}, { area: "wide" }, { area: "" }]);
		expect(paste("0\tforty", "diameter").rows[0]?.texts).toEqual({ area: "d forty" });
		expect(paste("0\t40\thigh", "sides").rows[0]?.texts).toEqual({ area: "40 x high" });
	});

	it("change nothing when their heading is no list's, and say why", () => {
		expect(reason("Area\tPerimeter\n1200\t140")).toContain("no column with the station");
		expect(reason("Station\tPerimeter\n0\t140")).toContain("no area, no diameter");
		expect(reason("Station\tWidth\n0\t40")).toContain("no width with a height");
		expect(reason("Station\tArea\tDiameter\n0\t1200\t40")).toContain("two ways");
		expect(reason("Station\tArea [furlong]\n0\t1200")).toContain("“furlong” is no unit");
		expect(reason("Station\tArea")).toContain("no row below");
		expect(reason(Array.from({ length: 501 }, (_, row) => `${row}\t1200`).join("\n"))).toContain(
			"500",
		);
	});
});

describe("bends pasted from a spreadsheet", () => {
	it("are station, angle and radius", () => {
		const [first] = values("30\t45\t60", "bends");
		expect(first).toMatchObject({ at: 0.03, radius: 0.06 });
		expect(first?.angle).toBeCloseTo(Math.PI / 4, 12);
		expect(reason("Station\tRadius\n30\t60", "bends")).toContain("no angle");
	});
});
