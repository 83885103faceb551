import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
	addBlower,
	changeDrive,
	driveWay,
	feedByBlower,
	removeBlower,
} from "../../../www/src/network/blower";
import { addCooler, removeCooler, renameCooler } from "../../../www/src/network/cooler";
import { begin, change, put, type Sheet, undo } from "../../../www/src/network/edit";
import { inOrder, passages, putSeries } from "../../../www/src/network/passages";
import { renameBranch, renameNode } from "../../../www/src/network/rename";
import { changeSource, type Source, sourceWay } from "../../../www/src/network/source";
import type { Branch, KindInfo, Study } from "../../../www/src/solver/types";
import { removeRows } from "../../../www/src/table/rows";
import { catalogue, drawn, read, solve } from "../wasm";

function example(name: string): Sheet {
	const path = new URL(`../../../examples/${name}/network.json`, import.meta.url);
	return { study: read(JSON.parse(readFileSync(path, "utf8"))), drafts: {} };
}

function branch({ study }: Sheet, id: string): Branch {
	return study.network.branches.find((each) => each.id === id) as Branch;
}

function place({ study }: Sheet, id: string): number {
	const { nodes, branches } = study.network;
	const node = nodes.findIndex((each) => each.id === id);
	return node >= 0 ? node : branches.findIndex((each) => each.id === id);
}

function source({ study }: Sheet): number {
	return study.network.nodes.findIndex(({ kind }) => kind === "source");
}

const kind = (name: string) => catalogue.losses.find((each) => each.kind === name) as KindInfo;

/** What the gate says of a study, word by word. */
function faults(study: Study): string {
	try {
		read(study);
		return "";
	} catch (error) {
		return String(error);
	}
}

describe("feeding by a blower what a source fed", () => {
	const lid = example("v8_lid");
	const { sheet, index } = feedByBlower(lid, source(lid), catalogue.blower);

	it("passes the gate and solves", () => {
		expect(faults(sheet.study)).toBe("");
		const running = drawn(solve(sheet.study), "running");
		expect(running.operating?.blowers[0]).toMatchObject({ branch: "blower 2" });
		expect(running.operating?.boost?.node).toBe("lid");
		expect(running.operating?.boost?.pressure).toBeCloseTo(50_000, -1);
	});

	it("asks the blower for the boost that was asked of the source", () => {
		const path = ["network", "nodes", source(lid), "boost"];
		const asked = put(changeSource(lid, source(lid), "boost"), path, 60_000);
		const fed = feedByBlower(asked, source(asked), catalogue.blower).sheet;
		expect(faults(fed.study)).toBe("");
		const { operating } = drawn(solve(fed.study), "running");
		expect(operating?.boost?.pressure).toBeCloseTo(60_000, -1);
		expect(operating?.blowers[0]?.driveRatio).toBeGreaterThan(2);
	});

	it("keeps the way's losses before the blower and refers breathing to the node behind it", () => {
		const { network } = sheet.study;
		const blown = network.branches[index] as Branch;
		expect(blown.losses).toEqual([]);
		const ambient = put(lid, ["engine", "reference"], { at: "ambient" });
		const { engine } = feedByBlower(ambient, source(lid), catalogue.blower).sheet.study;
		expect(engine.reference).toEqual({ at: "node", node: blown.to });
		const old = lid.study.network.branches.find(
			({ from }) => from === lid.study.network.nodes[source(lid)]?.id,
		);
		expect(branch(sheet, old?.id ?? "")).toEqual({ ...old, to: blown.from });
		expect(network.nodes[source(sheet)]).toEqual({ id: old?.from, kind: "source", ambient: true });
	});

	it("is one edit that an undo takes back whole", () => {
		const before = begin(lid);
		const after = change(
			before,
			null,
			(now) => feedByBlower(now, source(now), catalogue.blower).sheet,
		);
		expect(after.present.study).not.toBe(lid.study);
		expect(undo(after).present.study).toBe(lid.study);
	});

	for (const name of ["inline_log", "tapered_log", "symmetric_lid"]) {
		it(`solves for ${name} too`, () => {
			const plain = example(name);
			const blown = feedByBlower(plain, source(plain), catalogue.blower).sheet;
			expect(faults(blown.study)).toBe("");
			const answer = solve(blown.study);
			const outcomes = answer.draws.map(({ draw, outcome }) => `${draw} ${outcome.kind}`);
			expect(outcomes.filter((each) => !each.endsWith("solved"))).toEqual([]);
		});
	}

	it("takes a way back to an open branch when the blower goes", () => {
		const open = removeBlower(sheet, index, kind("duct"));
		expect(open.study.network.branches[index]?.blower).toBeUndefined();
		expect(open.study.network.branches[index]?.losses).toHaveLength(1);
		expect(faults(open.study)).toBe("");
	});
});

