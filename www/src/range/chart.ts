/** The geometry of small charts one above the other on one axis of speeds or of what is swept. All values are as shown. */
import { extent, max, tickStep, ticks } from "d3-array";
import { minus } from "../units";
import { linear } from "../view/linear";
import { APART, spaced } from "./ends";

/** One line; null where its value is refused. */
export interface Series {
	/** What stands at its end; empty when the chart's title says it. */
	readonly name: string;
	readonly values: readonly (number | null)[];
}

/** What one chart shows. */
export interface Wanted {
	readonly title: string;
	readonly series: readonly Series[];
	/** The scale spans at least this much, so that rounding never looks like a finding. */
	readonly least: number;
	/** Values that the scale reaches in any case; those within the limit when nothing else is said. */
	readonly reach?: readonly number[];
	/** Values between which all is within the limit. */
	readonly within?: readonly [number, number];
}

/** A line as drawn. */
export interface Line {
	readonly name: string;
	readonly path: string;
	readonly dash: string;
	/** From the line's end to its name. */
	readonly leader: string;
	/** Where its name begins. */
	readonly at: { readonly x: number; readonly y: number };
}

/** A chart as drawn, in pixels. */
export interface Plot {
	readonly title: string;
	readonly top: number;
	readonly bottom: number;
	readonly marks: readonly { readonly y: number; readonly text: string }[];
	readonly lines: readonly Line[];
	/** Upper and lower edge of what is within the limit. */
	readonly within: readonly [number, number] | null;
	readonly y: (value: number) => number;
}

/** All of them. */
export interface Chart {
	readonly width: number;
	readonly height: number;
	readonly left: number;
	readonly right: number;
	readonly plots: readonly Plot[];
	readonly marks: readonly { readonly x: number; readonly text: string }[];
	readonly x: (value: number) => number;
	/** Where values are refused. */
	readonly gaps: readonly { readonly from: number; readonly to: number }[];
}

const LEFT = 50;
const LETTER = 6.2;
const LEADER = 14;
const TITLE = 22;
const AXIS = 34;
const TALL = 132;
const SHORT = 52;
const BETWEEN = 12;

/** A stroke of its own for each line: whole, long, short, long and short, and so on. */
export const DASHES: readonly string[] = [
	"none",
	"9 3",
	"3 3",
	"9 3 2 3",
	"16 4",
	"1.5 2.5",
	"9 3 2 3 2 3",
	"5 2",
	"16 3 3 3",
	"2 6",
];

/** A name at a line's end, cut where it is too long for its column. */
export function shortName(name: string): string {
	return name.length > 9 ? `${name.slice(0, 8)}…` : name;
}

/** Draws charts over values, in rising order, of which some are refused. */
export function chartOf(
	values: readonly number[],
	refused: readonly { readonly from: number; readonly to: number }[],
	wanted: readonly Wanted[],
	width: number,
): Chart {
	const letters = max(
		wanted.flatMap(({ series }) => series.map(({ name }) => shortName(name).length)),
	);
	const right = Math.max(width - (letters ?? 0) * LETTER - LEADER - 4, LEFT + 60);
	const [first = 0, last = 1] = extent(values);
	const x = linear([first, last === first ? first + 1 : last], [LEFT, right]);
	const places = values.map(x);
	const count = Math.max(2, Math.floor((right - LEFT) / 70));
	let top = 0;
	const plots = wanted.map((each) => {
		const drawn = plot(each, places, right, top);
		top = drawn.bottom + BETWEEN;
		return drawn;
	});
	const middle = (one: number, other: number) =>
		((places[one] ?? LEFT) + (places[other] ?? right)) / 2;
	return {
		width,
		height: top - BETWEEN + AXIS,
		left: LEFT,
		right,
		plots,
		marks: ticks(first, last, count).map((mark) => ({
			x: x(mark),
			text: markText(mark, tickStep(first, last, count)),
		})),
		x,
		gaps: refused.map(({ from, to }) => ({
			from: from === 0 ? LEFT : middle(from - 1, from),
			to: to === values.length - 1 ? right : middle(to, to + 1),
		})),
	};
}

function plot(wanted: Wanted, places: readonly number[], right: number, above: number): Plot {
	const { series } = wanted;
	const named = series.filter(({ name }) => name !== "").length;
	const top = above + TITLE;
	const bottom = top + (named > 1 ? Math.max(TALL, named * APART + 4) : SHORT);
	const [from, to] = domain(wanted);
	const y = linear([from, to], [bottom, top]);
	const count = named > 1 ? 5 : 3;
	const drawn = series.map(({ values }) => drawnLine(values, places, y));
	const ends = drawn.map(({ end }) => end?.y ?? bottom);
	const names = spaced(ends, top + 4, bottom - 4);
	return {
		title: wanted.title,
		top,
		bottom,
		marks: ticks(from, to, count).map((mark) => ({
			y: y(mark),
			text: markText(mark, tickStep(from, to, count)),
		})),
		lines: series.map(({ name }, index) => {
			const line = drawn[index];
			// A line that ends at refused values is named there, and not as if it went on.
			const x = round((line?.end?.x ?? right) + LEADER - 3);
			const y = names[index] ?? bottom;
			const leader = name && line?.end ? `M${line.end.x} ${line.end.y}L${x} ${y}` : "";
			return {
				name: line?.end ? shortName(name) : "",
				path: line?.path ?? "",
				dash: DASHES[index % DASHES.length] ?? "none",
				leader,
				at: { x: x + 2, y },
			};
		}),
		within: wanted.within ? [y(wanted.within[1]), y(wanted.within[0])] : null,
		y,
	};
}

/** A line with gaps; a value alone between two gaps is a short stroke. */
function drawnLine(
	values: readonly (number | null)[],
	places: readonly number[],
	y: (value: number) => number,
) {
	let path = "";
	let end: { x: number; y: number } | null = null;
	values.forEach((value, index) => {
		if (value === null) return;
		const here = { x: round(places[index] ?? 0), y: round(y(value)) };
		const before = (values[index - 1] ?? null) !== null;
		const alone = !before && (values[index + 1] ?? null) === null;
		if (alone) path += `M${here.x - 1.5} ${here.y}h3`;
		else path += `${before ? "L" : "M"}${here.x} ${here.y}`;
		end = here;
	});
	return { path, end: end as { x: number; y: number } | null };
}

/** The ends of the scale: all values, and a little air above and below them. */
function domain({ series, least, within, reach = within ?? [] }: Wanted): [number, number] {
	const values = series.flatMap((each) => each.values.filter((value) => value !== null));
	const [from = 0, to = 0] = extent([...values, ...reach]);
	const missing = Math.max(0, least - (to - from)) / 2;
	const air = 0.04 * Math.max(to - from, least);
	// A scale that begins at zero stays there.
	const low = from === 0 && reach.includes(0) ? 0 : from - missing - air;
	return [low, to + missing + air];
}

function markText(mark: number, step: number): string {
	const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
	return minus(mark.toFixed(decimals));
}

function round(pixels: number): number {
	return Math.round(pixels * 100) / 100;
}
