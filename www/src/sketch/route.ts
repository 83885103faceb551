/**
 * Leads the ways of a plan from box to box: straight across where the boxes face each other, along a line
 * between neighbours on it, and around what stands between. Ways that would lie on each other are set apart.
 */
import { middle, type Plan, type Spot } from "./place";
import type { Way } from "./structure";

/** A corner of a way: a place along the engine, a line across it, and how far off that line. */
export interface Corner {
	readonly at: number;
	readonly line: number;
	/** Which edge of the line's boxes: the lower, the middle or the upper. */
	readonly edge: -1 | 0 | 1;
	/** Ways side by side along a line: which of how many. */
	readonly lane?: readonly [index: number, count: number];
}

/** The way a branch is led. */
export interface Route {
	readonly id: string;
	/** From the branch's first end to its other. */
	readonly corners: readonly Corner[];
	/** Whether it passes over a box that it does not join. */
	readonly over: boolean;
}

/** Between two ways side by side, in cylinders. */
const LANE = 0.2;
/** From a way to a box's end. */
const INSET = 0.06;

/** Leads every way; those at the ports and then short ones first, so that these are the straight ones. */
export function routed(plan: Plan, ways: readonly Way[]): Route[] {
	const spots = new Map(plan.spots.map((spot) => [spot.id, spot]));
	const taken: Straight[] = [];
	const arches = new Map<number, number>();
	const lanes = lanesOf(ways);
	const routes = new Map<string, Route>();
	const joined = ways.flatMap((way) => {
		const from = spots.get(way.from);
		const to = spots.get(way.to);
		if (!from || !to) return [];
		const toPort = from.kind === "port" || to.kind === "port";
		return [{ way, from, to, rank: toPort ? 0 : Math.abs(from.line - to.line) }];
	});
	for (const { way, from, to } of joined.toSorted((one, other) => one.rank - other.rank)) {
		const others = plan.spots.filter((spot) => spot !== from && spot !== to);
		const lane = lanes.get(way.id) ?? [0, 1];
		const route =
			from.line === to.line
				? along(way.id, from, to, others, lane, arches, plan.lines)
				: across(way.id, from, to, others, lane, taken);
		routes.set(way.id, route);
	}
	return ways.flatMap(({ id }) => routes.get(id) ?? []);
}

interface Straight {
	readonly at: number;
	readonly low: number;
	readonly high: number;
}

/** Which of the ways between the same two nodes each one is. */
function lanesOf(ways: readonly Way[]): Map<string, readonly [number, number]> {
	const groups = new Map<string, string[]>();
	for (const { id, from, to } of ways) {
		const pair = from < to ? `${from}\n${to}` : `${to}\n${from}`;
		const group = groups.get(pair);
		if (group) group.push(id);
		else groups.set(pair, [id]);
	}
	const lanes = new Map<string, readonly [number, number]>();
	for (const group of groups.values()) {
		group.forEach((id, index) => {
			lanes.set(id, [index, group.length]);
		});
	}
	return lanes;
}

/** Between two boxes of one line: straight when nothing stands between, else in an arch. */
function along(
	id: string,
	from: Spot,
	to: Spot,
	others: readonly Spot[],
	lane: readonly [number, number],
	arches: Map<number, number>,
	lines: number,
): Route {
	const forward = from.from < to.from;
	const [left, right] = forward ? [from, to] : [to, from];
	const between = others.some(
		(spot) => spot.line === from.line && spot.from < right.from && spot.to > left.to,
	);
	if (!between) {
		const ends: Corner[] = [
			{ at: left.to, line: left.line, edge: 0, lane },
			{ at: right.from, line: right.line, edge: 0, lane },
		];
		return { id, corners: forward ? ends : ends.reverse(), over: false };
	}
	const count = arches.get(from.line) ?? 0;
	arches.set(from.line, count + 1);
	// Towards the middle of the engine, where the ports are not.
	const edge = from.line > (lines - 1) / 2 ? -1 : 1;
	const height = from.line + edge * (0.42 + 0.07 * (count % 4));
	const aside = LANE * 0.75;
	const a = middle(left) + aside;
	const b = middle(right) - aside;
	const corners: Corner[] = [
		{ at: a, line: left.line, edge },
		{ at: a, line: height, edge: 0 },
		{ at: b, line: height, edge: 0 },
		{ at: b, line: right.line, edge },
	];
	return { id, corners: forward ? corners : corners.reverse(), over: true };
}

