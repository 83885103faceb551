/** Laying a file or an example on the sheet, or saying why it cannot be. */
import { keeper } from "../share/keeper.svelte";
import type { Read, StudyError } from "../solver/types";

let refused = $state.raw<{ name: string; errors: readonly StudyError[] } | null>(null);

export const opening = {
	/** What could not be opened last, and why; the sheet was left alone. */
	get refused() {
		return refused;
	},
	/**
	 * Lays what was read on the sheet, as a study of its own and as an edit that can be undone. An example
	 * is only kept for good once it has been edited.
	 */
	lay(name: string, reply: Read, example = false) {
		if (reply.kind === "study") {
			refused = null;
			keeper.lay(reply.study, example);
		} else {
			refused = { name, errors: reply.errors };
		}
	},
	dismiss() {
		refused = null;
	},
};
