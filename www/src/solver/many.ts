/**
 * The page's side of the worker that solves a study again and again: over speeds, with a dimension swept,
 * in many possible truths. It is another worker than the sheet's, so that no edit waits for it.
 */
import { connection } from "./connection";
import type { Many } from "./manyWorker";
import address from "./manyWorker?worker&url";
import type {
	Causes,
	Deviations,
	Draw,
	FiguresOutcome,
	Range,
	Study,
	Told,
	Whole,
	Worlds,
} from "./types";

const many = connection<Many>(address);

/** Solves the running draw at `count` speeds of a study's range, from the one at `first`. */
export function range(study: Study, first: number, count: number): Promise<Range> {
	return many.ask<Range>((to) => to.range(study, first, count) as Promise<Range>);
}

/** Every draw of a study. */
export function answer(study: Study): Promise<Whole> {
	return many.ask<Whole>((to) => to.answer(study) as Promise<Whole>);
}

/** Some draws of several studies in a few numbers: a list by study of lists by draw. */
export function figures(studies: Study[], draws: Draw[]): Promise<FiguresOutcome[][]> {
	return many.ask((to) => to.figures(studies, draws) as Promise<FiguresOutcome[][]>);
}

/** Versions in the same possible truths: deviations by world, then by version, then by cylinder. */
export function deviations(versions: Study[], worlds: Worlds): Promise<Deviations> {
	return many.ask((to) => to.deviations(versions, worlds) as Promise<Deviations>);
}

/** What makes every two versions hard to tell apart. */
export function causes(versions: Study[], worlds: Worlds): Promise<Causes> {
	return many.ask((to) => to.causes(versions, worlds) as Promise<Causes>);
}

/** What deviations tell of versions, `confidence` being asked for before one counts as the more even. */
export function tell(
	found: Float64Array,
	versions: number,
	cylinders: number,
	confidence: number,
): Promise<Told> {
	return many.ask((to) => to.tell(found, versions, cylinders, confidence) as Promise<Told>);
}
