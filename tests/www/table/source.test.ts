import { describe, expect, it } from "vitest";
import { put, type Sheet } from "../../../www/src/network/edit";
import { readBlock } from "../../../www/src/table/block";
import { clear } from "../../../www/src/table/cellText";
import { copy } from "../../../www/src/table/copy";
import { fillDown } from "../../../www/src/table/fill";
import { type Book, findCell, lines } from "../../../www/src/table/grid";
import { paste } from "../../../www/src/table/paste";
import type { Selection } from "../../../www/src/table/select";
import { chosenUnits } from "../../../www/src/units";
import { catalogue } from "../wasm";
import { STUDY, select } from "./fixture";

const BOOK: Book = { catalogue, units: chosenUnits(undefined, 101_325) };
const [ROOM, ...OTHERS] = STUDY.network.nodes;
const SHEET: Sheet = put(
	{ study: STUDY, drafts: {} },
	["network", "nodes"],
	[
		{ ...ROOM, temperature: 333.15 },
		{ id: "second", kind: "source", boost: 60_000, boostNode: "lid" },
		...OTHERS,
	],
);

const all = (sheet = SHEET) => lines("nodes", sheet, catalogue);
const node = (sheet: Sheet, index: number) => sheet.study.network.nodes[index];
const on = (anchor: string, head = anchor, rows = false) =>
	select(anchor, head, rows, "network.nodes");

function pasted(text: string, selection: Selection | null) {
	const what = { table: "nodes", all: all(), selection, block: readBlock(text), copied: null };
	return paste(SHEET, { ...what, table: "nodes" }, BOOK);
}

describe("a source in the table of nodes", () => {
	it("has the cells of the way in which its pressure is given", () => {
		const columns = all().map(({ cells }) => cells.map(({ column }) => column));
		expect(columns[0]).toEqual(["id", "kind", "way", "pressure", "temperature"]);
		expect(columns[1]).toEqual(["id", "kind", "way", "temperature", "boost", "boostNode"]);
	});

	it("is copied with its way, and pasted as a row that says the same", () => {
		const text = copy(SHEET, all(), on("1.id", "1.id", true), BOOK)?.text ?? "";
		expect(text).toBe("second\tsource\tfound for a boost\t\t60\tlid");
		const { sheet, unplaced } = pasted(text, null);
		expect(unplaced).toEqual([]);
		expect(node(sheet, 5)).toEqual({ ...node(SHEET, 1), id: "second" });
	});

	it("is pasted without a way as a typed pressure", () => {
		const { sheet } = pasted("third\tsource\t150\t60", null);
		expect(node(sheet, 5)).toEqual({
			id: "third",
			kind: "source",
			pressure: 150_000,
			temperature: 333.15,
		});
	});

	it("takes another way from a cell, with the cells behind it", () => {
		const { sheet } = pasted("found for a boost\t50\t80\tlid", on("0.way"));
		expect(node(sheet, 0)).toEqual({
			id: "room",
			kind: "source",
			temperature: 323.15,
			boost: 80_000,
			boostNode: "lid",
		});
		const wrong = pasted("by magic", on("0.way")).sheet;
		expect(wrong.drafts).toEqual({ "network.nodes.0.way": "by magic" });
		expect(node(wrong, 0)).toEqual(node(SHEET, 0));
	});

	it("is filled from the one above, and keeps its way when the rest is cleared", () => {
		const filled = fillDown(SHEET, all(), on("0.way", "1.way"), BOOK);
		expect(node(filled, 1)).toEqual({ id: "second", kind: "source" });
		const cell = findCell(all(), "network.nodes.1.boostNode")?.cell;
		const cleared = cell && clear(SHEET, cell);
		expect(cleared && node(cleared, 1)).toMatchObject({ boost: 60_000, boostNode: "" });
	});
});
