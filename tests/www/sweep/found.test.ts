import { describe, expect, it } from "vitest";
import type { FieldInfo, FiguresOutcome } from "../../../www/src/solver/types";
import {
	bestOf,
	bestSentences,
	endOf,
	mapTable,
	type Outcome,
	reasonOf,
	type Told,
	tableOf,
	variantName,
} from "../../../www/src/sweep/found";
import { mapOf, shadesOf } from "../../../www/src/sweep/map";
import type { Axis } from "../../../www/src/sweep/plan";
import { chosenUnits, plainFigure } from "../../../www/src/units";

const UNITS = chosenUnits(undefined);
const INFO: FieldInfo = {
	name: "area",
	label: "area",
	quantity: "area",
	minimum: 0,
	maximum: 1,
	required: true,
	default: null,
	help: "",
};

const solved = (spread: number): FiguresOutcome => ({
	kind: "solved",
	total: 1,
	spread,
	shares: [(1 + spread / 2) / 2, (1 - spread / 2) / 2],
});
const REFUSED: FiguresOutcome = { kind: "refused", sentence: "Choked at window 1." };

function axis(row: string, count: number): Axis {
	const cell = { list: ["network", "branches"], row, way: ["area"], kind: "", info: INFO };
	return { cells: [cell], tie: "same", from: 0.001, to: 0.002, count };
}

function told(outcomes: readonly Outcome[], changed: Partial<Told> = {}): Told {
	const count = outcomes.length;
	return {
		plan: [axis("window", count)],
		names: ["window area"],
		points: outcomes.map((_, at) => [0.001 + (0.001 * at) / (count - 1)]),
		outcomes,
		present: solved(0.05),
		limits: [[0, 1]],
		doubt: 0.01,
		canVary: true,
		units: UNITS,
		...changed,
	};
}

describe("the best point of a sweep", () => {
	it("has the least spread of those that are solved", () => {
		expect(bestOf([solved(0.03), REFUSED, solved(0.01), solved(0.02)])).toBe(2);
	});

	it("is none where all are alike on the page, or none is solved", () => {
		expect(bestOf([solved(0.03), solved(0.03001), solved(0.03)])).toBe(-1);
		expect(bestOf([REFUSED, REFUSED])).toBe(-1);
		expect(bestSentences(told([REFUSED, REFUSED]))).toEqual([
			"No point of the sweep has an answer.",
		]);
		expect(bestSentences(told([solved(0.03), REFUSED, solved(0.03)])).join(" ")).toBe(
			"The spread is 3.00 % at every point that is solved: this does not move it.",
		);
	});

	it("is told with its value, and with what it is better than", () => {
		const said = bestSentences(told([solved(0.03), solved(0.01), solved(0.02)])).join(" ");
		expect(said).toContain("The least spread is 1.00 %, at 1500 mm².");
		expect(said).toContain("has 5.00 %, 4.00 % more.");
		expect(said).toContain("The least of an estimate is no proof");
		expect(said).not.toContain("the doubt of a share");
		expect(said).not.toContain("end of the range");
	});

	it("is told to be within the doubt, where it is", () => {
		const little = told([solved(0.049), solved(0.045), solved(0.05)]);
		expect(bestSentences(little).join(" ")).toContain(
			"0.50 % more, which is less than the doubt of a share, ±1.00 %.",
		);
	});

	it("points to the comparison of versions only where it can be a version", () => {
		const outcomes = [solved(0.03), solved(0.01), solved(0.02)];
		expect(bestSentences(told(outcomes)).join(" ")).toContain("comparison of versions");
		const said = bestSentences(told(outcomes, { canVary: false })).join(" ");
		expect(said).toContain("The least of an estimate is no proof.");
	});

	it("is no better than a study that has as little", () => {
		const said = bestSentences(told([solved(0.07), solved(0.06), solved(0.08)]));
		expect(said).toEqual([
			"No point has less spread than the study that was swept, 5.00 %; the least of them is 6.00 %, at 1500 mm².",
		]);
	});

	it("at an end of the range asks for a wider one, unless the cells can hold no more", () => {
		const end = [solved(0.03), solved(0.02), solved(0.01)];
		expect(bestSentences(told(end)).join(" ")).toContain("at the end of the range: widen it.");
		const bound = told(end, { limits: [[0, 0.002]] });
		expect(bestSentences(bound).join(" ")).toContain("and of what the cells may hold.");
		expect(endOf(5, [5, 5])).toEqual([{ axis: 0, last: false }]);
		expect(endOf(24, [5, 5])).toEqual([
			{ axis: 0, last: true },
			{ axis: 1, last: true },
		]);
		expect(endOf(12, [5, 5])).toEqual([]);
	});

	it("names a variant by field and value", () => {
		expect(variantName(told([solved(1), solved(2)]), [0.0018])).toBe("Window area 1800 mm²");
	});
});

