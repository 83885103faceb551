/** The gate for what comes from outside: files, examples, and the browser's own storage. */
import { read } from "../solver/client";
import type { Read, Study } from "../solver/types";

/** What the page keeps between two visits. */
export interface Kept {
	/** The study as JSON text. */
	readonly text: string;
	/** Text of cells that cannot be read as a value, by path in the document. */
	readonly drafts: Readonly<Record<string, string>>;
	/** The place of the variant on the sheet; the base where none is told. */
	readonly looking?: number;
}

/** Reads text that somebody gives to the page: a study without errors, or the errors. */
export function readOutside(text: string): Promise<Read> {
	return read(text);
}

/** What can be put right on the sheet, unless it is so much that it would only hold up the page. */
export function mendable({ unfinished, errors }: Extract<Read, { kind: "wrong" }>): Study | null {
	return errors.some(({ kind }) => kind === "tooMany") ? null : (unfinished ?? null);
}

/** Reads what this page has kept, unfinished edits included, or says why it cannot be used any more. */
export async function readKept(kept: Kept): Promise<Read> {
	const reply = await read(kept.text);
	return reply.kind === "wrong" && reply.unfinished
		? { kind: "study", study: reply.unfinished }
		: reply;
}
