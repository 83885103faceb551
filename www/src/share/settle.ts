/**
 * Which records count. A page that takes a study over begins a record of its own, which says what it
 * replaces and how far that was known. What was written beyond that is not lost: it counts as a study of
 * its own.
 */
import type { Entry } from "./records";

export interface Settled {
	/** The record that counts, one a study, newest first. */
	readonly studies: readonly Entry[];
	/** What was written by a page that no longer had the study. */
	readonly strays: readonly Entry[];
	/** What is contained in a later record. */
	readonly stale: readonly Entry[];
}

export function settle(records: readonly Entry[]): Settled {
	const studies: Entry[] = [];
	const strays: Entry[] = [];
	const stale: Entry[] = [];
	const ordered = [...records].sort((a, b) => b.turn - a.turn || b.saved - a.saved);
	const found = new Set<string>();
	for (const entry of ordered) {
		if (ordered.some(({ replaces }) => contains(replaces, entry))) stale.push(entry);
		else if (found.has(entry.study)) strays.push(entry);
		else {
			found.add(entry.study);
			studies.push(entry);
		}
	}
	studies.sort((a, b) => b.saved - a.saved);
	return { studies, strays, stale };
}

function contains(replaces: Entry["replaces"], { key, revision }: Entry): boolean {
	return replaces?.key === key && revision <= replaces.revision;
}

/** What a copy is called: it says that it is one, and of when. */
export function copyName(name: string, when: number): string {
	return `${name.replace(/ \(copy [\d: -]+\)$/, "")} (copy ${dateAndTime(when)})`;
}

/** A moment on the clock of this machine, in the order in which dates sort. */
export function dateAndTime(when: number): string {
	const date = new Date(when);
	const two = (number: number) => String(number).padStart(2, "0");
	const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
	return `${day} ${two(date.getHours())}:${two(date.getMinutes())}`;
}
