/** The charge coolers that a core can be a passage of, to choose from. */
import { editor } from "../network/editor.svelte";
import type { Option } from "./options";

const coolers = $derived(editor.sheet?.study.coolers);
const all = $derived<readonly Option[]>([
	{ name: "", label: "no heat exchange" },
	...(coolers ?? []).map(({ id }) => ({ name: id, label: id })),
]);

export const coolerOptions = {
	get all() {
		return all;
	},
};
