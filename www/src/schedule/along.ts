/** Area along the way of a section schedule: its smallest section, where it jumps, and how it is drawn. */
import type { Station } from "../solver/types";
import { linear } from "../view/linear";

/** Two neighbouring stations between which the section changes at once. */
export interface Jump {
	/** The second of them. */
	readonly to: number;
	/** How much the area changes [-]. */
	readonly change: number;
}

/** What the drawing and the grid tell of a schedule. */
export interface Along {
	/** The place of the smallest section; null when no station has an area. */
	readonly smallest: number | null;
	readonly jumps: readonly Jump[];
}

/** Neighbouring areas that differ by more [-], within so much of a diameter, are a jump: a typing slip, or a step. */
const DIFFERENCE = 0.15;
const WITHIN = 0.1;

/** Looks a schedule through. */
export function lookAlong(stations: readonly Station[]): Along {
	let smallest: number | null = null;
	const jumps: Jump[] = [];
	for (const [place, { at, area }] of stations.entries()) {
		if (area > 0 && area < (stations[smallest ?? -1]?.area ?? Number.POSITIVE_INFINITY)) {
			smallest = place;
		}
		const before = stations[place - 1];
		if (!before || !(area > 0 && before.area > 0)) continue;
		const less = Math.min(area, before.area);
		const way = at - before.at;
		const near = way >= 0 && way < WITHIN * Math.sqrt((4 * less) / Math.PI);
		const differs = Math.max(area, before.area) / less - 1 > DIFFERENCE;
		if (way === 0 || (near && differs)) jumps.push({ to: place, change: area / before.area - 1 });
	}
	return { smallest, jumps };
}

export interface Profile {
	/** The line of the areas, and the same closed down to no area. */
	readonly line: string;
	readonly body: string;
	/** Where each station stands, from left and from above. */
	readonly points: readonly { readonly x: number; readonly y: number }[];
	/** Where no area is. */
	readonly ground: number;
}

export const HEIGHT = 96;
const SIDE = 8;
/** Room above for the name of the smallest section and the marks of jumps, and below for the ends. */
const TOP = 18;
const BOTTOM = 18;

/** The drawing at a width in pixels; null where there is no length or no area to draw. */
export function profile(stations: readonly Station[], width: number): Profile | null {
	const ats = stations.map(({ at }) => at);
	const from = Math.min(...ats);
	const to = Math.max(...ats);
	const most = Math.max(...stations.map(({ area }) => area));
	if (!(to > from) || !(most > 0)) return null;
	const ground = HEIGHT - BOTTOM;
	const x = linear([from, to], [SIDE, Math.max(width - SIDE, 2 * SIDE)]);
	const y = linear([0, most], [ground, TOP]);
	const points = stations.map(({ at, area }) => ({ x: round(x(at)), y: round(y(area)) }));
	const line = `M${points.map((point) => `${point.x} ${point.y}`).join("L")}`;
	const first = points[0]?.x ?? 0;
	const last = points.at(-1)?.x ?? 0;
	return { line, body: `${line}L${last} ${ground}L${first} ${ground}Z`, points, ground };
}

function round(value: number): number {
	return Math.round(value * 10) / 10;
}
