/** The geometry of the pressure stair: one tread and one riser for each loss on the way to a port. */
import { extent, ticks } from "d3-array";
import { linear } from "./linear";

export const HEIGHT = 190;
const LEFT = 52;
const RIGHT = 68;
const TOP = 22;
const BOTTOM = 12;

/** A riser of the stair. */
export interface Step {
	readonly x: number;
	readonly from: number;
	readonly to: number;
	/** Where the item's number stands, clear of the stair. */
	readonly label: { readonly x: number; readonly y: number };
	readonly regained: boolean;
}

/** Everything that the drawing needs, in pixels. */
export interface Stair {
	readonly outline: string;
	readonly steps: readonly Step[];
	readonly marks: readonly { readonly y: number; readonly value: number }[];
	readonly left: number;
	readonly right: number;
	readonly first: number;
	readonly last: number;
}

/** Draws falls, in any unit, as a stair that goes down to the right; what is regained goes up. */
export function stair(falls: readonly number[], width: number): Stair {
	const levels = [0];
	for (const fall of falls) levels.push((levels.at(-1) ?? 0) + fall);
	const [least = 0, most = 0] = extent(levels);
	const y = linear([least, most === least ? least + 1 : most], [TOP, HEIGHT - BOTTOM]);
	const right = Math.max(width - RIGHT, LEFT + 20);
	const tread = (right - LEFT) / (falls.length + 1);
	const points: [number, number][] = [[LEFT, y(0)]];
	const steps = falls.map((fall, index): Step => {
		const x = LEFT + tread * (index + 1);
		const from = y(levels[index] ?? 0);
		const to = y(levels[index + 1] ?? 0);
		points.push([x, from], [x, to]);
		return { x, from, to, label: { x: x - tread / 2, y: from - 11 }, regained: fall < 0 };
	});
	const last = y(levels.at(-1) ?? 0);
	points.push([right, last]);
	return {
		outline: `M${points.join("L")}`,
		steps,
		marks: ticks(least, most, 4).map((value) => ({ y: y(value), value })),
		left: LEFT,
		right,
		first: y(0),
		last,
	};
}
