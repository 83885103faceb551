import { describe, expect, it } from "vitest";
import { begin, change, put, type Sheet, undo } from "../../../www/src/network/edit";
import {
	addVariant,
	duplicateVariant,
	makeBase,
	moveVariant,
	nameFault,
	removeVariant,
	tellVariant,
} from "../../../www/src/network/variants";
import {
	documentOf,
	look,
	sheetOf,
	type Versions,
	versionsOf,
} from "../../../www/src/network/versions";
import type { Study } from "../../../www/src/solver/types";
import { read } from "../wasm";
import { manifold } from "./random";

const STUDY = read({
	format: "evenport-study",
	version: 1,
	name: "three runners",
	engine: { cylinders: [{ id: "1" }, { id: "2" }, { id: "3" }] },
	network: manifold(3),
});

/** After an edit. */
const after = (sheet: Sheet, by: (sheet: Sheet) => Sheet) => change(begin(sheet), null, by).present;
const warmed = (branch: number) => (sheet: Sheet) =>
	put(sheet, ["network", "branches", branch, "temperatureRise"], 5);
const names = (sheet: Sheet) => versionsOf(sheet).map(({ name }) => name);
const networks = (sheet: Sheet) =>
	new Map(versionsOf(sheet).map(({ name, study }) => [name, study.network]));

/** Three variants, each with another warm runner; the last one is on the sheet. */
const THREE = [1, 2, 3].reduce(
	(sheet, branch) => after(after(look(sheet, null), addVariant), warmed(branch)),
	sheetOf(STUDY),
);

describe("a new variant", () => {
	it("is the version on the sheet under a free name, and is there next", () => {
		expect(names(THREE)).toEqual([null, "Variant 1", "Variant 2", "Variant 3"]);
		expect(THREE.versions?.looking).toBe(2);
		const fourth = after(THREE, addVariant);
		expect(names(fourth).at(-1)).toBe("Variant 4");
		expect(fourth.study.network).toEqual(THREE.study.network);
	});

	it("as a copy stands behind the one that it is of, with its note", () => {
		const noted = after(look(THREE, 0), (sheet) =>
			tellVariant(sheet, 0, { name: "Wide windows", notes: "of 3 mm" }),
		);
		const copied = after(noted, duplicateVariant);
		expect(names(copied)).toEqual([
			null,
			"Wide windows",
			"Wide windows 2",
			"Variant 2",
			"Variant 3",
		]);
		expect(copied.versions?.looking).toBe(1);
		expect(copied.versions?.variants[1]?.notes).toBe("of 3 mm");
		expect(after(sheetOf(STUDY), duplicateVariant)).toEqual(sheetOf(STUDY));
	});
});

describe("a variant's name", () => {
	it("is its own", () => {
		const fault = (name: string) =>
			nameFault(tellVariant(THREE, 1, { name }).versions as Versions, 1);
		expect(fault("Narrow")).toBe("");
		expect(fault(" ")).toMatch(/needs a name/);
		expect(fault(" Variant 1")).toMatch(/Another variant/);
	});
});

describe("a variant", () => {
	it("moves among the others and stays on the sheet", () => {
		const moved = after(THREE, (sheet) => moveVariant(sheet, 2, 0));
		expect(names(moved)).toEqual([null, "Variant 3", "Variant 1", "Variant 2"]);
		expect(moved.versions?.looking).toBe(0);
		expect(networks(moved)).toEqual(networks(THREE));
		expect(moveVariant(THREE, 2, 3)).toBe(THREE);
	});

	it("goes, and comes back by an undo", () => {
		const history = change(begin(THREE), null, (sheet) => removeVariant(sheet, 2));
		expect(names(history.present)).toEqual([null, "Variant 1", "Variant 2"]);
		expect(history.present.versions?.looking).toBeNull();
		expect(history.present.study.network).toEqual(STUDY.network);
		expect(undo(history).present).toBe(THREE);
		const first = after(THREE, (sheet) => removeVariant(sheet, 0));
		expect(first.versions?.looking).toBe(1);
		expect(first.study).toBe(THREE.study);
	});

	it("that was the last one leaves a study without variants", () => {
		const none = [0, 0, 0].reduce(
			(sheet, place) => after(sheet, (now) => removeVariant(now, place)),
			THREE,
		);
		expect(none.versions).toBeUndefined();
		expect(documentOf(none)).toEqual(STUDY);
	});

	it("made the base changes no version, only which of them is the base", () => {
		const before = networks(THREE);
		const made = after(look(THREE, 1), makeBase);
		const now = networks(made);
		expect(names(made)).toEqual([null, "Variant 1", "Former base", "Variant 3"]);
		expect(now.get(null)).toEqual(before.get("Variant 2"));
		expect(now.get("Former base")).toEqual(before.get(null));
		for (const name of ["Variant 1", "Variant 3"]) expect(now.get(name)).toEqual(before.get(name));
		// The same from the file, where each is told by its differences from the new base.
		const read = networks(sheetOf(documentOf(made) as Study));
		expect(read).toEqual(now);
		expect(made.versions?.variants[1]?.notes).toMatch(/until “Variant 2”/);
	});
});
