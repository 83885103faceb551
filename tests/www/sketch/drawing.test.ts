import { describe, expect, it } from "vitest";
import { drawn } from "../../../www/src/sketch/around";
import { beside, partsOf } from "../../../www/src/sketch/beside";
import { along, fitting, pathOf } from "../../../www/src/sketch/drawing";
import { lookOf, scaleOf } from "../../../www/src/sketch/flowing";
import { layered } from "../../../www/src/sketch/layered";
import { placed } from "../../../www/src/sketch/place";
import { renumbered } from "../../../www/src/sketch/renumber";
import type { BranchAnswer } from "../../../www/src/solver/types";
import { engine, example, structure } from "./networks";

const BEND = [
	{ x: 0, y: 0 },
	{ x: 10, y: 0 },
	{ x: 10, y: 30 },
];

describe("a way", () => {
	it("has a middle by its length, and a direction there", () => {
		expect(along(BEND, 0.125)).toEqual({ x: 5, y: 0, angle: 0 });
		expect(along(BEND, 0.5)).toEqual({ x: 10, y: 10, angle: 90 });
		expect(along(BEND, 1)).toEqual({ x: 10, y: 30, angle: 90 });
		expect(pathOf(BEND)).toBe("M0 0L10 0L10 30");
	});

	function branch(flow: number, fall: number, choked = false): BranchAnswer {
		const losses = [{ label: "", fall, mach: 0 }];
		return {
			branch: "b",
			flow,
			peakFlow: 0,
			velocity: 0,
			mach: 0,
			reynolds: 0,
			choked,
			losses,
		};
	}

	it("is as wide as its flow, as dark as its loss, and points where the air goes", () => {
		const all = [branch(0.2, 4000), branch(-0.1, 1000), branch(0, 0)];
		const scale = scaleOf(all);
		expect(scale).toEqual({ flow: 0.2, fall: 4000 });
		const looks = all.map((each) => lookOf(each, scale, 12));
		expect(looks.map(({ width }) => width)).toEqual([12, 6, 1.5]);
		expect(looks.map(({ ink }) => ink)).toEqual([1, 0.5, 0]);
		expect(looks.map(({ direction }) => direction)).toEqual([1, -1, 0]);
		const [first] = looks;
		expect(lookOf(branch(0.20001, 4000), scale, 12, first)).toBe(first);
		expect(lookOf(branch(0.15, 4000), scale, 12, first)).not.toBe(first);
		expect(lookOf(branch(0.2, 4000, true), scale, 12).choked).toBe(true);
		expect(lookOf(undefined, scale, 12)).toMatchObject({ direction: 0, ink: 0 });
	});

	it("in an engine starts and ends at the edges of its boxes", () => {
		const of = structure(example("v8_lid"));
		const { plan } = placed(of);
		if (!plan) throw new Error("no plan");
		const { boxes, lines } = drawn(plan, of, 430);
		for (const { id, from, to, dots } of lines) {
			for (const [end, dot] of [
				[from, dots[0]],
				[to, dots.at(-1)],
			] as const) {
				const box = boxes.find((each) => each.id === end);
				if (!box || !dot) throw new Error(`${id} has no ${end}`);
				expect(Math.abs(dot.x - box.x), id).toBeLessThanOrEqual(box.width / 2 + 0.1);
				expect(Math.abs(dot.y - box.y), id).toBeLessThanOrEqual(box.height / 2 + 0.1);
			}
		}
	});

	it("does not lie on another one", () => {
		const of = structure(example("v8_lid"));
		const { plan } = placed(of);
		if (!plan) throw new Error("no plan");
		const uprights = drawn(plan, of, 430).lines.flatMap(({ id, dots }) => {
			const [one, two] = dots;
			if (dots.length !== 2 || !one || !two || Math.abs(one.x - two.x) > 0.1) return [];
			return [{ id, x: one.x, top: Math.min(one.y, two.y), bottom: Math.max(one.y, two.y) }];
		});
		expect(uprights.length).toBeGreaterThan(16);
		for (const one of uprights) {
			const on = uprights.filter(
				(other) =>
					other !== one &&
					Math.abs(other.x - one.x) < 6 &&
					other.top < one.bottom - 1 &&
					other.bottom > one.top + 1,
			);
			expect(on.map(({ id }) => `${one.id} on ${id}`)).toEqual([]);
		}
	});
});

describe("names", () => {
	it("are cut in the middle, where they differ least, or left out", () => {
		expect(fitting("pocket 12", 10, 200)).toBe("pocket 12");
		expect(fitting("pocket 12", 10, 45)).toMatch(/^p.*….*12$/);
		expect(fitting("pocket 12", 10, 12)).toBe("");
	});

	it("of ways thin out when there is less room, and none runs into a box", () => {
		const of = structure(example("v8_lid"));
		const { plan } = placed(of);
		if (!plan) throw new Error("no plan");
		const count = (width: number) =>
			drawn(plan, of, width).lines.filter(({ name }) => name !== null).length;
		expect(count(1300)).toBeGreaterThan(count(430));
		expect(count(430)).toBeGreaterThan(count(320));
	});
});

