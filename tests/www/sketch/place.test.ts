import { describe, expect, it } from "vitest";
import { drawn } from "../../../www/src/sketch/around";
import type { Box, Drawing } from "../../../www/src/sketch/drawing";
import { type Plan, placed } from "../../../www/src/sketch/place";
import { type Structure, structureOf } from "../../../www/src/sketch/structure";
import { engine, example, structure } from "./networks";

const EXAMPLES = ["v8_lid", "symmetric_lid", "inline_log", "tapered_log"];
const FEEDS = ["plenum", "log", "lid", "pairs"] as const;
const ENGINES = FEEDS.flatMap((feed) => [
	...[1, 2, 3, 4, 5, 6, 8].map((count) => ({ count, banks: 1 as const, feed })),
	...[4, 6, 8, 10, 12, 16].map((count) => ({ count, banks: 2 as const, feed })),
]);

function plan(of: Structure): Plan {
	const placing = placed(of);
	if (!placing.plan) throw new Error(placing.why);
	return placing.plan;
}

function draw(of: Structure, width: number): Drawing {
	return drawn(plan(of), of, width);
}

function overlaps(boxes: readonly Box[]): string[] {
	return boxes.flatMap((one, index) =>
		boxes
			.slice(index + 1)
			.filter(
				(other) =>
					Math.abs(one.x - other.x) < (one.width + other.width) / 2 &&
					Math.abs(one.y - other.y) < (one.height + other.height) / 2,
			)
			.map((other) => `${one.id} on ${other.id}`),
	);
}

describe("nodes around an engine", () => {
	for (const name of EXAMPLES) {
		it.each([320, 430, 900])(`of ${name} stand clear of each other in %i px`, (width) => {
			const drawing = draw(structure(example(name)), width);
			expect(drawing.boxes).toHaveLength(example(name).network.nodes.length);
			expect(drawing.lines).toHaveLength(example(name).network.branches.length);
			expect(overlaps(drawing.boxes)).toEqual([]);
			for (const { x, width: wide } of drawing.boxes) {
				expect(x - wide / 2).toBeGreaterThanOrEqual(0);
				expect(x + wide / 2).toBeLessThanOrEqual(drawing.width);
			}
		});
	}

	it.each(ENGINES)("of $count cylinders in $banks bank(s) with a $feed stand clear", (each) => {
		for (const ports of [1, 2]) {
			const drawing = draw(engine(each.count, each.banks, each.feed, ports), 430);
			expect(overlaps(drawing.boxes)).toEqual([]);
		}
	});

	it("stand still when only figures change", () => {
		const study = example("v8_lid");
		const before = structure(study);
		const changed = structuredClone(study);
		for (const branch of changed.network.branches)
			for (const loss of branch.losses) if ("area" in loss) loss.area = (loss.area ?? 0) * 0.7;
		expect(structureOf(changed.network, changed.engine, before)).toBe(before);
	});

	it("stay where they are when one branch or one pocket is added", () => {
		const study = example("v8_lid");
		const before = new Map(plan(structure(study)).spots.map((spot) => [spot.id, spot]));
		study.network.nodes.push({ id: "pocket 1b", kind: "plenum" });
		study.network.branches.push(
			{ id: "window 1b", from: "lid", to: "pocket 1b", losses: [] },
			{ id: "runner 1b", from: "pocket 1b", to: "port 1", losses: [] },
			{ id: "cross window 1-2", from: "pocket 1", to: "pocket 2", losses: [] },
		);
		const after = plan(structure(study)).spots;
		const moved = after.filter((spot) => {
			const was = before.get(spot.id);
			return was && (was.from !== spot.from || was.to !== spot.to || was.line !== spot.line);
		});
		// The pocket that now shares its place with the new one makes room for it.
		expect(moved.map(({ id }) => id)).toEqual(["pocket 1"]);
		expect(after.length).toBe(before.size + 1);
	});

	it("of a network that is its own mirror image are one too", () => {
		const drawing = draw(structure(example("symmetric_lid")), 430);
		const boxes = new Map(drawing.boxes.map((box) => [box.id, box]));
		const y = (id: string) => boxes.get(id)?.y ?? Number.NaN;
		const x = (id: string) => boxes.get(id)?.x ?? Number.NaN;
		for (const part of ["port", "pocket"]) {
			for (const odd of [1, 3, 5, 7]) {
				expect(x(`${part} ${odd}`)).toBeCloseTo(x(`${part} ${odd + 1}`));
				const above = y("lid") - y(`${part} ${odd + 1}`);
				expect(y(`${part} ${odd}`) - y("lid")).toBeCloseTo(above);
				expect(above).toBeGreaterThan(0);
			}
			// And from the front to the rear.
			for (const [front, rear] of [
				[1, 7],
				[3, 5],
			] as const) {
				const left = x("lid") - x(`${part} ${front}`);
				// Places are drawn to a tenth of a pixel.
				expect(Math.abs(x(`${part} ${rear}`) - x("lid") - left)).toBeLessThan(0.25);
			}
		}
	});

	it("put the left bank below, the front on the left, and the feed at one end", () => {
		const { spots } = plan(structure(example("v8_lid")));
		const at = (id: string) => spots.find((spot) => spot.id === id) ?? { from: 0, to: 0, line: 0 };
		expect(at("port 1").line).toBeLessThan(at("port 2").line);
		expect(at("port 1").to).toBeLessThan(at("port 3").from);
		expect(at("lid").from).toBeLessThan(at("port 1").from);
		expect(at("lid").to).toBeGreaterThan(at("port 7").to);
		expect(at("blower").to).toBeLessThan(at("upper").from);
		expect(at("upper").to).toBeLessThan(at("lid").from);
		expect(at("blower").line).toBe(at("lid").line);
	});

	it("put what is fed by a run leg at the end of the run", () => {
		const { spots } = plan(structure(example("inline_log")));
		const at = (id: string) => spots.find((spot) => spot.id === id) ?? { from: 0, to: 0, line: 0 };
		expect(at("blower").line).toBe(at("log 1").line);
		expect(at("blower").to).toBeLessThan(at("log 1").from);
	});
});

