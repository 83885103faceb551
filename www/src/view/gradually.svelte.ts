/**
 * When the page opens, what is read first is rendered first: the verdict and the shares, with the top of
 * the branch table beside them. The rest follows in small parts as soon as the first reply is shown.
 */
import { latest } from "../solver/latest.svelte";

const FIRST = 1;

/** Many rows at once are a long task on any machine. */
const MOST = 12;

/** What rows may take to be made in one task [ms]: to lay them out takes as long again. */
const TASK = 5;

/** So long without a step and the page is whole [ms]. */
const QUIET = 100;

let isReplied = false;
let grown = $state(false);
let quiet: ReturnType<typeof setTimeout> | undefined;

/** What can wait until all of the page is there, waits for this: small machines do one thing at a time. */
export const growth = {
	get done() {
		return grown;
	},
};

/** Is called at every step of the page's growing; before the first reply it has hardly begun. */
function goOn() {
	if (!isReplied || grown) return;
	clearTimeout(quiet);
	quiet = setTimeout(() => (grown = true), QUIET);
}

/** Whether the first reply is on the screen; call while a component is being set up. */
export function afterFirstReply(): { readonly now: boolean } {
	let now = $state(false);
	$effect(() => {
		if (now || !(latest.answer || latest.errors.length > 0 || latest.failure)) return;
		// A frame that has begun is followed by its painting, then by this.
		const frame = requestAnimationFrame(() =>
			setTimeout(() => {
				now = isReplied = true;
				goOn();
			}),
		);
		return () => cancelAnimationFrame(frame);
	});
	return {
		get now() {
			return now;
		},
	};
}

/** How many of `total()` rows to render; all of them as soon as all have been rendered once. */
export function gradually(
	total: () => number,
	ready: () => boolean = () => true,
): { readonly shown: number; readonly done: boolean } {
	let shown = $state(FIRST);
	let step = 1;
	let begun = 0;
	$effect(() => {
		if (!ready() || total() === 0 || shown === Number.POSITIVE_INFINITY) return;
		if (begun > 0) step = nextStep(step, performance.now() - begun);
		const timer = setTimeout(() => {
			begun = performance.now();
			goOn();
			shown = shown < total() ? shown + step : Number.POSITIVE_INFINITY;
		});
		return () => clearTimeout(timer);
	});
	return {
		get shown() {
			return shown;
		},
		/** Whether nothing more comes, so that what stands below stays where it is. */
		get done() {
			return shown === Number.POSITIVE_INFINITY || total() === 0;
		},
	};
}

/** How many rows to render in the next task, when so many took so long [ms]. */
function nextStep(step: number, took: number): number {
	return Math.round(Math.min(Math.max((step * TASK) / took, 1), 2 * step, MOST));
}

/** How many of the parts that follow each other to render: each in a task of its own, so that keys are heard between. */
export function inTurns(parts: number, ready: () => boolean): { readonly shown: number } {
	let shown = $state(0);
	$effect(() => {
		if (!ready() || shown === parts) return;
		const timer = setTimeout(() => {
			goOn();
			shown += 1;
		});
		return () => clearTimeout(timer);
	});
	return {
		get shown() {
			return shown;
		},
	};
}
