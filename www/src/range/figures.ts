/** What a range of speeds comes to: its worst point, its refusals, and sentences on them. */
import { maxIndex, minIndex } from "d3-array";
import type { PointFigures, SpeedPoint } from "../solver/types";
import { figure, type UnitChoice } from "../units";

/** Speeds next to each other that are refused for one reason. */
export interface Refused {
	/** Places of the first and the last of them. */
	readonly from: number;
	readonly to: number;
	readonly sentence: string;
}

/** The figures of a speed; null where it is refused. */
export function figuresOf(point: SpeedPoint | undefined): PointFigures | null {
	return point?.outcome.kind === "solved" ? point.outcome : null;
}

/** Deviation of a cylinder from the mean share [-]. */
export function deviationOf({ shares }: PointFigures, cylinder: number): number {
	return (shares[cylinder] ?? 0) * shares.length - 1;
}

/** The place of the speed with the largest spread; -1 when none is solved. */
export function worstOf(points: readonly SpeedPoint[]): number {
	return maxIndex(points, (point) => figuresOf(point)?.spread ?? Number.NaN);
}

/** The place of the speed next to this one [rev/s]. */
export function nearest(points: readonly SpeedPoint[], speed: number): number {
	return minIndex(points, (point) => Math.abs(point.speed - speed));
}

/** Refused speeds, those next to each other together: a reason that only names another figure is the same. */
export function refusals(points: readonly SpeedPoint[]): Refused[] {
	const found: Refused[] = [];
	const like = (sentence: string) => sentence.replace(/\d[\d.]*/g, "#");
	points.forEach(({ outcome }, index) => {
		if (outcome.kind !== "refused") return;
		const last = found.at(-1);
		if (last?.to === index - 1 && like(last.sentence) === like(outcome.sentence))
			found[found.length - 1] = { ...last, to: index };
		else found.push({ from: index, to: index, sentence: outcome.sentence });
	});
	return found;
}

/** Where refused speeds lie, and why. */
export function refusedSentence(
	{ from, to, sentence }: Refused,
	points: readonly SpeedPoint[],
	units: UnitChoice,
): string {
	const at = (place: number) => figure(points[place]?.speed ?? 0, units.speed);
	const { label } = units.speed;
	const where = from === to ? `At ${at(from)} ${label}` : `From ${at(from)} to ${at(to)} ${label}`;
	return `${where} there is a gap. ${sentence}`;
}

/** The worst speed, named. */
export function worstSentence(
	points: readonly SpeedPoint[],
	names: readonly string[],
	limit: number,
	units: UnitChoice,
): string {
	const solved = points.flatMap((point) => figuresOf(point) ?? []);
	const place = worstOf(points);
	const worst = figuresOf(points[place]);
	if (!worst) return "No speed of the range has an answer.";
	const percent = units.fraction;
	const text = (spread: number) => `${figure(spread, percent)} ${percent.label}`;
	const over = solved.filter(({ spread }) => spread > limit).length;
	const limits = `the limit of ${text(limit)}`;
	const least = Math.min(...solved.map(({ spread }) => spread));
	if (text(least) === text(worst.spread)) {
		const beside = over === 0 ? "within" : "over";
		return `The spread is ${text(worst.spread)} at every speed, ${beside} ${limits}.`;
	}
	const speed = `${figure(points[place]?.speed ?? 0, units.speed)} ${units.speed.label}`;
	const off = (cylinder: number) => text(Math.abs(deviationOf(worst, cylinder)));
	const [most, fewest] = [maxIndex(worst.shares), minIndex(worst.shares)];
	const between = `cylinder ${names[most]} gets ${off(most)} more than the mean, cylinder ${names[fewest]} gets ${off(fewest)} less`;
	const beside =
		over === 0
			? `within ${limits}, as at every speed`
			: over === solved.length
				? `over ${limits}, as at every speed`
				: `over ${limits}, as at ${over} of ${solved.length} speeds`;
	return `Worst at ${speed}: spread ${text(worst.spread)}, ${beside}. There ${between}.`;
}
