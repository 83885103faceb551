/** What two columns of a spreadsheet, or text with tabs, make of a valve's table. */
import { evidence } from "../number/separators";
import { MOST_ROWS, type Refused, tooManyRows } from "../schedule/rows";
import { startsWithNumber } from "../table/block";
import { readNumber, type UnitChoice } from "../units";
import type { Point, PointCell } from "./points";

export type PastedPoints =
	| {
			readonly kind: "points";
			readonly points: readonly Point[];
			/** Texts for which there was no cell. */
			readonly unplaced: readonly string[];
	  }
	| Refused;

/**
 * Pastes a block from a cell on; points are added as it needs them. A block with a heading is a whole table
 * and takes the place of the old one.
 */
export function pastePoints(
	old: readonly Point[],
	place: { readonly row: number; readonly column: number },
	given: readonly (readonly string[])[],
	units: UnitChoice,
): PastedPoints {
	const block = given.filter((row) => row.some((text) => text.trim() !== ""));
	const headed = block.length > 1 && !!block[0]?.every((text) => !startsWithNumber(text));
	const body = headed ? block.slice(1) : block;
	const start = headed ? { row: 0, column: 0 } : place;
	if (start.row + body.length > MOST_ROWS) return tooManyRows(start.row + body.length);
	const decimal = evidence(body.flat());
	const points: Point[] = headed ? [] : [...old];
	const unplaced: string[] = [];
	for (const [down, texts] of body.entries()) {
		const there = points[start.row + down] ?? BLANK;
		const cell = (column: 0 | 1): PointCell => {
			const text = texts[column - start.column];
			// Where a row of the block is shorter than others, its cells are left alone.
			if (text === undefined) return there[column];
			const reading = readNumber(text, "number", units, decimal);
			if (reading.kind === "value") return { value: reading.value };
			return { value: there[column].value, text };
		};
		points[start.row + down] = [cell(0), cell(1)];
		const lost = texts.slice(Math.max(2 - start.column, 0)).map((text) => text.trim());
		unplaced.push(...lost.filter((text) => text !== ""));
	}
	return { kind: "points", points, unplaced };
}

/** A point of which nothing is known: both cells ask for it. */
const BLANK: Point = [
	{ value: 0, text: "" },
	{ value: 0, text: "" },
];
