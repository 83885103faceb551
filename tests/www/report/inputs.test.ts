import { describe, expect, it } from "vitest";
import { EXAMPLES } from "../../../www/src/examples";
import { entered, otherwise, together } from "../../../www/src/report/inputs";
import type { Study } from "../../../www/src/solver/types";
import { cellText, chosenUnits, UNITS } from "../../../www/src/units";
import { catalogue, example, read } from "../wasm";

const units = chosenUnits({});

function listed(study: Study) {
	return entered(study, catalogue, units);
}

/** What is said of one thing, line by line. */
function linesOf(study: Study, name: string): string[] {
	const found = listed(study)
		.flatMap(({ entries }) => entries)
		.find((each) => each.name === name);
	return (found?.lines ?? []).map((parts) => parts.join("; "));
}

/** Every number that stands in a part of a study. */
function numbersIn(part: unknown): number[] {
	if (typeof part === "number") return [part];
	return part !== null && typeof part === "object" ? Object.values(part).flatMap(numbersIn) : [];
}

describe("what was entered", () => {
	it("is told in words and units, loss by loss", () => {
		const study = example("v8_lid");
		expect(linesOf(study, "runner 1")).toEqual([
			"1. rounded entry; area 1664\u00a0mm²; radius 6\u00a0mm; by: Rennels 2012",
			"2. duct friction; area 1664\u00a0mm²; perimeter 168\u00a0mm; length 110\u00a0mm; roughness 0.1\u00a0mm",
			"3. bend; area 1664\u00a0mm²; perimeter 168\u00a0mm; angle 35\u00a0°; axis radius 70\u00a0mm; roughness 0.1\u00a0mm; by: Rennels 2012",
		]);
		expect(linesOf(study, "blower")).toEqual([
			"pressure 186\u00a0kPa abs; temperature 101.85\u00a0°C; pressure typed",
		]);
	});

	it("is told in the units that the study asks for", () => {
		const inches = chosenUnits({ length: "in", pressure: "psi gauge" }, 101_325);
		const groups = entered(example("v8_lid"), catalogue, inches);
		const text = JSON.stringify(groups);
		expect(text).toContain("radius 0.2362205\u00a0in");
		expect(text).toMatch(/pressure 12\.28\d*\u00a0psi gauge/);
	});

	it.each(EXAMPLES)("leaves out no number of %s", (name) => {
		const study = example(name);
		const text = ` ${JSON.stringify(listed(study)).replace(/[^\w.+-]/g, " ")} `;
		const parts = [study.engine, study.network, study.coolers, { ...study.settings, units: null }];
		// Whatever it measures: one of the units that it may be told in gives a text that is there.
		const missing = numbersIn(parts).filter(
			(value) =>
				![...Object.values(units), UNITS.pressure[0]].some(
					(unit) => typeof unit === "object" && text.includes(` ${cellText(value, unit)} `),
				),
		);
		expect(missing).toEqual([]);
	});

	it("tells lists: schedules, valves, blowers and readings", () => {
		const { notes, ...rest } = example("v8_lid");
		const [first, ...branches] = rest.network.branches;
		const study = read({
			...rest,
			notes,
			settings: {
				...rest.settings,
				bench: { ...rest.settings.bench, readings: [{ depression: 2500, flow: 0.05 }] },
			},
			network: {
				nodes: rest.network.nodes.map((node) =>
					node.id === "port 1"
						? {
								...node,
								valve: {
									diameter: 0.04,
									lift: 0.01,
									count: 2,
									dischargeTable: [
										[0, 0.6],
										[0.25, 0.5],
									],
								},
							}
						: node,
				),
				branches: [
					{
						...first,
						losses: [
							{
								kind: "schedule",
								roughness: 0.0001,
								stations: [
									{ at: 0, area: 0.008 },
									{ at: 0.12, area: 0.006 },
								],
							},
						],
					},
					...branches,
				],
			},
		});
		const id = first?.id ?? "";
		expect(linesOf(study, id)[0]).toContain("stations mm mm²: 0 8000; 120 6000");
		expect(linesOf(study, "port 1")).toEqual([
			expect.stringMatching(/^valve; .*40\u00a0mm.*10\u00a0mm/),
			"discharge coefficient over lift/diameter: 0 0.6; 0.25 0.5",
		]);
		expect(linesOf(study, "Flow bench").at(-1)).toMatch(/^reading 1; .*2\.5\u00a0kPa/);
	});

	it("joins what says the same, and tells versions apart", () => {
		const study = example("v8_lid");
		const [cylinders] = listed(study).filter(({ title }) => title === "Cylinders");
		expect(together(cylinders?.entries ?? []).map(({ name }) => name)).toEqual([
			"1, 3, 5, 7",
			"2, 4, 6, 8",
		]);
		const [, ...others] = study.network.branches;
		const wider = others.map((branch) =>
			branch.id === "window 7"
				? { ...branch, losses: [{ kind: "opening", area: 0.0021, dischargeCoefficient: 0.7 }] }
				: branch,
		);
		const version = { ...study, network: { ...study.network, branches: wider } } as Study;
		const found = otherwise(listed(study), listed(version));
		expect(found.gone).toEqual([study.network.branches[0]?.id]);
		expect(found.entries.map(({ name }) => name)).toEqual(["window 7"]);
		expect(otherwise(listed(study), listed(study))).toEqual({ entries: [], gone: [] });
	});
});
