import { describe, expect, it } from "vitest";
import {
	begin,
	change,
	draft,
	insert,
	move,
	put,
	remove,
	type Sheet,
	undo,
} from "../../../www/src/network/edit";
import { rebase } from "../../../www/src/network/rebase";
import { renameBranch, renameCylinder, renameNode } from "../../../www/src/network/rename";
import { same } from "../../../www/src/network/same";
import { addVariant } from "../../../www/src/network/variants";
import { look, sheetOf } from "../../../www/src/network/versions";
import type { Loss, Network, Node, Study } from "../../../www/src/solver/types";
import { read } from "../wasm";
import { duct, edited, manifold, numbers } from "./random";

const STUDY: Study = read({
	format: "evenport-study",
	version: 1,
	name: "three runners",
	engine: { cylinders: [{ id: "1" }, { id: "2" }, { id: "3" }] },
	network: manifold(3),
});
const BRANCHES = ["network", "branches"];
const LOSSES = [...BRANCHES, 1, "losses"];
type Edit = (sheet: Sheet) => Sheet;

const after = (sheet: Sheet, by: Edit) => change(begin(sheet), null, by).present;

/** What the variant is when it has been edited in one way and its base, after that, in another. */
function variant(own: Edit, base: Edit): Sheet {
	const made = after(after(sheetOf(STUDY), addVariant), own);
	return look(after(look(made, null), base), 0);
}

const losses = ({ study }: Sheet, branch = 1) => study.network.branches[branch]?.losses ?? [];
const ids = ({ study }: Sheet) => study.network.branches.map(({ id }) => id);
const nodeIds = ({ study }: Sheet) => study.network.nodes.map(({ id }) => id);
const length =
	(loss: number, value: number): Edit =>
	(sheet) =>
		put(sheet, [...LOSSES, loss, "length"], value);

describe("an edit of the base", () => {
	it("of a cell is followed where the variant has not changed it, in the same loss too", () => {
		const sheet = variant(length(1, 0.4), (now) => put(now, [...LOSSES, 1, "roughness"], 0.00001));
		expect(losses(sheet)[1]).toEqual({ ...duct(0.4), roughness: 0.00001 });
	});

	it("of a cell leaves what the variant has changed there", () => {
		expect(losses(variant(length(1, 0.4), length(1, 0.5)))[1]).toEqual(duct(0.4));
	});

	it("leaves all rows that it does not concern the same objects", () => {
		const made = after(after(sheetOf(STUDY), addVariant), length(1, 0.4));
		const based = after(look(made, null), (now) =>
			put(now, [...BRANCHES, 0, "temperatureRise"], 3),
		);
		const [feed, first, second] = look(based, 0).study.network.branches;
		expect(feed).toBe(based.study.network.branches[0]);
		expect(first).toBe(made.study.network.branches[1]);
		expect(second).toBe(made.study.network.branches[2]);
		expect(look(based, 0).study.network.nodes).toBe(made.study.network.nodes);
	});

	it("that is taken back takes back what it did to the variant", () => {
		const made = look(after(after(sheetOf(STUDY), addVariant), length(1, 0.4)), null);
		const history = change(begin(made), null, (now) => remove(now, BRANCHES, 1));
		expect(undo(history).present).toBe(made);
	});
});

