/** The base beside the variant on the sheet. */
import { editor } from "../network/editor.svelte";
import type { Draw } from "../solver/types";
import { compared } from "./columns.svelte";

/** Deviations of the base by cylinder in a draw; nothing while the base itself is on the sheet. */
export function baseBeside(draw: Draw | undefined): ReadonlyMap<string, number> | null {
	if ((editor.versions?.looking ?? null) === null) return null;
	const base = compared.columns[0];
	const outcome = base?.isNow
		? base.answer?.draws.find((each) => each.draw === draw)?.outcome
		: undefined;
	if (outcome?.kind !== "solved") return null;
	return new Map(outcome.cylinders.map(({ cylinder, deviation }) => [cylinder, deviation]));
}
