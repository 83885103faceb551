/** What a variant has otherwise than its base, cell by cell, and the way back. */
import type { Branch, Loss, Network, Node } from "../solver/types";
import { insert, type Path, put, type Sheet, valueAt } from "./edit";
import { withPassages } from "./passages";
import { isObject, same } from "./same";
import { variantOn } from "./versions";

type List = "nodes" | "branches";
type Row = Node | Branch;

/** What a row has otherwise than the base's row of that name. */
export interface Differences {
	/** Whether the base has no such row. */
	readonly isNew: boolean;
	/** What the base has in cells that differ, by their way within the row: `losses.1.length`. */
	readonly cells: ReadonlyMap<string, unknown>;
	/** Places of losses that the base has not got. */
	readonly newLosses: ReadonlySet<number>;
	/** The base's losses that are not here. */
	readonly lostLosses: readonly Loss[];
}

/** How a cell differs: it is of a row that is new, or the base has another value there. */
export type Mark = { readonly kind: "new" } | { readonly kind: "changed"; readonly was: unknown };

/** How a row differs from the base's; null when it does not. */
export function differences(base: Row | undefined, row: Row): Differences | null {
	const cells = new Map<string, unknown>();
	const none: Differences = { isNew: true, cells, newLosses: new Set(), lostLosses: [] };
	if (!base) return none;
	if (same(base, row)) return null;
	const { losses: were = [], ...old } = base as Partial<Branch>;
	const { losses = [], ...now } = row as Partial<Branch>;
	compare(old, now, [], cells);
	const places = counterparts(were, losses);
	losses.forEach((loss, at) => {
		const place = places[at];
		if (place != null) compare(were[place], loss, ["losses", at], cells);
	});
	return {
		isNew: false,
		cells,
		newLosses: new Set([...losses.keys()].filter((at) => places[at] === null)),
		lostLosses: were.filter((_, place) => !places.includes(place)),
	};
}

/** How a cell differs, by its way within its row. */
export function markAt(found: Differences | null, way: string): Mark | null {
	if (!found) return null;
	if (found.isNew) return way === "id" ? { kind: "new" } : null;
	const loss = /^losses\.(\d+)\.kind$/.exec(way)?.[1];
	if (loss !== undefined && found.newLosses.has(Number(loss))) return { kind: "new" };
	return found.cells.has(way) ? { kind: "changed", was: found.cells.get(way) } : null;
}

/** How the cell at a path differs from the base; null on the base itself. */
export function markOf(sheet: Sheet, path: Path): Mark | null {
	const [, list, index, ...way] = path;
	const row = rowAt(sheet.study.network, list, index);
	if (!row || path[0] !== "network" || !variantOn(sheet)) return null;
	return markAt(differences(baseRow(sheet, list as List, row.id), row), way.join("."));
}

/** The cells as the base has them; whether a cell is of a row that the base has not got. */
export function asBase(sheet: Sheet, paths: readonly Path[]): { sheet: Sheet; left: boolean } {
	let now = sheet;
	let left = false;
	for (const path of paths) {
		const made = cellAsBase(now, path);
		left ||= made === null;
		now = made ?? now;
	}
	return { sheet: now === sheet ? sheet : withPassages(now), left };
}

function cellAsBase(sheet: Sheet, [network, list, index, ...way]: Path): Sheet | null {
	const row = rowAt(sheet.study.network, list, index);
	const base = row && baseRow(sheet, list as List, row.id);
	if (!row || !base || network !== "network") return null;
	const place: Path = ["network", list as List, index as number];
	const [first, at] = way;
	if (first === "id") return sheet;
	// Cells of another kind of node or loss are no cells of this one: the whole comes back.
	if (first !== "losses" || at === undefined || !("losses" in base) || !("losses" in row)) {
		const isWhole =
			first === undefined || first === "losses" || ("kind" in base && !sameKind(base, row));
		return isWhole ? put(sheet, place, base) : put(sheet, [...place, ...way], valueIn(base, way));
	}
	const old = counterparts(base.losses, row.losses)[at as number];
	const loss = old == null ? undefined : base.losses[old];
	const now = row.losses[at as number];
	if (!loss || !now) return null;
	const isWhole = way.length === 2 || !sameKind(loss, now);
	const to = [...place, "losses", at];
	return isWhole
		? put(sheet, to, loss)
		: put(sheet, [...to, ...way.slice(2)], valueIn(loss, way.slice(2)));
}

