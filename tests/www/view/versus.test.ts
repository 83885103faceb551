import { describe, expect, it } from "vitest";
import type { BudgetItem, CylinderAnswer, Path, Solved } from "../../../www/src/solver/types";
import { stairs } from "../../../www/src/view/stair";
import { paired, rivalOf, tags } from "../../../www/src/view/versus";

function item(element: string, loss: number | null, label: string, fall: number): BudgetItem {
	return { element, loss, label, fall };
}

const SHORT = [
	item("run 1", 0, "duct friction", 60),
	item("log 1", null, "header log 1", 1700),
	item("runner 1", 0, "duct friction", 225),
	item("runner 1", 1, "bend", 536),
];
const LONG = [
	item("run 1", 0, "duct friction", 61),
	item("log 1", null, "header log 1", 0),
	item("run 2", 0, "duct friction", 40),
	item("log 2", null, "header log 2", 700),
	item("runner 2", 0, "duct friction", 220),
	item("runner 2", 1, "bend", 540),
];

describe("losses of two paths", () => {
	it("go together by place, then by kind, those at the ports first", () => {
		const pairs = paired(SHORT, LONG);
		const places = pairs.map(({ own, other }) => [own?.element ?? "", other?.element ?? ""]);
		expect(places).toEqual([
			["run 1", "run 1"],
			["log 1", "log 1"],
			["", "run 2"],
			["", "log 2"],
			["runner 1", "runner 2"],
			["runner 1", "runner 2"],
		]);
		expect(tags(pairs)).toEqual(["1", "2", "a", "b", "3", "4"]);
	});

	it("lose nothing on the way: the differences add up to the whole", () => {
		const sum = (items: readonly { fall: number }[]) =>
			items.reduce((all, { fall }) => all + fall, 0);
		for (const [one, other] of [
			[SHORT, LONG],
			[LONG, SHORT],
			[SHORT, []],
			[[], LONG],
			[SHORT, SHORT],
		] as const) {
			const pairs = paired(one, other);
			const more = pairs.reduce((all, pair) => all + pair.more, 0);
			expect(more).toBeCloseTo(sum(one) - sum(other));
			expect(pairs.flatMap(({ own }) => own ?? [])).toEqual(one);
			expect(pairs.flatMap((pair) => pair.other ?? [])).toEqual(other);
		}
	});
});

describe("the path to compare with", () => {
	function path(cylinder: string, port = `port ${cylinder}`): Path {
		return { port, cylinder, items: [], fall: 0, otherWays: false };
	}
	function cylinder(name: string, deviation: number, flows: Record<string, number>) {
		const ports = Object.entries(flows).map(([port, flow]) => ({ port, flow, share: 0 }));
		return { cylinder: name, deviation, ports } as unknown as CylinderAnswer;
	}
	const solved = {
		gap: { worst: "1", best: "2", quantity: "portPressure", total: 0, parts: [] },
		cylinders: [
			cylinder("1", -0.02, { "port 1": 1 }),
			cylinder("2", 0.01, { "2 a": 0.2, "2 b": 0.8 }),
			cylinder("3", 0.01 - 1e-3, { "port 3": 1 }),
		],
		paths: [path("1"), path("2", "2 a"), path("2", "2 b"), path("3")],
	} as unknown as Solved;

	it("is the best cylinder's main port, for the best the worst's", () => {
		expect(rivalOf(solved, path("1"))).toMatchObject({
			path: { port: "2 b" },
			gets: "which gets most",
		});
		expect(rivalOf(solved, path("3"))?.path.port).toBe("2 b");
		expect(rivalOf(solved, path("2", "2 a"))).toMatchObject({
			path: { port: "port 1" },
			gets: "which gets least",
		});
	});

	it("is none where there is one cylinder", () => {
		expect(rivalOf({ ...solved, gap: null }, path("1"))).toBeNull();
	});
});

describe("the stairs", () => {
	const FALLS = [
		{ own: 3, other: 1 },
		{ own: null, other: 2 },
		{ own: 1, other: 1 },
	];

	it("share one scale", () => {
		const drawing = stairs(FALLS, true, 480);
		const [first, none, last] = drawing.own.steps;
		expect(none).toBeNull();
		// Both paths fall by 4 in all, so they end at the same height.
		expect(drawing.own.last).toBeCloseTo(drawing.other?.last ?? 0);
		const pixels = ((first?.to ?? 0) - (first?.from ?? 0)) / 3;
		expect(pixels).toBeGreaterThan(0);
		expect((last?.to ?? 0) - (last?.from ?? 0)).toBeCloseTo(pixels);
		const other = drawing.other?.steps.map((step) => (step ? (step.to - step.from) / pixels : 0));
		expect(other?.map((fall) => Math.round(fall * 1e6) / 1e6)).toEqual([1, 2, 1]);
	});

	it("have bars up where the first path loses more, to one scale", () => {
		const { bars, zero, reach } = stairs(FALLS, true, 480);
		expect(reach).toBe(2);
		expect(bars[0]?.y).toBeLessThan(zero);
		expect(bars[1]?.y).toBe(zero);
		expect(bars[0]?.height).toBeCloseTo(bars[1]?.height ?? 0);
		expect(bars[2]?.height).toBe(0);
	});

	it("of a path alone have no bars", () => {
		const { bars, other } = stairs([{ own: 1, other: null }], false, 480);
		expect(other).toBeNull();
		expect(bars).toEqual([]);
	});
});
