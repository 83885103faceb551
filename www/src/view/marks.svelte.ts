/** What the cells of a row ask to know how they differ from the base. */
import { getContext, setContext } from "svelte";
import { type Differences, differences, type Mark, markAt } from "../network/differing";
import type { Path } from "../network/edit";
import { editor } from "../network/editor.svelte";
import type { Branch, Network, Node } from "../solver/types";

const MARKS = Symbol("marks");

/** The base's rows by their ids while a variant is on the sheet; null while the base is. */
const base = $derived.by(() => {
	const { versions } = editor;
	return versions && versions.looking !== null ? versions.base.network : null;
});
const nodes = $derived(base && byId(base.nodes));
const branches = $derived(base && byId(base.branches));

/** Lets the cells of a row know how it differs from the base, and tells the row itself. */
export function compareRow(list: keyof Network, row: () => Node | Branch) {
	const found = $derived.by(() => {
		const known = list === "nodes" ? nodes : branches;
		return known ? differences(known.get(row().id), row()) : null;
	});
	const marks = {
		get now() {
			return found;
		},
	};
	setContext(MARKS, marks);
	return marks;
}

/** How the cell at a path of the row around it differs. */
export function markOfCell(path: () => Path): { readonly now: Mark | null } {
	const marks = getContext<{ readonly now: Differences | null } | undefined>(MARKS);
	return {
		get now() {
			return marks?.now ? markAt(marks.now, path().slice(3).join(".")) : null;
		},
	};
}

/** The ids of what describes a cell: what is wrong with it, and how it differs. */
export function described(id: string, message: string, mark: Mark | null): string | undefined {
	const ids = [message && `${id}-fault`, mark && `${id}-differs`].filter(Boolean);
	return ids.length > 0 ? ids.join(" ") : undefined;
}

function byId(all: readonly (Node | Branch)[]): ReadonlyMap<string, Node | Branch> {
	return new Map(all.map((row) => [row.id, row]));
}
