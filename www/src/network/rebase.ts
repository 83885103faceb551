/**
 * What a variant becomes when its base is edited: what the variant has changed stays, all else follows the
 * base. What the variant is not concerned with stays the same object, so that a keystroke in the base costs
 * next to nothing in its variants.
 */
import type { Branch, Network, Node } from "../solver/types";
import { areBeside, haveOwnNames, isObject, same } from "./same";
import type { Version } from "./versions";

/** What names an item of a list before and after an edit. */
type Key = string | number;

/** Items by their names, in their order. */
type Keyed<T> = ReadonlyMap<Key, T>;

/** The variant's values that hold text of a cell which cannot be read: they count as changed. */
type Drafted = ReadonlySet<unknown>;

/** The variant's version after its base has gone from one network to another. */
export function rebase<V extends Version>(before: Network, after: Network, mine: V): V {
	const ways = Object.keys(mine.drafts).map((key) => key.split("."));
	const drafted = new Set(ways.flatMap((way) => along(mine, way)).filter(isObject));
	const { network } = mine;
	const nodes = mergedRows(before.nodes, after.nodes, network.nodes, drafted);
	const branches = mergedRows(before.branches, after.branches, network.branches, drafted);
	// Only where rows of the base have come or gone can a branch have lost an end.
	const isSteady =
		areBeside(before.nodes, after.nodes) && areBeside(before.branches, after.branches);
	const now = { nodes, branches };
	const ended = isSteady ? now : withEnds(before, after, network, now);
	if (ended.nodes === network.nodes && branches === network.branches) return mine;
	const drafts = Object.fromEntries(
		Object.values(mine.drafts).map((text, at) => {
			const [, list, ...way] = ways[at] ?? [];
			const name = list === "nodes" ? "nodes" : "branches";
			const rows = [before[name], after[name], network[name]] as const;
			return [["network", list, ...led(rows, way, drafted, named)].join("."), text];
		}),
	);
	return { ...mine, network: ended, drafts };
}

/** Rows of one list. A row has its name among the rows; of rows that share one each has its turn. */
function mergedRows<T extends Node | Branch>(
	before: readonly T[],
	after: readonly T[],
	mine: T[],
	drafted: Drafted,
): T[] {
	if (before === after) return mine;
	// While cells are edited, as with every keystroke, the rows stand as they stood.
	if (areBeside(before, after) && haveOwnNames(before) && haveOwnNames(mine)) {
		return before.reduce((rows, old, at) => {
			const now = after[at];
			const place = old === now ? -1 : rows.findIndex(({ id }) => id === old.id);
			const row = rows[place];
			return row ? rows.with(place, merged(old, now, row, drafted) as T) : rows;
		}, mine);
	}
	const items = merge(named(before), named(after), named(mine), drafted);
	return shared([...items.values()], mine);
}

/** All nodes that what differs from the base leads to, as far as the variant had them or the base has. */
function withEnds(before: Network, after: Network, mine: Network, now: Network): Network {
	const there = new Set(now.nodes.map(({ id }) => id));
	const had = new Set(mine.nodes.map(({ id }) => id));
	const known = new Map([...before.nodes, ...after.nodes].map((node) => [node.id, node]));
	const base = new Set<Node | Branch>([...after.nodes, ...after.branches]);
	const old = new Set([...before.nodes, ...before.branches].map(({ id }) => id));
	const back: Node[] = [];
	const ask = (ids: readonly string[]) => {
		for (const id of ids) {
			const node = known.get(id);
			if (!node || there.has(id)) continue;
			there.add(id);
			back.push(node);
			ask(needs(node));
		}
	};
	for (const row of [...now.nodes, ...now.branches]) {
		// A row that is as in the base leads where the base's leads, except a new one.
		if (!base.has(row)) ask(needs(row).filter((id) => had.has(id)));
		else if (!old.has(row.id)) ask(needs(row));
	}
	return back.length > 0 ? { ...now, nodes: [...now.nodes, ...back] } : now;
}

/** The nodes that a row names. */
function needs(row: Node | Branch): string[] {
	if (!("losses" in row)) return row.kind === "source" && row.boostNode ? [row.boostNode] : [];
	const { boostNode } = row.blower ?? {};
	return boostNode ? [row.from, row.to, boostNode] : [row.from, row.to];
}

/** What a value becomes that stood in the base and stands in the variant. */
function merged(old: unknown, now: unknown, mine: unknown, drafted: Drafted): unknown {
	if (old === now) return mine;
	if (!drafted.has(mine) && (same(mine, old) || same(mine, now))) return now;
	if (same(old, now) || !isObject(old) || !isObject(now) || !isObject(mine)) return mine;
	if (Array.isArray(mine)) {
		const lists = listed(old, now, mine);
		if (!lists) return mine;
		return shared([...merge(lists.old, lists.now, lists.mine, drafted).values()], mine);
	}
	// Cells of another kind of loss or node, or of a table with other rows, are no cells of this one.
	if (old.kind !== now.kind || old.kind !== mine.kind || "speeds" in mine) return mine;
	const cells: Record<string, unknown> = {};
	for (const key of new Set([...Object.keys(mine), ...Object.keys(now)])) {
		const cell = merged(old[key], now[key], mine[key], drafted);
		if (cell !== undefined) cells[key] = cell;
	}
	return same(cells, mine) ? mine : cells;
}

