/** Whole rows: inserted, duplicated, taken out and moved. */
import { addBranch, addCylinder, addLoss, addNode, unusedName } from "../network/blank";
import { insert, keyOf, move, type Path, remove, type Sheet, valueAt } from "../network/edit";
import { withPassages } from "../network/passages";
import { takenIds } from "../network/versions";
import { type Book, BRANCHES, CYLINDERS, type Line, NODES } from "./grid";
import type { Chosen } from "./select";

/** Rows of one list, by their places in it, from the first on. */
export interface Rows {
	readonly list: Path;
	readonly places: readonly number[];
}

/** A sheet after an edit of rows, and the row to go on with. */
export interface RowEdit {
	readonly sheet: Sheet;
	readonly list: Path;
	readonly from: number;
	readonly to: number;
}

/** The rows that are selected; the losses of a selected branch go with it. */
export function rowsOf(chosen: readonly Chosen[]): Rows[] {
	const first = chosen[0]?.line;
	const rows = new Map<string, { list: Path; places: number[] }>();
	for (const { line } of chosen) {
		if (line.what !== first?.what) continue;
		const key = keyOf(line.list);
		const there = rows.get(key) ?? { list: line.list, places: [] };
		there.places.push(line.index);
		rows.set(key, there);
	}
	for (const { places } of rows.values()) places.sort((left, right) => left - right);
	return [...rows.values()];
}

/** Takes rows out. */
export function removeRows(sheet: Sheet, rows: readonly Rows[]): Sheet {
	return withPassages(
		rows.reduce(
			(left, { list, places }) =>
				places.toReversed().reduce((before, place) => remove(before, list, place), left),
			sheet,
		),
	);
}

/** Puts a copy of the rows behind the last of them. */
export function duplicateRows(sheet: Sheet, { list, places }: Rows): RowEdit {
	const at = (places.at(-1) ?? 0) + 1;
	const items = places.map((place) => itemAt(sheet, list, place));
	return insertItems(sheet, list, at, items);
}

/** An item of a list with the text of its cells that cannot be read. */
export interface Item {
	readonly value: unknown;
	/** By the path within the item. */
	readonly drafts: readonly (readonly [string, string])[];
}

export function itemAt(sheet: Sheet, list: Path, place: number): Item {
	const start = `${keyOf([...list, place])}.`;
	const drafts = Object.entries(sheet.drafts)
		.filter(([key]) => key.startsWith(start))
		.map(([key, text]) => [key.slice(start.length), text] as const);
	return { value: valueAt(sheet.study, [...list, place]), drafts };
}

/** Puts items into a list; a name that is taken gets the next free number. */
export function insertItems(sheet: Sheet, list: Path, at: number, items: readonly Item[]): RowEdit {
	let now = sheet;
	for (const [step, { value, drafts }] of items.entries()) {
		const place = at + step;
		now = insert(now, list, place, withFreeName(now, list, value));
		const start = keyOf([...list, place]);
		const more = Object.fromEntries(drafts.map(([key, text]) => [`${start}.${key}`, text]));
		now = { ...now, drafts: { ...now.drafts, ...more } };
	}
	const to = at + Math.max(items.length - 1, 0);
	return { sheet: withPassages(now), list, from: at, to };
}

/** Puts a new row behind a line; a branch or node with a name that is free, unless it is given one. */
export function insertRow(
	sheet: Sheet,
	{ what, list, index }: Line,
	book: Book,
	id?: string,
): RowEdit {
	const at = index + 1;
	const { losses, nodes } = book.catalogue;
	const kind = (kinds: typeof nodes, usual: string) =>
		kinds.find((each) => each.kind === usual) ?? kinds[0];
	let now = sheet;
	if (what === "branch") now = addBranch(sheet, at, id);
	if (what === "cylinder") now = addCylinder(sheet, at);
	// A duct is what a branch has most of; the kind is then chosen in the new row itself.
	const info = what === "loss" ? kind(losses, "duct") : kind(nodes, "joint");
	if (what === "loss" && info) now = addLoss(sheet, list, info, at);
	if (what === "node" && info) now = addNode(sheet, info, at, id);
	return { sheet: now, list, from: at, to: at };
}

/** Moves rows by one place; null where there is none left. */
export function moveRows(sheet: Sheet, { list, places }: Rows, by: -1 | 1): RowEdit | null {
	const first = places[0] ?? 0;
	const last = places.at(-1) ?? 0;
	const length = (valueAt(sheet.study, list) as readonly unknown[]).length;
	// What moves is the row that they change places with.
	const over = by < 0 ? first - 1 : last + 1;
	if (over < 0 || over >= length) return null;
	return {
		sheet: move(sheet, list, over, by < 0 ? last : first),
		list,
		from: first + by,
		to: last + by,
	};
}

function withFreeName(sheet: Sheet, list: Path, value: unknown): unknown {
	if (![BRANCHES, NODES, CYLINDERS].some((named) => keyOf(named) === keyOf(list))) return value;
	const item = value as { readonly id: string };
	const isCylinder = keyOf(list) === keyOf(CYLINDERS);
	// Nodes and branches share one namespace.
	const taken = isCylinder
		? new Set(sheet.study.engine.cylinders.map(({ id }) => id))
		: takenIds(sheet);
	return { ...item, id: unusedName(taken, item.id) };
}
