import { blockText } from "./block";
import { harmless } from "./csv";

/** Copies a table with its headings, for a spreadsheet, and tells what came of it. */
export async function copyTable(table: readonly (readonly string[])[]): Promise<string> {
	try {
		await navigator.clipboard.writeText(blockText(table.map((row) => row.map(harmless))));
		return "Copied, with its headings.";
	} catch {
		return "The browser did not let the table be copied. Select it and copy it by hand.";
	}
}