describe("losses of the base", () => {
	const widened: Edit = (sheet) => put(sheet, [...LOSSES, 0, "area"], 0.002);
	const kinds = (sheet: Sheet) => losses(sheet).map(({ kind }) => kind);

	it("that are put in or taken out come and go beside the variant's changed ones", () => {
		const put = variant(length(1, 0.4), (now) => insert(now, LOSSES, 1, duct(0.7)));
		expect(losses(put).slice(1)).toEqual([duct(0.7), duct(0.4)]);
		const taken = variant(length(1, 0.4), (now) => remove(now, LOSSES, 0));
		expect(losses(taken)).toEqual([duct(0.4)]);
	});

	it("that are taken out stay where the variant has changed them", () => {
		const sheet = variant(widened, (now) => remove(now, LOSSES, 0));
		expect(losses(sheet)).toEqual([{ kind: "entrySharp", area: 0.002 }, duct(0.3)]);
	});

	it("that move take the variant's changes along", () => {
		const sheet = variant(widened, (now) => move(now, LOSSES, 0, 1));
		expect(losses(sheet)).toEqual([duct(0.3), { kind: "entrySharp", area: 0.002 }]);
	});

	it("are not mixed into a list of another shape, nor into a loss of another kind", () => {
		const own = variant(
			(now) => insert(now, LOSSES, 1, duct(0.9)),
			(now) => insert(length(1, 0.5)(now), LOSSES, 0, duct(0.7)),
		);
		expect(losses(own)).toEqual([{ kind: "entrySharp", area: 0.001 }, duct(0.9), duct(0.3)]);
		const screen: Loss = { kind: "screenSquare", area: 0.001, openPart: 0.5 };
		const other = variant(length(1, 0.4), (now) => put(now, [...LOSSES, 1], screen));
		expect(kinds(other)).toEqual(["entrySharp", "duct"]);
		expect(losses(other)[1]).toEqual(duct(0.4));
	});
});

describe("a row of the base", () => {
	const port: Node = { id: "port 4", kind: "port", cylinder: "3" };
	const run = { id: "run 4", from: "lid", to: "port 4", losses: [duct(0.3)] };
	const added: Edit = (sheet) =>
		insert(insert(sheet, ["network", "nodes"], 5, port), BRANCHES, 2, run);

	it("that is put in appears in the variant at its place", () => {
		const sheet = variant(length(1, 0.4), added);
		expect(ids(sheet)).toEqual(["feed", "run 1", "run 4", "run 2", "run 3"]);
		expect(nodeIds(sheet).at(-1)).toBe("port 4");
	});

	it("that is taken out goes from a variant that has not changed it", () => {
		const sheet = variant(length(1, 0.4), (now) =>
			remove(remove(now, BRANCHES, 2), ["network", "nodes"], 3),
		);
		expect(ids(sheet)).toEqual(["feed", "run 1", "run 3"]);
		expect(nodeIds(sheet)).toEqual(["air", "lid", "port 1", "port 3"]);
	});

	it("that is taken out stays in a variant that has changed it, with the nodes it leads to", () => {
		const sheet = variant(length(1, 0.4), (now) =>
			remove(remove(now, BRANCHES, 1), ["network", "nodes"], 2),
		);
		expect(ids(sheet)).toEqual(["feed", "run 1", "run 2", "run 3"]);
		expect(new Set(nodeIds(sheet))).toEqual(new Set(nodeIds(sheetOf(STUDY))));
	});

	it("that is taken out stays where the variant's own rows lead to it", () => {
		const own: Edit = (sheet) => insert(sheet, BRANCHES, 4, { ...run, to: "port 2" });
		const sheet = variant(own, (now) => remove(remove(now, BRANCHES, 2), ["network", "nodes"], 3));
		expect(ids(sheet)).toEqual(["feed", "run 1", "run 3", "run 4"]);
		expect(nodeIds(sheet)).toContain("port 2");
	});

	it("that is new brings back a node that the variant had taken out", () => {
		const own: Edit = (sheet) => remove(remove(sheet, BRANCHES, 3), ["network", "nodes"], 4);
		const sheet = variant(own, (now) => insert(now, BRANCHES, 1, { ...run, to: "port 3" }));
		expect(ids(sheet)).toEqual(["feed", "run 4", "run 1", "run 2"]);
		expect(nodeIds(sheet)).toContain("port 3");
	});

	it("that the variant has taken out stays out", () => {
		const own: Edit = (sheet) => remove(sheet, BRANCHES, 3);
		const sheet = variant(own, (now) => put(now, [...BRANCHES, 3, "temperatureRise"], 4));
		expect(ids(sheet)).toEqual(["feed", "run 1", "run 2"]);
	});

	it("that moves is followed, unless the variant has an order of its own", () => {
		const moved: Edit = (sheet) => move(sheet, BRANCHES, 3, 1);
		const own: Edit = (sheet) => move(sheet, BRANCHES, 0, 2);
		expect(ids(variant(length(1, 0.4), moved))).toEqual(["feed", "run 3", "run 1", "run 2"]);
		expect(ids(variant(own, moved))).toEqual(["run 1", "run 2", "feed", "run 3"]);
	});
});

