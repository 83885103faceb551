/** Bench readings and what they become, as texts: on the page and for a spreadsheet. */
import type { Bench, ConvertedReading, FieldInfo, Reading } from "../solver/types";
import { figure, plainFigure, signed, type UnitChoice, withUnit } from "../units";

/** The headings of what is found of a reading. */
export function foundHeadings(units: UnitChoice): string[] {
	return [
		withUnit("Becomes", units.massFlow),
		withUnit("By the square root rule", units.massFlow),
		withUnit("The rule differs by", units.fraction),
		withUnit("Past a sharp edge", units.massFlow),
		withUnit("Effective area", units.area),
	];
}

/** What is found of a reading, in the order of the headings; dashes where there is nothing. */
export function foundTexts(found: ConvertedReading | undefined, units: UnitChoice): string[] {
	if (!found) return ["–", "–", "–", "–", "–"];
	const flow = (value: number) => figure(value, units.massFlow);
	return [
		`${flow(found.flow)}${found.choked ? " choked" : ""}`,
		flow(found.bySquareRoot),
		signed(found.bySquareRoot / found.flow - 1, units.fraction, 1),
		found.sharpEdged == null ? "–" : flow(found.sharpEdged),
		`${figure(found.effectiveArea, units.area)}${found.readChoked ? " choked" : ""}`,
	];
}

/** All readings with what they become, for a spreadsheet, the headings first. */
export function readingTable(
	readings: readonly Reading[],
	found: readonly (ConvertedReading | undefined)[],
	bench: Bench,
	infos: readonly FieldInfo[],
	units: UnitChoice,
): string[][] {
	const room: Partial<Record<string, number>> = {
		pressure: bench.ambientPressure,
		temperature: bench.ambientTemperature,
	};
	const headings = infos.map((info) => withUnit(info.label, units[info.quantity]));
	const rows = readings.map((reading, row) => {
		const values = reading as unknown as Partial<Record<string, number>>;
		const given = infos.map(({ name, quantity }) => {
			const value = values[name] ?? room[name];
			return value === undefined ? "" : plainFigure(value, units[quantity]);
		});
		const its = found[row];
		if (!its) return given;
		return [
			...given,
			plainFigure(its.flow, units.massFlow),
			plainFigure(its.bySquareRoot, units.massFlow),
			plainFigure(its.bySquareRoot / its.flow - 1, units.fraction, 1),
			its.sharpEdged == null ? "" : plainFigure(its.sharpEdged, units.massFlow),
			plainFigure(its.effectiveArea, units.area),
		];
	});
	return [[...headings, ...foundHeadings(units)], ...rows];
}
