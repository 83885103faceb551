import { describe, expect, it } from "vitest";
import {
	asBase,
	bringBack,
	differences,
	leftOut,
	markAt,
	markOf,
} from "../../../www/src/network/differing";
import { begin, change, insert, put, remove, type Sheet } from "../../../www/src/network/edit";
import { addVariant } from "../../../www/src/network/variants";
import { look, sheetOf } from "../../../www/src/network/versions";
import type { Branch, FieldInfo, Loss } from "../../../www/src/solver/types";
import { chosenUnits } from "../../../www/src/units";
import { difference } from "../../../www/src/view/difference";
import { catalogue, read } from "../wasm";
import { duct, manifold } from "./random";

const STUDY = read({
	format: "evenport-study",
	version: 1,
	name: "three runners",
	engine: { cylinders: [{ id: "1" }, { id: "2" }, { id: "3" }] },
	network: manifold(3),
});
const BRANCHES = ["network", "branches"];
const LOSSES = [...BRANCHES, 1, "losses"];
const BASE = STUDY.network.branches[1] as Branch;
const bend = { kind: "bend", area: 0.001, angle: 1, radius: 0.05, roughness: 0 } as Loss;

const after = (sheet: Sheet, by: (sheet: Sheet) => Sheet) => change(begin(sheet), null, by).present;
const variant = (by: (sheet: Sheet) => Sheet) => after(after(sheetOf(STUDY), addVariant), by);

describe("a row of a variant", () => {
	const cells = (row: Branch) => Object.fromEntries(differences(BASE, row)?.cells ?? []);

	it("that is as in the base is not marked", () => {
		expect(differences(BASE, structuredClone(BASE))).toBeNull();
	});

	it("differs in cells, each with what the base has there", () => {
		const losses = BASE.losses.with(1, duct(0.4));
		expect(cells({ ...BASE, to: "port 2", temperatureRise: 3, losses })).toEqual({
			to: "port 1",
			temperatureRise: undefined,
			"losses.1.length": 0.3,
		});
	});

	it("of which the base has none is new, not each of its cells", () => {
		const found = differences(undefined, BASE);
		expect(markAt(found, "id")).toEqual({ kind: "new" });
		expect(markAt(found, "losses.1.length")).toBeNull();
	});

	it("has its losses beside the base's, whatever was put in or taken out", () => {
		const more = differences(BASE, { ...BASE, losses: BASE.losses.toSpliced(1, 0, bend) });
		expect(markAt(more, "losses.1.kind")).toEqual({ kind: "new" });
		expect(more?.cells.size).toBe(0);
		const less = differences(BASE, { ...BASE, losses: [duct(0.4)] });
		expect(less?.lostLosses).toEqual([{ kind: "entrySharp", area: 0.001 }]);
		expect(markAt(less, "losses.0.length")).toEqual({ kind: "changed", was: 0.3 });
	});

	it("with a loss of another kind differs in that, not in what only one of them has", () => {
		expect(cells({ ...BASE, losses: BASE.losses.with(1, bend) })).toEqual({
			"losses.1.kind": "duct",
		});
	});
});

describe("cells as in the base", () => {
	const back = (sheet: Sheet, ...path: (string | number)[]) => asBase(sheet, [path]);

	it("are the base's again: a cell, a loss of another kind, a row", () => {
		const typed = variant((now) =>
			put(put(now, [...LOSSES, 1], bend), [...BRANCHES, 1, "to"], "lid"),
		);
		const loss = back(typed, ...LOSSES, 1, "kind").sheet;
		expect(loss.study.network.branches[1]).toEqual({ ...BASE, to: "lid" });
		expect(back(loss, ...BRANCHES, 1, "to").sheet.study.network).toEqual(STUDY.network);
		expect(back(typed, ...BRANCHES, 1).sheet.study.network).toEqual(STUDY.network);
	});

	it("are what they were where the base has no such row or loss, and that is said", () => {
		const added = variant((now) => insert(now, LOSSES, 1, bend));
		expect(back(added, ...LOSSES, 1, "angle")).toEqual({ sheet: added, left: true });
		const row = variant((now) => insert(now, BRANCHES, 0, { ...BASE, id: "new" }));
		expect(back(row, ...BRANCHES, 0, "to")).toEqual({ sheet: row, left: true });
		expect(back(row, ...BRANCHES, 2, "to")).toEqual({ sheet: row, left: false });
	});
});

describe("rows that a variant leaves out", () => {
	const without = variant((now) => remove(remove(now, BRANCHES, 2), ["network", "nodes"], 3));

	it("are listed on its sheet only, and come back to their places with their ends", () => {
		expect(leftOut(without, "branches").map(({ id }) => id)).toEqual(["run 2"]);
		expect(leftOut(without, "nodes").map(({ id }) => id)).toEqual(["port 2"]);
		expect(leftOut(look(without, null), "branches")).toEqual([]);
		expect(bringBack(without, "branches", "run 2").study.network).toEqual(STUDY.network);
	});
});

describe("the words for a difference", () => {
	const units = chosenUnits(undefined, 101325);
	const info = (quantity: FieldInfo["quantity"]) =>
		({ ...catalogue.branch[0], quantity }) as FieldInfo;
	const words = (was: unknown, now: unknown, quantity?: FieldInfo["quantity"]) =>
		difference({ kind: "changed", was }, now, quantity && info(quantity), units);

	it("tell the base's value, by how much, and by which part of it", () => {
		expect(words(0.042, 0.045, "length")).toBe("In the base: 42 mm; here +3 mm, +7.1 %");
		expect(words(0.045, 0.042, "length")).toBe("In the base: 45 mm; here −3 mm, −6.7 %");
	});

	it("tell no part where zero is not nothing", () => {
		expect(words(293.15, 303.15, "temperature")).toBe("In the base: 20 °C; here +10 °C");
		expect(words(0, 0.5, "number")).toBe("In the base: 0; here +0.5");
	});

	it("tell what is empty, text, new or more than one value", () => {
		expect(words(undefined, 3, "length")).toBe("In the base: empty");
		expect(words("lid", "pocket")).toBe("In the base: lid");
		expect(words([1, 2], [1])).toBe("In the base: otherwise");
		expect(difference({ kind: "new" }, "b1", undefined, units)).toMatch(/not in the base/);
	});

	it("are said of a cell on a variant's sheet only", () => {
		const typed = variant((now) => put(now, [...LOSSES, 1, "length"], 0.4));
		const path = [...LOSSES, 1, "length"];
		expect(markOf(typed, path)).toEqual({ kind: "changed", was: 0.3 });
		expect(markOf(look(typed, null), path)).toBeNull();
		expect(markOf(typed, ["engine", "speed"])).toBeNull();
	});
});
