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
	const figures = points.map(figuresOf);
	const others = columnsOf(points, units, boostNode)
		.filter(({ key }) => key !== "air" && key !== "spread")
		.map(({ key, label, unit, value }): Wanted => {
			const values = figures.map((each) => {
				const found = each && value(each);
				return found === null ? null : shown(found, unit);
			});
			const least = shownSpan(LEAST[key] ?? 0, unit);
			const reach = key === "loss" ? { reach: [0] } : {};
			return { title: label, series: [{ name: "", values }], least, ...reach };
		});
	return [sharesOver(figures, names, limit, units), spreadOver(figures, limit, units), ...others];
}

/** The chart of the cylinders' deviations; null where there are no figures. */
export function sharesOver(
	points: readonly (Pick<PointFigures, "shares"> | null)[],
	names: readonly string[],
	limit: number,
	{ fraction }: UnitChoice,
): Wanted {
	return {
		title: withUnit("Share of each cylinder, from the mean", fraction),
		series: names.map((name, cylinder) => ({
			name,
			values: points.map((each) => each && shown(deviationOf(each, cylinder), fraction)),
		})),
		least: shown(limit, fraction),
		within: [shown(-limit / 2, fraction), shown(limit / 2, fraction)],
	};
}

/** The chart of the spread; null where there are no figures. */
export function spreadOver(
	points: readonly (Pick<PointFigures, "spread"> | null)[],
	limit: number,
	{ fraction }: UnitChoice,
): Wanted {
	const at = shown(limit, fraction);
	return {
		title: withUnit("Spread", fraction),
		series: [{ name: "", values: points.map((each) => each && shown(each.spread, fraction)) }],
		least: at,
		within: [0, at],
	};
}
