/**
 * The answers of all versions, one after the other, by the worker that no edit waits for. A version whose
 * rows and conditions are the same as before keeps its answer.
 */
import { untrack } from "svelte";
import { answer } from "../solver/many";
import type { Answer, Study, StudyError } from "../solver/types";

/** A version of the manifold. */
export interface Version {
	/** Null for the base. */
	readonly name: string | null;
	readonly study: Study;
}

/** A version with what the solver said of it last. */
export interface Column extends Version {
	/** Null before the first answer. */
	readonly answer: Answer | null;
	readonly errors: readonly StudyError[];
	/** Whether the answer is of this very form of the version. */
	readonly isNow: boolean;
}

/** While one types there is no use in beginning [ms]. */
const SETTLE = 250;

let columns = $state.raw<readonly Column[]>([]);
let failure = $state.raw("");

export const compared = {
	/** The versions in their order, the base first. */
	get columns() {
		return columns;
	},
	/** Why there are no newer answers; empty when there are. */
	get failure() {
		return failure;
	},
	/** Asks for the answers of versions; what it returns abandons the question. */
	ask(versions: readonly Version[]): () => void {
		const before = untrack(() => columns);
		columns = versions.map((version, place) => carried(version, place, before));
		const question = { abandoned: false };
		const timer = setTimeout(() => answerAll(question), SETTLE);
		return () => {
			question.abandoned = true;
			clearTimeout(timer);
		};
	},
};

/** A version with the answer that it had; one that is new, renamed or moved is found by its rows. */
function carried(version: Version, place: number, before: readonly Column[]): Column {
	const like = before.find((each) => each.isNow && isSame(each.study, version.study));
	if (like) return { ...like, ...version };
	const old = before.find(({ name }) => name === version.name) ?? before[place];
	return {
		...version,
		answer: old?.answer ?? null,
		errors: old?.errors ?? [],
		isNow: false,
	};
}

/** Whether two lists of studies ask the solver the same. */
export function areSame(some: readonly Study[], others: readonly Study[]): boolean {
	return (
		some.length === others.length &&
		some.every((study, place) => {
			const other = others[place];
			return other !== undefined && isSame(study, other);
		})
	);
}

/** Whether two studies ask the solver the same; rows that no edit has touched are the same objects. */
export function isSame(one: Study, other: Study): boolean {
	return (
		one.network === other.network &&
		one.engine === other.engine &&
		one.settings === other.settings &&
		one.coolers === other.coolers
	);
}

async function answerAll(question: { readonly abandoned: boolean }) {
	try {
		for (let place = 0; place < columns.length; place += 1) {
			const column = columns[place];
			if (!column || column.isNow) continue;
			const reply = await answer(column.study);
			if (question.abandoned) return;
			const now: Column =
				reply.kind === "solved"
					? { ...column, answer: reply.answer, errors: [], isNow: true }
					: { ...column, errors: reply.errors, isNow: true };
			columns = columns.with(place, now);
		}
		failure = "";
	} catch (reason) {
		if (!question.abandoned) failure = reason instanceof Error ? reason.message : String(reason);
	}
}
