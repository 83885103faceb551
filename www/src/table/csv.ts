/** Tables as CSV, in the form that spreadsheets take everywhere: RFC 4180, with a mark of its encoding. */

const MARK = "\ufeff";

/** A table as the text of a CSV file. */
export function csvText(table: readonly (readonly string[])[]): string {
	const lines = table.map((row) => row.map((text) => quoted(harmless(text))).join(","));
	return `${MARK}${lines.join("\r\n")}\r\n`;
}

/**
 * A name that begins like a formula would be reckoned by the spreadsheet that opens the file. An
 * apostrophe before it makes it text again; numbers stay numbers, also those with a sign.
 */
export function harmless(text: string): string {
	if (!/^[=+\-@\t\r]/.test(text) || /^[+-]?(\d+\.?\d*|\.\d+)$/.test(text)) return text;
	return `'${text}`;
}

function quoted(text: string): string {
	return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
