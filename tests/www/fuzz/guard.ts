/** Time that an input may take. The memory is the whole run's: node is started with little of it. */

/** Longest time that an input may take [ms]. */
const LONGEST = 50;
/** The machine may have been busy with something else: only what is slow this often is slow. */
const TRIES = 3;

/** Does something in time, and returns what it comes to. */
export function within<Result>(act: () => Result, longest = LONGEST): Result {
	let least = Number.POSITIVE_INFINITY;
	let made: Result | undefined;
	for (let attempt = 0; attempt < TRIES && least > longest; attempt += 1) {
		const started = performance.now();
		made = act();
		least = Math.min(least, performance.now() - started);
	}
	if (least > longest) throw new Error(late(least, longest));
	return made as Result;
}

/** The same for what is waited for. */
export async function withinWait<Result>(
	act: () => Promise<Result>,
	longest = LONGEST,
): Promise<Result> {
	let least = Number.POSITIVE_INFINITY;
	let made: Result | undefined;
	for (let attempt = 0; attempt < TRIES && least > longest; attempt += 1) {
		const started = performance.now();
		made = await act();
		least = Math.min(least, performance.now() - started);
	}
	if (least > longest) throw new Error(late(least, longest));
	return made as Result;
}

function late(least: number, longest: number): string {
	return `took ${least.toFixed(1)} ms, more than ${longest} ms, ${TRIES} times`;
}
