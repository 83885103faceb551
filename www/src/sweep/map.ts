/** The geometry of a map of spreads over two axes, in one ink: the larger the spread, the more of it. */
import { extent, ticks } from "d3-array";
import { figuresIn, type Outcome } from "./found";

/** One point of the map as drawn. */
export interface Tile {
	readonly place: number;
	readonly x: number;
	readonly y: number;
	/** How much ink it has, from 0 for paper to 1; null where it is refused. */
	readonly ink: number | null;
}

/** A shade, and the spreads that it stands for. */
export interface Shade {
	readonly ink: number;
	readonly from: number;
	readonly to: number;
}

/** The map as drawn, in pixels. */
export interface Drawn {
	readonly width: number;
	readonly height: number;
	readonly left: number;
	readonly top: number;
	readonly wide: number;
	readonly high: number;
	readonly tiles: readonly Tile[];
	readonly shades: readonly Shade[];
	/** Places along each axis that have their value written. */
	readonly across: readonly number[];
	readonly up: readonly number[];
	/** The middle of a value's column or row, also between points. */
	readonly x: (part: number) => number;
	readonly y: (part: number) => number;
}

const LEFT = 56;
const FOOT = 36;
const TOP = 8;
/** The strongest shade still lets a mark in ink be seen on it. */
const STRONGEST = 0.62;
const SHADES = 6;

/** Draws the outcomes of `across` times `up` points. */
export function mapOf(
	outcomes: readonly Outcome[],
	across: number,
	up: number,
	width: number,
): Drawn {
	const room = Math.max(width - LEFT - 4, 80);
	const wide = room / across;
	const high = Math.min(wide, Math.max(12, 300 / up));
	const shades = shadesOf(outcomes);
	const height = TOP + high * up + FOOT;
	return {
		width,
		height,
		left: LEFT,
		top: TOP,
		wide,
		high,
		shades,
		tiles: outcomes.map((outcome, place) => {
			const spread = figuresIn(outcome)?.spread;
			return {
				place,
				x: LEFT + (place % across) * wide,
				y: TOP + (up - 1 - Math.floor(place / across)) * high,
				ink: spread === undefined ? null : inkOf(spread, shades),
			};
		}),
		across: written(across, Math.floor(room / 56)),
		up: written(up, Math.floor((high * up) / 18)),
		x: (part) => LEFT + (part * (across - 1) + 0.5) * wide,
		y: (part) => TOP + (up - 0.5 - part * (up - 1)) * high,
	};
}

/** Steps of spread at round figures, the smallest the lightest. */
export function shadesOf(outcomes: readonly Outcome[]): Shade[] {
	const [least = 0, most = 0] = extent(outcomes.flatMap((each) => figuresIn(each)?.spread ?? []));
	const inner = ticks(least, most, SHADES).filter((mark) => mark > least && mark < most);
	const edges = [least, ...inner, most];
	return edges.slice(1).map((to, at) => ({
		ink: (STRONGEST * at) / Math.max(1, edges.length - 2),
		from: edges[at] ?? least,
		to,
	}));
}

function inkOf(spread: number, shades: readonly Shade[]): number {
	return (shades.find(({ to }) => spread <= to) ?? shades.at(-1))?.ink ?? 0;
}

/** Places that are the same steps apart and not more than there is room for. */
function written(count: number, room: number): number[] {
	const step = Math.max(1, Math.ceil((count - 1) / Math.max(1, room - 1)));
	return Array.from({ length: Math.floor((count - 1) / step) + 1 }, (_, at) => at * step);
}
