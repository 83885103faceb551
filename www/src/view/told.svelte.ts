/** What the file of a chart says of itself: the study, the version and the draw that it is of. */
import { editor } from "../network/editor.svelte";
import type { Told } from "../share/drawing";
import { latest } from "../solver/latest.svelte";
import { choice } from "./choice.svelte";
import { DRAW_WORDS } from "./words";

/** `what` is what the drawing shows; `notes` are written below it. */
export function told(what: string, notes: readonly string[]): Told {
	const name = latest.study?.name ?? "";
	const version = editor.versionOf(latest.study);
	const draw = choice.draw ? DRAW_WORDS[choice.draw.draw] : "no draw";
	const title = `${name}${version ? `, ${version}` : ""}: ${what}. ${draw}. Estimate, not a measurement.`;
	return {
		name: `${name} ${version} ${what}`,
		title,
		description: [title, ...notes].join(" "),
		notes: [title, ...notes],
	};
}
