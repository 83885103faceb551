/** The answer of one draw as a CSV file: what it is of, then shares, branches, nodes and pressure budgets. */
import { fallOf } from "../sketch/flowing";
import type { DrawAnswer, Solved, Study } from "../solver/types";
import { csvText } from "../table/csv";
import { plainFigure, type UnitChoice, withUnit } from "../units";
import { DRAW_WORDS, STATE_WORDS } from "../view/words";
import { download, fileName } from "./file";

/** A draw's answer, and what it is of. */
export interface Results {
	readonly study: Study;
	/** “base” or its variant; empty without variants. */
	readonly version: string;
	readonly program: string;
	readonly draw: DrawAnswer;
	readonly units: UnitChoice;
}

type Row = readonly string[];

/** Hands the results to the browser as a download. */
export function saveResults(results: Results) {
	const { study, version, draw } = results;
	const name = fileName(`${study.name} ${version} ${DRAW_WORDS[draw.draw]} results`);
	download(csvText(resultsTable(results)), "text/csv;charset=utf-8", `${name}.csv`);
}

/** All tables one below the other, each with its headings first and an empty line before it. */
export function resultsTable({ study, version, program, draw, units }: Results): Row[] {
	const { outcome } = draw;
	if (outcome.kind === "refused")
		throw new Error("the draw looked at has no answer; look at another, or mend what it names");
	const { fraction, massFlow } = units;
	const head: Row[] = [
		["Study", study.name],
		...(version ? [["Version", version]] : []),
		["Draw", DRAW_WORDS[draw.draw]],
		["Program", `Evenport ${program}`],
		["Standing", "Estimate, not a measurement"],
		[withUnit("Spread", fraction), plainFigure(outcome.spread, fraction)],
		[withUnit("Limit of the spread", fraction), plainFigure(draw.limit, fraction)],
		[withUnit("Total air", massFlow), plainFigure(outcome.total, massFlow)],
	];
	const tables = [
		shares(outcome, units),
		branches(outcome, units),
		nodes(outcome, units),
		budgets(outcome, units),
	];
	return [...head, ...tables.flatMap((table) => [[""], ...table])];
}

function shares({ cylinders }: Solved, units: UnitChoice): Row[] {
	const { fraction, massFlow, pressure, temperature } = units;
	return [
		[
			"Cylinder",
			withUnit("Share", fraction),
			withUnit("From mean", fraction),
			`Doubt, ±${fraction.label}`,
			"State",
			withUnit("Air", massFlow),
			withUnit("Pressure at the port", pressure),
			withUnit("Temperature at the port", temperature),
		],
		...cylinders.map((each) => [
			each.cylinder,
			plainFigure(each.share, fraction),
			plainFigure(each.deviation, fraction),
			plainFigure(each.doubt, fraction),
			STATE_WORDS[each.state].word,
			plainFigure(each.flow, massFlow),
			plainFigure(each.pressure, pressure),
			plainFigure(each.temperature, temperature),
		]),
	];
}

function branches(solved: Solved, units: UnitChoice): Row[] {
	const { massFlow, velocity, number, pressureDifference } = units;
	return [
		[
			"Branch",
			withUnit("Air", massFlow),
			withUnit("Falls", pressureDifference),
			withUnit("Largest velocity", velocity),
			"Largest Mach number",
			"Choked",
		],
		...solved.branches.map((each) => [
			each.branch,
			plainFigure(each.flow, massFlow),
			plainFigure(fallOf(each), pressureDifference),
			plainFigure(each.velocity, velocity),
			plainFigure(each.mach, number, 3),
			each.choked ? "yes" : "no",
		]),
	];
}

function nodes(solved: Solved, { pressure, temperature }: UnitChoice): Row[] {
	return [
		[
			"Node",
			withUnit("Stagnation pressure", pressure),
			withUnit("Stagnation temperature", temperature),
		],
		...solved.nodes.map((each) => [
			each.node,
			plainFigure(each.pressure, pressure),
			plainFigure(each.temperature, temperature),
		]),
	];
}

function budgets({ paths }: Solved, { pressureDifference }: UnitChoice): Row[] {
	return [
		[
			"Budget of port",
			"Cylinder",
			"No.",
			"Where",
			"Loss",
			"What costs it",
			withUnit("Falls", pressureDifference),
		],
		...paths.flatMap(({ port, cylinder, items, fall }) => [
			...items.map((item, place) => [
				port,
				cylinder,
				String(place + 1),
				item.element,
				item.loss === null ? "" : String(item.loss + 1),
				item.label,
				plainFigure(item.fall, pressureDifference),
			]),
			[port, cylinder, "", "", "", "Whole fall to the port", plainFigure(fall, pressureDifference)],
		]),
	];
}
