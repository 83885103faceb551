/** Words and parts of paired draws, with the built solver's own worlds. */
import { describe, expect, it } from "vitest";
import { chance, leading, pairOf, verdictWords } from "../../../www/src/compare/telling";
import { gathered, partSize } from "../../../www/src/compare/worlds";
import type { Study, Worlds } from "../../../www/src/solver/types";
import { example, many } from "../wasm";

const base = example("symmetric_lid");

function shorter(part: number): Study {
	const study = structuredClone(base);
	for (const { id, losses } of study.network.branches)
		if (id === "runner 1") for (const loss of losses) if ("area" in loss) loss.area *= part;
	return study;
}

const worlds: Worlds = {
	draw: "benchOneAtATime",
	seed: 1,
	split: "asStated",
	first: 0,
	count: 120,
};

function told(versions: Study[]) {
	const reply = many.deviations(versions, worlds);
	if (reply.kind === "wrong") throw new Error("the versions are valid");
	return many.tell(reply.deviations, versions.length, base.engine.cylinders.length, 0.9);
}

describe("what many worlds tell", () => {
	const all = told([base, base, shorter(0.7)]);

	it("is told of two versions from either side", () => {
		expect(pairOf(all, 0, 1)).toMatchObject({
			probability: 0.5,
			verdict: "tooCloseToTell",
			sign: "≈",
		});
		const even = pairOf(all, 0, 2);
		const cut = pairOf(all, 2, 0);
		expect(even?.verdict).toBe("moreEven");
		expect(cut?.verdict).toBe("lessEven");
		expect((even?.probability ?? 0) + (cut?.probability ?? 0)).toBeCloseTo(1, 12);
		expect(pairOf(all, 0, 7)).toBeNull();
	});

	it("is a sentence that names the more even one first, or neither", () => {
		const [same, more, less] = [pairOf(all, 0, 1), pairOf(all, 0, 2), pairOf(all, 2, 0)];
		if (!same || !more || !less) throw new Error("all are told of");
		expect(verdictWords(same, "Base", "A", 0.9)).toBe(
			"Base and A are too close to tell: Base has the smaller spread in 50 % of 120 possible truths, give or take 5 points; 90 % either way are asked for.",
		);
		expect(verdictWords(more, "Base", "Cut", 0.9)).toMatch(
			/^Base is more even than Cut: in > 99 % of 120/,
		);
		expect(verdictWords(less, "Cut", "Base", 0.9)).toMatch(
			/^Base is more even than Cut: Cut has the smaller spread in < 1 % of/,
		);
	});

	it("is never certain", () => {
		expect([1, 0.996, 0.99, 0.5, 0.004, 0].map(chance)).toEqual([
			"> 99 %",
			"> 99 %",
			"99 %",
			"50 %",
			"< 1 %",
			"< 1 %",
		]);
	});

	it("names the causes that show", () => {
		const causes = [
			{ law: "bend", amount: 0.02 },
			{ law: "duct", amount: 0.001 },
			{ law: "hose", amount: 0.0009 },
		];
		expect(leading(causes).map(({ law }) => law)).toEqual(["bend", "duct"]);
		expect(leading([])).toEqual([]);
	});
});

describe("worlds in parts", () => {
	it("are asked for by how long the last ones took", () => {
		expect(partSize(4)).toBe(25);
		expect(partSize(4, 25, 75)).toBe(50);
		expect(partSize(4, 25, 1e6)).toBe(5);
		expect(partSize(4, 400, 1)).toBe(500);
	});

	it("are gathered in their order", () => {
		const found = gathered(4);
		expect([...found.add(new Float64Array([1, 2]))]).toEqual([1, 2]);
		expect([...found.add(new Float64Array([3]))]).toEqual([1, 2, 3]);
	});
});
