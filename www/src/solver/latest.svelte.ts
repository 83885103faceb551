/** The latest answer to the study on the sheet: the newest study wins, what it overtakes is dropped. */
import { solve } from "./client";
import type { Answer, Study, StudyError } from "./types";

let answer = $state.raw<Answer | null>(null);
let study = $state.raw<Study | null>(null);
let elapsed = $state.raw<number | null>(null);
let errors = $state.raw<readonly StudyError[]>([]);
let failure = $state.raw<string | null>(null);

let waiting: Study | null = null;
let busy = false;

const NONE: readonly StudyError[] = [];

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

	/** Asks for the answer to a study. */
	async ask(study: Study) {
		waiting = study;
		if (busy) return;
		busy = true;
		while (waiting) {
			const asked: Study = waiting;
			waiting = null;
			await answerTo(asked);
		}
		busy = false;
	},

	/** Says that the solver gives no replies. */
	fail(reason: unknown) {
		failure = reason instanceof Error ? reason.message : String(reason);
	},
};

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
