/**
 * What the guide says. Every figure and every word that compares is taken from the answer to the sheet
 * as it stands, so that the sentences stay true whatever the reader does to it in between.
 */
import type { KindInfo, Study } from "../solver/types";
import { figure, signed, type UnitChoice } from "../units";
import type { Facts, Reading, Spreads } from "./facts";

/** Who gets least and most while running, and whether that is too much. */
export function verdict({ running }: Facts, units: UnitChoice): string {
	const { least, most } = ends(running);
	const off = (deviation: number) => `${signed(deviation, units.fraction)}\u00a0%`;
	return (
		`While running, cylinder ${least.cylinder} gets least, ${off(least.deviation)} off the mean, and cylinder ${most.cylinder} most, ${off(most.deviation)}. ` +
		`The spread is ${percent(running.solved.spread, units)}, ${standing(running)} the limit of ${percent(running.limit, units)}. ` +
		`Beside each bar stands its doubt, here up to ±${percent(Math.max(...running.solved.cylinders.map(({ doubt }) => doubt)), units)}: as far as the estimate itself may be off.`
	);
}

/** How the air goes along the log when every port draws at once. */
export function pattern({ allOpen }: Facts, units: UnitChoice): string {
	const { cylinders, paths } = allOpen.solved;
	const rising = rises(cylinders.map(({ deviation }) => deviation));
	const { least, most } = ends(allOpen);
	const range = `from ${signed(least.deviation, units.fraction)}\u00a0% to ${signed(most.deviation, units.fraction)}\u00a0%`;
	// The way from the source to a port is the longer the more things stand on it.
	const farther = rises(paths.map(({ items }) => items.length));
	const more = "With all ports open each cylinder gets more than the one before it";
	return rising
		? `${more}, ${range}${farther ? ": the longer the way from the source, the more" : ""}.`
		: `With all ports open the cylinders differ ${range}; cylinder ${most.cylinder} gets most.`;
}

/** What makes the gap, with the law that says so. */
export function cause(
	{ running }: Facts,
	study: Study,
	header: KindInfo | undefined,
	units: UnitChoice,
): string {
	const { gap, branches } = running.solved;
	if (!gap) return "One cylinder has nothing to differ from.";
	const unit = units.pressureDifference;
	const part = gap.parts.find(({ amount }) => amount * gap.total > 0);
	const whole = `Cylinder ${gap.worst} has ${figure(Math.abs(gap.total), unit)} ${unit.label} ${gap.total < 0 ? "less" : "more"} at its port than cylinder ${gap.best}.`;
	const largest = part
		? ` The largest part that pulls this way is ${part.label}: ${signed(part.amount, unit)} ${unit.label}.`
		: "";
	const along = study.network.branches.filter(({ toLeg }) => toLeg === "run");
	const speed = (id: string | undefined) => branches.find(({ branch }) => branch === id)?.mach;
	const [first, last] = [along[0]?.id, along.at(-1)?.id];
	const [fast, slow] = [speed(first), speed(last)];
	const speeds =
		fast !== undefined && slow !== undefined && first !== last
			? ` The air reaches Mach ${figure(fast, units.number)} in ${first} and ${figure(slow, units.number)} in ${last}.`
			: "";
	const law = header ? ` The law of a header: ${header.equation} (${header.source}).` : "";
	return `${whole}${largest}${speeds}${law}`;
}

/** What a change has done to the running draw. */
export function change(before: Spreads, { running }: Facts, units: UnitChoice): string {
	const after = running.solved.spread;
	const [was, is] = [percent(before.running, units), percent(after, units)];
	const moved =
		was === is
			? `The spread while running is as before, ${is}`
			: `The spread while running ${after < before.running ? "fell" : "rose"} from ${was} to ${is}`;
	return `${moved}: ${standing(running)} the limit of ${percent(running.limit, units)}.`;
}

/** What the second remedy does on the bench, beside the first one. */
export function bench(first: Spreads, { oneOpen }: Facts, units: UnitChoice): string {
	const { spread } = oneOpen.solved;
	const than =
		spread > first.oneOpen ? "more than" : spread < first.oneOpen ? "less than" : "as much as";
	return (
		`On the bench with one port open at a time it spreads by ${percent(spread, units)}, ` +
		`${than} the wider log's ${percent(first.oneOpen, units)} and ${standing(oneOpen)} the limit of ${percent(oneOpen.limit, units)}.`
	);
}

/** A spread; the number and its unit stay on one line. */
export function percent(value: number, units: UnitChoice): string {
	return `${figure(value, units.fraction)}\u00a0%`;
}

function rises(figures: readonly number[]): boolean {
	return figures.every((each, place) => place === 0 || each > (figures[place - 1] ?? 0));
}

function standing({ solved, limit }: Reading): string {
	return solved.spread > limit ? "over" : "within";
}

function ends({ solved }: Reading) {
	const sorted = solved.cylinders.toSorted((one, other) => one.deviation - other.deviation);
	const [least] = sorted;
	const most = sorted.at(-1);
	if (!least || !most) throw new Error("a solved draw has cylinders");
	return { least, most };
}
