/**
 * What edits more than one cell is loaded when a table is first entered: most visits only read, and the
 * page is to be small.
 */
import type { Action } from "./actions";
import type { Table } from "./table.svelte";

type Actions = typeof import("./actions");

let loaded: Actions | null = null;
let loading: Promise<Actions> | null = null;

/** Loads it ahead of its use. */
export function prepare(): Promise<Actions> {
	loading ??= import("./actions").then((actions) => {
		loaded = actions;
		return actions;
	});
	// A connection that is lost may come back: the next use tries again.
	loading.catch(() => {
		loading = null;
	});
	return loading;
}

/** Does something with what is selected. */
export async function act(table: Table, action: Action) {
	if (loaded) loaded.act(table, action);
	else (await prepare()).act(table, action);
}

/** Copies what is selected; cutting takes it away. */
export async function copy(table: Table, event: ClipboardEvent, cut: boolean) {
	event.preventDefault();
	const isFirst = loaded === null;
	try {
		const actions = loaded ?? (await prepare());
		const text = actions.copyText(table);
		if (text === null) return;
		// The event is over by the time its actions have been loaded.
		if (isFirst) await navigator.clipboard.writeText(text);
		else event.clipboardData?.setData("text/plain", text);
		if (cut) actions.act(table, table.selection?.rows ? "remove" : "clear");
	} catch {
		table.say("Nothing was copied. Once more, please.");
	}
}

/** Pastes where the selection begins, or as new rows at the table's end. */
export async function paste(table: Table, event: ClipboardEvent, atEnd = false) {
	const text = event.clipboardData?.getData("text/plain");
	if (!text) return;
	event.preventDefault();
	if (loaded) loaded.pasteText(table, text, atEnd);
	else (await prepare()).pasteText(table, text, atEnd);
}
