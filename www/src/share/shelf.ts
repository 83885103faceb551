/** The studies that this browser keeps. */
import type { Study } from "../solver/types";
import { freshId } from "./place";
import { type Entry, entries, exchange } from "./records";
import { copyName, settle } from "./settle";

/** The record that counts of a study. */
export async function newest(study: string | null): Promise<Entry | undefined> {
	return study === null ? undefined : settle(await entries(study)).studies[0];
}

/** All studies, newest first; what a page wrote that no longer had its study becomes one as well. */
export async function studies(): Promise<readonly Entry[]> {
	const found = settle(await entries());
	if (found.strays.length === 0) return found.studies;
	for (const stray of found.strays) await exchange([stray], [copyOf(stray, stray.saved)]);
	return settle(await entries()).studies;
}

/** Adds a copy of a study. */
export async function duplicate(entry: Entry) {
	await exchange([], [copyOf(entry, Date.now())]);
}

/** Takes a study off the shelf: all of its records, so that none stands up again. Returns them. */
export async function remove({ study }: Entry): Promise<readonly Entry[]> {
	const all = await entries(study);
	await exchange(all);
	return all;
}

/** Puts records back that were taken off. */
export async function putBack(removed: readonly Entry[]) {
	await exchange([], removed);
}

/** Takes away what is contained in later records of a study. */
export async function tidy(study: string) {
	await exchange(settle(await entries(study)).stale);
}

function copyOf({ name, text, drafts }: Entry, when: number): Entry {
	const renamed = copyName(name, when);
	const own = { key: freshId(), study: freshId(), turn: 0, revision: 1, saved: Date.now() };
	return { ...own, name: renamed, text: withName(text, renamed), drafts };
}

/** Text that holds no study stays as it is: it is kept for somebody to take out. */
function withName(text: string, name: string): string {
	try {
		return JSON.stringify({ ...(JSON.parse(text) as Study), name });
	} catch {
		return text;
	}
}