/** The base's rows that the variant on the sheet leaves out. */
export function leftOut(sheet: Sheet, list: List): readonly Row[] {
	if (!sheet.versions || !variantOn(sheet)) return [];
	const there = new Set(sheet.study.network[list].map(({ id }) => id));
	return sheet.versions.base.network[list].filter(({ id }) => !there.has(id));
}

/** Brings a row of the base back to its place, with the nodes that it leads to. */
export function bringBack(sheet: Sheet, list: List, id: string): Sheet {
	const base = sheet.versions?.base.network;
	const row = base && leftOut(sheet, list).find((each) => each.id === id);
	if (!row) return sheet;
	const ends = "losses" in row ? [row.from, row.to] : [];
	const nodes = ends.reduce((left, end) => bringBack(left, "nodes", end), sheet);
	const there = nodes.study.network[list].map((each) => each.id);
	const ids = base[list].map((each) => each.id);
	const before = ids.slice(0, ids.indexOf(id)).findLast((each) => there.includes(each));
	const at = before === undefined ? 0 : there.indexOf(before) + 1;
	return withPassages(insert(nodes, ["network", list], at, row));
}

/** The cells of two values that differ; of lists of other lengths the list itself. */
function compare(old: unknown, now: unknown, way: Path, cells: Map<string, unknown>) {
	if (same(old, now)) return;
	if (old === undefined && isObject(now) && !Array.isArray(now)) {
		// Of a thing that the base has not got, each cell is empty there.
		for (const key of Object.keys(now)) compare(undefined, now[key], [...way, key], cells);
	} else if (!isObject(old) || !isObject(now)) {
		cells.set(way.join("."), old);
	} else if (Array.isArray(old)) {
		if (!Array.isArray(now) || now.length !== old.length) cells.set(way.join("."), old);
		else for (const at of old.keys()) compare(old[at], now[at], [...way, at], cells);
	} else if (!sameKind(old, now)) {
		cells.set([...way, "kind"].join("."), old.kind);
	} else {
		for (const key of new Set([...Object.keys(old), ...Object.keys(now)]))
			compare(old[key], now[key], [...way, key], cells);
	}
}

/** Which of the base's losses each loss is; null for one that the base has not got. */
function counterparts(were: readonly Loss[], losses: readonly Loss[]): (number | null)[] {
	if (were.length === losses.length) return [...losses.keys()];
	const most = Math.min(were.length, losses.length);
	const alike = (one: Loss | undefined, other: Loss | undefined) =>
		one !== undefined && other !== undefined && sameKind(one, other);
	// From both ends: first what is the same, then what is of one kind.
	let start = 0;
	while (start < most && same(were[start], losses[start])) start += 1;
	let end = 0;
	while (end < most - start && same(were.at(-1 - end), losses.at(-1 - end))) end += 1;
	while (start < most - end && alike(were[start], losses[start])) start += 1;
	while (end < most - start && alike(were.at(-1 - end), losses.at(-1 - end))) end += 1;
	return losses.map((_, at) => {
		if (at < start) return at;
		return at >= losses.length - end ? at - losses.length + were.length : null;
	});
}

function sameKind(one: object, other: object): boolean {
	const kind = (of: object) => ("kind" in of ? of.kind : undefined);
	return kind(one) === kind(other);
}

function rowAt(network: Network, list: unknown, index: unknown): Row | undefined {
	if (list !== "nodes" && list !== "branches") return undefined;
	return network[list][index as number];
}

function baseRow({ versions }: Sheet, list: List, id: string): Row | undefined {
	return versions?.base.network[list].find((each) => each.id === id);
}

function valueIn(row: object, way: Path): unknown {
	return valueAt(row as never, way);
}
