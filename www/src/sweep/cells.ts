/**
 * Which cells are swept. A cell is remembered by its row's name and its way within the row, so that it is
 * found again when rows have been put in, taken out or moved.
 */
import { keyOf, type Path, valueAt } from "../network/edit";
import type { FieldInfo, Study } from "../solver/types";

/** One numeric cell. */
export interface Swept {
	/** The list that its row stands in; empty when it stands in no row. */
	readonly list: Path;
	/** The row's name; empty without a row. */
	readonly row: string;
	/** The way within the row, or within the study. */
	readonly way: Path;
	/** The kind of its loss or node, which must still be there. */
	readonly kind: string;
	readonly info: FieldInfo;
}

const LISTS: readonly Path[] = [
	["network", "branches"],
	["network", "nodes"],
	["engine", "cylinders"],
	["coolers"],
];

/** The cell that stands at a path. */
export function sweptAt(study: Study, path: Path, info: FieldInfo): Swept {
	const list = LISTS.find((each) => each.every((key, at) => key === path[at])) ?? [];
	if (list.length === 0) return { list, row: "", way: path, kind: "", info };
	const way = path.slice(list.length + 1);
	const row = rowsOf(study, list)[path[list.length] as number];
	return { list, row: row?.id ?? "", way, kind: row ? kindOf(row, way) : "", info };
}

/** Where a cell stands now; null when it is no longer there. */
export function pathOf(study: Study, { list, row, way, kind }: Swept): Path | null {
	if (list.length === 0) return way;
	const index = rowsOf(study, list).findIndex(({ id }) => id === row);
	const found = rowsOf(study, list)[index];
	return found && kindOf(found, way) === kind ? [...list, index, ...way] : null;
}

/** What stands in a cell, or what is taken when nothing does; undefined when nothing is known. */
export function valueNow(study: Study, cell: Swept): number | undefined {
	const path = pathOf(study, cell);
	const value = path && valueAt(study, path);
	return typeof value === "number" ? value : (cell.info.default ?? undefined);
}

/** All cells of the same field in rows of the same sort, in the study's order, these among them. */
export function likeCells(study: Study, cells: readonly Swept[]): Swept[] {
	const found = new Map<string, Swept>();
	for (const cell of cells) {
		const own = pathOf(study, cell);
		if (own && found.has(keyOf(own))) continue;
		for (const row of rowsOf(study, cell.list)) {
			for (const way of likeWays(row, cell)) {
				const { list, kind, info } = cell;
				const like = { list, row: row.id, way, kind, info };
				const path = pathOf(study, like);
				if (path) found.set(keyOf(path), like);
			}
		}
		if (own) found.set(keyOf(own), cell);
	}
	const numbers = new Intl.Collator("en", { numeric: true });
	return [...found].sort(([one], [other]) => numbers.compare(one, other)).map(([, cell]) => cell);
}

/** A name by which a cell is known among those of a study. */
export function nameOf({ list, row, way }: Swept): string {
	return JSON.stringify([list, row, way]);
}

/** What a cell is called: its row, its place among the row's losses, its field. */
export function labelOf({ row, way, info }: Swept): string {
	const loss = way[0] === "losses" ? `loss ${(way[1] as number) + 1}` : "";
	return [row, loss, info.label].filter(Boolean).join(", ");
}

/** What several cells are called together: the words that all rows begin with, then the field. */
export function togetherOf(cells: readonly Swept[]): string {
	const labels = [...new Set(cells.map(({ info }) => info.label))];
	const rows = [...new Set(cells.map(({ row }) => row))];
	const [first = [], ...others] = rows.map((row) => row.split(" "));
	const differs = first.findIndex((word, at) => others.some((other) => other[at] !== word));
	const shared = (differs < 0 ? first : first.slice(0, differs)).join(" ");
	const label = labels.join(" and ");
	if (shared !== "") return `${shared} ${label}`;
	return cells.length > 1 ? `${label} of ${cells.length} cells` : label;
}

/** Whether all of them belong to the manifold, which is what versions differ in. */
export function areOfNetwork(cells: readonly Swept[]): boolean {
	return cells.every(({ list, way }) => (list[0] ?? way[0]) === "network");
}

interface Row {
	readonly id: string;
	readonly kind?: string;
	readonly losses?: readonly { readonly kind: string }[];
}

function rowsOf(study: Study, list: Path): readonly Row[] {
	return (list.length > 0 ? (valueAt(study, list) as readonly Row[] | undefined) : []) ?? [];
}

/** The kind that tells which fields there are at a way within a row. */
function kindOf(row: Row, way: Path): string {
	return way[0] === "losses"
		? (row.losses?.[way[1] as number]?.kind ?? "")
		: `${row.kind ?? ""} ${way.length > 1 && typeof row[way[0] as keyof Row] === "object" ? way[0] : ""}`;
}

/** The ways in a row to the same field as a cell's: of a loss, in all losses of its kind. */
function likeWays(row: Row, { way, kind }: Swept): Path[] {
	if (way[0] !== "losses") return kindOf(row, way) === kind ? [way] : [];
	return (row.losses ?? []).flatMap((loss, at) =>
		loss.kind === kind ? [["losses", at, ...way.slice(2)]] : [],
	);
}
