/** Whether what is shown as the answer is of the study on the sheet. */
import { editor } from "../network/editor.svelte";
import { latest } from "../solver/latest.svelte";
import { faults } from "./faults.svelte";

const isEmpty = $derived.by(() => {
	const network = editor.sheet?.study.network;
	return network?.nodes.length === 0 && network.branches.length === 0;
});
const isLate = $derived(latest.late !== null && latest.study !== editor.sheet?.study);
const isOld = $derived(faults.count > 0 || latest.failure !== null || isLate);

export const standing = {
	/** Whether there is no network at all. */
	get isEmpty() {
		return isEmpty;
	},
	/** Whether the answer is waited for, for longer than the moment that solving takes. */
	get isLate() {
		return isLate;
	},
	/** Whether what is shown is of an earlier version. */
	get isOld() {
		return isOld;
	},
};
