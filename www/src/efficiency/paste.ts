/** What a block of cells from a spreadsheet, or text with tabs, makes of an efficiency table. */
import { evidence } from "../number/separators";
import type { Refused } from "../schedule/rows";
import type { Quantity } from "../solver/types";
import { startsWithNumber } from "../table/block";
import { type Reading, readNumber, type UnitChoice } from "../units";
import type { Grid, GridCell } from "./grid";

type Block = readonly (readonly string[])[];

/** A place in the grid: row -1 holds the pressure ratios, column -1 the speeds. */
export interface GridPlace {
	readonly row: number;
	readonly column: number;
}

/** A table after a block has been pasted, and what has to be said of it. */
export type PastedGrid =
	| {
			readonly kind: "grid";
			readonly grid: Grid;
			/** Whether efficiencies were read as parts of one, not as per cent. */
			readonly parts: boolean;
			/** Texts for which there was no cell. */
			readonly unplaced: readonly string[];
	  }
	| Refused;

/** More efficiencies than any study may have. */
const MOST_CELLS = 2_000;

/** Below this per cent no efficiency is meant: such figures are parts of one. */
const LEAST_PERCENT = 1.5;

/**
 * Pastes a block from a place on; rows and columns are added as it needs them. A block with a heading, or
 * with its corner empty, is a whole table and takes the place of the old one. `ratios` tells whether the
 * table goes over pressure ratios too.
 */
export function pasteGrid(
	old: Grid,
	at: GridPlace,
	given: Block,
	units: UnitChoice,
	ratios: boolean,
): PastedGrid {
	const block = given.filter((row) => row.some((text) => text.trim() !== ""));
	const decimal = evidence(block.flat());
	const read = (text: string, quantity: Quantity) => readNumber(text, quantity, units, decimal);
	const isNumber = (text = "") => /\d/.test(text) && read(text, "number").kind !== "empty";
	const [head = [], ...rest] = block;
	const whole = block.length > 1 && head.length > 1 && !startsWithNumber(head[0]);
	// Over speed alone the heading says in words what the columns are.
	const headed = whole && !(ratios && head.slice(1).some(isNumber));
	const body = headed ? rest : block;
	const start = whole ? { row: headed ? 0 : -1, column: -1 } : at;
	const base = whole ? EMPTY : old;
	const rows = Math.max(base.speeds.length, start.row + body.length);
	const wide = Math.max(...body.map((row) => row.length), 0);
	const most = ratios ? Number.POSITIVE_INFINITY : Math.max(base.ratios.length, 1);
	const columns = Math.min(most, Math.max(base.values[0]?.length ?? 1, start.column + wide));
	if (rows * columns > MOST_CELLS) {
		const reason = `A table has at most ${MOST_CELLS} efficiencies, and these would be ${rows * columns}.`;
		return { kind: "refused", reason };
	}
	const unplaced: string[] = [];

	const textAt = (row: number, column: number) => body[row - start.row]?.[column - start.column];
	const texts = body.flatMap((row, down) =>
		row.filter((_, along) => down + start.row >= 0 && along + start.column >= 0),
	);
	const parts = arePartsOfOne(texts.map((text) => ({ text, reading: read(text, "fraction") })));
	const cell = (
		row: number,
		column: number,
		quantity: Quantity,
		kept: GridCell | undefined,
		guess: number,
	): GridCell => {
		const text = textAt(row, column);
		const there = kept ?? { value: guess };
		if (text === undefined || (text.trim() === "" && kept)) return there;
		const reading = read(text, quantity);
		if (reading.kind !== "value") return { value: there.value, text };
		const times = parts && quantity === "fraction" ? 100 : 1;
		return { value: Number((reading.value * times).toPrecision(12)) };
	};

	const speeds: GridCell[] = [];
	const values: GridCell[][] = [];
	for (let row = 0; row < rows; row += 1) {
		const before = speeds.at(-1)?.value ?? 0;
		speeds.push(cell(row, -1, "speed", base.speeds[row], before + 1));
		const line: GridCell[] = [];
		for (let column = 0; column < columns; column += 1) {
			const near = line.at(-1) ?? values.at(-1)?.[column] ?? base.values.at(-1)?.at(-1);
			const kept = base.values[row]?.[column];
			line.push(cell(row, column, "fraction", kept, near?.value ?? LEAST_PERCENT / 100));
		}
		values.push(line);
	}
	const across: GridCell[] = [];
	const named = base.ratios.length > 0 || (ratios && (columns > 1 || start.row < 0));
	for (let column = 0; named && column < columns; column += 1) {
		const before = across.at(-1)?.value ?? 0.5;
		across.push(cell(-1, column, "number", base.ratios[column], before + 0.5));
	}
	for (const [down, row] of body.entries()) {
		for (const [along, text] of row.entries()) {
			const place = { row: down + start.row, column: along + start.column };
			const corner = place.row < 0 && place.column < 0;
			const beside = place.column >= columns || (place.row < 0 && !named);
			if (!corner && beside && text.trim() !== "") unplaced.push(text.trim());
		}
	}
	return { kind: "grid", grid: { speeds, ratios: across, values }, parts, unplaced };
}

const EMPTY: Grid = { speeds: [], ratios: [], values: [] };

/** Whether all efficiencies of a block are parts of one: so small that per cent cannot be meant. */
function arePartsOfOne(all: readonly { text: string; reading: Reading }[]): boolean {
	const told = all.flatMap(({ text, reading }) =>
		reading.kind === "value" ? [{ text, value: reading.value }] : [],
	);
	return (
		told.length > 0 &&
		told.every(({ text, value }) => !text.includes("%") && value <= LEAST_PERCENT / 100)
	);
}
