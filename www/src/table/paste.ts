/**
 * What a pasted block of text does to the sheet: into cells, from one cell on, or as new rows. What
 * cannot be read is kept as text in its cell; what has no place is handed back.
 */
import { keyOf, type Path, type Sheet, together } from "../network/edit";
import { type Decimal, evidence } from "../number/separators";
import { named } from "./cellText";
import type { Copied } from "./copy";
import { type Book, columnsOf, LISTS, type Line, type TableName } from "./grid";
import { pasteRows } from "./pasteRows";
import { type Asked, Pasting } from "./pasting";
import { insertItems, insertRow, type RowEdit, rowsOf } from "./rows";
import { alike, type Chosen, chosen, has, type Selection } from "./select";

/** What pasting comes to. */
export interface Pasted {
	readonly sheet: Sheet;
	/** What is selected afterwards, if that is something else. */
	readonly selection: Selection | null;
	/** Cells whose text can be read in two ways. */
	readonly asked: readonly Asked[];
	/** Texts for which there was no cell. */
	readonly unplaced: readonly string[];
}

/** A block to paste, and where. */
export interface Paste {
	readonly table: TableName;
	readonly all: readonly Line[];
	/** Without a selection the block becomes new rows at the table's end. */
	readonly selection: Selection | null;
	readonly block: readonly (readonly string[])[];
	/** The rows that have been copied on this page, if they are what the block holds. */
	readonly copied: Copied | null;
	/** How the reader has said that commas are meant. */
	readonly decimal?: Decimal;
}

const ROWS = { branches: "branch", nodes: "node", cylinders: "cylinder" } as const;

/** Pastes a block. */
export function paste(sheet: Sheet, what: Paste, book: Book): Pasted {
	return together(sheet, (now) => pasteInto(now, what, book));
}

function pasteInto(sheet: Sheet, what: Paste, book: Book): Pasted {
	const { table, all, selection, block } = what;
	const pasting = new Pasting(sheet, book, what.decimal ?? evidence(block.flat()));
	const selected = selection ? chosen(all, selection) : [];
	const first = selected[0];
	const copied = what.copied?.items.length ? what.copied : null;
	const inRows =
		!first ||
		selection?.rows ||
		(first.cells[0]?.holds === "name" && (copied || block.some((row) => isLossRow(row, pasting))));
	if (!inRows) return done(pasting, intoCells(pasting, what, selected));
	const rows = rowsOf(selected).at(-1);
	const list: Path = rows?.list ?? LISTS[table];
	const at = rows ? (rows.places.at(-1) ?? -1) + 1 : endOf(sheet, table);
	const sort = first?.line.what ?? ROWS[table];
	if (copied?.what === sort) {
		const made = insertItems(sheet, list, at, copied.items);
		pasting.sheet = made.sheet;
		return done(pasting, rowSelection(made));
	}
	const made = pasteRows(pasting, sort, list, at, block);
	return done(pasting, made && rowSelection(made));
}

/** Reads the cells that have been asked about in one way, as far as they still hold that text. */
export function settle(sheet: Sheet, asked: readonly Asked[], what: Paste, book: Book): Sheet {
	const texts = new Map(asked.map(({ key, text }) => [key, text]));
	return together(sheet, (now) => {
		const pasting = new Pasting(now, book, what.decimal);
		for (const line of texts.size > 0 ? what.all : []) {
			for (const cell of line.cells) {
				const key = keyOf(cell.path);
				const text = texts.get(key);
				if (text !== undefined && pasting.sheet.drafts[key] === text) {
					pasting.write(line, cell, text);
				}
			}
		}
		return pasting.sheet;
	});
}

/** Rows, selected as rows. */
export function rowSelection({ list, from, to }: Omit<RowEdit, "sheet">): Selection {
	const column = list.at(-1) === "losses" ? "kind" : "id";
	return { anchor: keyOf([...list, from, column]), head: keyOf([...list, to, column]), rows: true };
}

function done({ sheet, asked, unplaced }: Pasting, selection: Selection | null): Pasted {
	return { sheet, selection, asked, unplaced };
}

function endOf({ study }: Sheet, table: TableName): number {
	return table === "cylinders" ? study.engine.cylinders.length : study.network[table].length;
}

function isLossRow([name, kind]: readonly string[], { sheet, book }: Pasting): boolean {
	return name?.trim() === "" && !!kind && named("loss", kind, sheet.study, book) !== undefined;
}

/** The block's rows go into lines of the same sort; a selection that it fits into again and again is filled. */
function intoCells(pasting: Pasting, what: Paste, selected: readonly Chosen[]): Selection | null {
	const { all, block } = what;
	const first = selected[0];
	const column = first?.cells[0]?.column;
	if (!first || column === undefined) return null;
	const wide = Math.max(...block.map((row) => row.length));
	const height = covering(selected.length, block.length);
	const width = covering(first.cells.length, wide);
	const targets =
		height === selected.length ? selected.map(({ line }) => line) : below(all, first.line, column);
	let head: string | null = null;
	let last: Line | undefined;
	for (let row = 0; row < height; row += 1) {
		const texts = block[row % block.length] ?? [];
		const filled = Array.from({ length: width }, (_, place) => texts[place % wide]);
		const target = targets[row] ?? (last && another(pasting, last, column, texts[0]?.trim()));
		if (!target) pasting.refuse(filled);
		else head = intoLine(pasting, target, column, filled, all) ?? head;
		last = target ?? last;
	}
	const anchor = keyOf(first.cells[0]?.path ?? []);
	return head && head !== anchor ? { anchor, head, rows: false } : null;
}

/** How many cells a block covers along one side of a selection. */
function covering(selected: number, given: number): number {
	return selected % given === 0 ? selected : given;
}

function below(all: readonly Line[], first: Line, column: string): Line[] {
	const start = all.indexOf(first);
	// Kinds are about to change, so that only the losses of one branch are of one sort.
	const ofKinds = first.what === "loss" && column === "kind";
	return all
		.slice(start)
		.filter((line) =>
			ofKinds ? keyOf(line.list) === keyOf(first.list) : alike(line, first) && has(line, column),
		);
}

/** A new line behind the last one, where what is pasted makes a row; `text` goes into its first cell. */
function another(
	pasting: Pasting,
	last: Line,
	column: string,
	text: string | undefined,
): Line | undefined {
	const needsKind = last.what === "loss" || last.what === "node";
	if (needsKind && column !== "kind" && column !== "id") return undefined;
	const name = column === "id" ? text || undefined : undefined;
	const made = insertRow(pasting.sheet, last, pasting.book, name);
	pasting.sheet = made.sheet;
	return pasting.again({ ...last, index: made.from });
}

/** Writes texts into a line from one column on, and returns the last cell that took one. */
function intoLine(
	pasting: Pasting,
	target: Line,
	column: string,
	texts: readonly (string | undefined)[],
	all: readonly Line[],
): string | null {
	let line = pasting.again(target);
	let last: string | null = null;
	let columns = columnsOf(line, all, pasting.book);
	const start = columns.indexOf(column);
	for (const [place, text] of texts.entries()) {
		// Where a row of the block is shorter than others, its cells are left alone.
		if (text === undefined) continue;
		const name = columns[start + place];
		const cell = line.cells.find((each) => each.column === name);
		if (!cell) {
			pasting.refuse([text]);
			continue;
		}
		pasting.write(line, cell, text);
		last = keyOf(cell.path);
		if (cell.column !== "kind" && cell.column !== "way") continue;
		line = pasting.again(line);
		columns = columnsOf(line, all, pasting.book);
	}
	return last;
}
