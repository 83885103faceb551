/** Time that an input may take. The memory is the whole run's: node is started with little of it. */

/** Longest time that an input may take [ms]. */
const LONGEST = 50;
/** The machine may have been busy with something else: only what is slow this often is slow. */
const TRIES = 3;

/** Does something in time and returns what it comes to. */
export function within<Result>(act: () => Result): Result {
	const watch = new Watch();
	let made: Result;
	do {
		watch.start();
		made = act();
	} while (watch.late());
	return made;
}

/** The same for what is waited for. */
export async function withinWait<Result>(act: () => Promise<Result>): Promise<Result> {
	const watch = new Watch();
	let made: Result;
	do {
		watch.start();
		made = await act();
	} while (watch.late());
	return made;
}

class Watch {
	private least = Number.POSITIVE_INFINITY;
	private tries = 0;
	private clock = 0;
	private work = process.cpuUsage();

	start(): void {
		this.work = process.cpuUsage();
		this.clock = performance.now();
	}

	/** Whether it should be tried once more; throws when it has been late every time. */
	late(): boolean {
		const time = performance.now() - this.clock;
		// While others have the processor, time passes in which nothing is done here.
		const { user, system } = process.cpuUsage(this.work);
		this.least = Math.min(this.least, time, (user + system) / 1000);
		this.tries += 1;
		const late = this.least > LONGEST;
		if (late && this.tries === TRIES) {
			const least = this.least.toFixed(1);
			throw new Error(`took ${least} ms, more than ${LONGEST} ms, ${TRIES} times`);
		}
		return late;
	}
}
