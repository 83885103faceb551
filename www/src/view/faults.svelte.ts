/** What is wrong with the study, cell by cell. */
import { flushSync } from "svelte";
import { editor } from "../network/editor.svelte";
import { latest } from "../solver/latest.svelte";
import type { StudyError } from "../solver/types";
import { tables } from "../table/tables.svelte";
import { catalogue } from "./catalogue.svelte";

const byCell = $derived(grouped(latest.errors));
const count = $derived(latest.errors.length + editor.draftCount);

/** Errors by the cell where they belong. */
export const faults = {
	/** The errors of one field of one element. */
	at(element: string, field: string): readonly StudyError[] {
		return byCell.get(cell(element, field)) ?? NONE;
	},
	/** How many cells and rows need attention. */
	get count() {
		return count;
	},
};

/** The name of a cell, the same for errors, warnings and links. */
export function cell(element: string, field: string): string {
	return `${element}|${field}`;
}

/**
 * Brings the cell into view and into focus; the row when the cell is not there. A row that a filter hides
 * and a field that is seldom shown are shown first.
 */
export function goTo(element: string, field: string) {
	for (const table of [tables.branches, tables.nodes]) table.reveal(element);
	if (catalogue.entries?.branch.some(({ name }) => name === field)) {
		tables.branches.open(element, [field]);
	}
	flushSync();
	const marked = (name: string) =>
		document.querySelector<HTMLElement>(`[data-cell="${CSS.escape(name)}"]`);
	const row = () => document.querySelector<HTMLElement>(`[data-row="${CSS.escape(element)}"]`);
	const parts = field.split(/[.[]/);
	const target =
		marked(cell(element, field)) ??
		marked(cell(element, `${field}.kind`)) ??
		// A list that is not open has one mark for all its rows.
		marked(cell(element, field.replace(/\[\d+\]\.\w+$/, ""))) ??
		marked(cell(element, parts.slice(0, 2).join("["))) ??
		row();
	if (!target) return;
	const control = target.matches("input, select, textarea, button")
		? target
		: target.querySelector<HTMLElement>("input, select, textarea");
	(control ?? target).focus({ preventScroll: true });
	target.scrollIntoView({ block: "center", inline: "nearest" });
}

const NONE: readonly StudyError[] = [];

function grouped(errors: readonly StudyError[]): ReadonlyMap<string, readonly StudyError[]> {
	const cells = new Map<string, StudyError[]>();
	for (const error of errors) {
		const name = cell(error.element, error.field);
		const there = cells.get(name);
		if (there) there.push(error);
		else cells.set(name, [error]);
	}
	return cells;
}