describe("a network that has no engine's shape", () => {
	function why(of: Structure): string {
		const placing = placed(of);
		return placing.plan ? "" : placing.why;
	}

	it("is one without ports of its cylinders", () => {
		const bare = engine(4, 1, "plenum");
		const points = bare.points.map((point) => ({ ...point, cylinder: null }));
		expect(why({ ...bare, points })).toContain("no port");
	});

	it("is one with a long chain", () => {
		const chain = engine(4, 1, "plenum");
		const boxes = Array.from({ length: 9 }, (_, index) => `box ${index}`);
		const points = boxes.map((id) => ({ id, kind: "plenum" as const, cylinder: null }));
		const ways = boxes.map((id, index) => ({
			id: `pipe ${index}`,
			from: id,
			to: boxes[index - 1] ?? "air",
			fromRun: false,
			toRun: false,
		}));
		const long = { ...chain, points: [...chain.points, ...points], ways: [...chain.ways, ...ways] };
		expect(why(long)).toContain("ways from the nearest port");
	});

	it("is one with three banks", () => {
		const banks = ["a", "b", "c"].map((bank, index) => ({ bank, cylinders: [String(index + 1)] }));
		expect(why({ ...engine(3, 1, "lid"), banks })).toContain("more than two banks");
	});

	it("is one that crowds a place, but not one with eight cells a cylinder", () => {
		const crowded = (cells: number) => {
			const lid = engine(4, 2, "lid");
			const names = Array.from({ length: cells }, (_, index) => `cell ${index}`);
			const points = names.map((id) => ({ id, kind: "plenum" as const, cylinder: null }));
			const ways = names.map((id) => ({
				id: `to ${id}`,
				from: id,
				to: "pocket 1",
				fromRun: false,
				toRun: false,
			}));
			return { ...lid, points: [...lid.points, ...points], ways: [...lid.ways, ...ways] };
		};
		expect(why(crowded(8))).toBe("");
		expect(why(crowded(40))).toContain("too many nodes");
	});
});

it("nodes that nothing joins to a port are drawn behind the engine", () => {
	const study = example("inline_log");
	study.network.nodes.push({ id: "new", kind: "joint" });
	const { spots, apart } = plan(structure(study));
	expect(apart).toEqual(["new"]);
	const last = Math.max(...spots.filter(({ id }) => id !== "new").map(({ to }) => to));
	expect(spots.find(({ id }) => id === "new")?.from).toBeGreaterThan(last);
});
