/**
 * The running draw over the study's speeds. It is asked for in small parts, so that an edit never waits
 * long for the worker, and what an edit has overtaken is left.
 */
import { range } from "../solver/many";
import type { SpeedPoint, Study } from "../solver/types";
import { FIRST, nextCount } from "./pace";

/** Speeds of a whole range, and the study that they are of. */
export interface Ranged {
	readonly study: Study;
	readonly points: readonly SpeedPoint[];
}

/** While one types there is no use in beginning [ms]. */
const SETTLE = 150;

let shown = $state.raw<Ranged | null>(null);
let solved = $state.raw(0);
let failure = $state.raw("");

export const ranging = {
	/** The last whole range; it stays while the next one is being solved. */
	get shown() {
		return shown;
	},
	/** Speeds solved so far of the range that is under way. */
	get solved() {
		return solved;
	},
	/** Why there is no newer one; empty when there is. */
	get failure() {
		return failure;
	},
	/** Asks for the range of a study; what it returns abandons the question. */
	ask(study: Study): () => void {
		if (shown?.study === study) return () => {};
		const question = { abandoned: false };
		const timer = setTimeout(() => answer(study, question), shown ? SETTLE : 0);
		return () => {
			question.abandoned = true;
			clearTimeout(timer);
		};
	},
};

async function answer(study: Study, question: { readonly abandoned: boolean }) {
	const points: SpeedPoint[] = [];
	let count = FIRST;
	solved = 0;
	try {
		for (let of = 1; points.length < of; ) {
			const begun = performance.now();
			const reply = await range(study, points.length, count);
			if (question.abandoned) return;
			if (reply.kind === "wrong" || reply.points.length === 0) break;
			points.push(...reply.points);
			of = reply.of;
			solved = points.length;
			count = nextCount(reply.points.length, performance.now() - begun);
		}
		failure = "";
		shown = { study, points };
	} catch (reason) {
		if (!question.abandoned) failure = reason instanceof Error ? reason.message : String(reason);
	}
}
