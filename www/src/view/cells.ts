// Keys and pasted text in a small grid whose cells say their row and column in `data-at`.

import { readBlock } from "../table/block";

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

/** The block that is being pasted and its first cell; null for a single value, which goes into its cell as typed. */
export function pastedBlock(event: ClipboardEvent): { place: Place; block: string[][] } | null {
	const text = event.clipboardData?.getData("text/plain") ?? "";
	const place = placeOf(event.target);
	if (!place || !/[\t\n]/.test(text.trim())) return null;
	event.preventDefault();
	return { place, block: readBlock(text) };
}

/** Up and down lead along a column, as in the tables. */
export function alongColumn(event: KeyboardEvent, grid: HTMLElement): void {
	const step = { ArrowUp: -1, ArrowDown: 1, Enter: event.shiftKey ? -1 : 1 }[event.key];
	const place = placeOf(event.target);
	if (!step || !place || !(event.target instanceof HTMLInputElement)) return;
	event.preventDefault();
	const to = grid.querySelector<HTMLInputElement>(
		`[data-at="${place.row + step} ${place.column}"] input`,
	);
	to?.focus();
	to?.select();
}
