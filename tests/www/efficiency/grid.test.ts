import { describe, expect, it } from "vitest";
import { gridFaults } from "../../../www/src/efficiency/faults";
import {
	type Grid,
	putGrid,
	readGrid,
	withColumn,
	withoutColumn,
	withoutRow,
	withRow,
} from "../../../www/src/efficiency/grid";
import { type GridPlace, pasteGrid } from "../../../www/src/efficiency/paste";
import { draft, type Path, put, type Sheet } from "../../../www/src/network/edit";
import type { EfficiencyTable, FieldInfo } from "../../../www/src/solver/types";
import { readBlock } from "../../../www/src/table/block";
import { BOOK, SHEET } from "../table/fixture";
import { catalogue } from "../wasm";

const TABLE: Path = ["engine", "volumetricTable"];
const FIRST: GridPlace = { row: 0, column: -1 };
const small: EfficiencyTable = { speeds: [100], ratios: [1], values: [0.9] };

function sheetWith(table: EfficiencyTable): Sheet {
	return put(SHEET, TABLE, table);
}

function paste(text: string, at: GridPlace, table = small, ratios = true) {
	const sheet = sheetWith(table);
	const pasted = pasteGrid(readGrid(sheet, TABLE), at, readBlock(text), BOOK.units, ratios);
	if (pasted.kind === "refused") throw new Error(pasted.reason);
	const now = putGrid(sheet, TABLE, pasted.grid);
	return { ...pasted, table: now.study.engine.volumetricTable, drafts: now.drafts };
}

describe("a table pasted from a spreadsheet", () => {
	it("with an empty corner takes the place of the old one: speeds in rpm, efficiencies in per cent", () => {
		const text = "\t1\t1.4\t2\n3000\t93\t87\t80\n9000\t96\t93.5\t91";
		const { table, drafts } = paste(text, FIRST);
		expect(table).toEqual({
			speeds: [50, 150],
			ratios: [1, 1.4, 2],
			values: [0.93, 0.87, 0.8, 0.96, 0.935, 0.91],
		});
		expect(drafts).toEqual({});
	});

	it("is read with decimal commas", () => {
		expect(paste("rpm\t1,0\t1,45\n3000\t93,5\t87\n", FIRST).table).toEqual({
			speeds: [50],
			ratios: [1, 1.45],
			values: [0.935, 0.87],
		});
	});

	it("of parts of one is read as such, and that is said", () => {
		const { table, parts } = paste("\t1\t1.4\n3000\t0.93\t0.87\n9000\t0.96\t1.02", FIRST);
		expect(parts).toBe(true);
		expect(table?.values).toEqual([0.93, 0.87, 0.96, 1.02]);
		expect(paste("\t1\t1.4\n3000\t93\t87", FIRST).parts).toBe(false);
	});

	it("over speed alone may have a heading in words", () => {
		const one = { speeds: [50], values: [0.9] };
		const { table } = paste("Speed, rpm\tVE\n1800\t85\n6000\t101", FIRST, one, false);
		expect(table).toEqual({ speeds: [30, 100], values: [0.85, 1.01] });
	});

	it("without a heading goes over the cells from there on, and adds what it needs", () => {
		const { table } = paste("80\t70\n85\t75", { row: 0, column: 0 });
		expect(table?.speeds).toHaveLength(2);
		expect(table?.speeds[0]).toBe(100);
		expect(table?.ratios).toHaveLength(2);
		expect(table?.values).toEqual([0.8, 0.7, 0.85, 0.75]);
	});

	it("of more efficiencies than a study takes is refused as a whole", () => {
		const wide = Array.from({ length: 51 }, (_, at) => at + 1).join("\t");
		const text = `\t${wide}\n${Array.from({ length: 40 }, (_, row) => `${row + 1}\t9`).join("\n")}`;
		expect(() => paste(text, FIRST)).toThrow("at most 2000 efficiencies, and these would be 2040");
	});

	it("keeps text that is no number, and hands back what has no cell", () => {
		const { table, drafts } = paste("\t1\t1.4\n3000\tgood\t87", FIRST);
		expect(drafts).toEqual({ "engine.volumetricTable.values.0": "good" });
		expect(table?.values[1]).toBe(0.87);
		const one = { speeds: [50], values: [0.9] };
		expect(paste("1800\t85\tfine", FIRST, one, false).unplaced).toEqual(["fine"]);
	});

	it("keeps a comma that can be read in two ways as text", () => {
		expect(paste("\t1\t1.4\n3,000\t93\t87", FIRST, small).drafts).toEqual({});
		expect(paste("3,000\t93", FIRST, small).drafts).toEqual({
			"engine.volumetricTable.speeds.0": "3,000",
		});
	});
});

describe("rows and columns", () => {
	const grid: Grid = readGrid(
		sheetWith({ speeds: [50, 150], ratios: [1, 1.4], values: [0.9, 0.8, 0.95, 0.85] }),
		TABLE,
	);
	const tableOf = (by: Grid) => putGrid(SHEET, TABLE, by).study.engine.volumetricTable;

	it("go on by the step of the last two, with the values beside them", () => {
		expect(tableOf(withRow(grid))).toEqual({
			speeds: [50, 150, 250],
			ratios: [1, 1.4],
			values: [0.9, 0.8, 0.95, 0.85, 0.95, 0.85],
		});
		expect(tableOf(withColumn(grid))?.ratios).toEqual([1, 1.4, 1.8]);
		expect(tableOf(withColumn(grid))?.values).toEqual([0.9, 0.8, 0.8, 0.95, 0.85, 0.85]);
	});

	it("take the text of their cells along when they go", () => {
		const drafted = draft(
			sheetWith({ speeds: [50, 150], ratios: [1, 1.4], values: [0.9, 0.8, 0.95, 0.85] }),
			[...TABLE, "values", 3],
			"?",
		);
		const there = readGrid(drafted, TABLE);
		expect(putGrid(drafted, TABLE, withoutRow(there, 0)).drafts).toEqual({
			"engine.volumetricTable.values.1": "?",
		});
		expect(putGrid(drafted, TABLE, withoutColumn(there, 1)).drafts).toEqual({});
	});
});

describe("what is wrong with a table", () => {
	const info = catalogue.blower.fields.find(({ name }) => name === "volumetricEfficiency");
	const axis = (quantity: "speed" | "number") =>
		({
			...(info as FieldInfo),
			quantity,
			minimum: Number.NEGATIVE_INFINITY,
			maximum: Number.POSITIVE_INFINITY,
		}) as FieldInfo;
	const infos = { speeds: axis("speed"), ratios: axis("number"), values: info as FieldInfo };
	const faults = (table: EfficiencyTable, text?: string) => {
		const sheet = sheetWith(table);
		const drafted = text === undefined ? sheet : draft(sheet, [...TABLE, "values", 1], text);
		return gridFaults(readGrid(drafted, TABLE), infos, BOOK.units).map((each) => each.message);
	};

	it("is told with its row and column, in the units of the page", () => {
		const table = { speeds: [150, 50], ratios: [1, 1], values: [0.9, 0.8, 0.9, 93] };
		expect(faults(table)).toEqual([
			"Pressure ratio, column 2: 1 does not come after 1.",
			"Speed, row 2: 3000 does not come after 9000.",
			"Efficiency, row 2, column 2: must lie between 1 and 120 %.",
		]);
		const right = { speeds: [50, 150], ratios: [1, 2], values: [0.9, 0.8, 0.9, 0.93] };
		expect(faults(right)).toEqual([]);
		expect(faults(right, "abc")).toEqual(["Efficiency, row 1, column 2: “abc”: Not a number."]);
	});
});