/** Between two lines. */
function across(
	id: string,
	from: Spot,
	to: Spot,
	others: readonly Spot[],
	lane: readonly [number, number],
	taken: Straight[],
): Route {
	const upward = from.line < to.line;
	const [low, high] = upward ? [from, to] : [to, from];
	const led = (corners: Corner[], over = false): Route => ({
		id,
		corners: upward ? corners : corners.reverse(),
		over,
	});
	const least = Math.max(low.from, high.from) + INSET;
	const most = Math.min(low.to, high.to) - INSET;
	if (least > most) {
		return led([
			{ at: within(middle(high), low), line: low.line, edge: 1 },
			{ at: within(middle(low), high), line: high.line, edge: -1 },
		]);
	}
	const between = others.filter((spot) => spot.line > low.line && spot.line < high.line);
	const blocked = (at: number, spot: Spot) => at > spot.from - INSET && at < spot.to + INSET;
	const crowded = (at: number) =>
		taken.some(
			(one) => Math.abs(one.at - at) < LANE * 0.7 && one.low < high.line && one.high > low.line,
		);
	const candidates = candidatesOf(low, high, least, most, lane);
	const clear = candidates.filter((at) => !between.some((spot) => blocked(at, spot)));
	const free = clear.find((at) => !crowded(at)) ?? clear[0];
	if (free !== undefined) {
		taken.push({ at: free, low: low.line, high: high.line });
		return led(straight(free, low, high));
	}
	const around = aroundOf(low, high, between);
	if (around) {
		taken.push({ at: around[0]?.at ?? 0, low: low.line, high: high.line });
		return led(around);
	}
	const over = candidates.find((at) => !crowded(at)) ?? (least + most) / 2;
	taken.push({ at: over, low: low.line, high: high.line });
	return led(straight(over, low, high), true);
}

function straight(at: number, low: Spot, high: Spot): Corner[] {
	return [
		{ at, line: low.line, edge: 1 },
		{ at, line: high.line, edge: -1 },
	];
}

/** Where a straight way could cross, the best place first. */
function candidatesOf(
	low: Spot,
	high: Spot,
	least: number,
	most: number,
	[index, count]: readonly [number, number],
): number[] {
	const shorter = low.to - low.from <= high.to - high.from ? low : high;
	const best = Math.min(Math.max(middle(shorter), least), most);
	// Ways between the same two chambers share the room that there is.
	const room = Math.min(most - least, LANE * (count - 1));
	const own = count > 1 ? best + (index / (count - 1) - 0.5) * room : best;
	const shifts = [0, 1, -1, 0.5, -0.5, 1.5, -1.5, 2, -2, 3, -3];
	return shifts
		.map((shift) => own + shift * LANE)
		.filter((at) => at >= least - 1e-9 && at <= most + 1e-9);
}

/** Beside the shorter box and into its end, where only small boxes stand in the way. */
function aroundOf(low: Spot, high: Spot, between: readonly Spot[]): Corner[] | null {
	const lowIsShort = low.to - low.from <= high.to - high.from;
	const [short, long] = lowIsShort ? [low, high] : [high, low];
	for (const toRear of [true, false]) {
		const at = toRear ? short.to + 0.16 : short.from - 0.16;
		if (at < long.from || at > long.to) continue;
		if (between.some((spot) => at > spot.from && at < spot.to)) continue;
		const end: Corner = { at: toRear ? short.to : short.from, line: short.line, edge: 0 };
		const turn: Corner = { at, line: short.line, edge: 0 };
		const far: Corner = { at, line: long.line, edge: lowIsShort ? -1 : 1 };
		return lowIsShort ? [end, turn, far] : [far, turn, end];
	}
	return null;
}

/** The place on a box nearest to another place. */
function within(at: number, { from, to }: Spot): number {
	return Math.min(Math.max(at, from + INSET), to - INSET);
}
