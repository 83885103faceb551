/** Blocks of cells as tab-separated text, the way spreadsheets give and take them. */

/** A block of texts as one text; what holds a tab, a line's end or a quote is quoted. */
export function blockText(block: readonly (readonly string[])[]): string {
	const text = block
		.map((row) => row.map((text) => (/[\t\n\r"]/.test(text) ? quoted(text) : text)).join("\t"))
		.join("\n");
	// A line's end at the end of a text begins no row, so an empty last row needs one more.
	return text.endsWith("\n") ? `${text}\n` : text;
}

/** What is taken in one paste; more is no table of a manifold, and would hold up the page. */
const MOST = { characters: 1 << 18, rows: 300, cells: 20_000 } as const;

/** What a pasted text comes to: a block, or the reason for which nothing has been done. */
export type PastedText =
	| { readonly kind: "block"; readonly block: string[][] }
	| { readonly kind: "refused"; readonly reason: string };

/** The block that a pasted text holds, unless it is too large to be meant. */
export function readPasted(text: string): PastedText {
	const refused = (found: string, most: string): PastedText => ({
		kind: "refused",
		reason: `The text has ${found}, and ${most} are taken at once.`,
	});
	if (text.length > MOST.characters) {
		return refused(`${text.length} characters`, `at most ${MOST.characters}`);
	}
	const block = readBlock(text);
	if (block.length > MOST.rows) return refused(`${block.length} rows`, `at most ${MOST.rows}`);
	// Short rows count as far as the longest reaches: a block is repeated over a selection as a rectangle.
	const cells = block.length * Math.max(...block.map((row) => row.length));
	if (cells > MOST.cells) return refused(`${cells} cells`, `at most ${MOST.cells}`);
	return { kind: "block", block };
}

/** The block that a text holds. The text is gone through once, whatever stands in it. */
export function readBlock(text: string): string[][] {
	const block: string[][] = [[]];
	const whole = text.replace(/\r\n?/g, "\n").replace(/\n$/, "");
	const mark = /[\t\n]/g;
	for (let at = 0; ; ) {
		const close = closing(whole, at);
		mark.lastIndex = at;
		const end = close === null ? (mark.exec(whole)?.index ?? whole.length) : close + 1;
		const found = whole.slice(at, end);
		block.at(-1)?.push(close === null ? found : oneLine(found.slice(1, -1).replaceAll('""', '"')));
		if (end === whole.length) return block;
		if (whole.charAt(end) === "\n") block.push([]);
		at = end + 1;
	}
}

/** Where the quote stands that ends the cell at a place; null when the cell is not a quoted one. */
function closing(text: string, start: number): number | null {
	if (text.charAt(start) !== '"') return null;
	let at = text.indexOf('"', start + 1);
	// Two quotes are one of the text.
	while (at >= 0 && text.charAt(at + 1) === '"') at = text.indexOf('"', at + 2);
	return at >= 0 && /[\t\n]|^$/.test(text.charAt(at + 1)) ? at : null;
}

/** A cell is one line: what was broken over several is joined. */
function oneLine(text: string): string {
	if (!text.includes("\n")) return text;
	const lines = text.split("\n").map((line) => line.trim());
	return lines.filter((line) => line !== "").join(" ");
}

function quoted(text: string): string {
	return `"${text.replaceAll('"', '""')}"`;
}

/** Whether a cell begins as a number does; headings do not. */
export function startsWithNumber(text = ""): boolean {
	return /^\s*[-+−(]?[.,]?\d/.test(text);
}
