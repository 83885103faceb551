/** What is drawn, read off and listed over speed, in the units of the study. */
import type { PointFigures, SpeedPoint } from "../solver/types";
import { figure, shown, shownSpan, type Unit, type UnitChoice, withUnit } from "../units";
import type { Wanted } from "./chart";
import { deviationOf, figuresOf } from "./figures";

/** One figure of the running draw. */
export interface Column {
	readonly key: string;
	/** With its unit. */
	readonly label: string;
	readonly unit: Unit;
	readonly value: (figures: PointFigures) => number | null;
}

/** The figures that the study has at any speed of its range. */
export function columnsOf(
	points: readonly SpeedPoint[],
	units: UnitChoice,
	boostNode: string | undefined,
): Column[] {
	const { boost, fraction, massFlow, number, pressureDifference, temperature } = units;
	const where = boostNode === undefined ? "" : ` at ${boostNode}`;
	const column = (key: string, label: string, unit: Unit, value: Column["value"]): Column => ({
		key,
		label,
		unit,
		value,
	});
	const all = [
		column("spread", withUnit("Spread", fraction), fraction, ({ spread }) => spread),
		column("air", withUnit("Total air", massFlow), massFlow, ({ total }) => total),
		column(
			"charge",
			withUnit("Charge, mean", temperature),
			temperature,
			(each) => each.chargeTemperature,
		),
		column("boost", `Boost${where}, static, ${boost.label} gauge`, boost, (each) => each.boost),
		column(
			"loss",
			withUnit("Lost up to the ports", pressureDifference),
			pressureDifference,
			({ loss }) => loss,
		),
		column("ratio", "Pressure ratio of the blower", number, ({ pressureRatio }) => pressureRatio),
	];
	return all.filter(({ value }) =>
		points.some((point) => {
			const figures = figuresOf(point);
			return figures !== null && value(figures) !== null;
		}),
	);
}

/** A figure as text; a dash where there is none. */
export function columnText({ unit, value }: Column, figures: PointFigures | null): string {
	const found = figures && value(figures);
	return found === null ? "–" : figure(found, unit);
}

/** The smallest span of a scale, in SI, below which a line is as good as level. */
const LEAST: Readonly<Record<string, number>> = {
	charge: 2,
	boost: 2000,
	loss: 500,
	ratio: 0.05,
};

/** The charts: deviations by cylinder, then the figures of the whole engine. */
export function wantedOf(
	points: readonly SpeedPoint[],
	names: readonly string[],
	limit: number,
	units: UnitChoice,
	boostNode: string | undefined,
): Wanted[] {
	const percent = units.fraction;
	const inUnit = (value: number) => shown(value, percent);
	const along = (value: (figures: PointFigures) => number | null, unit: Unit) =>
		points.map((point) => {
			const figures = figuresOf(point);
			const found = figures && value(figures);
			return found === null ? null : shown(found, unit);
		});
	const shares: Wanted = {
		title: withUnit("Share of each cylinder, from the mean", percent),
		series: names.map((name, cylinder) => ({
			name,
			values: along((figures) => deviationOf(figures, cylinder), percent),
		})),
		least: inUnit(limit),
		within: [inUnit(-limit / 2), inUnit(limit / 2)],
	};
	const others = columnsOf(points, units, boostNode)
		.filter(({ key }) => key !== "air")
		.map(({ key, label, unit, value }): Wanted => {
			const series = [{ name: "", values: along(value, unit) }];
			if (key === "spread") {
				const at = inUnit(limit);
				return { title: label, series, least: at, within: [0, at] };
			}
			const least = shownSpan(LEAST[key] ?? 0, unit);
			return { title: label, series, least, ...(key === "loss" ? { reach: [0] } : {}) };
		});
	return [shares, ...others];
}
