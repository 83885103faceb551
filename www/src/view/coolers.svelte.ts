/** The charge coolers that a core can be a passage of, to choose from. */
import { editor } from "../network/editor.svelte";
import type { Option } from "./options";

const all = $derived<readonly Option[]>([
	{ name: "", label: "no heat exchange" },
	...(editor.coolers ?? []).map(({ id }) => ({ name: id, label: id })),
]);

export const coolerOptions = {
	get all() {
		return all;
	},
};
