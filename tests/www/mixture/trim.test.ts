import { describe, expect, it } from "vitest";
import { hottest, leaner, runs, trimmable, trimTable } from "../../../www/src/mixture/trim";
import type { CylinderMixture, MixtureAnswer, Solved, Study } from "../../../www/src/solver/types";
import { chosenUnits } from "../../../www/src/units";
import { drawn, example, read, solve } from "../wasm";

const UNITS = chosenUnits({ temperature: "degC" }, 101_325);

function running(study: Study): { solved: Solved; mixture: MixtureAnswer } {
	const solved = drawn(solve(study), "running");
	if (!solved.mixture) throw new Error("a running draw without a mixture");
	return { solved, mixture: solved.mixture };
}

function withFuel(name: string, setting: string): Study {
	const study = example(name);
	return read({ ...study, engine: { ...study.engine, fuel: { setting, lambda: 0.85 } } });
}

describe("the side on which a cylinder errs", () => {
	for (const name of ["blown_v8", "v8_lid", "twin_feed"])
		it(`is lean for an overfed cylinder and rich for a starved one with equal fuel: ${name}`, () => {
			const study = withFuel(name, "equalPerPort");
			const { solved, mixture } = running(study);
			const { limit } = study.settings.running;
			const told = mixture.cylinders.map((each) => runs(each, mixture, limit));
			const states = solved.cylinders.map(({ state }) => state);
			expect(told).toEqual(
				states.map((state) => ({ overfed: "lean", starved: "rich" })[state as string] ?? state),
			);
			expect(told).toContain("lean");
			expect(told).toContain("rich");
			mixture.cylinders.forEach((each, place) => {
				const { deviation } = solved.cylinders[place] ?? { deviation: 0 };
				expect(leaner(each, mixture)).toBeCloseTo(deviation, 9);
				// More air wants more fuel.
				expect(each.trim).toBeCloseTo(deviation, 9);
			});
			const overfed = solved.cylinders.filter(({ state }) => state === "overfed");
			expect(overfed.map(({ cylinder }) => cylinder)).toEqual(
				expect.arrayContaining(mixture.atRisk),
			);
			expect(mixture.atRisk).not.toHaveLength(0);
		});

	it("is none within half the limit, and not told within the doubt", () => {
		const mixture = { lambda: 1 } as MixtureAnswer;
		const cylinder = (lambda: number, doubt: number, trim: number | null = 0) =>
			({ lambda, doubt, trim }) as CylinderMixture;
		expect(runs(cylinder(1.01, 0.002), mixture, 0.004)).toBe("lean");
		expect(runs(cylinder(0.99, 0.002), mixture, 0.004)).toBe("rich");
		expect(runs(cylinder(1.0019, 0), mixture, 0.004)).toBe("even");
		expect(runs(cylinder(0.99, 0.02), mixture, 0.004)).toBe("tooCloseToTell");
		expect(runs(cylinder(1.1, 0, null), mixture, 0.004)).toBeNull();
	});
});

describe("fuel before the manifold", () => {
	it("has no trim, no table and no lean or rich cylinder", () => {
		const study = withFuel("blown_v8", "upstream");
		const { solved, mixture } = running(study);
		expect(trimmable(mixture)).toBe(false);
		expect(trimTable(solved, UNITS)).toBeNull();
		for (const each of mixture.cylinders) expect(runs(each, mixture, 0.004)).toBeNull();
	});
});

describe("the hottest charge", () => {
	const mixture = (...warmer: number[]) =>
		({
			cylinders: warmer.map((each, place) => ({ cylinder: String(place + 1), warmer: each })),
		}) as MixtureAnswer;

	it("is named, also of several, and not where all are as warm", () => {
		expect([...hottest(mixture(-1, 3, 0.5))]).toEqual(["2"]);
		expect([...hottest(mixture(-1, 1, 1.01, 0.5))]).toEqual(["2", "3"]);
		expect(hottest(mixture(0, 1e-13, 0)).size).toBe(0);
	});
});

describe("the table of trims", () => {
	it("has units in its headings, plain numbers, and fuel taken from the starved cylinder", () => {
		const { solved } = running(withFuel("blown_v8", "equalPerPort"));
		const [headings, ...rows] = trimTable(solved, UNITS) ?? [];
		expect(headings).toEqual([
			"Cylinder",
			"Speed, rpm",
			"Trim of fuel, %",
			"Air from mean, %",
			"Lambda",
			"Air-fuel ratio by mass",
			"Doubt of air and lambda, ±%",
			"Charge, °C",
			"Charge from mean, K",
		]);
		expect(rows).toHaveLength(8);
		for (const row of rows) for (const text of row) expect(text).toMatch(/^-?\d+(\.\d+)?$/);
		const starved = solved.cylinders.find(({ state }) => state === "starved");
		const row = rows.find(([cylinder]) => cylinder === starved?.cylinder);
		expect(Number(row?.[2])).toBeLessThan(0);
	});
});
