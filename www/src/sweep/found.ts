/** What a sweep comes to: figures or a reason at each point, the best point, and sentences on it. */
import { deviationOf } from "../range/figures";
import type { Figures, FiguresOutcome, StudyError } from "../solver/types";
import { figure, type UnitChoice, withUnit } from "../units";
import { nameOf } from "./cells";
import { type Plan, unitOf, withValue } from "./plan";

/** What was found for one draw of one study. */
export type Outcome = FiguresOutcome | undefined;

/** The figures of an outcome; null where there are none. */
export function figuresIn(outcome: Outcome): Figures | null {
	return outcome?.kind === "solved" ? outcome : null;
}

/** Why a point has no figures; null when it has. */
export function reasonOf(outcome: Outcome, wording: (error: StudyError) => string): string | null {
	switch (outcome?.kind) {
		case "solved":
			return null;
		case "refused":
			return outcome.sentence;
		case "wrong": {
			const [first, ...others] = outcome.errors.map(wording);
			const more = others.length > 0 ? ` (and ${others.length} more)` : "";
			return `The study is wrong there: ${first ?? "the solver does not take it."}${more}`;
		}
		default:
			return "This draw needs more of the study than it has: see below the draws.";
	}
}

/** Spreads that differ by less are the same on the page [-]. */
const SAME = 5e-5;

/** The place of the smallest spread; -1 when all are alike, or none is solved. */
export function bestOf(outcomes: readonly Outcome[]): number {
	let best = -1;
	let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
	outcomes.forEach((outcome, place) => {
		const spread = figuresIn(outcome)?.spread;
		if (spread === undefined) return;
		most = Math.max(most, spread);
		if (spread >= least) return;
		least = spread;
		best = place;
	});
	return most - least < SAME ? -1 : best;
}

/** At which end of an axis the best point lies, when it does. */
export function endOf(place: number, counts: readonly number[]): { axis: number; last: boolean }[] {
	const [across = 1] = counts;
	return [place % across, Math.floor(place / across)]
		.slice(0, counts.length)
		.flatMap((at, axis) => {
			const isLast = at === (counts[axis] ?? 0) - 1;
			return at === 0 || isLast ? [{ axis, last: isLast }] : [];
		});
}

/** What is known when a sweep is told. */
export interface Told {
	readonly plan: Plan;
	/** What the axes are called. */
	readonly names: readonly string[];
	readonly points: readonly (readonly number[])[];
	readonly outcomes: readonly Outcome[];
	/** The study that was swept, as it stood. */
	readonly present: Outcome;
	/** Between which values each axis may lie. */
	readonly limits: readonly (readonly [number, number])[];
	/** The greatest doubt of a cylinder's share; null when the answer has none. */
	readonly doubt: number | null;
	/** Whether the cells are of the manifold, so that a point can be a variant. */
	readonly canVary: boolean;
	readonly units: UnitChoice;
}

/** A point in words: each axis with its value. */
export function pointText({ plan, names, units }: Told, at: readonly number[]): string {
	const values = plan.map((axis, place) => withValue(at[place] ?? 0, unitOf(axis, units)));
	return values.length === 1
		? (values[0] ?? "")
		: values.map((value, place) => `${names[place]} ${value}`).join(" and ");
}