describe("the arrow keys", () => {
	const point = { halfWidth: 0, halfHeight: 0 };
	const from = { id: "middle", x: 0, y: 0, ...point };
	const parts = [
		from,
		{ id: "right", x: 30, y: 2, ...point },
		{ id: "far right", x: 60, y: 0, ...point },
		{ id: "below", x: -5, y: 40, ...point },
		{ id: "long, above", x: 200, y: -20, halfWidth: 220, halfHeight: 5 },
	];

	it("lead to what lies next in their direction", () => {
		expect(beside(parts, from, "ArrowRight")?.id).toBe("right");
		expect(beside(parts, from, "ArrowDown")?.id).toBe("below");
		expect(beside(parts, from, "ArrowUp")?.id).toBe("long, above");
		expect(beside(parts, from, "ArrowLeft")).toBeNull();
		expect(beside(parts, from, "a")).toBeNull();
	});

	it("reach every part of an engine from its first port", () => {
		const of = engine(8, 2, "lid");
		const { plan } = placed(of);
		if (!plan) throw new Error("no plan");
		const all = partsOf(drawn(plan, of, 430));
		const seen = new Set<string>();
		const next = all.filter(({ id }) => id === "port 1.1");
		for (let part = next.pop(); part; part = next.pop()) {
			if (seen.has(part.id)) continue;
			seen.add(part.id);
			for (const key of ["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"]) {
				const to = beside(all, part, key);
				if (to) next.push(to);
			}
		}
		expect(all.filter(({ id }) => !seen.has(id)).map(({ id }) => id)).toEqual([]);
	});
});

describe("a drawing in layers", () => {
	it("has every node and way, in the width there is, clear of each other", () => {
		const of = structure(example("v8_lid"));
		const { boxes, lines, gauges, width } = layered(of, 430);
		expect(boxes).toHaveLength(of.points.length);
		expect(lines).toHaveLength(of.ways.length);
		expect(gauges).toHaveLength(8);
		expect(width).toBe(430);
		for (const [index, one] of boxes.entries()) {
			expect(one.x - one.width / 2).toBeGreaterThanOrEqual(0);
			expect(one.x + one.width / 2).toBeLessThanOrEqual(430);
			for (const other of boxes.slice(index + 1)) {
				const apart =
					Math.abs(one.x - other.x) >= (one.width + other.width) / 2 - 0.1 ||
					Math.abs(one.y - other.y) >= (one.height + other.height) / 2 - 0.1;
				expect(apart, `${one.id} on ${other.id}`).toBe(true);
			}
		}
	});

	it("leads ways to the ports themselves", () => {
		const { boxes, lines } = layered(structure(example("v8_lid")), 430);
		for (const { id, kind, x, y, height } of boxes) {
			if (kind !== "port") continue;
			const end = lines.find(({ to }) => to === id)?.dots.at(-1);
			expect(Math.hypot((end?.x ?? 0) - x, (end?.y ?? 0) - y), id).toBeCloseTo(height / 2);
		}
	});

	it("leads each way from its first end to its other, whichever lies higher", () => {
		const of = engine(2, 1, "plenum");
		const turned = {
			...of,
			ways: of.ways.map((way) => ({ ...way, from: way.to, to: way.from })),
		};
		const y = (drawing: ReturnType<typeof layered>, id: string) =>
			drawing.lines.find((line) => line.id === id)?.dots.map((dot) => dot.y) ?? [];
		const down = y(layered(of, 430), "neck");
		const up = y(layered(turned, 430), "neck");
		expect(down.at(-1)).toBeGreaterThan(down[0] ?? 0);
		expect(up).toEqual(down.toReversed());
	});
});

describe("another way of numbering", () => {
	it("gives banks and order, keeps what cells hold, and changes nothing else", () => {
		const study = example("v8_lid");
		const sheet = { study, drafts: { "engine.cylinders.4.sweptVolume": "x" } };
		const after = renumbered(sheet, "firstHalfLeft");
		const banks = after.study.engine.cylinders.map(({ id, bank }) => `${id} ${bank}`);
		expect(banks.slice(0, 5)).toEqual(["1 left", "2 left", "3 left", "4 left", "5 right"]);
		expect(after.drafts).toEqual(sheet.drafts);
		expect(after.study.network).toBe(study.network);
		const single = renumbered(after, "rearToFront");
		expect(single.study.engine.cylinders[0]).toEqual({ id: "8", sweptVolume: 0.00071 });
		expect(single.drafts).toEqual({ "engine.cylinders.3.sweptVolume": "x" });
	});
});
