/**
 * The versions of the manifold: the base, and variants of it. In a document a variant is its differences
 * from the base; here every version is a whole network that shares with the others the rows in which it
 * does not differ.
 */
import type { Branch, Network, Node, Study, Variant } from "../solver/types";
import type { Drafts, Sheet } from "./edit";
import { rebase } from "./rebase";
import { areBeside, haveOwnNames, same } from "./same";

/** A network, and the text of those of its cells that cannot be read. */
export interface Version {
	readonly network: Network;
	/** Not kept up to date for the version on the sheet, whose drafts stand there. */
	readonly drafts: Drafts;
}

/** A version beside the base. */
export interface NamedVersion extends Version {
	readonly name: string;
	readonly notes: string;
}

/** All versions of a study that has variants. */
export interface Versions {
	/** The place of the variant on the sheet; null for the base. */
	readonly looking: number | null;
	readonly base: Version;
	readonly variants: readonly NamedVersion[];
	/** The edit that the sheet comes from, and where it was made; looking at another version is none. */
	readonly made: { readonly looking: number | null };
}

const NONE: Drafts = {};

/** The sheet of a document, one of its versions looked at. */
export function sheetOf(document: Study, drafts: Drafts = NONE, looking?: number | null): Sheet {
	const { variants, ...study } = document;
	if (!variants?.length) return { study, drafts };
	const versions: Versions = {
		looking: null,
		base: { network: study.network, drafts: NONE },
		variants: variants.map((variant, place) => ({
			name: variant.name,
			notes: variant.notes,
			network: apply(study.network, variant),
			drafts: within(drafts, `variants.${place}.`),
		})),
		made: { looking: looking ?? null },
	};
	const own = Object.entries(drafts).filter(([key]) => !key.startsWith("variants."));
	return look({ study, drafts: Object.fromEntries(own), versions }, looking ?? null);
}

/** The whole document: the base with its variants. */
export function documentOf({ study, versions }: Sheet): Study {
	if (!versions) return study;
	const { network } = versions.base;
	const variants = versions.variants.map((variant) =>
		difference(network, variant.network, variant),
	);
	return { ...study, network, variants };
}

/** The unreadable text of all versions, by the cells' paths in the document. */
export function documentDrafts(sheet: Sheet): Drafts {
	if (!sheet.versions) return sheet.drafts;
	const { drafts, versions } = look(sheet, null);
	const others = (versions?.variants ?? []).flatMap((variant, place) =>
		Object.entries(variant.drafts).map(([key, text]) => [`variants.${place}.${key}`, text]),
	);
	return { ...drafts, ...Object.fromEntries(others) };
}

/** Every version as a study by itself, the base first; rows in which they do not differ are shared. */
export function versionsOf({ study, versions }: Sheet): { name: string | null; study: Study }[] {
	if (!versions) return [{ name: null, study }];
	const { looking, base, variants } = versions;
	const alone = (place: number | null, { network }: Version) =>
		place === looking ? study : { ...study, network };
	return [
		{ name: null, study: alone(null, base) },
		...variants.map((each, place) => ({ name: each.name, study: alone(place, each) })),
	];
}

/** The variant on the sheet; undefined for the base. */
export function variantOn({ versions }: Sheet): NamedVersion | undefined {
	return versions?.variants[versions.looking ?? -1];
}

/** Lays another version on the sheet; what belongs to no version stays. */
export function look(sheet: Sheet, looking: number | null): Sheet {
	const { study, drafts, versions } = sheet;
	const next = looking === null ? versions?.base : versions?.variants[looking];
	if (!versions || !next || looking === versions.looking) return sheet;
	const left = withVersion(versions, { drafts: ofNetwork(drafts) });
	const shared = Object.entries(drafts).filter(([key]) => !isOfNetwork(key));
	return {
		study: { ...study, network: next.network },
		drafts: { ...Object.fromEntries(shared), ...next.drafts },
		versions: { ...left, looking },
	};
}

/** Whether two sheets hold the same document, whatever version each of them shows. */
export function isSameEdit(
	one: Sheet | null | undefined,
	other: Sheet | null | undefined,
): boolean {
	if (one === other) return true;
	return one?.versions !== undefined && one.versions.made === other?.versions?.made;
}

/** The drafts of the network's cells. */
export function ofNetwork(drafts: Drafts): Drafts {
	return Object.fromEntries(Object.entries(drafts).filter(([key]) => isOfNetwork(key)));
}

/**
 * Brings the versions in line with the sheet after an edit. An edit of the base is one of all variants,
 * unless it has seen to them itself, which shows by the base being what stands on the sheet.
 */
export function settled(before: Sheet, after: Sheet): Sheet {
	const { study, versions } = after;
	if (after === before || !versions) return after;
	const { network } = study;
	let now: Versions = { ...versions, made: { looking: versions.looking } };
	if (now.looking === null && network !== versions.base.network) {
		const old = versions.base.network;
		now = { ...now, variants: now.variants.map((each) => rebase(old, network, each)) };
	}
	return { ...after, versions: withVersion(now, { network }) };
}

