import { describe, expect, it } from "vitest";
import { draft, keyOf } from "../../../www/src/network/edit";
import { columnsOf, lines } from "../../../www/src/table/grid";
import { chosen, type Move, moved, stretched } from "../../../www/src/table/select";
import { all, BOOK, CATALOGUE, SHEET, select } from "./fixture";

function go(from: string, ...moves: Move[]): string | null {
	return moves.reduce<string | null>(
		(key, move) => key && moved(all(), key, move),
		`network.branches.${from}`,
	);
}

function cells(...selection: Parameters<typeof select>): string[] {
	const prefix = /^(network|engine)\.(branches|nodes|cylinders)\./;
	const table = selection[3]?.endsWith("nodes") ? "nodes" : "branches";
	return chosen(all(table), select(...selection)).flatMap((each) =>
		each.cells.map(({ path }) => keyOf(path).replace(prefix, "")),
	);
}

describe("the lines of the branch table", () => {
	it("are each branch and below it each of its losses, in the order that is shown", () => {
		const names = (order?: number[]) =>
			all("branches", undefined, order).map(({ what, index }) => `${what} ${index}`);
		expect(names().slice(0, 5)).toEqual(["branch 0", "loss 0", "branch 1", "loss 0", "loss 1"]);
		expect(names([2, 0])).toEqual(["branch 2", "loss 0", "loss 1", "branch 0", "loss 0"]);
	});
});

describe("a field that few branches have", () => {
	const columns = (sheet = SHEET, opened?: ReadonlySet<string>) =>
		lines("branches", sheet, CATALOGUE, null, opened).map(({ cells }) =>
			cells.some(({ column }) => column === "jetFraction"),
		);

	it("is in a branch's line when it holds a value, or text that is none, or has been opened", () => {
		expect(columns()).toEqual([false, false, true, false, false, false, false, false]);
		const typed = draft(SHEET, ["network", "branches", 2, "jetFraction"], "a tenth");
		expect(columns(typed)[5]).toBe(true);
		expect(columns(SHEET, new Set(["runner 2|jetFraction"]))[5]).toBe(true);
	});

	it("is not opened where it means nothing: a jet is felt behind a plenum only", () => {
		expect(columns(SHEET, new Set(["neck|jetFraction"]))[0]).toBe(false);
	});

	it("stands in the same column of all lines, whichever show it", () => {
		const [first, , second] = all();
		expect(first && columnsOf(first, all(), BOOK)).toEqual(["id", "from", "to", "jetFraction"]);
		expect(second && columnsOf(second, all(), BOOK)).toEqual(["id", "from", "to", "jetFraction"]);
	});
});

describe("a key", () => {
	it("leads along a line and stops at its ends", () => {
		expect(go("0.id", "right", "right")).toBe("network.branches.0.to");
		expect(go("0.id", "left")).toBeNull();
		expect(go("0.to", "right")).toBeNull();
		expect(go("1.from", "lineEnd")).toBe("network.branches.1.jetFraction");
	});

	it("leads to the same field of the next line, or to the same place in it", () => {
		expect(go("1.losses.0.area", "down")).toBe("network.branches.1.losses.1.area");
		expect(go("1.from", "down")).toBe("network.branches.1.losses.0.area");
		expect(go("1.losses.0.area", "up")).toBe("network.branches.1.from");
		expect(go("0.id", "up")).toBeNull();
		expect(go("0.from", "bottom")).toBe("network.branches.2.losses.1.area");
		expect(go("2.to", "top")).toBe("network.branches.0.to");
		expect(go("0.id", "last")).toBe("network.branches.2.losses.1.dischargeCoefficient");
	});
});

describe("a selection", () => {
	it("of cells takes the losses of one kind and leaves out what lies between", () => {
		expect(cells("0.losses.0.area", "2.losses.1.area")).toEqual([
			"0.losses.0.area",
			"1.losses.0.area",
			"2.losses.1.area",
		]);
	});

	it("is a rectangle, whichever corner it begins at", () => {
		const corners = ["0.from", "0.to", "1.from", "1.to"];
		expect(cells("0.from", "1.to")).toEqual(corners);
		expect(cells("1.to", "0.from")).toEqual(corners);
		expect(cells("1.from", "0.to")).toEqual(corners);
	});

	it("of nodes takes the fields that a node has", () => {
		expect(cells("0.kind", "2.kind", false, "network.nodes")).toEqual([
			"0.kind",
			"1.kind",
			"2.kind",
		]);
		expect(cells("0.pressure", "2.kind", false, "network.nodes")).toEqual([
			"0.kind",
			"0.way",
			"0.pressure",
			"1.kind",
			"2.kind",
		]);
	});

	it("of whole branches takes their losses along, of losses only losses", () => {
		const lines = (anchor: string, head: string) =>
			chosen(all(), select(anchor, head, true)).map(({ line }) => `${line.what} ${line.index}`);
		expect(lines("1.id", "2.id")).toHaveLength(6);
		expect(lines("1.losses.0.kind", "2.losses.0.kind")).toEqual(["loss 0", "loss 1", "loss 0"]);
	});

	it("is stretched down to the next line of its sort", () => {
		const start = select("0.losses.0.area");
		const once = stretched(all(), start, "down");
		expect(once.head).toBe("network.branches.1.losses.0.area");
		expect(stretched(all(), once, "down").head).toBe("network.branches.2.losses.1.area");
		expect(stretched(all(), start, "right").head).toBe(
			"network.branches.0.losses.0.dischargeCoefficient",
		);
		const rows = stretched(all(), select("0.id", "0.id", true), "down");
		expect(rows.head).toBe("network.branches.1.id");
		expect(stretched(all(), rows, "last").head).toBe("network.branches.2.id");
	});
});
