/**
 * Edits of the study on the sheet, as pure functions, and the history that makes every edit undoable.
 *
 * A sheet never changes: an edit returns a new one that shares all it did not touch, so that the page
 * renders only what is new and an undo costs one pointer.
 */
import type { Study } from "../solver/types";
import { look, settled, type Versions } from "./versions";

/** Where a value stands in the study: `["network", "branches", 3, "losses", 0, "area"]`. */
export type Path = readonly (string | number)[];

/** Text of cells that cannot be read as a value, by the cell's path. */
export type Drafts = Readonly<Record<string, string>>;

/** One version of the manifold with its unreadable cells, and beside it the others. */
export interface Sheet {
	/** The study of the version on the sheet, by itself. */
	readonly study: Study;
	readonly drafts: Drafts;
	/** All versions; none while the study has no variants. */
	readonly versions?: Versions;
}

/** All sheets that undo and redo can bring back. */
export interface History {
	readonly past: readonly Sheet[];
	readonly present: Sheet;
	readonly future: readonly Sheet[];
	/** The edit that is still being made, so that the keystrokes in one cell are undone together. */
	readonly group: string | null;
}

/** Sheets kept for undo; they share almost all of their data. */
const DEPTH = 500;

/** The key under which the unreadable text of a cell is kept. */
export function keyOf(path: Path): string {
	return path.join(".");
}

/** The value at a path, or undefined where nothing stands. */
export function valueAt(study: Study, path: Path): unknown {
	let value: unknown = study;
	for (const key of path) {
		if (value === null || typeof value !== "object") return undefined;
		value = (value as Record<string | number, unknown>)[key];
	}
	return value;
}

/** Puts a value at a path, or takes away what stands there when the value is undefined. */
export function put(sheet: Sheet, path: Path, value: unknown): Sheet {
	const study = replaced(sheet.study, path, value) as Study;
	const holds = [valueAt(sheet.study, path), value].some((each) => typeof each === "object");
	return { ...sheet, study, drafts: without(sheet.drafts, keyOf(path), holds) };
}

/** Keeps text that is not a value in its cell; the value underneath stays as it was. */
export function draft(sheet: Sheet, path: Path, text: string): Sheet {
	const drafts: Record<string, string> = loose?.has(sheet.drafts)
		? sheet.drafts
		: loosened({ ...sheet.drafts });
	drafts[keyOf(path)] = text;
	return { ...sheet, drafts };
}

/**
 * Makes many edits one after the other, of which only the last one's sheet is kept: the texts of unreadable
 * cells are then written into one record instead of being copied each time, which for a pasted block of
 * some thousand takes seconds.
 */
export function together<Result>(sheet: Sheet, edits: (sheet: Sheet) => Result): Result {
	loose = new WeakSet();
	try {
		return edits(sheet);
	} finally {
		loose = null;
	}
}

/** Records of drafts that nobody but the edits being made together has seen. */
let loose: WeakSet<Drafts> | null = null;

function loosened<D extends Drafts>(drafts: D): D {
	loose?.add(drafts);
	return drafts;
}

/** Puts an item into a list, before the one that stands at `index`. */
export function insert(sheet: Sheet, list: Path, index: number, item: unknown): Sheet {
	return relist(
		sheet,
		list,
		(items) => items.toSpliced(index, 0, item),
		(old) => (old >= index ? old + 1 : old),
	);
}

/** Takes an item out of a list. */
export function remove(sheet: Sheet, list: Path, index: number): Sheet {
	return relist(
		sheet,
		list,
		(items) => items.toSpliced(index, 1),
		(old) => (old === index ? null : old > index ? old - 1 : old),
	);
}

/** Moves an item of a list to another place. */
export function move(sheet: Sheet, list: Path, from: number, to: number): Sheet {
	return relist(
		sheet,
		list,
		(items) => items.toSpliced(from, 1).toSpliced(to, 0, items[from]),
		(old) => {
			if (old === from) return to;
			const gap = old > from ? old - 1 : old;
			return gap >= to ? gap + 1 : gap;
		},
	);
}

/** A history that starts with one sheet. */
export function begin(present: Sheet): History {
	return { past: [], present, future: [], group: null };
}

