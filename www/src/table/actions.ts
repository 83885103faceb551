/** What the keys and the buttons of a table do to the sheet, each of them one edit. */
import { tick } from "svelte";
import { asBase } from "../network/differing";
import type { Sheet } from "../network/edit";
import { editor } from "../network/editor.svelte";
import { beginSweep } from "../view/sweep";
import { readBlock, readPasted } from "./block";
import { clear } from "./cellText";
import { type Copied, copy } from "./copy";
import { fillDown } from "./fill";
import { type Cell, findCell } from "./grid";
import { type Pasted, paste, rowSelection, settle } from "./paste";
import { duplicateRows, insertRow, moveRows, type RowEdit, removeRows, rowsOf } from "./rows";
import { chosen } from "./select";
import { controlAt, type Table } from "./table.svelte";

export type Action =
	| "insert"
	| "duplicate"
	| "remove"
	| "up"
	| "down"
	| "fill"
	| "clear"
	| "base"
	| "sweep"
	| "sweepSecond";

/** What has been copied last on this page. */
let copied: Copied | null = null;

/** Puts the focus on a cell, selected as a whole, as soon as the page shows it. */
async function enter(table: Table, key: string) {
	await tick();
	const control = table.element && controlAt(table.element, key);
	control?.focus();
	if (control instanceof HTMLInputElement) control.select();
}

/** Does something with what is selected. */
export function act(table: Table, action: Action) {
	const sight = table.lines();
	const selection = table.selected();
	const { sheet } = editor;
	if (!sight || !selection || !sheet) return;
	const { all, book } = sight;
	const selected = chosen(all, selection);
	const first = selected[0]?.line;
	if (!first) return;
	// A branch without its losses is a whole row as well.
	const rows = rowsOf(selected);
	const only = rows.length === 1 ? rows[0] : undefined;
	switch (action) {
		case "fill":
			return change(sheet, fillDown(sheet, all, selection, book));
		case "base": {
			// Of rows the rows themselves; a branch brings its losses along.
			const paths = selection.rows
				? rows.flatMap(({ list, places }) => places.map((place) => [...list, place]))
				: selected.flatMap(({ cells }) => cells.map(({ path }) => path));
			const made = asBase(sheet, paths);
			change(sheet, made.sheet);
			return table.say(made.left ? "What the base has not got has stayed as it is." : "");
		}
		case "sweep":
		case "sweepSecond":
			return sweep(
				table,
				selected.flatMap(({ cells }) => cells),
				action === "sweepSecond",
			);
		case "clear": {
			const cells = selected.flatMap((each) => each.cells);
			return change(sheet, cells.reduce(clear, sheet));
		}
		case "insert": {
			const last = selected.findLast(({ line }) => line.what === first.what)?.line ?? first;
			return changeRows(table, insertRow(sheet, last, book), false);
		}
		case "duplicate":
			return changeRows(table, only ? duplicateRows(sheet, only) : null, true);
		case "remove": {
			const { list, places } = rows[0] ?? { list: table.list, places: [0] };
			change(sheet, removeRows(sheet, rows));
			table.selection = null;
			return enterNear(table, list, places[0] ?? 0);
		}
		default: {
			if (table.order && first.what !== "loss") {
				return table.say("Rows are moved in the study's order only: show all of them first.");
			}
			const made = only ? moveRows(sheet, only, action === "up" ? -1 : 1) : null;
			return changeRows(table, made, selection.rows);
		}
	}
}

/** The text that a selection copies; the rows themselves are kept for pasting them on this page. */
export function copyText(table: Table): string | null {
	const sight = table.lines();
	const selection = table.selected();
	if (!sight || !selection || !editor.sheet) return null;
	copied = copy(editor.sheet, sight.all, selection, sight.book);
	return copied?.text ?? null;
}