describe("a blower", () => {
	const blown = example("blown_v8");
	const index = place(blown, "blower");
	const blower = (sheet: Sheet) => branch(sheet, "blower").blower;

	it("is driven in one way at a time, at the same ratio as far as it is known", () => {
		const pulleys = changeDrive(blown, index, "pulleys");
		const { crankPulley = 0, blowerPulley = 1, driveRatio } = blower(pulleys) ?? {};
		expect(driveRatio).toBeUndefined();
		expect(crankPulley / blowerPulley).toBeCloseTo(2.1, 3);
		const boost = changeDrive(pulleys, index, "boost");
		expect(blower(boost)).toMatchObject({ boostNode: "lid front" });
		expect(driveWay(blower(boost) ?? { displacement: 1 })).toBe("boost");
		const ratio = changeDrive(boost, index, "ratio", 1.87654);
		expect(blower(ratio)?.driveRatio).toBe(1.877);
		for (const each of [pulleys, boost, ratio]) expect(faults(each.study)).toBe("");
	});

	it("takes its bypass's tick along when it goes", () => {
		const open = removeBlower(blown, index, kind("duct"));
		expect(branch(open, "bypass").bypass).toBeUndefined();
		expect(faults(open.study)).toBe("");
	});

	it("in a branch of its own waits for its ends only", () => {
		const lid = example("v8_lid");
		const added = addBlower(lid, catalogue.blower);
		expect(faults(added.sheet.study)).toMatch(/^Error: blower 2 is empty; blower 2 is empty/);
		expect(added.sheet.study.network.branches[added.index]?.blower?.driveRatio).toBe(2);
	});
});

describe("a source", () => {
	const lid = example("v8_lid");
	const at = source(lid);
	const of = (sheet: Sheet) => sheet.study.network.nodes[at] as Source;

	it("gives its pressure in one way at a time", () => {
		const boost = changeSource(lid, at, "boost");
		expect(sourceWay(of(boost))).toBe("boost");
		expect(of(boost).pressure).toBeUndefined();
		expect(of(boost).temperature).toBe(of(lid).temperature);
		const air = changeSource(boost, at, "ambient");
		expect(of(air)).toEqual({ id: of(lid).id, kind: "source", ambient: true });
		const typed = changeSource(air, at, "typed");
		expect(sourceWay(of(typed))).toBe("typed");
		for (const each of [boost, air, typed]) expect(faults(each.study)).toBe("");
	});

	it("reads its boost where another one does, and asks for the same", () => {
		const twin = example("twin_feed");
		const sources = twin.study.network.nodes.flatMap((node, index) =>
			node.kind === "source" ? [index] : [],
		);
		const air = changeSource(twin, sources[1] ?? 0, "ambient");
		const again = changeSource(air, sources[1] ?? 0, "boost");
		expect(again.study.network.nodes[sources[1] ?? 0]).toMatchObject({
			boost: 80_000,
			boostNode: "left plenum",
		});
	});
});

describe("a charge cooler", () => {
	const blown = example("blown_v8");

	it("is followed by its cores when it gets another name, and left by them when it goes", () => {
		const renamed = renameCooler(blown, 0, "charge core");
		expect(passages(renamed.study, "charge core")).toEqual(["core front", "core rear"]);
		expect(faults(renamed.study)).toBe("");
		const gone = removeCooler(renamed, 0);
		expect(gone.study.coolers).toBeUndefined();
		expect(passages(gone.study, "charge core")).toEqual([]);
		expect(faults(gone.study)).toBe("");
	});

	it("takes the cores that exchange no heat as its passages", () => {
		const added = addCooler(removeCooler(blown, 0), catalogue.cooler);
		expect(passages(added.study, "cooler")).toEqual(["core front", "core rear"]);
		expect(faults(added.study)).toBe("");
	});

	it("has the order of its passages follow names and branches that go", () => {
		const turned = putSeries(blown, 0, ["core rear", "core front"]);
		const named = renameBranch(turned, place(turned, "core rear"), "rear half");
		expect(named.study.coolers?.[0]?.series).toEqual(["rear half", "core front"]);
		const list = ["network", "branches"];
		const gone = removeRows(named, [{ list, places: [place(named, "rear half")] }]);
		expect(gone.study.coolers?.[0]?.series).toEqual(["core front"]);
		expect(inOrder(gone.study, { ...blown.study.coolers?.[0], series: [] } as never)).toEqual([
			"core front",
		]);
	});
});

describe("a node's name", () => {
	it("is followed by the boosts read there and by the engine's reference", () => {
		const blown = changeDrive(example("blown_v8"), place(example("blown_v8"), "blower"), "boost");
		const named = renameNode(blown, place(blown, "lid front"), "front");
		expect(branch(named, "blower").blower?.boostNode).toBe("front");
		expect(named.study.engine.reference).toEqual({ at: "node", node: "front" });
		const twin = example("twin_feed");
		const left = renameNode(twin, place(twin, "left plenum"), "left");
		const nodes = left.study.network.nodes.filter((node) => node.kind === "source");
		expect(nodes.map((node) => node.boostNode)).toEqual(["left", "left"]);
		expect(faults(left.study)).toBe("");
	});
});
