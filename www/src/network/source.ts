/** A source's pressure is given in one way: typed, found for a boost, or that of the ambient air. */
import type { Node } from "../solver/types";
import { type Path, put, type Sheet } from "./edit";
import { boostPlace } from "./place";

export type SourceWay = "typed" | "boost" | "ambient";
export type Source = Extract<Node, { kind: "source" }>;

/** The fields that belong to each way; all others are of the other ways. */
const FIELDS: Readonly<Record<SourceWay, readonly (keyof Source)[]>> = {
	typed: ["pressure", "temperature"],
	boost: ["boost", "boostNode", "temperature"],
	ambient: ["temperature"],
};

/** The way in which a source's pressure is given. */
export function sourceWay(source: Source): SourceWay {
	if (source.ambient) return "ambient";
	return source.boost !== undefined || source.boostNode !== undefined ? "boost" : "typed";
}

/** Whether a source shows a field: its way needs it, or it holds what should not be there. */
export function sourceShows(source: Source, field: string): boolean {
	const own = field as keyof Source;
	return FIELDS[sourceWay(source)].includes(own) || source[own] !== undefined;
}

/** Gives a source's pressure in another way; what belongs to the ways before goes, until an undo. */
export function changeSource(sheet: Sheet, index: number, way: SourceWay): Sheet {
	const path: Path = ["network", "nodes", index];
	const source = sheet.study.network.nodes[index];
	// Text that named no way has been answered by this choice.
	let now = put(sheet, [...path, "way"], undefined);
	if (source?.kind !== "source" || sourceWay(source) === way) return now;
	// Ambient air has a temperature of its own.
	const kept: readonly string[] = way === "ambient" ? [] : FIELDS[way];
	for (const field of ["pressure", "temperature", "boost", "boostNode", "ambient"]) {
		if (!kept.includes(field)) now = put(now, [...path, field], undefined);
	}
	if (way === "ambient") return put(now, [...path, "ambient"], true);
	if (way === "typed") return now;
	const { node, boost } = boostPlace(sheet.study);
	now = put(now, [...path, "boostNode"], node);
	return boost === undefined ? now : put(now, [...path, "boost"], boost);
}
