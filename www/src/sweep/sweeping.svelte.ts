/**
 * The sweep on the page: what is asked for, and the last one that is whole. It is solved in small parts by
 * the second worker, so that an edit never waits, and stopping it leaves nothing under way but one part.
 */

import type { Path, Sheet } from "../network/edit";
import { editor } from "../network/editor.svelte";
import { FIRST, nextCount } from "../range/pace";
import { DRAWS } from "../solver/draws";
import { figures } from "../solver/many";
import type { Draw, FieldInfo, FiguresOutcome, Study } from "../solver/types";
import type { UnitChoice } from "../units";
import { likeCells, type Swept, sweptAt } from "./cells";
import { sameCells } from "./found";
import { axisOf, type Plan, pointsOf, putAt, USUAL } from "./plan";

/** A whole sweep. */
export interface Found {
	readonly plan: Plan;
	/** The study that it was made from. */
	readonly study: Study;
	readonly draws: readonly Draw[];
	readonly points: readonly (readonly number[])[];
	/** By point, then by draw. */
	readonly outcomes: readonly (readonly FiguresOutcome[])[];
	/** The study itself, by draw. */
	readonly present: readonly FiguresOutcome[];
}

let plan = $state.raw<Plan | null>(null);
/** The cells to choose from by axis; they stay while some of them are taken out of the sweep. */
let offered = $state.raw<readonly (readonly Swept[])[]>([]);
let found = $state.raw<Found | null>(null);
let progress = $state.raw<{ readonly solved: number; readonly of: number } | null>(null);
let stopped = $state.raw<number | null>(null);
let failure = $state.raw("");
let question: { abandoned: boolean } | null = null;

export const sweeping = {
	get plan() {
		return plan;
	},
	get offered() {
		return offered;
	},
	get found() {
		return found;
	},
	/** How far the one under way has come; null when none is. */
	get progress() {
		return progress;
	},
	/** After how many points the last one was stopped by hand; null when it was not. */
	get stopped() {
		return stopped;
	},
	/** Why the last one came to nothing; empty when it did not. */
	get failure() {
		return failure;
	},

	/** Sweeps these cells, alone or as the second dimension beside the first; why not, if it cannot. */
	begin(
		chosen: readonly { readonly path: Path; readonly info: FieldInfo }[],
		second: boolean,
	): string {
		const { sheet, units } = editor;
		if (!sheet || chosen.length === 0) return "";
		const cells = chosen.map(({ path, info }) => sweptAt(sheet.study, path, info));
		const count = (second ? USUAL[1] : USUAL[0]) ?? 0;
		const axis = axisOf(sheet.study, cells, units, count);
		const first = plan?.[0];
		const choices = likeCells(sheet.study, cells);
		if (second && first) {
			if (sameCells(first, axis)) return "These cells are swept already: choose others.";
			offered = [offered[0] ?? [], choices];
			this.change([{ ...first, count: Math.min(first.count, count) }, axis]);
		} else {
			offered = [choices];
			this.change([axis]);
		}
		return "";
	},

	/** Sweeps in another way; what was under way is left. */
	change(next: Plan) {
		this.leave();
		stopped = null;
		failure = "";
		plan = next;
	},

	/** Takes one of two dimensions out. */
	drop(axis: number) {
		const left = plan?.[1 - axis];
		if (!left) return;
		offered = [offered[1 - axis] ?? left.cells];
		this.change([left]);
	},

	/** Solves the plan for the study on the sheet. */
	async solve(sheet: Sheet, units: UnitChoice) {
		if (!plan) return;
		this.leave();
		const own = { abandoned: false };
		question = own;
		stopped = null;
		failure = "";
		try {
			const whole = await solved(plan, sheet, units, own);
			if (whole) found = whole;
		} catch (reason) {
			if (!own.abandoned) failure = reason instanceof Error ? reason.message : String(reason);
		}
		if (question === own) {
			question = null;
			progress = null;
		}
	},

	/** Stops what is under way by hand: it does not begin again by itself. */
	stop() {
		stopped = progress?.solved ?? 0;
		this.leave();
	},

	/** Leaves what is under way. */
	leave() {
		if (question) question.abandoned = true;
		question = null;
		progress = null;
	},

	/** Ends the sweep. */
	end() {
		this.leave();
		plan = null;
		found = null;
		offered = [];
	},
};

async function solved(
	its: Plan,
	sheet: Sheet,
	units: UnitChoice,
	own: { readonly abandoned: boolean },
): Promise<Found | null> {
	const points = pointsOf(its, units);
	// The study as it stands goes first, for all others are told against it.
	const studyAt = (place: number) =>
		place === 0 ? sheet.study : putAt(sheet, its, points[place - 1] ?? []).study;
	const outcomes: FiguresOutcome[][] = [];
	const of = points.length + 1;
	let count = FIRST;
	progress = { solved: 0, of };
	while (outcomes.length < of) {
		const asked = performance.now();
		const from = outcomes.length;
		const length = Math.min(count, of - from);
		const studies = Array.from({ length }, (_, at) => studyAt(from + at));
		// All draws are solved together: to look at another one costs nothing then.
		const part = await figures(studies, [...DRAWS]);
		if (own.abandoned) return null;
		outcomes.push(...part);
		progress = { solved: outcomes.length, of };
		count = nextCount(length, performance.now() - asked);
	}
	const [present = [], ...others] = outcomes;
	return { plan: its, study: sheet.study, draws: DRAWS, points, outcomes: others, present };
}
