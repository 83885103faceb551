/**
 * What the tables hold: lines of cells, from the study and the catalogue. The views show these cells in
 * this order; moving, selecting, copying, pasting and filling work on the lines alone.
 */
import { keyOf, type Path, type Sheet, valueAt } from "../network/edit";
import { sourceShows } from "../network/source";
import type { Branch, Catalogue, FieldInfo, KindInfo, Node, Study } from "../solver/types";
import type { UnitChoice } from "../units";
import { openedKey, shownFields, shownLossFields } from "./also";

export type TableName = "branches" | "nodes" | "cylinders";

/** What the lines of a sheet are made from. */
export interface Book {
	readonly catalogue: Catalogue;
	readonly units: UnitChoice;
}

/** The lists that a choice is made from. */
export type ChoiceOf =
	| "loss"
	| "node"
	| "junctionLaw"
	| "leg"
	| "cylinder"
	| "cooler"
	| "sourceWay";

/** One field of one line. */
export type Cell = {
	/** Where its value stands in the study. */
	readonly path: Path;
	/** The name of its column, the same in all lines that have the field. */
	readonly column: string;
} & (
	| { readonly holds: "number"; readonly info: FieldInfo }
	/** A name, unique in its list, that others refer to. */
	| { readonly holds: "name" }
	/** `bare` is what clearing leaves: an empty text, or no field at all. */
	| { readonly holds: "text"; readonly bare: "" | undefined }
	| { readonly holds: "choice"; readonly of: ChoiceOf; readonly bare?: "" | "absent" }
	/** The stations and bends of a section schedule. */
	| { readonly holds: "schedule" }
);

/** One line of a table: a branch without its losses, one loss, a node or a cylinder. */
export interface Line {
	readonly what: "branch" | "loss" | "node" | "cylinder";
	/** The list in the study that it stands in, and its place there. */
	readonly list: Path;
	readonly index: number;
	/** The kind of a loss or a node. */
	readonly kind: string;
	readonly cells: readonly Cell[];
}

export const BRANCHES: Path = ["network", "branches"];
export const NODES: Path = ["network", "nodes"];
export const CYLINDERS: Path = ["engine", "cylinders"];

/** The lists of the tables. */
export const LISTS: Readonly<Record<TableName, Path>> = {
	branches: BRANCHES,
	nodes: NODES,
	cylinders: CYLINDERS,
};

/** The lines of a table, in this order of its rows; of a branch, those fields that are in sight. */
export function lines(
	table: TableName,
	{ study, drafts }: Sheet,
	catalogue: Catalogue,
	order?: readonly number[] | null,
	opened: ReadonlySet<string> = NONE,
): Line[] {
	const rows = valueAt(study, LISTS[table]) as readonly unknown[];
	const legs = table === "branches" ? nodesWithLegs(study.network.nodes) : NONE;
	const plenums = table === "branches" ? plenumsOf(study.network.nodes) : NONE;
	return (order ?? [...rows.keys()]).flatMap((index) => {
		if (rows[index] === undefined) return [];
		if (table === "nodes") return [nodeLine(rows[index] as Node, index, catalogue)];
		if (table === "cylinders") return [cylinderLine(index, catalogue)];
		const branch = rows[index] as Branch;
		const sight = { jets: plenums.has(branch.from), drafts, opened };
		return [
			branchLine(branch, index, shownFields(branch, index, catalogue.branch, sight), legs),
			...branch.losses.map((loss, place) => {
				const line = lossLine(index, place, loss.kind, catalogue);
				const open = opened.has(openedKey(branch.id, "losses"));
				const fields = fieldsOf(catalogue.losses, loss.kind);
				const path = [...line.list, place];
				const shown = new Set(shownLossFields(loss, path, fields, drafts, open));
				const cells = line.cells.filter((each) => each.holds !== "number" || shown.has(each.info));
				return { ...line, cells };
			}),
		];
	});
}

/** The ids of nodes that have a run and side legs. */
export function nodesWithLegs(nodes: readonly Node[]): ReadonlySet<string> {
	return new Set(
		nodes
			.filter(({ kind }) => kind === "header" || kind === "tee" || kind === "wye")
			.map(({ id }) => id),
	);
}

/** The ids of nodes in which a jet can be felt. */
export function plenumsOf(nodes: readonly Node[]): ReadonlySet<string> {
	return new Set(nodes.filter(({ kind }) => kind === "plenum").map(({ id }) => id));
}

/** One line anew, after an edit has changed what it holds; a branch's with its legs and all its fields. */
export function lineAt({ what, list, index }: Line, study: Study, catalogue: Catalogue): Line {
	switch (what) {
		case "branch":
			return branchLine(study.network.branches[index] as Branch, index, catalogue.branch, EVERY);
		case "loss": {
			const branch = list[2] as number;
			const kind = study.network.branches[branch]?.losses[index]?.kind ?? "";
			return lossLine(branch, index, kind, catalogue);
		}
		case "node":
			return nodeLine(study.network.nodes[index] as Node, index, catalogue);
		case "cylinder":
			return cylinderLine(index, catalogue);
	}
}

