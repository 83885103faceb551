import { describe, expect, it } from "vitest";
import { arranged } from "../../../www/src/table/arrange";
import { fillDown } from "../../../www/src/table/fill";
import {
	duplicateRows,
	insertRow,
	moveRows,
	removeRows,
	rowsOf,
} from "../../../www/src/table/rows";
import { chosen } from "../../../www/src/table/select";
import { all, at, BOOK, SHEET, select } from "./fixture";

const BRANCHES = ["network", "branches"];
const names = (sheet = SHEET) => sheet.study.network.branches.map(({ id }) => id);

describe("filling down", () => {
	it("puts the first selected value into the same field of the losses of like kind", () => {
		const sheet = fillDown(SHEET, all(), select("0.losses.0.area", "2.losses.1.area"), BOOK);
		expect(at(sheet, "network.branches.1.losses.0.area")).toBe(0.002);
		expect(at(sheet, "network.branches.2.losses.1.area")).toBe(0.002);
		expect(at(sheet, "network.branches.1.losses.1.area")).toBe(0.001);
		expect(at(sheet, "network.branches.2.losses.1.dischargeCoefficient")).toBe(0.7);
	});

	it("of whole branches goes loss by loss of like kind; names and ends stay", () => {
		const sheet = fillDown(SHEET, all(), select("1.id", "2.id", true), BOOK);
		expect(at(sheet, "network.branches.2")).toEqual({
			id: "runner 2",
			from: "lid",
			to: "port 2",
			jetFraction: 0.1,
			losses: [
				{ kind: "duct", area: 0.001, length: 0.12, roughness: 0 },
				{ kind: "opening", area: 0.001, dischargeCoefficient: 0.65 },
			],
		});
	});

	it("of one cell takes the nearest one above, and unreadable text as it stands", () => {
		const one = fillDown(SHEET, all(), select("2.losses.1.area"), BOOK);
		expect(at(one, "network.branches.2.losses.1.area")).toBe(0.001);
		const unreadable = { ...SHEET, drafts: { "network.branches.1.losses.0.area": "wide" } };
		const filled = fillDown(unreadable, all(), select("2.losses.1.area"), BOOK);
		expect(filled.drafts["network.branches.2.losses.1.area"]).toBe("wide");
	});

	it("never gives two rows one name", () => {
		expect(fillDown(SHEET, all(), select("0.id", "2.id"), BOOK)).toBe(SHEET);
	});
});

describe("rows", () => {
	it("are duplicated under free names, moved as a block, and taken out", () => {
		const twice = duplicateRows(SHEET, { list: BRANCHES, places: [1, 2] });
		expect(names(twice.sheet)).toEqual(["neck", "runner 1", "runner 2", "runner 3", "runner 4"]);
		expect([twice.from, twice.to]).toEqual([3, 4]);
		const up = moveRows(SHEET, { list: BRANCHES, places: [1, 2] }, -1);
		expect(names(up?.sheet)).toEqual(["runner 1", "runner 2", "neck"]);
		const down = moveRows(SHEET, { list: BRANCHES, places: [0, 1] }, 1);
		expect(names(down?.sheet)).toEqual(["runner 2", "neck", "runner 1"]);
		expect(moveRows(SHEET, { list: BRANCHES, places: [0] }, -1)).toBeNull();
		expect(names(removeRows(SHEET, [{ list: BRANCHES, places: [0, 2] }]))).toEqual(["runner 1"]);
	});

	it("are inserted behind a line of their sort", () => {
		const [neck, opening] = all();
		if (!neck || !opening) throw new Error("no lines");
		expect(names(insertRow(SHEET, neck, BOOK).sheet)).toEqual([
			"neck",
			"b1",
			"runner 1",
			"runner 2",
		]);
		const { sheet } = insertRow(SHEET, opening, BOOK);
		// The new duct goes on in the section of the loss before it; its length waits for a value.
		expect(at(sheet, "network.branches.0.losses.1")).toMatchObject({ kind: "duct", area: 0.002 });
		expect(sheet.drafts).toEqual({ "network.branches.0.losses.1.length": "" });
	});

	it("that are selected are those of the first one's sort", () => {
		expect(rowsOf(chosen(all(), select("1.id", "2.id", true)))).toEqual([
			{ list: BRANCHES, places: [1, 2] },
		]);
		expect(rowsOf(chosen(all(), select("1.losses.0.kind", "2.losses.0.kind", true)))).toEqual([
			{ list: [...BRANCHES, 1, "losses"], places: [0, 1] },
			{ list: [...BRANCHES, 2, "losses"], places: [0] },
		]);
	});
});

describe("the order that is shown", () => {
	const texts = ["runner 10 lid", "runner 9 lid", "neck room"];
	const none = new Set<number>();

	it("holds the rows with every word of the filter, and those that are shown always", () => {
		expect(arranged(texts, "LID run", null, false, none)).toEqual([0, 1]);
		expect(arranged(texts, "neck", null, false, new Set([1]))).toEqual([1, 2]);
		expect(arranged(texts, " ", null, false, none)).toEqual([0, 1, 2]);
	});

	it("goes by numbers and by names with numbers in them, rows without a value last", () => {
		expect(arranged(texts, "", ["runner 10", "runner 9", "neck"], false, none)).toEqual([2, 1, 0]);
		expect(arranged(texts, "", [2, undefined, 10], false, none)).toEqual([0, 2, 1]);
		expect(arranged(texts, "", [2, undefined, 10], true, none)).toEqual([2, 0, 1]);
	});
});
