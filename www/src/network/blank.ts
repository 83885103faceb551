/** New rows, filled from the catalogue and from what stands beside them. */
import type { Branch, Cylinder, FieldInfo, KindInfo, Loss, Network, Node } from "../solver/types";
import { draft, insert, type Path, put, type Sheet } from "./edit";

type Row = Record<string, unknown>;

/** Changes the kind of a loss and keeps what both kinds have. */
export function changeLoss(sheet: Sheet, list: Path, index: number, info: KindInfo): Sheet {
	const losses = lossesAt(sheet, list);
	const old = losses[index];
	const { row, open } = filled(info, { ...section(losses, index), ...old });
	if (old?.kind === "typedK" || info.kind === "typedK") row.origin = "";
	if (info.kind !== "typedK") delete row.origin;
	return opened(put(sheet, [...list, index], row), [...list, index], open);
}

/** Adds a loss at the end of a branch. */
export function addLoss(sheet: Sheet, list: Path, info: KindInfo): Sheet {
	const losses = lossesAt(sheet, list);
	const { row, open } = filled(info, section(losses, losses.length));
	if (info.kind === "typedK") row.origin = "";
	return opened(insert(sheet, list, losses.length, row), [...list, losses.length], open);
}

/** Adds a node. */
export function addNode(sheet: Sheet, info: KindInfo): Sheet {
	const { nodes } = sheet.study.network;
	const row: Node = { id: freeId(sheet.study.network, "n"), kind: "joint" };
	const list: Path = ["network", "nodes"];
	return changeNode(insert(sheet, list, nodes.length, row), nodes.length, info);
}

/** Changes the kind of a node and keeps what both kinds have. */
export function changeNode(sheet: Sheet, index: number, info: KindInfo): Sheet {
	const old = sheet.study.network.nodes[index] as unknown as Row;
	const { row, open } = filled(info, old);
	const node: Row = { id: old.id, ...row };
	if (info.kind === "tee" || info.kind === "wye") node.law = old.law ?? "bassett2001";
	if (info.kind === "port") node.cylinder = old.cylinder ?? freeCylinder(sheet);
	const path: Path = ["network", "nodes", index];
	return opened(put(sheet, path, node), path, open);
}

/** Adds a branch that goes on from the last one's end, or a copy of one with the same losses. */
export function addBranch(sheet: Sheet, like?: number): Sheet {
	const { branches } = sheet.study.network;
	const id = freeId(sheet.study.network, "b");
	const model = like === undefined ? undefined : branches[like];
	const row: Branch = model ? { ...model, id } : { id, from: "", to: "", losses: [] };
	const at = like === undefined ? branches.length : like + 1;
	return insert(sheet, ["network", "branches"], at, row);
}

/** Adds a cylinder as large as the last one. */
export function addCylinder(sheet: Sheet): Sheet {
	const { cylinders } = sheet.study.engine;
	const ids = new Set(cylinders.map((each) => each.id));
	let number = cylinders.length + 1;
	while (ids.has(String(number))) number += 1;
	const row: Cylinder = { ...cylinders.at(-1), id: String(number) };
	return insert(sheet, ["engine", "cylinders"], cylinders.length, row);
}

/** Gives a row its kind's required fields: known ones, then defaults; the rest stays open. */
function filled(info: KindInfo, known: Row): { row: Row; open: FieldInfo[] } {
	const row: Row = { kind: info.kind };
	const open: FieldInfo[] = [];
	for (const field of info.fields) {
		const value = known[field.name] ?? (field.required ? field.default : undefined);
		if (value != null) row[field.name] = value;
		else if (field.required) {
			row[field.name] = 0;
			open.push(field);
		}
	}
	return { row, open };
}

/** Leaves the cells of fields that have no value empty, for somebody to fill. */
function opened(sheet: Sheet, path: Path, open: readonly FieldInfo[]): Sheet {
	return open.reduce((left, field) => draft(left, [...path, field.name], ""), sheet);
}

/** The sections on both sides of a place among the losses of a branch. */
function section(losses: readonly Loss[], index: number): Row {
	const before = losses[index - 1] as unknown as Row | undefined;
	const after = losses[index + 1] as unknown as Row | undefined;
	const towards = before?.areaTo ?? before?.area;
	const onwards = after?.areaFrom ?? after?.area;
	const area = towards ?? onwards;
	return { area, areaFrom: towards ?? onwards, areaTo: onwards ?? towards };
}

function lossesAt(sheet: Sheet, list: Path): readonly Loss[] {
	return sheet.study.network.branches[list[2] as number]?.losses ?? [];
}

function freeCylinder(sheet: Sheet): string {
	const fed = new Set(
		sheet.study.network.nodes.map((node) => (node.kind === "port" ? node.cylinder : "")),
	);
	return sheet.study.engine.cylinders.find((each) => !fed.has(each.id))?.id ?? "";
}

function freeId({ nodes, branches }: Network, letter: string): string {
	const ids = new Set([...nodes, ...branches].map((each) => each.id));
	let number = 1;
	while (ids.has(`${letter}${number}`)) number += 1;
	return `${letter}${number}`;
}
