// Keys and pasted text in a small grid whose cells say their row and column in `data-at`.

import { editor } from "../network/editor.svelte";
import type { PastedRows, Row } from "../schedule/rows";
import { type PastedText, readPasted } from "../table/block";

interface Place {
	row: number;
	column: number;
}

/** The cell in which something happens; null outside the cells. */
function placeOf(target: EventTarget | null): Place | null {
	const place = target instanceof Element ? target.closest<HTMLElement>("[data-at]") : null;
	const [row, column] = (place?.dataset.at ?? "").split(" ").map(Number);
	return row === undefined || column === undefined ? null : { row, column };
}

/** What is being pasted and its first cell; null for a single value, which goes into its cell as typed. */
export function pastedBlock(event: ClipboardEvent): { place: Place; read: PastedText } | null {
	const text = event.clipboardData?.getData("text/plain") ?? "";
	const place = placeOf(event.target);
	if (!place || !/[\t\n]/.test(text.trim())) return null;
	event.preventDefault();
	return { place, read: readPasted(text) };
}

/**
 * Pastes a block over the cells from the one on in which it is pasted, as one edit of a list of rows. Tells
 * what there is to say of it; null when no block is pasted.
 */
export function pasteOver(
	event: ClipboardEvent,
	change: (by: (rows: Row[]) => readonly Row[]) => void,
	made: (rows: readonly Row[], place: Place, block: string[][]) => PastedRows,
): string | null {
	const pasted = pastedBlock(event);
	if (!pasted) return null;
	const { place, read } = pasted;
	if (read.kind === "refused") return nothing(read);
	editor.close();
	let told = "";
	change((before) => {
		const result = made(before, place, read.block);
		if (result.kind === "refused") {
			told = nothing(result);
			return before;
		}
		const lost = result.unplaced.map((each) => `“${each}”`).join(", ");
		told = lost === "" ? "" : `There was no cell for: ${lost}.`;
		return result.rows;
	});
	return told;
}

/** What is said where a paste is refused. */
export function nothing({ reason }: { readonly reason: string }): string {
	return `Nothing was pasted. ${reason}`;
}

/** Up and down lead along a column, as in the tables. */
export function alongColumn(event: KeyboardEvent & { readonly currentTarget: HTMLElement }): void {
	const step = { ArrowUp: -1, ArrowDown: 1, Enter: event.shiftKey ? -1 : 1 }[event.key];
	const place = placeOf(event.target);
	if (!step || !place || !(event.target instanceof HTMLInputElement)) return;
	event.preventDefault();
	const to = event.currentTarget.querySelector<HTMLInputElement>(
		`[data-at="${place.row + step} ${place.column}"] input`,
	);
	to?.focus();
	to?.select();
}
