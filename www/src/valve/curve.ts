/** How a discharge coefficient over lift is drawn: its points, the level beyond them, and the valve's own lift. */
import { linear } from "../view/linear";

export interface Curve {
	readonly line: string;
	readonly points: readonly { readonly x: number; readonly y: number }[];
	/** Where the valve stands, level beyond the last point and before the first. */
	readonly lift: { readonly x: number; readonly y: number };
	/** The scale's ends. */
	readonly ratio: number;
	readonly coefficient: number;
	readonly ground: number;
}

export const HEIGHT = 120;
export const LEFT = 34;
const RIGHT = 10;
export const TOP = 10;
const BOTTOM = 30;

/** The drawing at a width in pixels; null without points that rise. */
export function curve(
	given: readonly (readonly number[])[],
	lift: { readonly ratio: number; readonly coefficient: number },
	width: number,
): Curve | null {
	const points = given.map(([ratio = 0, coefficient = 0]) => ({ ratio, coefficient }));
	const rises = points.every(({ ratio }, row) => ratio > (points[row - 1]?.ratio ?? -1));
	const last = points.at(-1);
	const first = points[0];
	if (!first || !last || !rises) return null;
	const ratio = upTo(Math.max(last.ratio, lift.ratio));
	const coefficient = upTo(Math.max(...points.map((each) => each.coefficient), lift.coefficient));
	const ground = HEIGHT - BOTTOM;
	const x = linear([0, ratio], [LEFT, Math.max(width - RIGHT, 2 * LEFT)]);
	const y = linear([0, coefficient], [ground, TOP]);
	const at = (point: { ratio: number; coefficient: number }) => ({
		x: round(x(point.ratio)),
		y: round(y(point.coefficient)),
	});
	const along = [{ ...first, ratio: 0 }, ...points, { ...last, ratio }].map(at);
	return {
		line: `M${along.map((point) => `${point.x} ${point.y}`).join("L")}`,
		points: points.map(at),
		lift: at(lift),
		ratio,
		coefficient,
		ground,
	};
}

/** The tenth at or above a value, which the scale ends with. */
function upTo(value: number): number {
	return Math.ceil(value * 10 - 1e-9) / 10 || 0.1;
}

function round(value: number): number {
	return Math.round(value * 10) / 10;
}
