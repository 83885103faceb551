/** What is swept: cells tied together, over which values, in how many points; and the studies it makes. */
import { put, type Sheet } from "../network/edit";
import { same } from "../network/same";
import type { Quantity, Study } from "../solver/types";
import { inSi, shown, type Unit, type UnitChoice, unitsOf } from "../units";
import { pathOf, type Swept, valueNow } from "./cells";

/** Cells at the same value, or each at the same multiple of what it is now. */
export type Tie = "same" | "factor";

/** Cells tied together, and the values that they go through. */
export interface Axis {
	readonly cells: readonly Swept[];
	readonly tie: Tie;
	/** The first and the last value, in SI or times as now. */
	readonly from: number;
	readonly to: number;
	readonly count: number;
}

/** One dimension, or two. */
export type Plan = readonly [Axis] | readonly [Axis, Axis];

/** How many points an axis may have: a map has the product of both. */
export const FEWEST = 5;
export const MOST: readonly number[] = [101, 31];
export const USUAL: readonly number[] = [21, 15];

/** How far the values first reach below and above what there is, as a part of it. */
const REACH: Partial<Record<Quantity, number>> = { temperature: 0.08, pressure: 0.15 };
const USUAL_REACH = 0.3;

/** How far they reach from nothing, in SI. */
const FROM_NOTHING: Partial<Record<Quantity, number>> = {
	length: 0.05,
	area: 0.001,
	volume: 0.001,
	angle: Math.PI / 4,
	fraction: 0.1,
};

const TIMES: Unit = { name: "times", label: "times", times: 1, over: 1, plus: 0, decimals: 3 };

/** An axis of these cells about what they hold now. */
export function axisOf(
	study: Study,
	cells: readonly Swept[],
	units: UnitChoice,
	count: number,
): Axis {
	const now = cells.map((cell) => valueNow(study, cell));
	const tie = now.every((value) => value === now[0]) ? "same" : "factor";
	return tied(study, { cells, tie, from: 0, to: 0, count }, units);
}

/** An axis whose values are taken anew, after its cells or the way they are tied have changed. */
export function tied(study: Study, axis: Axis, units: UnitChoice): Axis {
	const now = axis.cells.map((cell) => valueNow(study, cell) ?? 0);
	const { quantity } = axis.cells[0]?.info ?? { quantity: "number" as const };
	const reach = REACH[quantity] ?? USUAL_REACH;
	const [low, high] = limits(study, axis);
	const [least, most] = [Math.min(...now), Math.max(...now)];
	let [from, to] =
		axis.tie === "factor" ? [1 - reach, 1 + reach] : [least * (1 - reach), most * (1 + reach)];
	if (from > to) [from, to] = [to, from];
	if (from === to) to = from + (FROM_NOTHING[quantity] ?? 1);
	const unit = unitOf(axis, units);
	const step = 10 ** Math.floor(Math.log10(Math.abs(shown(to, unit) - shown(from, unit)) / 5));
	const neat = (value: number, round: (value: number) => number) =>
		inSi(Number((round(dusted(shown(value, unit) / step)) * step).toPrecision(12)), unit);
	return {
		...axis,
		from: Math.min(Math.max(neat(from, Math.floor), low), high),
		to: Math.max(Math.min(neat(to, Math.ceil), high), low),
	};
}

/** Between which values all cells of an axis are inside the catalogue's bounds. */
export function limits(
	study: Study,
	{ cells, tie }: Pick<Axis, "cells" | "tie">,
): [number, number] {
	if (tie === "same")
		return [
			Math.max(...cells.map(({ info }) => info.minimum)),
			Math.min(...cells.map(({ info }) => info.maximum)),
		];
	const factors = cells.flatMap((cell) => {
		const value = valueNow(study, cell);
		if (!value) return [];
		const ends = [cell.info.minimum / value, cell.info.maximum / value];
		return [[Math.min(...ends), Math.max(...ends)] as const];
	});
	return [
		Math.max(0, ...factors.map(([least]) => least)),
		Math.min(1e6, ...factors.map(([, most]) => most)),
	];
}

