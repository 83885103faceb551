/**
 * What a selection copies: cells as they stand, or whole rows. A branch's row is its name, its ends, its
 * other fields and its legs; each of its losses follows in a row of its own that begins with an empty
 * cell, then its kind, then its fields.
 */
import type { Sheet } from "../network/edit";
import { blockText } from "./block";
import { textOf } from "./cellText";
import { type Book, columnsOf, type Line } from "./grid";
import { type Item, itemAt, rowsOf } from "./rows";
import { chosen, type Selection } from "./select";

/** What was copied last: its text, and the rows themselves, with every bit of their values. */
export interface Copied {
	readonly text: string;
	readonly what: Line["what"];
	readonly items: readonly Item[];
}

/** Copies a selection. */
export function copy(
	sheet: Sheet,
	all: readonly Line[],
	selection: Selection,
	book: Book,
): Copied | null {
	const selected = chosen(all, selection);
	const first = selected[0]?.line;
	if (!first) return null;
	if (!selection.rows) {
		const picked = new Set(selected.flatMap(({ cells }) => cells.map(({ column }) => column)));
		const block = selected.map(({ line }) =>
			columnsOf(line, all, book)
				.filter((column) => picked.has(column))
				.map((column) => cellAt(sheet, line, column, book)),
		);
		return { text: blockText(block), what: first.what, items: [] };
	}
	const block = selected.map(({ line }) => {
		const texts = rowColumns(line, book).map((column) => cellAt(sheet, line, column, book));
		if (line.what === "loss" && first.what === "branch") texts.unshift("");
		return trimmed(texts);
	});
	const items = rowsOf(selected).flatMap(({ list, places }) =>
		places.map((place) => itemAt(sheet, list, place)),
	);
	return { text: blockText(block), what: first.what, items };
}

/** The columns of a whole row's text. */
export function rowColumns(line: Line, { catalogue }: Book): string[] {
	if (line.what !== "branch") return line.cells.map(({ column }) => column);
	return ["id", "from", "to", ...catalogue.branch.map(({ name }) => name), "fromLeg", "toLeg"];
}

function cellAt(sheet: Sheet, line: Line, column: string, book: Book): string {
	const cell = line.cells.find((each) => each.column === column);
	return cell ? textOf(sheet, cell, book) : "";
}

function trimmed(texts: string[]): string[] {
	return texts.slice(0, texts.findLastIndex((text) => text !== "") + 1);
}
