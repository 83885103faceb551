/**
 * The geometry of the pressure stairs: one tread and one riser for each loss on the way to a port, beside
 * them those of another port on the same scale, and below how much more each loss costs.
 */
import { extent, max, ticks } from "d3-array";
import { linear } from "./linear";

/** Height of the stairs, and of the strip of differences below them. */
export const HEIGHT = 190;
export const STRIP = 64;
const LEFT = 52;
const RIGHT = 82;
const TOP = 22;
const BOTTOM = 12;
/** The other path's risers stand this far behind the first one's. */
const ASIDE = 5;

/** A riser of a stair. */
export interface Step {
	readonly x: number;
	readonly from: number;
	readonly to: number;
	readonly regained: boolean;
}

/** One path. */
export interface Stair {
	readonly outline: string;
	/** A step for each loss; null where this path has none. */
	readonly steps: readonly (Step | null)[];
	readonly last: number;
}

/** How much more one loss costs, as a bar up or down from a line. */
export interface Bar {
	readonly x: number;
	readonly y: number;
	readonly height: number;
}

/** Everything that the drawing needs, in pixels. */
export interface Stairs {
	readonly own: Stair;
	readonly other: Stair | null;
	/** Where the name of each loss stands, clear of the stair. */
	readonly labels: readonly { readonly x: number; readonly y: number }[];
	readonly marks: readonly { readonly y: number; readonly value: number }[];
	readonly left: number;
	readonly right: number;
	readonly first: number;
	/** From one loss to the next. */
	readonly tread: number;
	readonly bars: readonly Bar[];
	readonly zero: number;
	/** The largest difference, at either end of the bars' scale. */
	readonly reach: number;
}

/** Falls of one path and of another, in any unit; null where a path has no such loss. */
export interface Falls {
	readonly own: number | null;
	readonly other: number | null;
}

/** Draws falls as stairs that go down to the right; what is regained goes up. */
export function stairs(falls: readonly Falls[], compared: boolean, width: number): Stairs {
	const own = levelsOf(falls.map((each) => each.own));
	const other = compared ? levelsOf(falls.map((each) => each.other)) : null;
	const [least = 0, most = 0] = extent([...own, ...(other ?? [])]);
	const y = linear([least, most === least ? least + 1 : most], [TOP, HEIGHT - BOTTOM]);
	const right = Math.max(width - RIGHT, LEFT + 20);
	const tread = (right - LEFT) / (falls.length + 1);
	const x = (index: number) => LEFT + tread * (index + 1);
	const stair = (levels: readonly number[], side: "own" | "other"): Stair => {
		const aside = side === "own" ? 0 : ASIDE;
		const points: [number, number][] = [[LEFT, y(0)]];
		const steps = falls.map((each, index): Step | null => {
			const fall = each[side];
			if (fall === null) return null;
			const from = y(levels[index] ?? 0);
			const to = y(levels[index + 1] ?? 0);
			points.push([x(index) + aside, from], [x(index) + aside, to]);
			return { x: x(index) + aside, from, to, regained: fall < 0 };
		});
		const last = y(levels.at(-1) ?? 0);
		points.push([right, last]);
		return { outline: `M${points.join("L")}`, steps, last };
	};
	const more = compared ? falls.map((each) => (each.own ?? 0) - (each.other ?? 0)) : [];
	const reach = max(more, Math.abs) ?? 0;
	const zero = HEIGHT + STRIP / 2;
	const size = linear([0, reach === 0 ? 1 : reach], [0, STRIP / 2 - 10]);
	return {
		own: stair(own, "own"),
		other: other && stair(other, "other"),
		labels: falls.map((_, index) => ({ x: x(index) - tread / 2, y: y(own[index] ?? 0) - 11 })),
		marks: ticks(least, most, 4).map((value) => ({ y: y(value), value })),
		left: LEFT,
		right,
		first: y(0),
		tread,
		bars: more.map((each, index) => {
			const height = size(Math.abs(each));
			return { x: x(index), y: each > 0 ? zero - height : zero, height };
		}),
		zero,
		reach,
	};
}

function levelsOf(falls: readonly (number | null)[]): number[] {
	const levels = [0];
	for (const fall of falls) levels.push((levels.at(-1) ?? 0) + (fall ?? 0));
	return levels;
}
