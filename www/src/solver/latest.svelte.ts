/** The latest answer to the study on the sheet: the newest study wins, what it overtakes is dropped. */

import { drop, onRestart, solve } from "./client";
import { Dropped } from "./connection";
import { DRAWS } from "./draws";
import type { Answer, Draw, DrawAnswer, Solve, Study, StudyError } from "./types";

let answer = $state.raw<Answer | null>(null);
let study = $state.raw<Study | null>(null);
let whole = $state.raw(false);
let elapsed = $state.raw<number | null>(null);
let errors = $state.raw<readonly StudyError[]>([]);
let failure = $state.raw<string | null>(null);
let restarted = $state.raw<string | null>(null);
let late = $state.raw<number | null>(null);

/** What is to be solved next. */
let waiting: (() => Promise<void>) | null = null;
let busy = false;
/** Whether the draws out of sight are asked for as soon as the one in sight is there. */
let isWhole = false;
/** Asks for those of the last answer. */
let owed: (() => Promise<void>) | null = null;
let asked = 0;
let clock: ReturnType<typeof setTimeout> | undefined;
/** When the solver was asked what it is solving now. */
let begun = 0;
let overtaking: ReturnType<typeof setTimeout> | undefined;

const NONE: readonly StudyError[] = [];

/** An answer that takes no longer needs no word about it [ms]. */
const SOON = 400;

/** A newer study does not wait longer for an older one's answer [ms]: one in thousands takes many seconds. */
const OVERTAKEN = 1000;

type Solved = Extract<Solve, { kind: "solved" }>;

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
	/** Whether all draws of the last good answer are of that study, and not only the one looked at. */
	get whole() {
		return whole;
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

	/** Asks for the answer to a study, the draw looked at first. */
	async ask(study: Study, looked: Draw | undefined) {
		waiting = () => answerTo(study, looked);
		if (busy) overtaking ??= setTimeout(drop, OVERTAKEN - (performance.now() - begun));
		else await solveAll();
	},

	/** Asks for the draws out of sight from now on: what is in sight has been put up, and they would have slowed it. */
	async askWhole() {
		isWhole = true;
		if (busy || !owed) return;
		waiting = owed;
		await solveAll();
	},

	/** Says that the solver gives no replies. */
	fail(reason: unknown) {
		failure = reason instanceof Error ? reason.message : String(reason);
	},
};

onRestart(({ message }) => {
	restarted = message;
});

/** Solves what waits until nothing does. */
async function solveAll() {
	busy = true;
	asked = performance.now();
	clock = setTimeout(wait, SOON);
	while (waiting) {
		const next: () => Promise<void> = waiting;
		waiting = null;
		owed = null;
		begun = performance.now();
		await next();
		clearTimeout(overtaking);
		overtaking = undefined;
	}
	clearTimeout(clock);
	late = null;
	busy = false;
}

function wait() {
	late = Math.floor((performance.now() - asked) / 1000);
	clock = setTimeout(wait, 1000);
}

/**
 * Two questions: the draw looked at is on the screen while the others are still being solved. What is
 * shown of those stays the former answer's for that long.
 */
async function answerTo(next: Study, looked: Draw | undefined) {
	restarted = null;
	const first = await replied(() => solve(next, looked ? { first: looked } : "headline"));
	if (!first || waiting) return;
	failure = null;
	if (first.kind === "wrong") {
		errors = first.errors;
		return;
	}
	const runs = first.answer.runningNeeds.length === 0;
	const former = (answer?.draws ?? []).filter(({ draw }) => runs || draw.startsWith("bench"));
	const entered = first.answer.entered ?? answer?.entered ?? null;
	answer = { ...first.answer, draws: inOrder([...first.answer.draws, ...former]), entered };
	study = next;
	whole = false;
	errors = NONE;
	const others = () => answerWhole(next, first);
	if (!isWhole) {
		owed = others;
		return;
	}
	// What has come is shown before the others are asked for.
	await new Promise((go) => setTimeout(go));
	if (!waiting) await others();
}

/** The second question: all draws that the first one left out. */
async function answerWhole(study: Study, first: Solved) {
	const solved = first.answer.draws[0]?.draw ?? first.answer.headline;
	const rest = await replied(() => solve(study, { rest: solved }));
	if (!rest || waiting || rest.kind === "wrong") return;
	answer = { ...rest.answer, draws: inOrder([...first.answer.draws, ...rest.answer.draws]) };
	whole = true;
	elapsed = first.elapsedMs + rest.elapsedMs;
}

/** What the solver replies; nothing when it gives no reply, which is said. */
async function replied<Reply>(ask: () => Promise<Reply>): Promise<Reply | undefined> {
	try {
		return await ask();
	} catch (reason) {
		if (!(reason instanceof Dropped)) latest.fail(reason);
		return undefined;
	}
}

/** Each draw once, the first one there is of it, in the order in which they are always shown. */
function inOrder(draws: readonly DrawAnswer[]): DrawAnswer[] {
	return DRAWS.flatMap((draw) => draws.find((each) => each.draw === draw) ?? []);
}
