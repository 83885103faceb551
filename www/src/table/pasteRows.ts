/** New rows from the rows of a block: branches with their losses, losses, nodes or cylinders. */
import { addBranch, addCylinder, addLoss, addNode } from "../network/blank";
import { draft, type Path, put } from "../network/edit";
import { named } from "./cellText";
import { rowColumns } from "./copy";
import { BRANCHES, type Line } from "./grid";
import type { Pasting } from "./pasting";
import type { RowEdit } from "./rows";

type Place = Omit<RowEdit, "sheet">;
type Row = readonly string[];

/** Makes new rows of a list from `at` on; null when there was nothing to make a row of. */
export function pasteRows(
	pasting: Pasting,
	what: Line["what"],
	list: Path,
	at: number,
	block: readonly Row[],
): Place | null {
	const rows = block.filter((row) => row.some((text) => text.trim() !== ""));
	if (what === "branch") return branches(pasting, at, rows);
	let place = at;
	for (const row of rows) {
		if (what === "loss") loss(pasting, list, place, row[0]?.trim() ? row : row.slice(1));
		else if (what === "node") node(pasting, list, place, row);
		else cylinder(pasting, list, place, row);
		place += 1;
	}
	return place === at ? null : { list, from: at, to: place - 1 };
}

/**
 * Rows that begin with an empty cell, or with a kind of loss and a number, are losses of the branch before
 * them.
 */
function branches(pasting: Pasting, at: number, rows: readonly Row[]): Place | null {
	let place = at - 1;
	for (const row of rows) {
		const bare = isKind(pasting, row[0]) && /^\s*(?:\d|$)/.test(row[1] ?? "");
		if (row[0]?.trim() && !bare) {
			place += 1;
			branch(pasting, place, row);
		} else if (place >= 0) {
			lossAtEnd(pasting, place, bare ? row : row.slice(1));
		} else {
			pasting.refuse(row);
		}
	}
	return place < at ? null : { list: BRANCHES, from: at, to: place };
}

/** A branch may bring its losses along in its own row, each of them a kind and its fields. */
function branch(pasting: Pasting, place: number, row: Row) {
	const starts = row.flatMap((text, column) =>
		column > 2 && isKind(pasting, text) ? [column] : [],
	);
	pasting.sheet = addBranch(pasting.sheet, place, row[0]?.trim());
	const line = pasting.again({ what: "branch", list: BRANCHES, index: place, kind: "", cells: [] });
	const cells = rowColumns(line, pasting.book).flatMap(
		(column) => line.cells.find((cell) => cell.column === column) ?? [],
	);
	pasting.writeAll(line, cells, row.slice(0, starts[0]));
	for (const [nth, start] of starts.entries()) {
		lossAtEnd(pasting, place, row.slice(start, starts[nth + 1]));
	}
}

function isKind({ sheet, book }: Pasting, text: string | undefined): boolean {
	return !!text && named("loss", text, sheet.study, book) !== undefined;
}

function lossAtEnd(pasting: Pasting, branch: number, row: Row) {
	const end = pasting.sheet.study.network.branches[branch]?.losses.length ?? 0;
	loss(pasting, [...BRANCHES, branch, "losses"], end, row);
}

/**
 * A kind that is not known becomes a loss that costs nothing, with the whole text as its origin: the
 * text stays to be read, and its kind waits to be chosen.
 */
function loss(pasting: Pasting, list: Path, place: number, row: Row) {
	const { sheet, book } = pasting;
	const kind = named("loss", row[0] ?? "", sheet.study, book);
	const info = book.catalogue.losses.find((each) => each.kind === (kind ?? "typedK"));
	if (!info) return pasting.refuse(row);
	pasting.sheet = addLoss(sheet, list, info, place);
	const item: Path = [...list, place];
	if (kind === undefined) {
		const text = row.filter((each) => each.trim() !== "").join(" ");
		const costless = put(put(pasting.sheet, [...item, "k"], 0), [...item, "origin"], text);
		pasting.sheet = draft(costless, [...item, "kind"], row[0] ?? "");
		return;
	}
	const line = pasting.again({ what: "loss", list, index: place, kind, cells: [] });
	pasting.writeAll(line, line.cells.slice(1), trimEnd(row.slice(1)));
}

function node(pasting: Pasting, list: Path, place: number, row: Row) {
	const joint = pasting.book.catalogue.nodes.find(({ kind }) => kind === "joint");
	if (!joint) return pasting.refuse(row);
	pasting.sheet = addNode(pasting.sheet, joint, place, row[0]?.trim() || undefined);
	const blank: Line = { what: "node", list, index: place, kind: "joint", cells: [] };
	const line = pasting.again(blank);
	const [name, kind] = line.cells;
	if (name) pasting.write(line, name, row[0] ?? "");
	if (kind) pasting.write(line, kind, row[1] ?? "");
	const rest = trimEnd(row.slice(2));
	const known = pasting.again(blank);
	// More than a port has without a valve is of its valve.
	if (known.kind === "port" && rest.length > known.cells.length - 2) {
		pasting.sheet = put(pasting.sheet, [...list, place, "valve"], {});
	}
	if (known.kind === "source") return source(pasting, blank, rest);
	const full = pasting.again(blank);
	pasting.writeAll(full, full.cells.slice(2), rest);
}

/** How its pressure is given may be left out: then the first number is the pressure itself. */
function source(pasting: Pasting, blank: Line, texts: Row) {
	const way = pasting.again(blank).cells[2];
	const { sheet, book } = pasting;
	const isWay = named("sourceWay", texts[0] ?? "", sheet.study, book) !== undefined;
	if (isWay && way) pasting.write(pasting.again(blank), way, texts[0] ?? "");
	pasting.writeAll(
		pasting.again(blank),
		pasting.again(blank).cells.slice(3),
		isWay ? texts.slice(1) : texts,
	);
}

function cylinder(pasting: Pasting, list: Path, place: number, row: Row) {
	pasting.sheet = addCylinder(pasting.sheet, place);
	const line = pasting.again({ what: "cylinder", list, index: place, kind: "", cells: [] });
	pasting.writeAll(line, line.cells, trimEnd(row));
}

function trimEnd(row: Row): Row {
	return row.slice(0, row.findLastIndex((text) => text.trim() !== "") + 1);
}
