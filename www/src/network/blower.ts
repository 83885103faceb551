/** Edits of blowers: put in, driven in another way, taken out. */
import type { Blower, Branch, KindInfo, Loss, Node, Study } from "../solver/types";
import { addLoss, unusedName } from "./blank";
import { insert, type Path, put, type Sheet } from "./edit";
import { boostPlace } from "./place";
import { takenIds } from "./versions";

export type DriveWay = "ratio" | "pulleys" | "boost";

/** A boost that a blower is to be driven for. */
type Asked = Pick<Blower, "boost" | "boostNode">;

/** The fields that belong to each way of driving a blower. */
const FIELDS: Readonly<Record<DriveWay, readonly (keyof Blower)[]>> = {
	ratio: ["driveRatio"],
	pulleys: ["crankPulley", "blowerPulley", "greatestRimSpeed"],
	boost: ["boost", "boostNode"],
};

/** Fields that belong to some way of driving and to none other. */
export const DRIVE_FIELDS: ReadonlySet<string> = new Set(Object.values(FIELDS).flat());

/** A usual crankshaft pulley, to start from [m]. */
const CRANK_PULLEY = 0.15;
/** Typical figures of a new blower, which its own are to replace. */
const TYPICAL = { driveRatio: 2, volumetricEfficiency: 0.9, isentropicEfficiency: 0.6 } as const;
/** A mild boost, which a blower of any displacement is driven for: a typical drive ratio fits few engines [Pa]. */
const TYPICAL_BOOST = 50_000;

/** A sheet after a blower was put in, and the place of its branch. */
export interface Placed {
	readonly sheet: Sheet;
	readonly index: number;
}

/** The way in which a blower is driven. */
export function driveWay(blower: Blower): DriveWay {
	if (blower.boost !== undefined || blower.boostNode !== undefined) return "boost";
	const pulleys = blower.crankPulley !== undefined || blower.blowerPulley !== undefined;
	return pulleys ? "pulleys" : "ratio";
}

/** Whether a blower shows a field: its way needs it, or it holds what should not be there. */
export function driveShows(blower: Blower, field: string): boolean {
	const own = field as keyof Blower;
	return FIELDS[driveWay(blower)].includes(own) || blower[own] !== undefined;
}

/** Drives a blower in another way, at the drive ratio that it has or that was found for it. */
export function changeDrive(sheet: Sheet, index: number, way: DriveWay, found?: number): Sheet {
	const path = blowerAt(index);
	const { blower } = sheet.study.network.branches[index] ?? {};
	if (!blower || driveWay(blower) === way) return sheet;
	const { crankPulley, blowerPulley } = blower;
	const ratio =
		crankPulley && blowerPulley ? crankPulley / blowerPulley : (blower.driveRatio ?? found);
	let now = sheet;
	for (const field of DRIVE_FIELDS) {
		if (field !== "greatestRimSpeed") now = put(now, [...path, field], undefined);
	}
	switch (way) {
		case "ratio":
			return put(now, [...path, "driveRatio"], ratio && short(ratio));
		case "pulleys":
			now = put(now, [...path, "crankPulley"], CRANK_PULLEY);
			return put(
				now,
				[...path, "blowerPulley"],
				short(CRANK_PULLEY / (ratio ?? TYPICAL.driveRatio)),
			);
		case "boost":
			return put(now, [...path, "boostNode"], boostPlace(sheet.study).node);
	}
}

/**
 * Feeds what a source feeds by a blower instead. The source becomes the ambient air, and a boost that was
 * asked of it is asked of the blower; what its branch costs
 * is lost before the blower, where one branch leads into a chamber. Otherwise the branches as they are
 * begin behind the blower, and a new one in which nothing is lost yet leads to it.
 */