/**
 * Items of three lists that belong together: each as it has become, in the base's order where the variant
 * had kept to it, else in the variant's. What the base has taken out and the variant has changed stays.
 */
function merge<T>(old: Keyed<T>, now: Keyed<T>, mine: Keyed<T>, drafted: Drafted): Map<Key, T> {
	const items = new Map<Key, T>();
	for (const [key, item] of mine) {
		const was = old.get(key);
		const is = now.get(key);
		if (was === undefined) items.set(key, item);
		else if (is !== undefined) items.set(key, merged(was, is, item, drafted) as T);
		else if (drafted.has(item) || !same(item, was)) items.set(key, item);
	}
	for (const [key, item] of now) if (!old.has(key) && !mine.has(key)) items.set(key, item);
	const own = [...mine.keys()].filter((key) => items.has(key));
	const base = [...now.keys()].filter((key) => items.has(key));
	const kept = [...mine.keys()].filter((key) => old.has(key));
	const followed = [...old.keys()].filter((key) => mine.has(key));
	const follows = kept.every((key, at) => key === followed[at]);
	const order = follows ? woven(base, own) : woven(own, base);
	return new Map(order.map((key) => [key, items.get(key) as T]));
}

/** The first order, and what is only in the second behind what it stood behind there, or at the end. */
function woven(first: readonly Key[], second: readonly Key[]): Key[] {
	const there = new Set(first);
	const last = second.findLastIndex((key) => there.has(key));
	const behind = new Map<Key | null, Key[]>();
	let before: Key | null = null;
	for (const key of second.slice(0, Math.max(last, 0))) {
		if (there.has(key)) before = key;
		else behind.set(before, [...(behind.get(before) ?? []), key]);
	}
	const ordered = first.flatMap((key) => [key, ...(behind.get(key) ?? [])]);
	return [...(behind.get(null) ?? []), ...ordered, ...second.slice(last + 1)];
}

/** Rows by their ids. */
function named<T>(rows: readonly T[]): Map<Key, T> {
	const items = new Map<Key, T>();
	for (const row of rows) {
		const { id } = row as { readonly id: string };
		let key = id;
		for (let turn = 2; items.has(key); turn += 1) key = `${id}\n${turn}`;
		items.set(key, row);
	}
	return items;
}

interface Lists<T> {
	readonly old: Keyed<T>;
	readonly now: Keyed<T>;
	readonly mine: Keyed<T>;
}

/** Losses, stations and the like by their places in the base before; null where the variant's are others. */
function listed(old: unknown, now: unknown, mine: readonly unknown[]): Lists<unknown> | null {
	if (!Array.isArray(old) || !Array.isArray(now) || mine.length !== old.length) return null;
	if (!mine.every((item, at) => kindOf(item) === kindOf(old[at]))) return null;
	const keys = places(old, now);
	return {
		old: new Map(old.entries()),
		now: new Map(now.map((item, at) => [keys[at] ?? at, item])),
		mine: new Map(mine.entries()),
	};
}

/**
 * Where the items of a list stood before an edit; a new one gets a name of its own. Lists begin and end
 * alike outside the edit; within it an item is known by being the same, or by its place in as many.
 */
function places(old: readonly unknown[], now: readonly unknown[]): Key[] {
	const most = Math.min(old.length, now.length);
	let start = 0;
	while (start < most && same(old[start], now[start])) start += 1;
	let end = 0;
	while (end < most - start && same(old.at(-1 - end), now.at(-1 - end))) end += 1;
	const isMoved = (at: number) => isObject(now[at]) && old.includes(now[at]);
	return now.map((item, at) => {
		if (at < start) return at;
		if (at >= now.length - end) return at - now.length + old.length;
		if (isMoved(at)) return old.indexOf(item);
		const isOpen = !now.includes(old[at]) || !isObject(item);
		return old.length === now.length && isOpen ? at : `new ${at}`;
	});
}

function kindOf(item: unknown): unknown {
	return isObject(item) ? item.kind : undefined;
}

/** Every value on the way to a cell. */
function along(version: unknown, way: readonly string[]): unknown[] {
	let value = version;
	return way.map((key) => {
		value = isObject(value) ? value[key] : undefined;
		return value;
	});
}

/** Where the way to a cell of the variant leads after the merging. */
function led(
	[old, now, mine]: readonly [unknown, unknown, unknown],
	[key, ...way]: readonly string[],
	drafted: Drafted,
	keyed?: <T>(rows: readonly T[]) => Map<Key, T>,
): Key[] {
	if (key === undefined) return [];
	if (!Array.isArray(mine)) {
		const [was, is, own] = [old, now, mine].map((each) => (isObject(each) ? each[key] : undefined));
		return [key, ...led([was, is, own], way, drafted)];
	}
	const lists = keyed
		? { old: keyed(old as unknown[]), now: keyed(now as unknown[]), mine: keyed(mine) }
		: listed(old, now, mine);
	const name = lists ? [...lists.mine.keys()][Number(key)] : undefined;
	if (!lists || name === undefined) return [key, ...way];
	const order = [...merge<unknown>(lists.old, lists.now, lists.mine, drafted).keys()];
	const inside = [lists.old.get(name), lists.now.get(name), lists.mine.get(name)] as const;
	return [order.indexOf(name), ...led(inside, way, drafted)];
}

/** The list there was, where it still holds the same. */
function shared<T>(items: T[], before: T[]): T[] {
	const isSame = items.length === before.length && items.every((item, at) => item === before[at]);
	return isSame ? before : items;
}