/** The columns of a line; a branch's are those of all branches, so that what only some show shifts nothing. */
export function columnsOf(line: Line, all: readonly Line[], { catalogue }: Book): string[] {
	if (line.what !== "branch") return line.cells.map(({ column }) => column);
	const shown = new Set(
		all
			.filter(({ what }) => what === "branch")
			.flatMap(({ cells }) => cells.map((cell) => cell.column)),
	);
	const fields = catalogue.branch.map(({ name }) => name);
	return ["id", "from", "fromLeg", "to", "toLeg", ...fields].filter((each) => shown.has(each));
}

/** The line and the cell that stand at a path. */
export function findCell(
	all: readonly Line[],
	key: string,
): { readonly at: number; readonly line: Line; readonly cell: Cell } | null {
	for (const [at, line] of all.entries()) {
		const cell = line.cells.find(({ path }) => keyOf(path) === key);
		if (cell) return { at, line, cell };
	}
	return null;
}

function branchLine(
	branch: Branch,
	index: number,
	fields: readonly FieldInfo[],
	legs: Pick<ReadonlySet<string>, "has">,
): Line {
	const end = (name: "from" | "to"): Cell[] => {
		const leg = name === "from" ? "fromLeg" : "toLeg";
		const shown = legs.has(branch[name]) || branch[leg];
		const node: Cell = { path: [...item, name], column: name, holds: "text", bare: "" };
		const choice: Cell = {
			path: [...item, leg],
			column: leg,
			holds: "choice",
			of: "leg",
			bare: "absent",
		};
		return shown ? [node, choice] : [node];
	};
	const item: Path = [...BRANCHES, index];
	const cells = [
		nameCell(item),
		...end("from"),
		...end("to"),
		...fields.map((info) => numberCell(item, info)),
	];
	return { what: "branch", list: BRANCHES, index, kind: "", cells };
}

function lossLine(branch: number, index: number, kind: string, catalogue: Catalogue): Line {
	const list: Path = [...BRANCHES, branch, "losses"];
	const item: Path = [...list, index];
	const cells: Cell[] = [
		{ path: [...item, "kind"], column: "kind", holds: "choice", of: "loss" },
		...fieldsOf(catalogue.losses, kind).map((info) => numberCell(item, info)),
	];
	if (kind === "typedK") {
		cells.push({ path: [...item, "origin"], column: "origin", holds: "text", bare: "" });
	}
	if (kind === "schedule") {
		cells.push({ path: [...item, "stations"], column: "stations", holds: "schedule" });
	}
	if (kind === "core") {
		const path: Path = [...item, "cooler"];
		cells.push({ path, column: "cooler", holds: "choice", of: "cooler", bare: "absent" });
	}
	return { what: "loss", list, index, kind, cells };
}

function nodeLine(node: Node, index: number, catalogue: Catalogue): Line {
	const item: Path = [...NODES, index];
	const fields = fieldsOf(catalogue.nodes, node.kind);
	const cells: Cell[] = [
		nameCell(item),
		{ path: [...item, "kind"], column: "kind", holds: "choice", of: "node" },
	];
	// What every port has stands before what is seldom typed.
	if (node.kind === "port") {
		const path: Path = [...item, "cylinder"];
		cells.push({ path, column: "cylinder", holds: "choice", of: "cylinder", bare: "" });
	}
	if (node.kind === "source") {
		// The way is no field of the study: it is told by the fields that stand there.
		cells.push({ path: [...item, "way"], column: "way", holds: "choice", of: "sourceWay" });
		const shown = fields.filter(({ name }) => sourceShows(node, name));
		cells.push(...shown.map((info) => numberCell(item, info)));
		if (sourceShows(node, "boostNode")) {
			const path: Path = [...item, "boostNode"];
			cells.push({ path, column: "boostNode", holds: "text", bare: "" });
		}
	} else {
		cells.push(...fields.map((info) => numberCell(item, info)));
	}
	if (node.kind === "tee" || node.kind === "wye") {
		cells.push({ path: [...item, "law"], column: "law", holds: "choice", of: "junctionLaw" });
	}
	if (node.kind === "port" && node.valve) {
		const valve: Path = [...item, "valve"];
		cells.push(
			...catalogue.valve.map((info) => ({
				...numberCell(valve, info),
				column: `valve.${info.name}`,
			})),
		);
	}
	return { what: "node", list: NODES, index, kind: node.kind, cells };
}

function cylinderLine(index: number, catalogue: Catalogue): Line {
	const item: Path = [...CYLINDERS, index];
	const cells: Cell[] = [
		nameCell(item),
		...catalogue.cylinder.map((info) => numberCell(item, info)),
		{ path: [...item, "bank"], column: "bank", holds: "text", bare: undefined },
	];
	return { what: "cylinder", list: CYLINDERS, index, kind: "", cells };
}

function nameCell(item: Path): Cell {
	return { path: [...item, "id"], column: "id", holds: "name" };
}

function numberCell(item: Path, info: FieldInfo): Cell {
	return { path: [...item, info.name], column: info.name, holds: "number", info };
}

function fieldsOf(kinds: readonly KindInfo[], kind: string): readonly FieldInfo[] {
	return kinds.find((each) => each.kind === kind)?.fields ?? [];
}

const NONE: ReadonlySet<string> = new Set();
const EVERY = { has: () => true };
