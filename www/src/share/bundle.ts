/** All studies that the browser keeps in one file, and the way back: onto the shelf, beside what is there. */
import { readKept } from "../network/restore";
import type { Study } from "../solver/types";
import { download } from "./file";
import { freshId } from "./place";
import { type Entry, exchange } from "./records";
import { dateAndTime } from "./settle";
import { studies } from "./shelf";

const FORMAT = "evenport-studies";

/** A study in the file: all that the shelf has of it. */
interface Bundled {
	readonly saved: string;
	readonly study?: Study;
	/** What the shelf holds where that is no study. */
	readonly text?: string;
	readonly name: string;
	readonly drafts: Entry["drafts"];
	readonly looking?: number;
}

/** What has become of the studies in a file. */
export interface Taken {
	readonly added: number;
	readonly refused: readonly { readonly name: string; readonly why: string }[];
}

/** Hands such a file to the browser as a download. */
export async function saveAll() {
	const kept = await studies();
	if (kept.length === 0)
		throw new Error("no study is kept yet; an example is kept once it is edited");
	const name = `evenport-studies-${dateAndTime(Date.now()).slice(0, 10)}.json`;
	download(bundleText(kept), "application/json", name);
}

export function bundleText(kept: readonly Entry[]): string {
	const list = kept.map(bundled);
	return `${JSON.stringify({ format: FORMAT, version: 1, studies: list }, null, 2)}\n`;
}

/** The studies in a text; null when it is no such file, and an ordinary study or anything else. */
export function bundleOf(text: string): readonly unknown[] | null {
	if (!text.includes(FORMAT)) return null;
	try {
		const file = JSON.parse(text) as { format?: unknown; studies?: unknown } | null;
		return file?.format === FORMAT && Array.isArray(file.studies) ? file.studies : null;
	} catch {
		return null;
	}
}

/** Puts the studies on the shelf that pass the gate; each is a study of its own, also beside its like. */
export async function takeIn(list: readonly unknown[]): Promise<Taken> {
	const added: Entry[] = [];
	const refused: { name: string; why: string }[] = [];
	for (const [place, item] of list.entries()) {
		const entry = entryOf(item, place);
		const reply = await readKept(entry);
		if (reply.kind === "study") added.push(fitted(entry, reply.study));
		else refused.push({ name: entry.name, why: reply.errors[0]?.message ?? "it is no study" });
	}
	await exchange([], added);
	return { added: added.length, refused };
}

/** A version that the study has not got cannot be looked at. */
function fitted({ looking, ...entry }: Entry, { name, variants = [] }: Study): Entry {
	const isThere = looking !== undefined && looking in variants;
	return { ...entry, name, ...(isThere && { looking }) };
}

function bundled({ name, saved, text, drafts, looking }: Entry): Bundled {
	const rest = { drafts, ...(looking !== undefined && { looking }) };
	const at = new Date(saved).toISOString();
	try {
		return { name, saved: at, study: JSON.parse(text) as Study, ...rest };
	} catch {
		return { name, saved: at, text, ...rest };
	}
}

/** A record of what is in the file. Nothing is taken for granted: somebody may have written it by hand. */
function entryOf(item: unknown, place: number): Entry {
	const { name, saved, study, text, drafts, looking } = (
		typeof item === "object" && item !== null ? item : {}
	) as Partial<Record<keyof Bundled, unknown>>;
	const when = Date.parse(String(saved));
	return {
		key: freshId(),
		study: freshId(),
		turn: 0,
		revision: 1,
		name: typeof name === "string" && name ? name : `Study ${place + 1} of the file`,
		saved: Number.isNaN(when) ? Date.now() : Math.min(when, Date.now()),
		text: typeof text === "string" ? text : JSON.stringify(study ?? null),
		drafts: textsOf(drafts),
		...(Number.isSafeInteger(looking) && { looking: looking as number }),
	};
}

function textsOf(drafts: unknown): Entry["drafts"] {
	if (typeof drafts !== "object" || drafts === null) return {};
	const texts = Object.entries(drafts).filter(([, text]) => typeof text === "string");
	return Object.fromEntries(texts) as Entry["drafts"];
}
