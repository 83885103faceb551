/** The bars that stand in the rows of a table, as one drawing with its words. */
import type { Gap, Solved } from "../solver/types";
import { figure, signed, type Unit } from "../units";
import { marks, place, reach, WIDTH } from "../view/deviation";
import { STATE_WORDS } from "../view/words";

export interface Bars {
	readonly width: number;
	/** Where the columns of words begin, the figures end and what is said of them begins. */
	readonly columns: readonly number[];
	readonly figures: number;
	readonly after: number;
	/** The strip that the bars stand in. */
	readonly strip: readonly [from: number, to: number];
	/** Words over the columns and over the figures. */
	readonly heads: readonly string[];
	readonly figureHead: string;
	readonly marks: readonly { readonly x: number; readonly text: string }[];
	readonly lines: readonly { readonly x: number; readonly kind: "mean" | "limit" }[];
	readonly rows: readonly BarRow[];
}

export interface BarRow {
	readonly words: readonly string[];
	readonly figure: string;
	readonly after: string;
	/** The state as the style sheet knows it; empty for none. */
	readonly state: string;
	readonly bar: readonly [from: number, to: number];
	readonly whisker?: readonly [from: number, to: number];
}

/** Each cylinder's deviation, with its doubt. */
export function shareBars({ cylinders }: Solved, limit: number, percent: Unit): Bars {
	const strip = [70, 400] as const;
	const span = reach(cylinders, limit);
	const x = across(strip, place(span), WIDTH);
	return {
		width: 640,
		columns: [6],
		figures: 490,
		after: 506,
		strip,
		heads: ["Cylinder"],
		figureHead: `From mean, ${percent.label}`,
		marks: marks(span).map((mark) => ({
			x: x(mark),
			text: mark === 0 ? "0" : signed(mark, percent, 1),
		})),
		lines: [
			{ x: x(0), kind: "mean" },
			{ x: x(-limit / 2), kind: "limit" },
			{ x: x(limit / 2), kind: "limit" },
		],
		rows: cylinders.map(({ cylinder, deviation, doubt, state }) => ({
			words: [cylinder],
			figure: `${signed(deviation, percent)} ± ${figure(doubt, percent)}`,
			after: `${STATE_WORDS[state].shape} ${STATE_WORDS[state].word}`,
			state,
			bar: [x(0), x(deviation)],
			whisker: [x(deviation - doubt), x(deviation + doubt)],
		})),
	};
}

/** What makes the gap, part by part. */
export function gapBars(parts: Gap["parts"], unit: Unit, decimals: number): Bars {
	const strip = [350, 550] as const;
	const most = Math.max(...parts.map(({ amount }) => Math.abs(amount))) || 1;
	const x = across(strip, (amount) => amount / most + 1, 2);
	return {
		width: 640,
		columns: [6, 170],
		figures: 632,
		after: 640,
		strip,
		heads: ["Where", "What"],
		figureHead: `Part, ${unit.label}`,
		marks: [{ x: x(0), text: "0" }],
		lines: [{ x: x(0), kind: "mean" }],
		rows: parts.map((part) => ({
			words: [`${part.element}${part.loss === null ? "" : `, loss ${part.loss + 1}`}`, part.label],
			figure: signed(part.amount, unit, decimals),
			after: "",
			state: "",
			bar: [x(0), x(part.amount)],
		})),
	};
}

function across(
	[from, to]: readonly [number, number],
	scale: (value: number) => number,
	of: number,
) {
	return (value: number) => from + (scale(value) / of) * (to - from);
}
