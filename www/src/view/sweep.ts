/** How a sweep begins, from wherever its cells are chosen: its part of the page is loaded, then shown. */
import { tick } from "svelte";
import type { Path } from "../network/edit";
import type { FieldInfo } from "../solver/types";
import { extras } from "./extras.svelte";

/** A cell that holds a number. */
export interface NumberAt {
	readonly path: Path;
	readonly info: FieldInfo;
}

/** Sweeps these cells, alone or as the second dimension; says why not when it cannot. */
export async function beginSweep(cells: readonly NumberAt[], second = false): Promise<string> {
	await extras.open("sweep");
	if (!extras.shown.sweep) return "";
	const { sweeping } = await import("../sweep/sweeping.svelte");
	const fault = sweeping.begin(cells, second);
	await tick();
	if (!fault) document.getElementById("sweep-title")?.focus();
	return fault;
}
