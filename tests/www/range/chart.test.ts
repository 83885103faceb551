import { describe, expect, it } from "vitest";
import { chartOf, DASHES, shortName, type Wanted } from "../../../www/src/range/chart";
import { APART, spaced } from "../../../www/src/range/ends";

describe("names at the ends of lines", () => {
	const cases: [string, number[]][] = [
		["all at one place", Array.from({ length: 8 }, () => 50)],
		["at the top", [0, 1, 2, 3]],
		["at the foot", [100, 99, 100, 98]],
		["in two heaps that meet", [40, 41, 42, 60, 61, 62]],
		["in any order", [90, 3, 55, 54, 12, 56, 11]],
	];
	for (const [what, ends] of cases)
		it(`do not overlap, keep their order and stay inside: ${what}`, () => {
			const places = spaced(ends, 0, 100);
			const order = ends.map((_, index) => index).sort((a, b) => (ends[a] ?? 0) - (ends[b] ?? 0));
			const sorted = order.map((index) => places[index] ?? 0);
			sorted.forEach((place, index) => {
				expect(place).toBeGreaterThanOrEqual(0);
				expect(place).toBeLessThanOrEqual(100 + 1e-9);
				if (index > 0) expect(place - (sorted[index - 1] ?? 0)).toBeGreaterThan(APART - 1e-9);
			});
		});

	it("stay where they belong when there is room", () => {
		expect(spaced([80, 10, 40], 0, 100)).toEqual([80, 10, 40]);
	});

	it("are moved apart about their middle", () => {
		expect(spaced([50, 50], 0, 100, 12)).toEqual([44, 56]);
	});

	it("are cut where they are too long", () => {
		expect(shortName("front left")).toBe("front le…");
		expect(shortName("cyl 12")).toBe("cyl 12");
	});
});

describe("charts over speed", () => {
	const SPEEDS = [1000, 2000, 3000, 4000, 5000];
	const shares: Wanted = {
		title: "Shares, %",
		series: [
			{ name: "a", values: [0, 1, null, 3, null] },
			{ name: "b", values: [0, -1, null, null, null] },
		],
		least: 0.4,
		within: [-0.2, 0.2],
	};
	const spread: Wanted = {
		title: "Spread, %",
		series: [{ name: "", values: [0, 2, null, 3, null] }],
		least: 0.4,
		within: [0, 0.4],
	};
	const gaps = [
		{ from: 2, to: 2 },
		{ from: 4, to: 4 },
	];
	const chart = chartOf(SPEEDS, gaps, [shares, spread], 400);

	it("break their lines where speeds are refused, and draw a lone speed as a stroke", () => {
		const [first, second] = chart.plots[0]?.lines ?? [];
		expect(first?.path.match(/[MLh]/g)?.join("")).toBe("MLMh");
		expect(second?.path.match(/[MLh]/g)?.join("")).toBe("ML");
		// Names stand where the lines end, also where those end at a refused speed.
		expect(first?.at.x).toBeLessThan(chart.right);
		expect(second?.at.x).toBeLessThan(first?.at.x ?? 0);
		expect(chart.gaps).toEqual([
			{ from: (chart.x(2000) + chart.x(3000)) / 2, to: (chart.x(3000) + chart.x(4000)) / 2 },
			{ from: (chart.x(4000) + chart.x(5000)) / 2, to: chart.right },
		]);
	});

	it("stand on one axis of speeds, one above the other, inside the drawing", () => {
		const [one, two] = chart.plots;
		expect(one?.bottom).toBeLessThan(two?.top ?? 0);
		expect(two?.bottom).toBeLessThan(chart.height);
		expect(chart.x(1000)).toBe(chart.left);
		expect(chart.x(5000)).toBe(chart.right);
		expect(chart.right).toBeLessThan(400);
	});

	it("have a scale that rises upwards and begins at zero where the limit does", () => {
		const [one, two] = chart.plots;
		expect(one?.y(3)).toBeLessThan(one?.y(0) ?? 0);
		expect(two?.y(0)).toBe(two?.bottom);
		expect(two?.within?.[1]).toBe(two?.bottom);
	});

	it("do not blow rounding up into a finding", () => {
		const level = { title: "", series: [{ name: "", values: [60, 60 + 1e-9] }], least: 2 };
		const plot = chartOf([1, 2], [], [level], 400).plots[0];
		expect(plot?.lines[0]?.path).not.toContain("NaN");
		expect(Math.abs((plot?.y(60) ?? 0) - (plot?.y(60 + 1e-9) ?? 9))).toBeLessThan(0.01);
	});

	it("write marks with as many decimals as they need and a true minus sign", () => {
		const texts = chart.plots[0]?.marks.map(({ text }) => text);
		expect(texts).toEqual(["−1", "0", "1", "2", "3"]);
		const marks = (...values: number[]) =>
			chartOf(
				[1, 2],
				[],
				[{ title: "", series: [{ name: "", values }], least: 0.05 }],
				400,
			).plots[0]?.marks.map(({ text }) => text);
		expect(marks(1.62, 1.83)).toEqual(["1.7", "1.8"]);
		expect(marks(1.711, 1.762)).toEqual(["1.72", "1.74", "1.76"]);
	});

	it("tell lines apart by their strokes", () => {
		expect(new Set(DASHES).size).toBe(DASHES.length);
		const many = Array.from({ length: 8 }, (_, place) => ({
			name: `${place}`,
			values: [0, place],
		}));
		const lines = chartOf([1, 2], [], [{ title: "", series: many, least: 1 }], 400).plots[0]?.lines;
		expect(new Set(lines?.map(({ dash }) => dash)).size).toBe(8);
	});

	it("give many names the height that they need", () => {
		const many = Array.from({ length: 24 }, (_, place) => ({ name: `${place}`, values: [0, 0] }));
		const plot = chartOf([1, 2], [], [{ title: "", series: many, least: 1 }], 400).plots[0];
		const places = plot?.lines.map(({ at }) => at.y).sort((a, b) => a - b) ?? [];
		places.slice(1).forEach((place, index) => {
			expect(place - (places[index] ?? 0)).toBeGreaterThan(APART - 1e-9);
		});
		expect(places.at(-1)).toBeLessThanOrEqual(plot?.bottom ?? 0);
	});
});
