/** Versions beside each other, told from the built solver's own answers. */
import { describe, expect, it } from "vitest";
import { budgets, cell, deviations, spreads, table, wholes } from "../../../www/src/compare/rows";
import type { Study } from "../../../www/src/solver/types";
import { chosenUnits } from "../../../www/src/units";
import { drawn, example, solve } from "../wasm";

const units = chosenUnits(undefined);
const base = example("v8_lid");

/** The lid with another first window. */
function variant(area: number, more = false): Study {
	const study = structuredClone(base);
	const window = study.network.branches.find(({ id }) => id === "window 7");
	const opening = window?.losses[0];
	if (opening?.kind !== "opening" || !window) throw new Error("the example has changed");
	opening.area = area;
	if (more) window.losses.unshift({ kind: "typedK", k: 0.4, area, origin: "typed" });
	return study;
}

const told = [base, variant(0.0021), variant(0.0021, true)].map((study, place) => ({
	name: place === 0 ? null : `Variant ${place}`,
	answer: solve(study),
	errors: [],
}));
const draw = "benchOneAtATime";
const solved = told.map(({ answer }) => drawn(answer, draw));

describe("versions side by side", () => {
	it("have the spread of every draw, and its difference from the base", () => {
		const { heading, rows } = spreads(told, units);
		expect(heading).toBe("Spread, %");
		expect(rows.map(({ label }) => label)).toEqual([
			"Running",
			"Cycle mean",
			"Bench, one port at a time",
			"Bench, all ports open",
		]);
		const row = rows[2];
		expect(row?.values).toEqual(solved.map(({ spread }) => spread));
		if (!row) return;
		expect(cell(row, 0, true)).toBe((100 * (solved[0]?.spread ?? 0)).toFixed(2));
		const less = 100 * ((solved[1]?.spread ?? 0) - (solved[0]?.spread ?? 0));
		expect(less).toBeLessThan(-1);
		expect(cell(row, 1, true)).toBe(`−${Math.abs(less).toFixed(2)}`);
	});

	it("have their loss at the base's air: the bench's, times the square of the air", () => {
		const row = wholes(told, draw, units).rows.find(({ label }) => label.startsWith("Loss at"));
		const [first, second] = solved;
		const ratio = (first?.total ?? 0) / (second?.total ?? 1);
		expect(ratio).toBeLessThan(1);
		const [own = 0, other = 0] = row?.values ?? [];
		expect((other ?? 0) / (own ?? 1)).toBeCloseTo(ratio ** 2, 6);
	});

	it("have every cylinder with its state, in the engine's order", () => {
		const { rows } = deviations(told, draw, units);
		expect(rows.map(({ label }) => label)).toEqual(
			base.engine.cylinders.map(({ id }) => `Cyl. ${id}`),
		);
		const starved = solved[0]?.cylinders.findIndex(({ state }) => state === "starved") ?? -1;
		const row = rows[starved];
		expect(row && cell(row, 0, false)).toMatch(/^▼ −\d+\.\d\d$/);
	});

	it("have a port's losses at the same place in one row, which add up to the whole", () => {
		const { rows } = budgets(told, draw, "port 7", units);
		const own =
			rows.find(({ label }) => label === "window 7: loss by a typed K") ??
			rows.find(({ values }) => values[0] === null && values[2] !== null);
		expect(own?.values.slice(0, 2)).toEqual([null, null]);
		expect(rows.filter(({ values }) => values.includes(null))).toHaveLength(1);
		const whole = rows.at(-1);
		for (const column of [0, 1, 2]) {
			const sum = rows.slice(0, -1).reduce((all, { values }) => all + (values[column] ?? 0), 0);
			expect(sum).toBeCloseTo(whole?.values[column] ?? Number.NaN, 6);
		}
	});

	it("are a table that spreadsheets read: a heading, then rows with the signs they know", () => {
		const text = table(told, [spreads(told, units), deviations(told, draw, units)], true);
		expect(text[0]).toEqual(["", "Base", "Variant 1", "Variant 2"]);
		expect(text.every((row) => row.length === 4)).toBe(true);
		const spread = text.find(([label]) => label === "Spread, %: Bench, one port at a time");
		expect(Number(spread?.[2])).toBeLessThan(-1);
		expect(text.flat().join("")).not.toMatch(/[−±]/);
	});

	it("say nothing of a version without an answer", () => {
		const without = [told[0], { name: "new", answer: null, errors: [] }].filter((each) => !!each);
		const [row] = spreads(without, units).rows;
		expect(row && cell(row, 1, false)).toBe("–");
		expect(row && cell(row, 1, true)).toBe("–");
	});
});
