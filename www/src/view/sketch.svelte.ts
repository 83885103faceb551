/** The drawing of the network on the sheet: placed anew only when who is joined to whom changes. */
import { untrack } from "svelte";
import { drawn } from "../sketch/around";
import type { Drawing } from "../sketch/drawing";
import { placed } from "../sketch/place";
import { type Structure, structureOf } from "../sketch/structure";
import type { Study } from "../solver/types";

/** Which drawing is shown. */
export type Kind = "engine" | "layers";

type Layered = typeof import("../sketch/layered").layered;

let wanted = $state<Kind>("engine");
let width = $state(430);
let times = $state(1);
let layered = $state.raw<Layered | null>(null);
let failure = $state("");

/** It stands by itself, so that an edit that joins nothing to anything else is no news to the drawing. */
let structure = $state.raw<Structure>();
const placing = $derived(structure ? placed(structure) : null);
const kind = $derived<Kind>(placing?.plan ? wanted : "layers");
const drawing = $derived(drawnIn(width, times));

function drawnIn(width: number, times: number): Drawing | null {
	if (!structure || structure.points.length === 0) return null;
	if (kind === "engine" && placing?.plan) return drawn(placing.plan, structure, width, times);
	return layered?.(structure, width, times) ?? null;
}

/** What the sketch shows and what it can be asked for. */
export const sketch = {
	get drawing() {
		return drawing;
	},
	get kind() {
		return kind;
	},
	/** The same for a paper that is so many pixels wide. */
	onPaper(pixels: number): Drawing | null {
		return drawnIn(pixels, 1);
	},
	/** Why the network cannot be drawn around its engine; empty when it can. */
	get why() {
		return placing && !placing.plan ? placing.why : "";
	},
	/** Why there is no drawing in layers. */
	get failure() {
		return failure;
	},
	/** Draws this study. */
	follow(study: Study | undefined) {
		const before = untrack(() => structure);
		structure = study && structureOf(study.network, study.engine, before);
	},
	choose(next: Kind) {
		wanted = next;
	},
	/** Fits the drawing into this many pixels, or makes it so many times as large. */
	fit(pixels: number, larger: number) {
		if (pixels > 0) width = Math.round(pixels * larger);
		times = larger;
	},
	/** Loads what draws layers; most networks never need it. */
	async load() {
		if (layered) return;
		try {
			({ layered } = await import("../sketch/layered"));
			failure = "";
		} catch (reason) {
			failure = reason instanceof Error ? reason.message : String(reason);
		}
	},
};
