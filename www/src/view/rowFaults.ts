/** What is wrong with a small grid, each fault with its row: the cells have little room for words. */
import { keyOf, type Path } from "../network/edit";
import { editor } from "../network/editor.svelte";
import { latest } from "../solver/latest.svelte";
import type { FieldInfo } from "../solver/types";
import { wording } from "./bounds";
import { catalogue } from "./catalogue.svelte";
import { unread } from "./cellFault";
import { faults } from "./faults.svelte";
import { begun } from "./sentence";

/** Of a list of rows, each of which is called `what`: the cells that hold no value, then what the solver refuses. */
export function rowFaults(
	path: Path,
	what: string,
	infos: readonly FieldInfo[],
	element: string,
	field: string,
): string[] {
	const { sheet, drafts, units } = editor;
	const { entries } = catalogue;
	const start = `${keyOf(path)}.`;
	const found = Object.entries(drafts).flatMap(([key, text]) => {
		if (!key.startsWith(start)) return [];
		const [row, name] = key.slice(start.length).split(".");
		const info = infos.find((each) => each.name === name);
		if (!info) return [];
		return `${begun(what)} ${Number(row) + 1}, ${info.label}: ${unread(text, info, units)}`;
	});
	if (!sheet || !entries) return found;
	const refused = latest.errors
		.filter((error) => error.element === element && error.field.startsWith(field))
		.map((error) => `${begun(wording(error, sheet.study, entries, units))}.`);
	return [...found, ...refused];
}

/** Of a table whose cells the page looks through: what it found, or else what the solver says of the table. */
export function tableFaults(
	found: readonly { readonly message: string }[],
	element: string,
	field: string,
): string[] {
	if (found.length > 0) return found.map(({ message }) => message);
	return faults.at(element, field).map(({ message }) => `${begun(message)}.`);
}
