/** Blocks of cells as tab-separated text, the way spreadsheets give and take them. */

/** A block of texts as one text; what holds a tab, a line's end or a quote is quoted. */
export function blockText(block: readonly (readonly string[])[]): string {
	return block
		.map((row) => row.map((text) => (/[\t\n\r"]/.test(text) ? quoted(text) : text)).join("\t"))
		.join("\n");
}

/** The block that a text holds. */
export function readBlock(text: string): string[][] {
	const block: string[][] = [[]];
	let rest = text.replace(/\r\n?/g, "\n").replace(/\n$/, "");
	for (;;) {
		const quote = /^"((?:[^"]|"")*)"(?=[\t\n]|$)/.exec(rest);
		const found = quote ? quote[0] : (/^[^\t\n]*/.exec(rest)?.[0] ?? "");
		// A cell is one line: what was broken over several is joined.
		const cell = quote ? (quote[1] ?? "").replaceAll('""', '"').replace(/\s*\n\s*/g, " ") : found;
		block.at(-1)?.push(cell);
		const mark = rest.charAt(found.length);
		rest = rest.slice(found.length + 1);
		if (mark === "") return block;
		if (mark === "\n") block.push([]);
	}
}

function quoted(text: string): string {
	return `"${text.replaceAll('"', '""')}"`;
}

/** Whether a cell begins as a number does; headings do not. */
export function startsWithNumber(text = ""): boolean {
	return /^\s*[-+−(]?[.,]?\d/.test(text);
}
