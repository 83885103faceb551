/** What is promised of whatever is pasted into the tables of nodes, branches and cylinders. */
import type { Sheet } from "../../../www/src/network/edit";
import { blockText, readBlock, readPasted } from "../../../www/src/table/block";
import { type Book, type Line, lines, type TableName } from "../../../www/src/table/grid";
import { type Paste, paste, settle } from "../../../www/src/table/paste";
import { firstKey, type Selection } from "../../../www/src/table/select";
import { keyOf } from "../../../www/src/network/edit";
import { chosenUnits } from "../../../www/src/units";
import { catalogue, example } from "../wasm";
import { within } from "./guard";

const BOOK: Book = { catalogue, units: chosenUnits(undefined, 101_325) };
const TABLES: readonly TableName[] = ["branches", "nodes", "cylinders"];
const SHEETS: readonly Sheet[] = ["twin_feed", "blown_v8", "tapered_log"].map((name) =>
	frozen({ study: example(name), drafts: {} }),
);
/** A text that is no name of anything, no number and no unit. */
const MARK = "⟦never lost⟧";

/** A number that says where a text is pasted. */
export type Where = number;

/**
 * Pastes a text somewhere. It is refused with a reason or goes in in time; a text that no cell can read is
 * still there or is named as having no cell; no more rows come of it than it has; the sheet before stays.
 */
export function checkPaste(text: string, where: Where): void {
	const read = within(() => readPasted(text));
	if (read.kind === "refused") return hold(read.reason !== "", "refused without a reason");
	const { block } = read;
	same(readBlock(blockText(block)), block, "another block once written and read again");
	const next = picker(where);
	const sheet = SHEETS[next(SHEETS.length)] as Sheet;
	const table = TABLES[next(TABLES.length)] as TableName;
	const all = lines(table, sheet, catalogue);
	const selection = next(4) === 0 ? null : somewhere(all, next);
	const marked = withMark(block, next);
	const what: Paste = { table, all, selection, block: marked, copied: null };
	const pasted = within(() => paste(sheet, what, BOOK));
	const told = [JSON.stringify(pasted.sheet.study), ...Object.values(pasted.sheet.drafts)];
	hold(
		[...told, ...pasted.unplaced].some((each) => each.includes(MARK)),
		"a text has been lost",
	);
	const rows = ({ network, engine }: Sheet["study"]) =>
		network.nodes.length +
		network.branches.length +
		network.branches.reduce((count, { losses }) => count + losses.length, 0) +
		engine.cylinders.length;
	// A branch may bring its losses along in its own row.
	const most = marked.reduce((count, row) => count + Math.max(row.length, 1), 0);
	const more = rows(pasted.sheet.study) - rows(sheet.study);
	hold(more <= most, `${more} rows out of ${most} cells`);
	hold(!told[0]?.includes("null"), "a number that is none");
	for (const decimal of ["comma", "point"] as const) {
		const now = within(() => settle(pasted.sheet, pasted.asked, { ...what, decimal }, BOOK));
		hold(!JSON.stringify(now.study).includes("null"), "a number that is none");
	}
}

/** One cell of the block holds the mark. */
function withMark(block: readonly string[][], next: (below: number) => number): string[][] {
	const row = next(block.length);
	const column = next(block[row]?.length ?? 1);
	return block.with(row, (block[row] ?? []).with(column, MARK));
}

/** A selection from some cell to some other one, of cells or of rows. */
function somewhere(all: readonly Line[], next: (below: number) => number): Selection | null {
	const key = () => {
		const line = all[next(all.length)];
		const cell = line?.cells[next(line.cells.length)];
		return cell ? keyOf(cell.path) : firstKey(line);
	};
	const anchor = key();
	const head = next(2) === 0 ? anchor : key();
	return anchor === null || head === null ? null : { anchor, head, rows: next(3) === 0 };
}

/** Choices out of one number, the same for the same one. */
function picker(from: number): (below: number) => number {
	let left = from;
	return (below) => {
		const taken = left % below;
		left = Math.floor(left / below);
		return taken;
	};
}

function frozen<Value>(value: Value): Value {
	if (value !== null && typeof value === "object") {
		for (const inner of Object.values(value)) frozen(inner);
		Object.freeze(value);
	}
	return value;
}

function same(one: unknown, other: unknown, otherwise: string) {
	hold(JSON.stringify(one) === JSON.stringify(other), otherwise);
}

function hold(holds: boolean, otherwise: string) {
	if (!holds) throw new Error(otherwise);
}
