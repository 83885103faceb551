/** The bars that stand in the rows of a table, as one drawing with its words. */
import type { CylinderAnswer, Gap, Solved } from "../solver/types";
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
		...deviating(x, span, limit, percent),
		width: 640,
		columns: [6],
		figures: 490,
		after: 506,
		strip,
		heads: ["Cylinder"],
		rows: cylinders.map((each) => cylinderRow(each, x, percent)),
	};
}

/** Each cylinder's deviation in every version, on one scale. */
export function versionBars(
	versions: readonly { readonly name: string; readonly solved: Solved }[],
	limit: number,
	percent: Unit,
): Bars {
	const strip = [240, 480] as const;
	const span = reach(
		versions.flatMap(({ solved }) => solved.cylinders),
		limit,
	);
	const x = across(strip, place(span), WIDTH);
	const names = versions[0]?.solved.cylinders ?? [];
	return {
		...deviating(x, span, limit, percent),
		width: 720,
		columns: [6, 70],
		figures: 570,
		after: 586,
		strip,
		heads: ["Cylinder", "Version"],
		rows: names.flatMap((_, cylinder) =>
			versions.flatMap(({ name, solved }, version) => {
				const each = solved.cylinders[cylinder];
				if (!each) return [];
				const row = cylinderRow(each, x, percent);
				return [{ ...row, words: [version === 0 ? each.cylinder : "", name] }];
			}),
		),
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

/** What all bars of deviations have beside them. */
function deviating(x: (value: number) => number, span: number, limit: number, percent: Unit) {
	return {
		figureHead: `From mean, ${percent.label}`,
		marks: marks(span).map((mark) => ({
			x: x(mark),
			text: mark === 0 ? "0" : signed(mark, percent, 1),
		})),
		lines: [
			{ x: x(0), kind: "mean" },
			{ x: x(-limit / 2), kind: "limit" },
			{ x: x(limit / 2), kind: "limit" },
		] as const,
	};
}

function cylinderRow(
	{ cylinder, deviation, doubt, state }: CylinderAnswer,
	x: (value: number) => number,
	percent: Unit,
): BarRow {
	return {
		words: [cylinder],
		figure: `${signed(deviation, percent)} ± ${figure(doubt, percent)}`,
		after: `${STATE_WORDS[state].shape} ${STATE_WORDS[state].word}`,
		state,
		bar: [x(0), x(deviation)],
		whisker: [x(deviation - doubt), x(deviation + doubt)],
	};
}

function across(
	[from, to]: readonly [number, number],
	scale: (value: number) => number,
	of: number,
) {
	return (value: number) => from + (scale(value) / of) * (to - from);
}
