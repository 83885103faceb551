/** What is selected, and how the keys move and stretch it. */
import { keyOf } from "../network/edit";
import { type Cell, findCell, type Line } from "./grid";

/** Several cells between two, or whole rows between the rows of two. */
export interface Selection {
	/** Keys of the cells where it begins and ends; it is stretched at `head`. */
	readonly anchor: string;
	readonly head: string;
	readonly rows: boolean;
}

/** One selected line with its selected cells. */
export interface Chosen {
	readonly line: Line;
	readonly cells: readonly Cell[];
}

export type Move =
	| "up"
	| "down"
	| "left"
	| "right"
	| "lineStart"
	| "lineEnd"
	| "first"
	| "last"
	| "top"
	| "bottom"
	| "pageUp"
	| "pageDown";

/** Lines that a key leads up or down. */
const STEPS = {
	up: -1,
	down: 1,
	pageUp: -12,
	pageDown: 12,
	top: Number.NEGATIVE_INFINITY,
	bottom: Number.POSITIVE_INFINITY,
};

/** The cell that a key leads to from another, or null at an edge. */
export function moved(all: readonly Line[], from: string, move: Move): string | null {
	const here = findCell(all, from);
	if (!here) return null;
	const { at, line, cell } = here;
	const place = line.cells.indexOf(cell);
	switch (move) {
		case "left":
			return keyAt(line, place - 1);
		case "right":
			return keyAt(line, place + 1);
		case "lineStart":
			return keyAt(line, 0);
		case "lineEnd":
			return keyAt(line, line.cells.length - 1);
		case "first":
			return keyAt(all[0], 0);
		case "last": {
			const last = all.at(-1);
			return keyAt(last, (last?.cells.length ?? 0) - 1);
		}
		default: {
			const step = STEPS[move];
			const next = all[Math.min(Math.max(at + step, 0), all.length - 1)];
			return next && next !== line ? beside(next, cell.column, place) : null;
		}
	}
}

/** The selection stretched to where a key leads. Up and down lead to the next line of the same sort. */
export function stretched(all: readonly Line[], selection: Selection, move: Move): Selection {
	const here = findCell(all, selection.head);
	if (!here) return selection;
	const { at, line, cell } = here;
	const place = line.cells.indexOf(cell);
	const sideways: Partial<Record<Move, number>> = {
		left: place - 1,
		right: place + 1,
		lineStart: 0,
		lineEnd: line.cells.length - 1,
	};
	const aside = sideways[move];
	if (aside !== undefined) {
		const head = selection.rows ? null : keyAt(line, aside);
		return head === null ? selection : { ...selection, head };
	}
	const step = { ...STEPS, first: STEPS.top, last: STEPS.bottom }[move as keyof typeof STEPS];
	const beyond = step < 0 ? all.slice(0, at).reverse() : all.slice(at + 1);
	const like = beyond.filter((each) =>
		selection.rows ? each.what === line.what : alike(each, line) && has(each, cell.column),
	);
	const next = like[Math.min(Math.abs(step), like.length) - 1];
	const head = next && (keyIn(next, cell.column) ?? keyAt(next, 0));
	return head ? { ...selection, head } : selection;
}

/**
 * The selected lines and cells, in the table's order. Of cells, the lines of the same sort count: the
 * losses of one kind, but not the branches between them.
 */
export function chosen(all: readonly Line[], { anchor, head, rows }: Selection): Chosen[] {
	const one = findCell(all, anchor);
	const other = findCell(all, head);
	if (!one || !other) return [];
	const first = Math.min(one.at, other.at);
	let last = Math.max(one.at, other.at);
	if (rows) {
		// A branch is selected with its losses.
		if (one.line.what === "branch") while (all[last + 1]?.what === "loss") last += 1;
		return all
			.slice(first, last + 1)
			.filter(({ what }) => what === one.line.what || one.line.what === "branch")
			.map((line) => ({ line, cells: line.cells }));
	}
	const columns = between(one, other);
	return all
		.slice(first, last + 1)
		.filter((line) => alike(line, one.line))
		.map((line) => ({ line, cells: line.cells.filter(({ column }) => columns.has(column)) }))
		.filter(({ cells }) => cells.length > 0);
}

/** Whether a selection from one line can be stretched to another. */
export function alike(one: Line, other: Line): boolean {
	return one.what === other.what && (one.what !== "loss" || one.kind === other.kind);
}

/** Whether a line has a cell in a column. */
export function has(line: Line, column: string): boolean {
	return line.cells.some((cell) => cell.column === column);
}

/** The key of a line's first cell. */
export function firstKey(line: Line | undefined): string | null {
	return keyAt(line, 0);
}

/** The columns from one cell to another, as they stand in a line that has both. */
function between(one: Found, other: Found): ReadonlySet<string> {
	for (const { line } of [one, other]) {
		const names = line.cells.map(({ column }) => column);
		const [first, last] = [one, other]
			.map(({ cell }) => names.indexOf(cell.column))
			.sort((left, right) => left - right) as [number, number];
		if (first >= 0) return new Set(names.slice(first, last + 1));
	}
	return new Set([one.cell.column, other.cell.column]);
}

interface Found {
	readonly line: Line;
	readonly cell: Cell;
}

function beside(line: Line, column: string, place: number): string | null {
	return keyIn(line, column) ?? keyAt(line, Math.min(place, line.cells.length - 1));
}

function keyIn(line: Line, column: string): string | null {
	const cell = line.cells.find((each) => each.column === column);
	return cell ? keyOf(cell.path) : null;
}

function keyAt(line: Line | undefined, place: number): string | null {
	const cell = line?.cells[place];
	return cell ? keyOf(cell.path) : null;
}