/** Changes the networks of all versions. */
export function everywhere(sheet: Sheet, change: (network: Network) => Network): Sheet {
	const { study, versions } = sheet;
	const changed = new Map<Network, Network>();
	const once = (network: Network): Network => {
		const now = changed.get(network) ?? change(network);
		changed.set(network, now);
		return now;
	};
	const own = { ...sheet, study: { ...study, network: once(study.network) } };
	if (!versions) return own;
	const version = <V extends Version>(each: V): V => ({ ...each, network: once(each.network) });
	const { base, variants } = versions;
	return {
		...own,
		versions: { ...versions, base: version(base), variants: variants.map(version) },
	};
}

/** The ids of nodes and branches in all versions: a new row takes none of them, or it would count as that row. */
export function takenIds(sheet: Sheet): ReadonlySet<string> {
	const ids = new Set<string>();
	// Plainly, since a long paste asks for every row.
	for (const { study } of versionsOf(sheet)) {
		for (const { id } of study.network.nodes) ids.add(id);
		for (const { id } of study.network.branches) ids.add(id);
	}
	return ids;
}

/** The network that a variant makes of its base. */
export function apply(base: Network, variant: Variant): Network {
	const removed = new Set(variant.removed);
	const places = grouped((variant.order ?? []).map((id, place) => ({ id, place })));
	const rows = <T extends Node | Branch>(rows: readonly T[], own: readonly T[]): T[] => {
		const forms = grouped(own.map((row, at) => ({ id: row.id, row, at })));
		const taken = rows
			.filter(({ id }) => !removed.has(id))
			.map((row) => forms.get(row.id)?.shift()?.row ?? row);
		const left = [...forms.values()].flat().sort((one, other) => one.at - other.at);
		const placed = [...taken, ...left.map(({ row }) => row)].map((row) => ({
			row,
			place: places.get(row.id)?.shift()?.place ?? Number.POSITIVE_INFINITY,
		}));
		// Both without a place: as they stand.
		placed.sort((one, other) => (one.place === other.place ? 0 : one.place - other.place));
		return placed.map(({ row }) => row);
	};
	return {
		nodes: rows(base.nodes, variant.nodes),
		branches: rows(base.branches, variant.branches),
	};
}

/** A network as differences from the base, under a variant's name. */
export function difference(
	base: Network,
	network: Network,
	{ name, notes }: Pick<Variant, "name" | "notes">,
): Variant {
	const lists = ["nodes", "branches"] as const;
	if (lists.every((list) => areBeside(base[list], network[list]) && haveOwnNames(base[list]))) {
		const nodes = network.nodes.filter((row, at) => !same(row, base.nodes[at]));
		const branches = network.branches.filter((row, at) => !same(row, base.branches[at]));
		return { name, notes, nodes, branches, removed: [] };
	}
	const removed = new Set([
		...missing(base.nodes, network.nodes),
		...missing(base.branches, network.branches),
	]);
	const nodes = differing(base.nodes, network.nodes, removed);
	const branches = differing(base.branches, network.branches, removed);
	const variant = { name, notes, nodes, branches, removed: [...removed] };
	const plain = apply(base, variant);
	const isOrdered =
		inOrder(plain.nodes, network.nodes) && inOrder(plain.branches, network.branches);
	const order = () => [...network.nodes, ...network.branches].map(({ id }) => id);
	return isOrdered ? variant : { ...variant, order: order() };
}

type Row = Node | Branch;

/** Ids of which the base has more rows. */
function missing(base: readonly Row[], network: readonly Row[]): string[] {
	const there = grouped(network);
	return [...grouped(base)].flatMap(([id, rows]) =>
		rows.length > (there.get(id)?.length ?? 0) ? [id] : [],
	);
}

/** The rows that the base has not got like this. Of rows that wrongly share an id one stands for all. */
function differing<T extends Row>(
	base: readonly T[],
	network: readonly T[],
	removed: ReadonlySet<string>,
): T[] {
	const old = grouped(base);
	const ids = new Set(
		[...grouped(network)].flatMap(([id, rows]) => {
			const were = removed.has(id) ? [] : (old.get(id) ?? []);
			const isLike = rows.length === were.length && rows.every((row, at) => same(row, were[at]));
			return isLike ? [] : [id];
		}),
	);
	return network.filter(({ id }) => ids.has(id));
}

function inOrder(plain: readonly Row[], network: readonly Row[]): boolean {
	return network.every(({ id }, at) => id === plain[at]?.id);
}

function grouped<T extends { readonly id: string }>(rows: readonly T[]): Map<string, T[]> {
	const groups = new Map<string, T[]>();
	for (const row of rows) {
		const group = groups.get(row.id);
		if (group) group.push(row);
		else groups.set(row.id, [row]);
	}
	return groups;
}

/** Changes what is kept of the version on the sheet. */
function withVersion(versions: Versions, change: Partial<Version>): Versions {
	const { looking, base, variants } = versions;
	if (looking === null) return { ...versions, base: { ...base, ...change } };
	return {
		...versions,
		variants: variants.map((each, place) => (place === looking ? { ...each, ...change } : each)),
	};
}

function within(drafts: Drafts, start: string): Drafts {
	return Object.fromEntries(
		Object.entries(drafts).flatMap(([key, text]) =>
			key.startsWith(start) ? [[key.slice(start.length), text]] : [],
		),
	);
}

function isOfNetwork(key: string): boolean {
	return key.startsWith("network.");
}
