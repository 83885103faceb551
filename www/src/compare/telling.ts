/** What many worlds tell, in words. */
import type { DoubtCause, Draw, PairVerdict, Study, Told } from "../solver/types";
import { areSame } from "./columns.svelte";
import type { Sampled } from "./sampling.svelte";

/** One version against another, the first named first. */
export interface Against {
	/** That the first has the smaller spread [-]. */
	readonly probability: number;
	readonly standardError: number;
	readonly worlds: number;
	/** What comes of it for the first. */
	readonly verdict: "moreEven" | "lessEven" | "tooCloseToTell";
	/** The verdict as a sign. */
	readonly sign: string;
}

const SIGNS = { moreEven: "✓", lessEven: "✗", tooCloseToTell: "≈" };

/** One version against another; nothing where they are not told of. */
export function pairOf(told: Told, first: number, second: number): Against | null {
	const pair = told.pairs.find(
		(each) => each.first === Math.min(first, second) && each.second === Math.max(first, second),
	);
	if (!pair) return null;
	const turned = first > second;
	const verdict = verdictOf(pair.verdict, turned);
	return {
		probability: turned ? 1 - pair.probability : pair.probability,
		standardError: pair.standardError,
		worlds: pair.worlds,
		verdict,
		sign: SIGNS[verdict],
	};
}

/** A probability in per cent; never 0 or 100, which no number of worlds can tell. */
export function chance(probability: number): string {
	if (probability > 0.995) return "> 99 %";
	if (probability < 0.005) return "< 1 %";
	return `${Math.round(100 * probability)} %`;
}

/** The verdict on two versions as a sentence. */
export function verdictWords(
	{ probability, standardError, verdict, worlds }: Against,
	first: string,
	second: string,
	confidence: number,
): string {
	const error = Math.max(1, Math.round(100 * standardError));
	const of = `${chance(probability)} of ${worlds} possible truths, give or take ${error === 1 ? "1 point" : `${error} points`}`;
	switch (verdict) {
		case "moreEven":
			return `${first} is more even than ${second}: in ${of}.`;
		case "lessEven":
			return `${second} is more even than ${first}: ${first} has the smaller spread in ${of}.`;
		case "tooCloseToTell":
			return `${first} and ${second} are too close to tell: ${first} has the smaller spread in ${of}; ${chance(confidence)} either way are asked for.`;
	}
}

/** The causes that show beside the largest one. */
export function leading(causes: readonly DoubtCause[]): readonly DoubtCause[] {
	return causes.filter(({ amount }) => amount >= 0.05 * (causes[0]?.amount ?? 0));
}

/** Whether an answer is of these versions in this draw. */
export function isOf(sampled: Sampled, studies: readonly Study[], draw: Draw): boolean {
	return sampled.draw === draw && areSame(sampled.studies, studies);
}

function verdictOf(verdict: PairVerdict, turned: boolean): Against["verdict"] {
	if (verdict === "tooCloseToTell") return "tooCloseToTell";
	return (verdict === "first") !== turned ? "moreEven" : "lessEven";
}
