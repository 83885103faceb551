/** New rows, filled from the catalogue and from what stands beside them. */
import type { Branch, Cylinder, FieldInfo, KindInfo, Loss, Node, Station } from "../solver/types";
import { draft, insert, type Path, put, type Sheet } from "./edit";
import { withPassages } from "./passages";
import { takenIds } from "./versions";

type Row = Record<string, unknown>;

/** Changes the kind of a loss and keeps what both kinds have. */
export function changeLoss(sheet: Sheet, list: Path, index: number, info: KindInfo): Sheet {
	const losses = lossesAt(sheet, list);
	const old = losses[index];
	const known = { ...section(losses, index), ...(old?.kind === "schedule" ? ends(old) : old) };
	const { row, open } = filled(info, known);
	if (old?.kind === "typedK" || info.kind === "typedK") row.origin = "";
	if (info.kind !== "typedK") delete row.origin;
	if (info.kind === "schedule") return scheduled(sheet, [...list, index], row, known, old);
	return withPassages(opened(put(sheet, [...list, index], row), [...list, index], open));
}

/** Adds a loss to a branch, at its end unless another place is given. */
export function addLoss(
	sheet: Sheet,
	list: Path,
	info: KindInfo,
	at = lossesAt(sheet, list).length,
): Sheet {
	const known = section(lossesAt(sheet, list), at, at);
	const { row, open } = filled(info, known);
	if (info.kind === "typedK") row.origin = "";
	if (info.kind === "schedule") {
		return scheduled(insert(sheet, list, at, row), [...list, at], row, known);
	}
	return opened(insert(sheet, list, at, row), [...list, at], open);
}

/** Adds a node, at the end unless another place is given. */
export function addNode(
	sheet: Sheet,
	info: KindInfo,
	at = sheet.study.network.nodes.length,
	id = freeId(sheet, "n"),
): Sheet {
	const row: Node = { id, kind: "joint" };
	return changeNode(insert(sheet, ["network", "nodes"], at, row), at, info);
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

/** Adds a branch without ends and losses, at the end unless another place is given. */
export function addBranch(
	sheet: Sheet,
	at = sheet.study.network.branches.length,
	id = freeId(sheet, "b"),
): Sheet {
	const row: Branch = { id, from: "", to: "", losses: [] };
	return insert(sheet, ["network", "branches"], at, row);
}

/** Adds a cylinder as large as the one before it, at the end unless another place is given. */
export function addCylinder(sheet: Sheet, at = sheet.study.engine.cylinders.length): Sheet {
	const { cylinders } = sheet.study.engine;
	const id = freeName(new Set(cylinders.map((each) => each.id)), String(cylinders.length));
	const row: Cylinder = { ...cylinders[at - 1], id };
	return insert(sheet, ["engine", "cylinders"], at, row);
}

/** A name that is not taken: the same with the next free number at its end. */
function freeName(taken: ReadonlySet<string>, like: string): string {
	// Of more digits no next number could be told.
	const digits = /\d{1,15}$/.exec(like)?.[0];
	const stem = digits ? like.slice(0, -digits.length) : like;
	const start = digits ? stem : `${stem.trimEnd()} `;
	let number = Number(digits || 1) + 1;
	while (taken.has(`${start}${number}`)) number += 1;
	return `${start}${number}`;
}

/** The name itself while it is not taken, else one like it. */
export function unusedName(taken: ReadonlySet<string>, name: string): string {
	return taken.has(name) ? freeName(taken, name) : name;
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

/** The sections on both sides of a loss, or of a place between two losses: `next` stands behind it. */
function section(losses: readonly Loss[], index: number, next = index + 1): Row {
	const before = losses[index - 1] as unknown as Row | undefined;
	const after = losses[next] as unknown as Row | undefined;
	const towards = before && (before.areaTo ?? before.area ?? ends(before).areaTo);
	const onwards = after && (after.areaFrom ?? after.area ?? ends(after).areaFrom);
	const area = towards ?? onwards;
	return { area, areaFrom: towards ?? onwards, areaTo: onwards ?? towards };
}

/** The sections at the ends of a section schedule; nothing of any other loss. */
function ends({ stations }: Row): Row {
	if (!Array.isArray(stations)) return {};
	const areas = (stations as readonly Station[]).map(({ area }) => area);
	return { area: areas[0], areaFrom: areas[0], areaTo: areas.at(-1) };
}

/** The length of a new section schedule beside which there is none [m]. */
const LENGTH = 0.1;

/** A section schedule starts as the duct or cone that stood there, or with the section beside it. */
function scheduled(sheet: Sheet, path: Path, row: Row, known: Row, old?: Row): Sheet {
	const from = old?.areaFrom ?? old?.area ?? known.area;
	const to = old?.areaTo ?? old?.area ?? known.area;
	const stations = [
		{ at: 0, area: from ?? 0 },
		{ at: old?.length || LENGTH, area: to ?? 0 },
	];
	const now = withPassages(put(sheet, path, { ...row, stations }));
	const open = from === undefined || to === undefined ? [0, 1] : [];
	return open.reduce((left, place) => draft(left, [...path, "stations", place, "area"], ""), now);
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

function freeId(sheet: Sheet, letter: string): string {
	const ids = takenIds(sheet);
	let number = 1;
	while (ids.has(`${letter}${number}`)) number += 1;
	return `${letter}${number}`;
}
