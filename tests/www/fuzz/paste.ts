/** What is promised of whatever is pasted into the tables of nodes, branches and cylinders. */
import { keyOf, type Sheet } from "../../../www/src/network/edit";
import { blockText, readBlock, readPasted } from "../../../www/src/table/block";
import { type Book, type Line, lines, type TableName } from "../../../www/src/table/grid";
import { type Paste, paste, settle } from "../../../www/src/table/paste";
import type { Selection } from "../../../www/src/table/select";
import { chosenUnits } from "../../../www/src/units";
import { catalogue, example } from "../wasm";
import { within } from "./guard";
import { allFinite, hold, MARK, picker, withMark } from "./hold";

const BOOK: Book = { catalogue, units: chosenUnits(undefined, 101_325) };
const TABLES: readonly TableName[] = ["branches", "nodes", "cylinders"];
const SHEETS: readonly Sheet[] = ["twin_feed", "blown_v8", "tapered_log"].map((name) =>
	frozen({ study: example(name), drafts: {} }),
);
/**
 * Pastes a text in a place that `where` tells. It is refused with a reason, or goes in in time; a text that
 * no cell can read is still there or is named as having no cell; no more rows come of it than it has cells;
 * the sheet before stays as it was.
 */
export function checkPaste(text: string, where: number): void {
	const read = within(() => readPasted(text));
	if (read.kind === "refused") {
		hold(read.reason !== "", "refused without a reason");
		return;
	}
	const { block } = read;
	hold(
		JSON.stringify(readBlock(blockText(block))) === JSON.stringify(block),
		"another block once written and read again",
	);
	const next = picker(where);
	const sheet = SHEETS[next(SHEETS.length)] as Sheet;
	const table = TABLES[next(TABLES.length)] as TableName;
	const all = lines(table, sheet, catalogue);
	const selection = next(4) === 0 ? null : somewhere(all, next);
	const marked = withMark(block, 0, next);
	const what: Paste = { table, all, selection, block: marked, copied: null };
	const pasted = within(() => paste(sheet, what, BOOK));
	const texts = [...pasted.unplaced, ...Object.values(pasted.sheet.drafts)];
	const kept = texts.some((each) => each.includes(MARK));
	hold(kept || JSON.stringify(pasted.sheet.study).includes(MARK), "a text has been lost");
	const cells = marked.reduce((count, row) => count + row.length, 0);
	const more = rowsOf(pasted.sheet) - rowsOf(sheet);
	hold(more <= cells, `${more} rows out of ${cells} cells`);
	hold(allFinite(pasted.sheet.study), "a number that is none");
	if (pasted.asked.length === 0) return;
	for (const decimal of ["comma", "point"] as const) {
		const settled = () => settle(pasted.sheet, pasted.asked, { ...what, decimal }, BOOK);
		const now = within(settled);
		hold(allFinite(now.study), "a number that is none");
	}
}

/** Nodes, branches, losses and cylinders together. */
function rowsOf({ study: { network, engine } }: Sheet): number {
	const losses = network.branches.reduce((count, each) => count + each.losses.length, 0);
	return network.nodes.length + network.branches.length + losses + engine.cylinders.length;
}

/** A selection from some cell to some other one, of cells or of rows. */
function somewhere(all: readonly Line[], next: (below: number) => number): Selection {
	const key = () => {
		const cells = all[next(all.length)]?.cells ?? [];
		return keyOf(cells[next(cells.length)]?.path ?? []);
	};
	const anchor = key();
	return { anchor, head: next(2) === 0 ? anchor : key(), rows: next(3) === 0 };
}

/** Never to be changed: an edit that tries to is thrown at. */
function frozen<Value>(value: Value): Value {
	if (value !== null && typeof value === "object") {
		for (const inner of Object.values(value)) frozen(inner);
		Object.freeze(value);
	}
	return value;
}
