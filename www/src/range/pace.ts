/** How many speeds are asked for at a time. */

/** Speeds asked for at first; how many follow depends on how long they took. */
export const FIRST = 10;
const MOST = 20;
/** Fewer are mostly questions: each costs reading the study again. */
const FEWEST = 3;
/** A part should not keep the worker from an edit for longer than this [ms]. */
const PATIENCE = 50;

/** How many speeds to ask for after `count` took so long [ms]. */
export function nextCount(count: number, took: number): number {
	const wanted = Math.round((count * PATIENCE) / Math.max(took, 1));
	return Math.min(Math.max(wanted, FEWEST), MOST);
}
