/** The latest answer to the study on the sheet: the newest study wins, what it overtakes is dropped. */
import { onRestart, solve } from "./client";
import type { Answer, Study, StudyError } from "./types";

let answer = $state.raw<Answer | null>(null);
let study = $state.raw<Study | null>(null);
let elapsed = $state.raw<number | null>(null);
let errors = $state.raw<readonly StudyError[]>([]);
let failure = $state.raw<string | null>(null);
let restarted = $state.raw<string | null>(null);
let late = $state.raw<number | null>(null);

let waiting: Study | null = null;
let busy = false;
let asked = 0;
let clock: ReturnType<typeof setTimeout> | undefined;

const NONE: readonly StudyError[] = [];

/** An answer that takes no longer needs no word about it [ms]. */
const SOON = 400;

/** What the solver said last. */
export const latest = {
	/** The last good answer; it stays while the study is wrong. */
	get answer() {
		return answer;
	},
	/** The study that the last good answer is of. */
	get study() {
		return study;
	},
	/** Time the last good answer took [ms]. */
	get elapsed() {
		return elapsed;
	},
	/** What is wrong with the study on the sheet. */
	get errors() {
		return errors;
	},
	/** Why the solver gave no reply at all. */
	get failure() {
		return failure;
	},
	/** Why the solver had to be started again for what it said last. */
	get restarted() {
		return restarted;
	},
	/** For how many seconds the sheet has been without its answer; null while that is not worth a word. */
	get late() {
		return late;
	},

	/** Asks for the answer to a study. */
	async ask(study: Study) {
		waiting = study;
		if (busy) return;
		busy = true;
		asked = performance.now();
		clock = setTimeout(wait, SOON);
		while (waiting) {
			const next: Study = waiting;
			waiting = null;
			restarted = null;
			await answerTo(next);
		}
		clearTimeout(clock);
		late = null;
		busy = false;
	},

	/** Says that the solver gives no replies. */
	fail(reason: unknown) {
		failure = reason instanceof Error ? reason.message : String(reason);
	},
};

onRestart(({ message }) => {
	restarted = message;
});

function wait() {
	late = Math.floor((performance.now() - asked) / 1000);
	clock = setTimeout(wait, 1000);
}

async function answerTo(asked: Study) {
	try {
		const reply = await solve(asked);
		if (waiting) return;
		failure = null;
		if (reply.kind === "solved") {
			answer = reply.answer;
			study = asked;
			elapsed = reply.elapsedMs;
			errors = NONE;
		} else {
			errors = reply.errors;
		}
	} catch (reason) {
		latest.fail(reason);
	}
}