export function feedByBlower(sheet: Sheet, source: number, info: KindInfo): Placed {
	const { study } = sheet;
	const { nodes, branches } = study.network;
	const { id } = nodes[source] as Node;
	const inlet = unused(sheet, "blower inlet");
	const fed = branches.flatMap((branch, place) =>
		branch.from === id || branch.to === id ? [place] : [],
	);
	const only = fed.length === 1 ? fed[0] : undefined;
	const first = only === undefined ? undefined : branches[only];
	const far = first && (first.from === id ? first.to : first.from);
	const chamber = nodes.some(
		(node) => node.id === far && (node.kind === "plenum" || node.kind === "joint"),
	);
	const outlet = chamber && far ? far : unused(sheet, "blower outlet");
	const blower: Branch = {
		id: unused(sheet, "blower"),
		from: inlet,
		to: outlet,
		losses: [],
		blower: newBlower(info, askedAlone(study, source) ?? mildBoost(study, outlet)),
	};
	// The end that stays at the source, or that leaves it.
	const turned = (branch: Branch, from: string, to: string): Branch =>
		branch.from === from ? { ...branch, from: to } : { ...branch, to };
	let now: Sheet;
	let index: number;
	if (chamber && first && far && only !== undefined) {
		now = put(sheet, [...BRANCHES, only], turned(first, far, inlet));
		index = only + 1;
		now = insert(now, BRANCHES, index, blower);
	} else {
		now = fed.reduce(
			(left, place) =>
				put(left, [...BRANCHES, place], turned(branches[place] as Branch, id, outlet)),
			sheet,
		);
		const area = branches[fed[0] ?? -1]?.losses.map(areaOf).find((each) => each !== undefined);
		const origin = "nothing is lost before the blower until it is typed here";
		const free: Loss = { kind: "typedK", k: 0, area: area ?? 0.005, origin };
		const way = { id: unused(sheet, "inlet"), from: id, to: inlet, losses: [free] };
		now = insert(now, BRANCHES, 0, way);
		now = insert(now, BRANCHES, 1, blower);
		index = 1;
	}
	now = put(now, ["network", "nodes", source], { id, kind: "source", ambient: true });
	now = insert(now, ["network", "nodes"], source + 1, { id: inlet, kind: "plenum" });
	if (!chamber) now = insert(now, ["network", "nodes"], source + 2, { id: outlet, kind: "plenum" });
	const { reference } = study.engine;
	const before = reference.at === "ambient" || (reference.at === "node" && reference.node === id);
	if (before) now = put(now, ["engine", "reference"], { at: "node", node: outlet });
	return { sheet: now, index };
}

/** Adds a branch with a blower, whose ends wait to be named. */
export function addBlower(sheet: Sheet, info: KindInfo): Placed {
	const index = sheet.study.network.branches.length;
	const id = unused(sheet, "blower");
	const branch: Branch = { id, from: "", to: "", losses: [], blower: newBlower(info) };
	return { sheet: insert(sheet, BRANCHES, index, branch), index };
}

/** Takes a blower out of its branch, which is an open way with a loss from then on. */
export function removeBlower(sheet: Sheet, index: number, loss: KindInfo): Sheet {
	let now = put(sheet, blowerAt(index), undefined);
	if (now.study.network.branches[index]?.losses.length === 0) {
		now = addLoss(now, [...BRANCHES, index, "losses"], loss);
	}
	if (now.study.network.branches.some(({ blower }) => blower)) return now;
	// Without a blower there is nothing to lead round.
	return now.study.network.branches.reduce(
		(left, { bypass }, place) =>
			bypass ? put(left, [...BRANCHES, place, "bypass"], undefined) : left,
		now,
	);
}

const BRANCHES: Path = ["network", "branches"];

function blowerAt(index: number): Path {
	return [...BRANCHES, index, "blower"];
}

/** A typical blower, driven for a boost where one is asked. */
function newBlower(info: KindInfo, asked: Asked = {}): Blower {
	const displacement = info.fields.find(({ name }) => name === "displacement")?.default ?? 0;
	const { driveRatio, ...efficiencies } = TYPICAL;
	return asked.boostNode
		? { displacement, ...asked, ...efficiencies }
		: { displacement, driveRatio, ...efficiencies };
}

/** The boost that a source asks for, unless another one asks for it too. */
function askedAlone({ network }: Study, source: number): Asked | undefined {
	const node = network.nodes[source];
	if (node?.kind !== "source" || node.boost === undefined || !node.boostNode) return undefined;
	const { boost, boostNode } = node;
	const asking = network.nodes.filter(
		(each) => each.kind === "source" && each.boostNode === boostNode,
	);
	return asking.length === 1 ? { boost, boostNode } : undefined;
}

/** A mild boost where the engine's breathing refers to, else behind the blower; none where none can be read. */
function mildBoost({ network, engine }: Study, outlet: string): Asked {
	const { reference } = engine;
	const read = (id: string) =>
		network.nodes.some(
			(node) =>
				node.id === id &&
				(node.kind === "plenum" ||
					node.kind === "header" ||
					node.kind === "tee" ||
					node.kind === "wye"),
		);
	// The outlet may be a plenum that is only now put in.
	const known = network.nodes.some(({ id }) => id === outlet);
	const places = [reference.at === "node" ? reference.node : outlet, outlet];
	const boostNode = places.find((id) => read(id) || (id === outlet && !known));
	return boostNode ? { boost: TYPICAL_BOOST, boostNode } : {};
}

function unused(sheet: Sheet, name: string): string {
	return unusedName(takenIds(sheet), name);
}

function areaOf(loss: Loss): number | undefined {
	return "area" in loss ? loss.area : undefined;
}

function short(value: number): number {
	return Number(value.toPrecision(4));
}
