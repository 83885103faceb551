/** Laying a file or an example on the sheet, or saying why it cannot be. */
import { editor } from "../network/editor.svelte";
import type { Read, StudyError } from "../solver/types";

let refused = $state.raw<{ name: string; errors: readonly StudyError[] } | null>(null);

export const opening = {
	/** What could not be opened last, and why; the sheet was left alone. */
	get refused() {
		return refused;
	},
	/** Lays what was read on the sheet, as an edit that can be undone. */
	lay(name: string, reply: Read) {
		if (reply.kind === "study") {
			refused = null;
			editor.replace(reply.study);
		} else {
			refused = { name, errors: reply.errors };
		}
	},
	dismiss() {
		refused = null;
	},
};