describe("what a sweep tells", () => {
	const plain = (value: number) => plainFigure(value, UNITS.fraction);

	it("of a gap is the reason", () => {
		const error = {
			kind: "outOfBounds" as const,
			element: "window 1",
			field: "area",
			message: "area must lie between 0 and 1",
		};
		const wording = ({ message }: { message: string }) => message;
		expect(reasonOf(REFUSED, wording)).toBe("Choked at window 1.");
		expect(reasonOf(solved(1), wording)).toBeNull();
		expect(reasonOf({ kind: "wrong", errors: [error, error] }, wording)).toBe(
			"The study is wrong there: area must lie between 0 and 1 (and 1 more)",
		);
		expect(reasonOf({ kind: "incomplete" }, wording)).toContain("needs more of the study");
	});

	it("as a table has the value, the spread and every cylinder", () => {
		const table = tableOf(told([solved(0.02), REFUSED, solved(0.04)]), ["a", "b"], plain);
		expect(table).toEqual([
			["Window area, mm²", "Spread, %", "Cyl. a from mean, %", "Cyl. b from mean, %"],
			["1000", "2.00", "1.00", "-1.00"],
			["1500", "refused", "", ""],
			["2000", "4.00", "2.00", "-2.00"],
		]);
	});

	it("as a map's table has the second dimension upwards", () => {
		const outcomes = [0.01, 0.02, 0.03, 0.04, 0.05, 0.06].map(solved);
		const its = told(outcomes, {
			plan: [axis("window", 3), axis("neck", 2)],
			names: ["window area", "neck area"],
			points: [0.003, 0.004].flatMap((up) => [0.001, 0.0015, 0.002].map((at) => [at, up])),
		});
		expect(mapTable(its, plain)).toEqual([
			["Neck area, mm², against Window area, mm²: spread, %", "1000", "1500", "2000"],
			["4000", "4.00", "5.00", "6.00"],
			["3000", "1.00", "2.00", "3.00"],
		]);
	});
});

describe("a map in one ink", () => {
	const OUTCOMES = [0.011, 0.02, 0.032, 0.047, 0.05, 0.068].map(solved);

	it("has more ink the more spread there is, at round steps that leave nothing out", () => {
		const shades = shadesOf(OUTCOMES);
		expect([shades[0]?.from, shades.at(-1)?.to]).toEqual([0.011, 0.068]);
		shades.slice(1).forEach((shade, at) => {
			expect(shade.from).toBe(shades[at]?.to);
			expect(shade.ink).toBeGreaterThan(shades[at]?.ink ?? 1);
		});
		const { tiles } = mapOf(OUTCOMES, 3, 2, 400);
		const inks = tiles.map(({ ink }) => ink ?? -1);
		expect(inks).toEqual([...inks].sort((one, other) => one - other));
	});

	it("has the second dimension upwards, and no ink where there is no answer", () => {
		const { tiles, high, top } = mapOf([solved(1), solved(2), REFUSED, solved(3)], 2, 2, 400);
		expect(tiles.map(({ y }) => y)).toEqual([top + high, top + high, top, top]);
		expect(tiles[2]?.ink).toBeNull();
	});

	it("fits its width, whatever that is", () => {
		for (const width of [120, 320, 900]) {
			const { tiles, wide } = mapOf(OUTCOMES, 3, 2, width);
			const right = Math.max(...tiles.map(({ x }) => x + wide));
			expect(right).toBeLessThanOrEqual(Math.max(width, 140));
		}
	});
});