/**
 * Makes an edit. Edits of the same group count as one: each of them starts from the sheet before the
 * group, so that a name typed letter by letter never drags along what the half-typed name would match.
 */
export function change(
	history: History,
	group: string | null,
	edit: (sheet: Sheet) => Sheet,
): History {
	const before = history.past.at(-1);
	if (group !== null && group === history.group && before !== undefined) {
		return { ...history, present: settled(before, edit(before)), future: [] };
	}
	const present = settled(history.present, edit(history.present));
	if (present === history.present) return history;
	const past = [...history.past, history.present].slice(-DEPTH);
	return { past, present, future: [], group };
}

/** Shows the sheet in another way, which is no edit: what can be undone and made again stays. */
export function turn(history: History, by: (sheet: Sheet) => Sheet): History {
	const present = by(history.present);
	return present === history.present ? history : { ...history, present, group: null };
}

/** Ends the group, so that the next edit can be undone by itself. */
export function close(history: History): History {
	return history.group === null ? history : { ...history, group: null };
}

/** Goes back by one edit. */
export function undo(history: History): History {
	const present = history.past.at(-1);
	if (present === undefined) return history;
	return {
		past: history.past.slice(0, -1),
		present,
		future: [history.present, ...history.future],
		group: null,
	};
}

/** Makes the edit again that was undone last, in the version that it was made in. */
export function redo(history: History): History {
	const next = history.future[0];
	if (next === undefined) return history;
	return {
		past: [...history.past, history.present],
		present: look(next, next.versions?.made.looking ?? null),
		future: history.future.slice(1),
		group: null,
	};
}

function relist(
	sheet: Sheet,
	list: Path,
	rearranged: (items: readonly unknown[]) => unknown[],
	place: (old: number) => number | null,
): Sheet {
	const items = (valueAt(sheet.study, list) ?? []) as readonly unknown[];
	const study = replaced(sheet.study, list, rearranged(items)) as Study;
	// Behind the last item there is none to move along.
	const stays = items.every((_, old) => place(old) === old);
	return { ...sheet, study, drafts: stays ? sheet.drafts : followed(sheet.drafts, list, place) };
}

/** Drafts are kept by place, so they move along when their row moves. */
function followed(drafts: Drafts, list: Path, place: (old: number) => number | null): Drafts {
	const start = `${keyOf(list)}.`;
	const moves = (key: string) => {
		if (!key.startsWith(start)) return false;
		const old = Number.parseInt(key.slice(start.length), 10);
		return place(old) !== old;
	};
	if (!Object.keys(drafts).some(moves)) return drafts;
	const kept: Record<string, string> = {};
	for (const [key, text] of Object.entries(drafts)) {
		if (!key.startsWith(start)) {
			kept[key] = text;
			continue;
		}
		const [old, ...rest] = key.slice(start.length).split(".");
		const now = place(Number(old));
		if (now !== null) kept[[keyOf(list), now, ...rest].join(".")] = text;
	}
	return loosened(kept);
}

function replaced(value: unknown, path: Path, to: unknown): unknown {
	const [key, ...rest] = path;
	if (key === undefined) return to;
	const inner = replaced((value as Record<string | number, unknown> | undefined)?.[key], rest, to);
	if (Array.isArray(value)) return value.with(key as number, inner);
	const copy = { ...(value as Record<string, unknown> | undefined) };
	if (inner !== undefined) copy[key] = inner;
	else if (value !== undefined) delete copy[key];
	// What has lost its last field is as if it had never been there: a file without it means the same.
	return inner === undefined && Object.keys(copy).length === 0 ? undefined : copy;
}

/** `holds` says whether there can be other cells under the key. */
function without(drafts: Drafts, key: string, holds: boolean): Drafts {
	const under = `${key}.`;
	if (!holds && !Object.hasOwn(drafts, key)) return drafts;
	if (!Object.keys(drafts).some((each) => each === key || each.startsWith(under))) return drafts;
	return loosened(
		Object.fromEntries(
			Object.entries(drafts).filter(([each]) => each !== key && !each.startsWith(under)),
		),
	);
}
