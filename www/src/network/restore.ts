/** The gate for what comes from outside: files, examples, and the browser's own storage. */
import { read } from "../solver/client";
import type { Read, Study, StudyError, StudyErrorKind } from "../solver/types";

/** What the page keeps between two visits. */
export interface Kept {
	/** The study as JSON text. */
	readonly text: string;
	/** Text of cells that cannot be read as a value, by path in the document. */
	readonly drafts: Readonly<Record<string, string>>;
	/** The place of the variant on the sheet; the base where none is told. */
	readonly looking?: number;
}

/**
 * Errors of a study that is whole, but not right. Such a study can stand on the sheet, where its cells
 * say what is wrong; any other error means that the text holds no study.
 */
const WHOLE: ReadonlySet<StudyErrorKind> = new Set<StudyErrorKind>([
	"outOfBounds",
	"duplicateId",
	"unknownId",
	"tooMany",
	"junction",
	"unreachable",
	"misplaced",
	"contradiction",
]);

/** Reads text that somebody gives to the page: a study without errors, or the errors. */
export function readOutside(text: string): Promise<Read> {
	return read(text);
}

/** Reads what this page has kept, unfinished edits included, or says why it cannot be used any more. */
export async function readKept(kept: Kept): Promise<Read> {
	const reply = await read(kept.text);
	if (reply.kind === "study" || !reply.errors.every(isWhole)) return reply;
	return { kind: "study", study: JSON.parse(kept.text) as Study };
}

/** Names and lists that somebody has emptied count as missing, but the study still has its shape. */
const EMPTIED =
	/^(id|name|from|to|cylinder|node|losses|bore|stroke|(blower\.)?(boostNode|crankPulley))$/;

function isWhole({ kind, element, field }: StudyError): boolean {
	return WHOLE.has(kind) || (kind === "missing" && element !== "" && EMPTIED.test(field));
}
