import { describe, expect, it } from "vitest";
import {
	nearest,
	refusals,
	refusedSentence,
	worstOf,
	worstSentence,
} from "../../../www/src/range/figures";
import { FIRST, nextCount } from "../../../www/src/range/pace";
import { columnsOf, wantedOf } from "../../../www/src/range/wanted";
import type { PointFigures, SpeedPoint } from "../../../www/src/solver/types";
import { chosenUnits } from "../../../www/src/units";
import { example, range } from "../wasm";

const UNITS = chosenUnits(undefined, 101_325);

function solved(rpm: number, shares: number[]): SpeedPoint {
	const spread = (Math.max(...shares) - Math.min(...shares)) * shares.length;
	const figures = {
		spread,
		shares,
		total: 0.1,
		chargeTemperature: 330,
		boost: null,
		loss: 900,
		pressureRatio: null,
	} as Partial<PointFigures> as PointFigures;
	return { speed: rpm / 60, outcome: { kind: "solved", ...figures } };
}

function refused(rpm: number, sentence: string): SpeedPoint {
	return { speed: rpm / 60, outcome: { kind: "refused", sentence } };
}

const POINTS = [
	solved(1000, [0.5, 0.5]),
	solved(2000, [0.51, 0.49]),
	solved(3000, [0.495, 0.505]),
	refused(4000, "It chokes, and feeds at most 3500 rpm."),
	refused(5000, "It chokes, and feeds at most 3501 rpm."),
	refused(6000, "The table ends."),
];

describe("a range of speeds", () => {
	it("has its worst point named with both cylinders, beside its limit", () => {
		expect(worstOf(POINTS)).toBe(1);
		expect(worstSentence(POINTS, ["a", "b"], 0.01, UNITS)).toBe(
			"Worst at 2000 rpm: spread 4.00 %, over the limit of 1.00 %, as at 2 of 3 speeds. There cylinder a gets 2.00 % more than the mean, cylinder b gets 2.00 % less.",
		);
		expect(worstSentence(POINTS, ["a", "b"], 0.1, UNITS)).toContain(
			"within the limit of 10.00 %, as at every speed that is solved.",
		);
	});

	it("has no worst point where all are alike, or none is solved", () => {
		const level = [solved(1000, [0.5, 0.5]), solved(2000, [0.5, 0.5])];
		expect(worstOf(level)).toBe(-1);
		expect(worstSentence(level, ["a", "b"], 0.004, UNITS)).toBe(
			"The spread is 0.00 % at every speed, within the limit of 0.40 %.",
		);
		expect(worstOf(POINTS.slice(3))).toBe(-1);
		expect(worstSentence(POINTS.slice(3), ["a", "b"], 0.004, UNITS)).toBe(
			"No speed of the range has an answer.",
		);
	});

	it("tells one reason once for speeds next to each other", () => {
		const found = refusals(POINTS);
		expect(found.map(({ from, to }) => [from, to])).toEqual([
			[3, 4],
			[5, 5],
		]);
		expect(found.map((each) => refusedSentence(each, POINTS, UNITS))).toEqual([
			"From 4000 to 5000 rpm there is a gap. It chokes, and feeds at most 3500 rpm.",
			"At 6000 rpm there is a gap. The table ends.",
		]);
	});

	it("finds the speed next to the study's", () => {
		expect(nearest(POINTS, 2400 / 60)).toBe(1);
		expect(nearest(POINTS, 2600 / 60)).toBe(2);
		expect(nearest(POINTS, 1e6)).toBe(5);
	});

	it("leaves out what the study has not, and keeps gaps in what it has", () => {
		expect(columnsOf(POINTS, UNITS, undefined).map(({ key }) => key)).toEqual([
			"spread",
			"air",
			"charge",
			"loss",
		]);
		const [shares, spread] = wantedOf(POINTS, ["a", "b"], 0.004, UNITS, undefined);
		const near = [0, 2, -1].map((value) => expect.closeTo(value, 9));
		expect(shares?.series[0]?.values).toEqual([...near, null, null, null]);
		expect(spread?.within).toEqual([0, expect.closeTo(0.4, 9)]);
	});
});

describe("asking in parts", () => {
	it("comes to the same as the whole range, with the blower's figures in it", () => {
		const study = example("blown_v8");
		const whole = range(study, 0, 12);
		const parts = [range(study, 0, 5), range(study, 5, 7)];
		if (whole.kind !== "solved") throw new Error("the example is wrong");
		const points = parts.flatMap((part) => (part.kind === "solved" ? part.points : []));
		expect(whole.of).toBe(60);
		expect(points.map(({ speed }) => speed)).toEqual(whole.points.map(({ speed }) => speed));
		points.forEach(({ outcome }, place) => {
			const same = whole.points[place]?.outcome;
			if (outcome.kind !== "solved" || same?.kind !== "solved") throw new Error("refused");
			expect(outcome.spread).toBeCloseTo(same.spread, 7);
			expect(outcome.pressureRatio).toBeCloseTo(same.pressureRatio ?? 0, 7);
		});
		expect(columnsOf(points, UNITS, "lid front").map(({ label }) => label)).toContain(
			"Boost at lid front, static, kPa gauge",
		);
	});

	it("goes by how long the last part took, from three speeds to twenty", () => {
		expect(nextCount(FIRST, 50)).toBe(FIRST);
		expect(nextCount(10, 2000)).toBe(3);
		expect(nextCount(3, 500)).toBe(3);
		expect(nextCount(3, 15)).toBe(10);
		expect(nextCount(10, 0)).toBe(20);
	});
});