/** The best point in words, and what it is worth. */
export function bestSentences(told: Told): string[] {
	const { plan, points, outcomes, present, limits, doubt, units } = told;
	const percent = (value: number) => `${figure(value, units.fraction)} ${units.fraction.label}`;
	const best = bestOf(outcomes);
	const here = figuresIn(outcomes[best]);
	const solved = outcomes.flatMap((outcome) => figuresIn(outcome) ?? []);
	if (solved.length === 0) return ["No point of the sweep has an answer."];
	if (!here) {
		const what = solved.length === outcomes.length ? "every point" : "every point that is solved";
		return [`The spread is ${percent(solved[0]?.spread ?? 0)} at ${what}: this does not move it.`];
	}
	const now = figuresIn(present);
	const gain = now ? now.spread - here.spread : 0;
	const least = `${percent(here.spread)}, at ${pointText(told, points[best] ?? [])}`;
	if (now && gain <= SAME)
		return [
			`No point has less spread than the study that was swept, ${percent(now.spread)}; the least of them is ${least}.`,
		];
	const said = [`The least spread is ${least}.`];
	for (const { axis, last } of endOf(
		best,
		plan.map(({ count }) => count),
	)) {
		const { from, to } = plan[axis] as Plan[0];
		const limit = limits[axis]?.[last ? 1 : 0];
		const whose = plan.length > 1 ? ` of ${told.names[axis]}` : "";
		said.push(
			(last ? to : from) === limit
				? `That is the end of the range${whose}, and of what the cells may hold.`
				: `That is the least at the end of the range${whose}: widen it.`,
		);
	}
	if (!now) return said;
	const than = `The study that was swept has ${percent(now.spread)}, ${percent(gain)} more`;
	const isSmall = doubt !== null && gain < doubt;
	const beside = isSmall ? `, which is less than the doubt of a share, ±${percent(doubt)}` : "";
	const proof = told.canVary
		? "no proof: make it a variant, and the comparison of versions tells how sure the difference is"
		: "no proof";
	return [...said, `${than}${beside}. The least of an estimate is ${proof}.`];
}

/** The name of a variant with the cells of a point. */
export function variantName({ plan, names, units }: Told, at: readonly number[]): string {
	return plan
		.map((axis, place) => {
			const value = withValue(at[place] ?? 0, unitOf(axis, units));
			return `${capital(names[place] ?? "")} ${value}`.trim();
		})
		.join(", ");
}

/** What says that two plans sweep the same cells. */
export function sameCells(one: Plan[number], other: Plan[number]): boolean {
	const names = new Set(one.cells.map(nameOf));
	return other.cells.some((cell) => names.has(nameOf(cell)));
}

/** The sweep as a table: the axes, the spread, every cylinder's deviation; then the reason of a gap. */
export function tableOf(
	told: Told,
	cylinders: readonly string[],
	text: (value: number) => string,
): string[][] {
	const { plan, points, outcomes, units } = told;
	const heads = cylinders.map((name) => `Cyl. ${name} from mean, ${units.fraction.label}`);
	const rows = points.map((at, place) => {
		const values = plan.map((axis, each) => plainValue(at[each] ?? 0, unitOf(axis, units)));
		const figures = figuresIn(outcomes[place]);
		if (!figures) return [...values, "refused", ...cylinders.map(() => "")];
		const deviations = cylinders.map((_, cylinder) => text(deviationOf(figures, cylinder)));
		return [...values, text(figures.spread), ...deviations];
	});
	return [[...headsOf(told), `Spread, ${units.fraction.label}`, ...heads], ...rows];
}

/** The spreads of a map: the first axis from left to right, the second one upwards. */
export function mapTable(told: Told, text: (value: number) => string): string[][] {
	const { plan, points, outcomes } = told;
	const [across, up] = plan;
	const [head = "", side = ""] = headsOf(told);
	const rows = Array.from({ length: up?.count ?? 1 }, (_, row) => {
		const places = Array.from({ length: across.count }, (_, column) => row * across.count + column);
		const value = plainValue(points[places[0] ?? 0]?.[1] ?? 0, unitOf(up ?? across, told.units));
		const spreads = places.map((place) => {
			const figures = figuresIn(outcomes[place]);
			return figures ? text(figures.spread) : "refused";
		});
		return [value, ...spreads];
	});
	const unit = unitOf(across, told.units);
	const columns = points.slice(0, across.count).map(([value = 0]) => plainValue(value, unit));
	const corner = `${side}, against ${head}: spread, ${told.units.fraction.label}`;
	return [[corner, ...columns], ...rows.reverse()];
}

/** What the axes are called, with their units. */
function headsOf({ plan, names, units }: Told): string[] {
	return plan.map((axis, place) => withUnit(capital(names[place] ?? ""), unitOf(axis, units)));
}

function plainValue(value: number, unit: ReturnType<typeof unitOf>): string {
	return withValue(value, { ...unit, label: "" }).replace("−", "-");
}

function capital(text: string): string {
	return text.charAt(0).toUpperCase() + text.slice(1);
}