/** Pastes text where the selection begins, or as new rows at the table's end. */
export function pasteText(table: Table, text: string, atEnd = false) {
	const sight = table.lines();
	const { sheet } = editor;
	if (!sight || !sheet) return;
	const { all, book } = sight;
	const own = copied?.text === text.replace(/\r\n/g, "\n") ? copied : null;
	const read = readPasted(text);
	// Rows of this page are none too many: they are put in as they are.
	if (read.kind === "refused" && !own?.items.length) {
		return table.say(`Nothing was pasted. ${read.reason}`);
	}
	const what = {
		table: table.name,
		all,
		selection: atEnd ? null : table.selected(),
		block: read.kind === "block" ? read.block : readBlock(text),
		copied: own,
	};
	const pasted = paste(sheet, what, book);
	change(sheet, pasted.sheet);
	if (pasted.selection) {
		table.selection = pasted.selection;
		enter(table, pasted.selection.anchor);
	}
	table.notice = null;
	if (pasted.asked.length > 0) {
		const answer = (decimal: "comma" | "point") => {
			editor.amend(
				pasted.sheet,
				(before) => paste(before, { ...what, decimal }, book).sheet,
				(now) =>
					settle(now, pasted.asked, { ...what, all: table.lines()?.all ?? [], decimal }, book),
			);
			table.notice = null;
			if (pasted.unplaced.length > 0) table.say(lost(pasted));
		};
		table.notice = {
			text: `${question(pasted)}${lost(pasted)}`,
			answers: [
				{
					label: `A comma stands before decimals: ${example(pasted, "comma")}`,
					act: () => answer("comma"),
				},
				{ label: `Commas part thousands: ${example(pasted, "point")}`, act: () => answer("point") },
			],
		};
	} else if (pasted.unplaced.length > 0) {
		table.say(lost(pasted));
	}
}

function question({ asked }: Pasted): string {
	const [first, ...more] = asked.map(({ text }) => `“${text}”`);
	const others = more.length > 0 ? ` and ${more.length} more` : "";
	return `${first}${others} can be read in two ways, and the other pasted numbers do not tell. The text stays in its cells until you choose. `;
}

function lost({ unplaced }: Pasted): string {
	if (unplaced.length === 0) return "";
	return `There was no cell for: ${unplaced.map((text) => `“${text}”`).join(", ")}.`;
}

function example({ asked }: Pasted, decimal: "comma" | "point"): string {
	const text = asked[0]?.text ?? "";
	return decimal === "comma" ? text.replace(",", ".") : text.replaceAll(",", "");
}

/** Sweeps the numbers among the selected cells, which must measure the same. */
async function sweep(table: Table, cells: readonly Cell[], second: boolean) {
	const numbers = cells.filter((each) => each.holds === "number");
	if (numbers.length === 0) return table.say("To sweep, select cells that hold numbers.");
	if (new Set(numbers.map(({ info }) => info.quantity)).size > 1) {
		const labels = [...new Set(numbers.map(({ info }) => info.label))];
		return table.say(
			`To sweep, select cells that measure the same; these hold ${labels.join(" and ")}.`,
		);
	}
	table.say(await beginSweep(numbers, second));
}

function change(before: Sheet, after: Sheet) {
	if (before !== after) editor.change(null, () => after);
}

function changeRows(table: Table, made: RowEdit | null, asRows: boolean) {
	if (!made) return;
	editor.change(null, () => made.sheet);
	const selection = rowSelection(made);
	table.selection = asRows ? selection : null;
	enter(table, selection.anchor);
}

/** Goes on with the row that took the place of one that is gone, or the last one, or behind the table. */
async function enterNear(table: Table, list: readonly (string | number)[], place: number) {
	const all = table.lines()?.all ?? [];
	for (const near of [place, place - 1]) {
		const { anchor } = rowSelection({ list, from: near, to: near });
		if (findCell(all, anchor)) return enter(table, anchor);
	}
	table.current = null;
	await tick();
	table.afterwards?.focus();
}
