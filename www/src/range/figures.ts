/** What a range of speeds comes to: its worst point, its refusals, and sentences on them. */
import { extent, maxIndex, minIndex } from "d3-array";
import type { PointFigures, SpeedPoint } from "../solver/types";
import { figure, type UnitChoice } from "../units";

/** Values next to each other that are refused for one reason. */
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
export function deviationOf({ shares }: Pick<PointFigures, "shares">, cylinder: number): number {
	return (shares[cylinder] ?? 0) * shares.length - 1;
}

/** Spreads that differ by less are the same on the page [-]. */
const SAME = 5e-5;

/** The place of the speed with the largest spread; -1 when all are alike, or none is solved. */
export function worstOf(points: readonly SpeedPoint[]): number {
	const spreads = points.map((point) => figuresOf(point)?.spread ?? Number.NaN);
	const [least = 0, most = 0] = extent(spreads);
	return most - least < SAME ? -1 : maxIndex(spreads);
}

/** The place of the speed next to this one [rev/s]. */
export function nearest(points: readonly SpeedPoint[], speed: number): number {
	return minIndex(points, (point) => Math.abs(point.speed - speed));
}

/** Refused speeds, those next to each other together. */
export function refusals(points: readonly SpeedPoint[]): Refused[] {
	return gapsOf(
		points.map(({ outcome }) => (outcome.kind === "refused" ? outcome.sentence : null)),
	);
}

/** Gaps by their reasons, null where there is none: a reason that only names another figure is the same. */
export function gapsOf(reasons: readonly (string | null)[]): Refused[] {
	const found: Refused[] = [];
	const like = (sentence: string) => sentence.replace(/\d[\d.]*/g, "#");
	reasons.forEach((sentence, index) => {
		if (sentence === null) return;
		const last = found.at(-1);
		if (last?.to === index - 1 && like(last.sentence) === like(sentence))
			found[found.length - 1] = { ...last, to: index };
		else found.push({ from: index, to: index, sentence });
	});
	return found;
}

/** Where refused speeds lie, and why. */
export function refusedSentence(
	refused: Refused,
	points: readonly SpeedPoint[],
	units: UnitChoice,
): string {
	const at = (place: number) => figure(points[place]?.speed ?? 0, units.speed);
	return gapSentence(refused, at, units.speed.label);
}

/** Where a gap lies, and why; the unit may be nothing. */
export function gapSentence(
	{ from, to, sentence }: Refused,
	at: (place: number) => string,
	unit: string,
): string {
	const where = from === to ? `At ${at(from)}` : `From ${at(from)} to ${at(to)}`;
	return `${`${where} ${unit}`.trimEnd()} there is a gap. ${sentence}`;
}

/** The worst speed, named. */
export function worstSentence(
	points: readonly SpeedPoint[],
	names: readonly string[],
	limit: number,
	units: UnitChoice,
): string {
	const solved = points.flatMap((point) => figuresOf(point) ?? []);
	const first = solved[0];
	if (!first) return "No speed of the range has an answer.";
	const percent = units.fraction;
	const text = (spread: number) => `${figure(spread, percent)} ${percent.label}`;
	const over = solved.filter(({ spread }) => spread > limit).length;
	const every = solved.length === points.length ? "every speed" : "every speed that is solved";
	const limits = `the limit of ${text(limit)}`;
	const place = worstOf(points);
	const worst = figuresOf(points[place]);
	if (!worst) {
		const beside = over === 0 ? "within" : "over";
		return `The spread is ${text(first.spread)} at ${every}, ${beside} ${limits}.`;
	}
	const speed = `${figure(points[place]?.speed ?? 0, units.speed)} ${units.speed.label}`;
	const off = (cylinder: number) => text(Math.abs(deviationOf(worst, cylinder)));
	const [most, fewest] = [maxIndex(worst.shares), minIndex(worst.shares)];
	const between = `cylinder ${names[most]} gets ${off(most)} more than the mean, cylinder ${names[fewest]} gets ${off(fewest)} less`;
	const beside =
		over === 0
			? `within ${limits}, as at ${every}`
			: over === solved.length
				? `over ${limits}, as at ${every}`
				: `over ${limits}, as at ${over} of ${solved.length} speeds`;
	return `Worst at ${speed}: spread ${text(worst.spread)}, ${beside}. There ${between}.`;
}
