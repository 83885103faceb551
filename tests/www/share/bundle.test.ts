import { describe, expect, it } from "vitest";
import { bundleOf, bundleText } from "../../../www/src/share/bundle";
import type { Entry } from "../../../www/src/share/records";

const entry = (given: Partial<Entry>): Entry => ({
	key: "k",
	study: "s",
	turn: 0,
	revision: 1,
	name: "Lid",
	saved: Date.UTC(2024, 1, 2),
	text: '{"format":"evenport-study"}',
	drafts: {},
	...given,
});

describe("all studies in one file", () => {
	it("keep unfinished cells, the version looked at, and text that is no study", () => {
		const text = bundleText([
			entry({ drafts: { "engine.speed": "6 thousand" }, looking: 1 }),
			entry({ name: "Broken", text: "{not json" }),
		]);
		expect(bundleOf(text)).toEqual([
			{
				name: "Lid",
				saved: "2024-02-02T00:00:00.000Z",
				study: { format: "evenport-study" },
				drafts: { "engine.speed": "6 thousand" },
				looking: 1,
			},
			{ name: "Broken", saved: "2024-02-02T00:00:00.000Z", text: "{not json", drafts: {} },
		]);
	});

	it("are told from a study and from anything else", () => {
		for (const text of ["", "{", "null", "[]", '{"format":"evenport-study"}', '"evenport-studies"'])
			expect(bundleOf(text)).toBeNull();
		expect(bundleOf('{"format":"evenport-studies","studies":5}')).toBeNull();
		expect(bundleOf('{"format":"evenport-studies","studies":[]}')).toEqual([]);
	});
});
