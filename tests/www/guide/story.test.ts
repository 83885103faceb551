import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { factsOf, spreadsOf, widened } from "../../../www/src/guide/facts";
import * as story from "../../../www/src/guide/story";
import type { Study } from "../../../www/src/solver/types";
import { chosenUnits } from "../../../www/src/units";
import { catalogue, read, solve } from "../wasm";

const units = chosenUnits(undefined);
const header = catalogue.nodes.find(({ kind }) => kind === "header");
/** The sentences with plain spaces, as they are read. */
const plainly =
	<Given extends unknown[]>(say: (...given: Given) => string) =>
	(...given: Given) =>
		say(...given).replaceAll("\u00a0", " ");
const verdict = plainly(story.verdict);
const pattern = plainly(story.pattern);
const cause = plainly(story.cause);
const change = plainly(story.change);
const bench = plainly(story.bench);
const example = (name: string): Study =>
	read(
		JSON.parse(
			readFileSync(new URL(`../../../examples/${name}/network.json`, import.meta.url), "utf8"),
		),
	);
const facts = (study: Study) => {
	const found = factsOf(solve(study));
	if (!found) throw new Error("a draw was refused");
	return found;
};

const log = example("inline_log");
const [found, wider, tapered] = [log, widened(log, 1.5), example("tapered_log")].map(facts) as [
	ReturnType<typeof facts>,
	ReturnType<typeof facts>,
	ReturnType<typeof facts>,
];

/** The same figures the other way round, as an answer that was not foreseen. */
function turned(reading: typeof found.running): typeof found.running {
	const { solved, limit } = reading;
	const cylinders = solved.cylinders.toReversed();
	return { limit, solved: { ...solved, cylinders, spread: limit / 2 } };
}

describe("the verdict", () => {
	test("names who gets least and most, with their figures, and how the limit stands", () => {
		const text = verdict(found, units);
		const deviation = (id: string) =>
			found.running.solved.cylinders.find(({ cylinder }) => cylinder === id)?.deviation ?? 0;
		expect(text).toContain(`cylinder 1 gets least, −${(-100 * deviation("1")).toFixed(2)} %`);
		expect(text).toContain(`cylinder 4 most, +${(100 * deviation("4")).toFixed(2)} %`);
		expect(text).toContain(`${(100 * found.running.solved.spread).toFixed(2)} %, over the limit`);
	});

	test("says so when the spread is within the limit", () => {
		expect(verdict({ ...found, running: turned(found.running) }, units)).toContain(
			"within the limit",
		);
	});
});

describe("the pattern", () => {
	test("is told where it is one", () => {
		expect(pattern(found, units)).toContain("the longer the way from the source, the more");
	});

	test("is not told where there is none", () => {
		const text = pattern({ ...found, allOpen: turned(found.allOpen) }, units);
		expect(text).not.toContain("before it");
		expect(text).toContain("cylinder 4 gets most");
	});
});

test("the cause is the largest part of the gap that pulls its way, with the law as the catalogue has it", () => {
	const { gap } = found.running.solved;
	const pulling = gap?.parts.filter(({ amount }) => amount * gap.total > 0) ?? [];
	const largest = pulling.toSorted(
		(one, other) => Math.abs(other.amount) - Math.abs(one.amount),
	)[0];
	const text = cause(found, log, header, units);
	expect(text).toContain(largest?.label);
	expect(text).toContain(header?.equation);
	expect(text).toContain(header?.source);
	expect(text).toMatch(/^Cylinder 4 has \d\.\d+ kPa more at its port than cylinder 1\./);
	expect(text).toMatch(/Mach 0\.\d+ in run 1 and 0\.\d+ in run 4/);
});

describe("a change", () => {
	test("is told the way it went", () => {
		expect(change(spreadsOf(found), wider, units)).toMatch(/fell from .* within the limit/);
		expect(change(spreadsOf(found), tapered, units)).toMatch(/fell from .* within the limit/);
		expect(change(spreadsOf(wider), found, units)).toMatch(/rose from .* over the limit/);
		expect(change(spreadsOf(found), found, units)).toMatch(/is as before/);
	});

	test("of the taper is paid for on the bench with one port open, and that is said", () => {
		expect(bench(spreadsOf(wider), tapered, units)).toMatch(/more than .* over the limit/);
		expect(bench(spreadsOf(tapered), wider, units)).toMatch(/less than .* within the limit/);
	});
});

test("the wider log has wider headers and runs, and the same runners", () => {
	const area = (study: Study, id: string) => {
		const [loss] = study.network.branches.find((each) => each.id === id)?.losses ?? [];
		return loss && "area" in loss ? loss.area : 0;
	};
	const wide = widened(log, 1.5);
	expect(area(wide, "run 3") / area(log, "run 3")).toBeCloseTo(1.5, 6);
	expect(area(wide, "run 1") / area(log, "run 1")).toBeCloseTo(1.5, 6);
	expect(area(wide, "runner 3")).toBe(area(log, "runner 3"));
	const warnings = solve(wide).warnings.map(({ kind }) => kind);
	expect(warnings).not.toContain("sectionJump");
});
