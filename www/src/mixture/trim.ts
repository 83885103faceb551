/** What the page says of each cylinder's mixture, and the table of trims that is handed over. */
import type { CylinderMixture, MixtureAnswer, Solved } from "../solver/types";
import { plainFigure, type UnitChoice, withUnit } from "../units";

/** How a cylinder's mixture compares with the engine's. */
export type Runs = "lean" | "rich" | "even" | "tooCloseToTell";

/** A mixture is told by a word and a shape, never by colour alone; more air points up, as for shares. */
export const RUNS_WORDS: Readonly<Record<Runs, { word: string; shape: string }>> = {
	lean: { word: "lean", shape: "▲" },
	rich: { word: "rich", shape: "▼" },
	even: { word: "even", shape: "=" },
	tooCloseToTell: { word: "too close to tell", shape: "≈" },
};

/** Air over the air that its fuel needs, against the engine's; more air than the fuel allows for is lean. */
export function leaner({ lambda }: CylinderMixture, mixture: MixtureAnswer): number {
	return lambda / mixture.lambda - 1;
}

/** What a cylinder runs, by the same limit and doubt as its share; null where fuel goes with the air. */
export function runs(each: CylinderMixture, mixture: MixtureAnswer, limit: number): Runs | null {
	if (each.trim === null) return null;
	const by = leaner(each, mixture);
	if (Math.abs(by) <= limit / 2) return "even";
	if (Math.abs(by) <= each.doubt) return "tooCloseToTell";
	return by > 0 ? "lean" : "rich";
}

/** Differences of temperature smaller than this are the same on the page [K]. */
const SAME = 0.05;

/** The cylinders with the hottest charge; none when all are as warm. */
export function hottest({ cylinders }: MixtureAnswer): ReadonlySet<string> {
	const most = Math.max(...cylinders.map(({ warmer }) => warmer));
	if (most < SAME) return new Set();
	return new Set(
		cylinders.filter(({ warmer }) => most - warmer < SAME).map(({ cylinder }) => cylinder),
	);
}

/** Whether the fuel of each cylinder can be trimmed to even its mixture out. */
export function trimmable({ cylinders }: MixtureAnswer): boolean {
	return cylinders.length > 0 && cylinders.every(({ trim }) => trim !== null);
}

/** The trims as a table of texts, its headings first; null where there is nothing to trim. */
export function trimTable(solved: Solved, units: UnitChoice): string[][] | null {
	const { mixture, operating } = solved;
	if (!mixture || !operating || !trimmable(mixture)) return null;
	const { fraction, speed, temperature, temperatureDifference } = units;
	const air = new Map(solved.cylinders.map((each) => [each.cylinder, each.deviation]));
	const headings = [
		"Cylinder",
		withUnit("Speed", speed),
		withUnit("Trim of fuel", fraction),
		withUnit("Air from mean", fraction),
		"Lambda",
		"Air-fuel ratio by mass",
		`Doubt of air and lambda, ±${fraction.label}`,
		withUnit("Charge", temperature),
		withUnit("Charge from mean", temperatureDifference),
	];
	const rows = mixture.cylinders.map((each) => [
		each.cylinder,
		plainFigure(operating.speed, speed),
		plainFigure(each.trim ?? 0, fraction),
		plainFigure(air.get(each.cylinder) ?? 0, fraction),
		each.lambda.toFixed(3),
		each.airFuelRatio.toFixed(2),
		plainFigure(each.doubt, fraction),
		plainFigure(each.temperature, temperature),
		plainFigure(each.warmer, temperatureDifference),
	]);
	return [headings, ...rows];
}