describe("a new name", () => {
	it("given in any version is the row's in all of them", () => {
		const made = after(after(sheetOf(STUDY), addVariant), length(1, 0.4));
		for (const on of [null, 0]) {
			const branch = after(look(made, on), (now) => renameBranch(now, 1, "first"));
			const node = after(branch, (now) => renameNode(now, 1, "plenum"));
			const all = after(node, (now) => renameCylinder(now, 0, "L1"));
			for (const version of [look(all, null), look(all, 0)]) {
				expect(ids(version)).toEqual(["feed", "first", "run 2", "run 3"]);
				expect(version.study.network.branches[1]?.from).toBe("plenum");
				expect(version.study.network.nodes[2]).toMatchObject({ cylinder: "L1" });
			}
			expect(losses(look(all, 0))[1]).toEqual(duct(0.4));
			expect(losses(look(all, null))[1]).toEqual(duct(0.3));
		}
	});

	it("of a row that a variant leaves out does not bring it back", () => {
		const sheet = variant(
			(now) => remove(now, BRANCHES, 3),
			(now) => renameBranch(now, 3, "third"),
		);
		expect(ids(sheet)).toEqual(["feed", "run 1", "run 2"]);
	});
});

describe("unreadable text in a variant's cell", () => {
	const typed: Edit = (sheet) => draft(sheet, [...LOSSES, 1, "length"], "long");
	const key = (branch: number, loss: number) => `network.branches.${branch}.losses.${loss}.length`;

	it("stays in its cell when rows and losses of the base come and go before it", () => {
		const sheet = variant(typed, (now) =>
			insert(remove(now, BRANCHES, 0), [...BRANCHES, 0, "losses"], 0, duct(0.7)),
		);
		expect(sheet.drafts).toEqual({ [key(0, 2)]: "long" });
	});

	it("keeps its row and its loss from going with the base's", () => {
		const row = variant(typed, (now) => remove(now, BRANCHES, 1));
		expect(ids(row)).toContain("run 1");
		expect(row.drafts).toEqual({ [key(1, 1)]: "long" });
		const loss = variant(typed, (now) => remove(now, LOSSES, 1));
		expect(losses(loss)).toHaveLength(2);
		expect(loss.drafts).toEqual({ [key(1, 1)]: "long" });
	});
});

describe("edits at random", () => {
	const version = (network: Network) => ({ network, drafts: {} });

	it("of the base are a variant's own where it is like the base, and nothing where the base stays", () => {
		for (let seed = 1; seed <= 200; seed += 1) {
			const next = numbers(seed);
			const base = manifold(3);
			const changed = edited(edited(base, next, "a"), next, "b");
			expect(rebase(base, changed, version(base)).network).toEqual(changed);
			const own = version(changed);
			expect(rebase(base, structuredClone(base), own).network).toEqual(changed);
		}
	});

	it("of the base lose nothing that a variant has changed", () => {
		for (let seed = 1; seed <= 400; seed += 1) {
			const next = numbers(seed);
			const base = manifold(4);
			const own = edited(base, next, "own");
			const changed = edited(base, next, "base");
			const { network } = rebase(base, changed, version(own));
			for (const list of ["nodes", "branches"] as const) {
				for (const row of own[list]) {
					const was = base[list].find(({ id }) => id === row.id);
					const is = network[list].find(({ id }) => id === row.id);
					// A row that is not the base's is there, and so is each of its cells.
					if (same(row, was)) continue;
					expect(is).toBeDefined();
					for (const [cell, value] of Object.entries(row)) {
						const cells = was as Record<string, unknown> | undefined;
						if (cell === "losses" || same(value, cells?.[cell])) continue;
						expect(is).toHaveProperty(cell, value);
					}
				}
			}
			// No branch loses an end that it had.
			const ends = new Set(network.nodes.map(({ id }) => id));
			const had = new Set(own.nodes.map(({ id }) => id));
			for (const { id, from, to } of network.branches) {
				const inBase = changed.branches.some((each) => each.id === id);
				for (const end of [from, to]) if (had.has(end) && !inBase) expect(ends).toContain(end);
			}
		}
	});
});
