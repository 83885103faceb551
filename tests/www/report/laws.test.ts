import { describe, expect, it } from "vitest";
import { lawsUsed } from "../../../www/src/report/laws";
import type { Study } from "../../../www/src/solver/types";
import { catalogue, example } from "../wasm";

describe("the laws that a study rests on", () => {
	it("are those of its losses and nodes, counted, each with its source", () => {
		const used = lawsUsed(example("v8_lid"), catalogue);
		const times = Object.fromEntries(used.map(({ law, times }) => [law.kind, times]));
		expect(times).toEqual({ entryRounded: 9, duct: 9, bend: 8, opening: 16, core: 1 });
		for (const { law } of used) expect(law.source).not.toBe("");
	});

	it("name the author that was chosen, or the first where none was", () => {
		const study = example("v8_lid");
		const [neck, ...others] = study.network.branches;
		const chosen = {
			...study,
			network: {
				...study.network,
				branches: [
					{ ...neck, losses: [{ kind: "entrySharp", area: 0.008, law: "idelchik" }] },
					...others,
				],
			},
		} as Study;
		const authors = (of: Study, kind: string) =>
			lawsUsed(of, catalogue)
				.find(({ law }) => law.kind === kind)
				?.authors.map(({ name }) => name);
		expect(authors(chosen, "entrySharp")).toEqual(["idelchik"]);
		const first = catalogue.losses.find(({ kind }) => kind === "bend")?.laws[0]?.name;
		expect(authors(study, "bend")).toEqual([first]);
	});

	it("hold the blower, the charge cooler and the junctions of a study that has them", () => {
		const kinds = (name: string) => lawsUsed(example(name), catalogue).map(({ law }) => law.kind);
		expect(kinds("blown_v8")).toContain(catalogue.blower.kind);
		expect(kinds("inline_log")).toContain("header");
	});
});
