import { describe, expect, it } from "vitest";
import {
	begin,
	change,
	close,
	draft,
	insert,
	move,
	type Path,
	put,
	redo,
	remove,
	type Sheet,
	undo,
} from "../../../www/src/network/edit";
import { renameBranch, renameCylinder, renameNode } from "../../../www/src/network/rename";
import { documentOf, sheetOf } from "../../../www/src/network/versions";
import type { Study } from "../../../www/src/solver/types";

const STUDY: Study = {
	format: "evenport-study",
	version: 1,
	name: "two ducts",
	notes: "",
	engine: {
		cylinders: [{ id: "1" }],
		reference: { at: "node", node: "room" },
		firingOrder: ["1"],
	},
	settings: {
		bench: {
			ambientPressure: 101325,
			ambientTemperature: 293.15,
			depression: 6967.5,
			blowing: false,
			limit: 0.03,
		},
		running: { limit: 0.004 },
	},
	network: {
		nodes: [
			{ id: "room", kind: "source" },
			{ id: "port 1", kind: "port", cylinder: "1" },
		],
		branches: [
			{
				id: "pipe",
				from: "room",
				to: "port 1",
				losses: [
					{ kind: "entrySharp", area: 0.001 },
					{ kind: "duct", area: 0.001, length: 0.1, roughness: 0 },
				],
			},
		],
	},
};
const SHEET: Sheet = { study: STUDY, drafts: {} };
const LOSSES: Path = ["network", "branches", 0, "losses"];
const AREA: Path = [...LOSSES, 0, "area"];

function area(sheet: Sheet): unknown {
	const loss = sheet.study.network.branches[0]?.losses[0];
	return loss?.kind === "entrySharp" ? loss.area : undefined;
}

describe("an edit", () => {
	it("leaves the former sheet as it was and shares what it did not touch", () => {
		const after = put(SHEET, AREA, 0.002);
		expect(area(SHEET)).toBe(0.001);
		expect(area(after)).toBe(0.002);
		expect(after.study.engine).toBe(STUDY.engine);
		expect(after.study.network.nodes).toBe(STUDY.network.nodes);
	});

	it("takes a field away when its cell is emptied", () => {
		const given = put(SHEET, ["engine", "speed"], 100);
		expect(given.study.engine.speed).toBe(100);
		expect("speed" in put(given, ["engine", "speed"], undefined).study.engine).toBe(false);
	});

	it("takes an object away with its last field, and leaves what was never there", () => {
		const path = ["settings", "ambient", "altitude"];
		const given = put(SHEET, path, 500);
		expect(given.study.settings.ambient).toEqual({ altitude: 500 });
		expect(put(given, path, undefined).study).toEqual(STUDY);
		expect(put(SHEET, path, undefined).study).toEqual(STUDY);
	});

	it("keeps unreadable text beside the study until a value comes", () => {
		const unreadable = draft(SHEET, AREA, "12 mm");
		expect(area(unreadable)).toBe(0.001);
		expect(unreadable.drafts).toEqual({ "network.branches.0.losses.0.area": "12 mm" });
		expect(put(unreadable, AREA, 0.002).drafts).toEqual({});
	});

	it("takes unreadable text along when rows move, come and go", () => {
		const unreadable = draft(SHEET, AREA, "x");
		expect(move(unreadable, LOSSES, 0, 1).drafts).toEqual({
			"network.branches.0.losses.1.area": "x",
		});
		expect(insert(unreadable, LOSSES, 0, { kind: "duct" }).drafts).toEqual({
			"network.branches.0.losses.1.area": "x",
		});
		expect(remove(unreadable, LOSSES, 0).drafts).toEqual({});
		expect(remove(unreadable, LOSSES, 1).drafts).toEqual(unreadable.drafts);
	});

	it("moves a loss along its line", () => {
		const kinds = (sheet: Sheet) => sheet.study.network.branches[0]?.losses.map(({ kind }) => kind);
		expect(kinds(move(SHEET, LOSSES, 0, 1))).toEqual(["duct", "entrySharp"]);
		expect(kinds(remove(SHEET, LOSSES, 0))).toEqual(["duct"]);
	});
});

describe("undo", () => {
	const type = (value: number) => (sheet: Sheet) => put(sheet, AREA, value);

	it("takes back all keystrokes in one cell together", () => {
		let history = begin(SHEET);
		for (const value of [2, 20, 200]) history = change(history, "area", type(value));
		expect(area(history.present)).toBe(200);
		history = undo(history);
		expect(area(history.present)).toBe(0.001);
		expect(area(redo(history).present)).toBe(200);
	});

	it("takes back two visits to a cell one by one", () => {
		let history = change(begin(SHEET), "area", type(2));
		history = change(close(history), "area", type(3));
		history = undo(history);
		expect(area(history.present)).toBe(2);
		expect(area(undo(history).present)).toBe(0.001);
	});

	it("has nothing to bring again after a new edit", () => {
		let history = undo(change(begin(SHEET), null, type(2)));
		history = change(history, null, type(3));
		expect(redo(history)).toBe(history);
	});

	it("does nothing on a sheet without edits", () => {
		const history = begin(SHEET);
		expect(undo(history)).toBe(history);
		expect(redo(history)).toBe(history);
	});
});

describe("a new name", () => {
	it("of a node is followed by branches and by the engine", () => {
		const { study } = renameNode(SHEET, 0, "still air");
		expect(study.network.branches[0]?.from).toBe("still air");
		expect(study.engine.reference).toEqual({ at: "node", node: "still air" });
	});

	it("of a cylinder is followed by its ports and the firing order", () => {
		const { study } = renameCylinder(SHEET, 0, "L1");
		expect(study.network.nodes[1]).toMatchObject({ cylinder: "L1" });
		expect(study.engine.firingOrder).toEqual(["L1"]);
	});

	it("of a node or branch is followed by the variants", () => {
		const variant = { name: "none", notes: "", nodes: [], branches: [], removed: ["room", "pipe"] };
		const sheet = sheetOf({ ...STUDY, variants: [variant] });
		const removed = (by: (sheet: Sheet) => Sheet) =>
			documentOf(change(begin(sheet), null, by).present).variants?.[0]?.removed;
		expect(removed((now) => renameNode(now, 0, "air"))).toEqual(["air", "pipe"]);
		expect(removed((now) => renameBranch(now, 0, "duct"))).toEqual(["room", "duct"]);
	});

	it("typed letter by letter never drags along another node's branches", () => {
		let history = begin(SHEET);
		for (const name of ["port 1", "port 12"]) {
			history = change(history, "name", (sheet) => renameNode(sheet, 0, name));
		}
		expect(history.present.study.network.branches[0]).toMatchObject({
			from: "port 12",
			to: "port 1",
		});
	});
});