/** What is wrong with an axis; empty when it can be swept. */
export function axisFault(study: Study, axis: Axis, most: number): string {
	if (axis.cells.length === 0) return "No cell is ticked: tick one.";
	const gone = axis.cells.find((cell) => !pathOf(study, cell));
	if (gone) return `The study no longer has ${gone.row}, ${gone.info.label}: sweep another cell.`;
	const isEmpty = axis.tie === "factor" && axis.cells.some((cell) => !valueNow(study, cell));
	if (isEmpty) return "A cell holds nothing to be multiplied: sweep all at the same value.";
	if (!(axis.from < axis.to)) return "The first value must be less than the last one.";
	const [low, high] = limits(study, axis);
	if (axis.from < low || axis.to > high) return "The values reach beyond what the cells may hold.";
	const isWhole = Number.isInteger(axis.count) && axis.count >= FEWEST && axis.count <= most;
	return isWhole ? "" : `Between ${FEWEST} and ${most} points, a whole number.`;
}

/** The unit in which an axis is shown. */
export function unitOf({ cells, tie }: Pick<Axis, "cells" | "tie">, units: UnitChoice): Unit {
	const info = cells[0]?.info;
	return tie === "factor" || !info ? TIMES : unitsOf(info, units)[info.quantity];
}

/** The values of an axis, the same steps apart. What lies between the ends is rounded to what one would type. */
export function valuesOf({ from, to, count }: Axis, unit: Unit): number[] {
	const [first, last] = [shown(from, unit), shown(to, unit)];
	const step = (last - first) / (count - 1);
	const decimals = decimalsOf(step);
	return Array.from({ length: count }, (_, at) => {
		if (at === 0) return from;
		if (at === count - 1) return to;
		return inSi(Number((first + at * step).toFixed(decimals)), unit);
	});
}

/** A value of an axis as text, with as many decimals as its steps need. */
export function valueText(value: number, unit: Unit): string {
	return String(Number(shown(value, unit).toPrecision(7))).replace("-", "−");
}

/** A value with its unit. */
export function withValue(value: number, unit: Unit): string {
	return `${valueText(value, unit)} ${unit.label}`.trimEnd();
}

/**
 * The sheet with the cells of each axis at a value of it; cells that are gone stay gone. What is told as a
 * multiple is one of what the study that was swept has there.
 */
export function putAt(sheet: Sheet, plan: Plan, at: readonly number[], swept = sheet.study): Sheet {
	const { study } = sheet;
	return plan.reduce<Sheet>(
		(before, { cells, tie }, axis) =>
			cells.reduce((made, cell) => {
				const path = pathOf(study, cell);
				const value = at[axis];
				if (!path || value === undefined) return made;
				const now = tie === "factor" ? valueNow(swept, cell) : 1;
				return put(made, path, Number(((now ?? 0) * value).toPrecision(15)));
			}, before),
		sheet,
	);
}

/** Whether two studies differ in nothing but the cells that are swept, so that a sweep of one is one of the other. */
export function areAlike(one: Study, other: Study, plan: Plan): boolean {
	if (one === other) return true;
	const bare = (study: Study) =>
		plan.reduce(
			(before, { cells }) =>
				cells.reduce((made, cell) => {
					const path = pathOf(study, cell);
					return path ? put(made, path, 0) : made;
				}, before),
			{ study, drafts: {} } as Sheet,
		).study;
	return same(bare(one), bare(other));
}

/** The value of an axis that the study has; null when its cells differ or hold nothing. */
export function presentOf(study: Study, { cells, tie }: Axis): number | null {
	if (tie === "factor") return 1;
	const [first, ...others] = cells.map((cell) => valueNow(study, cell));
	return first !== undefined && others.every((value) => value === first) ? first : null;
}

/** The points of a plan: the values of its axes, the first axis running fastest. */
export function pointsOf(plan: Plan, units: UnitChoice): number[][] {
	const [across, up] = plan.map((axis) => valuesOf(axis, unitOf(axis, units)));
	if (!up) return (across ?? []).map((value) => [value]);
	return up.flatMap((second) => (across ?? []).map((first) => [first, second]));
}

/** A number without the dust of its last bits. */
function dusted(value: number): number {
	return Number(value.toPrecision(12));
}

/** Decimals of a step with two digits of its own. */
function decimalsOf(step: number): number {
	return Math.min(12, Math.max(0, 1 - Math.floor(Math.log10(Math.abs(step) || 1))));
}
