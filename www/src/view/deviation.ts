/** The scale that the deviation bars share. */
import { ticks } from "d3-array";
import { linear } from "./linear";

/** Width of a bar in its own units; the page stretches it to the column. */
export const WIDTH = 200;

interface Deviating {
	readonly deviation: number;
	readonly doubt: number;
}

/** How far the scale reaches on either side: a round number, so that it rarely moves while typing. */
export function reach(cylinders: readonly Deviating[], limit: number): number {
	const most = cylinders.reduce(
		(far, { deviation, doubt }) => Math.max(far, Math.abs(deviation) + doubt),
		limit * 0.75,
	);
	const step = 10 ** Math.floor(Math.log10(Math.max(most, 1e-6)));
	const round = [1, 1.5, 2, 3, 5, 7.5, 10].find((each) => each * step >= most) ?? 10;
	return round * step;
}

/** From a deviation to its place in the drawing. */
export function place(span: number): (deviation: number) => number {
	const scale = linear([-span, span], [4, WIDTH - 4]);
	return (deviation) => scale(Math.min(Math.max(deviation, -span), span));
}

/** Round deviations for the axis. */
export function marks(span: number): number[] {
	return ticks(-span, span, 4);
}
