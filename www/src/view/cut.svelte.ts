import { untrack } from "svelte";

/**
 * A value of which others are told only when it is another one. Whatever looks at a derived value is asked again
 * whenever anything behind it changes, which at every key is most of a table.
 */
export function cut<Value>(value: () => Value): { readonly now: Value } {
	let now = $state.raw(untrack(value));
	$effect.pre(() => {
		now = value();
	});
	return {
		get now() {
			return now;
		},
	};
}
