import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
	begin,
	change,
	draft,
	put,
	redo,
	type Sheet,
	turn,
	undo,
} from "../../../www/src/network/edit";
import { addVariant, tellVariant } from "../../../www/src/network/variants";
import {
	apply,
	difference,
	documentDrafts,
	documentOf,
	isSameEdit,
	look,
	sheetOf,
	versionsOf,
} from "../../../www/src/network/versions";
import type { Network, Study, Variant } from "../../../www/src/solver/types";
import { read, solve } from "../wasm";
import { edited, manifold, numbers } from "./random";

interface Cases {
	readonly study: Study & { readonly variants: Variant[] };
	readonly networks: Network[];
}

/** The solver is tested against the same. */
const CASES: Cases = JSON.parse(
	readFileSync(new URL("../../network/variants.json", import.meta.url), "utf8"),
);
const STUDY = read({
	format: "evenport-study",
	version: 1,
	name: "three runners",
	engine: { cylinders: [{ id: "1" }, { id: "2" }, { id: "3" }] },
	network: manifold(3),
});
const RISE = ["network", "branches", 0, "temperatureRise"];
const rise = ({ study }: Sheet) => study.network.branches[0]?.temperatureRise;

describe("a variant", () => {
	it.each(CASES.study.variants.map((variant, place) => ({ name: variant.name, variant, place })))(
		"called “$name” is the network that the solver makes of it, and back",
		({ variant, place }) => {
			const { network } = CASES.study;
			const version = CASES.networks[place] as Network;
			expect(apply(network, variant)).toEqual(version);
			expect(difference(network, version, variant)).toEqual(variant);
		},
	);

	it("holds whatever edits have made of the base", () => {
		for (let seed = 1; seed <= 300; seed += 1) {
			const next = numbers(seed);
			const base = manifold(3);
			let network = base;
			for (let count = next(6); count >= 0; count -= 1) {
				network = edited(network, next, String(count));
			}
			const variant = difference(base, network, { name: "edited", notes: "" });
			expect(apply(base, variant)).toEqual(network);
		}
	});

	it("holds rows that wrongly share a name, of one kind or of both", () => {
		const { nodes, branches } = manifold(2);
		const [first, second] = branches as [Network["branches"][0], Network["branches"][0]];
		const double = {
			nodes: [...nodes, { id: "feed", kind: "joint" } as const],
			branches: [...branches, first],
		};
		const others: Network[] = [
			{ nodes, branches },
			{ nodes: double.nodes, branches },
			{ nodes, branches: [second, first, first] },
			{ nodes: double.nodes, branches: [second] },
			{ nodes: double.nodes, branches: [{ ...first, temperatureRise: 1 }, first, second] },
		];
		for (const base of [double, ...others]) {
			for (const network of [double, ...others]) {
				const variant = difference(base, network, { name: "double", notes: "" });
				expect(apply(base, variant)).toEqual(network);
			}
		}
	});

	it("is solved like its network typed in", () => {
		const study = read(CASES.study);
		const [, , version] = versionsOf(sheetOf(study));
		const network = CASES.networks[1] as Network;
		const { variants: _, ...alone } = study;
		const shares = (each: Study) => JSON.stringify(solve(each).draws);
		expect(shares(version?.study as Study)).toBe(shares({ ...alone, network }));
		expect(shares(version?.study as Study)).not.toBe(shares(alone));
	});
});

describe("the versions on the sheet", () => {
	it("are the document, whichever is looked at", () => {
		const study = read(CASES.study);
		for (const place of [null, ...(study.variants ?? []).keys()]) {
			const sheet = sheetOf(study, {}, place);
			expect(documentOf(sheet)).toEqual(study);
			expect(sheet.study.variants).toBeUndefined();
			const { network } = sheet.study;
			expect(network).toEqual(place === null ? study.network : CASES.networks[place]);
		}
	});

	it("share the rows in which they do not differ", () => {
		const [base, , wider] = versionsOf(sheetOf(read(CASES.study)));
		expect(base?.name).toBeNull();
		expect(wider?.name).toBe("one runner wider");
		expect(wider?.study.network.branches[0]).toBe(base?.study.network.branches[0]);
		expect(wider?.study.network.branches[2]).not.toBe(base?.study.network.branches[2]);
	});

	it("are edited one by one", () => {
		const variant = change(begin({ study: STUDY, drafts: {} }), null, addVariant);
		const typed = change(variant, null, (sheet) => put(sheet, RISE, 5)).present;
		expect(rise(typed)).toBe(5);
		expect(rise(look(typed, null))).toBeUndefined();
		expect(documentOf(typed).variants?.[0]?.branches).toHaveLength(1);
	});

	it("keep their unreadable cells, through switching and through the text that is kept", () => {
		let history = change(begin({ study: STUDY, drafts: {} }), null, addVariant);
		history = change(history, null, (sheet) => draft(sheet, RISE, "warm"));
		history = change(history, null, (sheet) => draft(sheet, ["engine", "speed"], "fast"));
		const on = history.present;
		const base = look(on, null);
		expect(base.drafts).toEqual({ "engine.speed": "fast" });
		expect(look(base, 0).drafts).toEqual(on.drafts);
		for (const sheet of [on, base]) {
			const drafts = documentDrafts(sheet);
			expect(drafts).toEqual({
				"engine.speed": "fast",
				"variants.0.network.branches.0.temperatureRise": "warm",
			});
			const again = sheetOf(documentOf(sheet), drafts, sheet.versions?.looking);
			expect(again.drafts).toEqual(sheet.drafts);
		}
	});

	it("are looked at without an edit", () => {
		const named = (sheet: Sheet) => tellVariant(sheet, 0, { name: "wide" });
		let history = change(begin({ study: STUDY, drafts: {} }), null, addVariant);
		history = change(history, null, named);
		const there = history.present;
		history = turn(history, (sheet) => look(sheet, null));
		expect(isSameEdit(history.present, there)).toBe(true);
		history = change(history, null, (sheet) => put(sheet, RISE, 5));
		expect(isSameEdit(history.present, there)).toBe(false);
		// The edit that is taken back shows in the version that it was made in.
		history = undo(turn(history, (sheet) => look(sheet, 0)));
		expect(history.present.versions?.looking).toBeNull();
		expect(rise(history.present)).toBeUndefined();
		const again = redo(history).present;
		expect(again.versions?.looking).toBeNull();
		expect(rise(again)).toBe(5);
	});
});
