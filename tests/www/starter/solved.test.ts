import { describe, expect, test } from "vitest";
import type { Solved, Study } from "../../../www/src/solver/types";
import { catalogue, drawn, solve } from "../wasm";
import { byBank, choose, ENGINES, FEEDS, made, POCKETS } from "./manifolds";

/** Notes that a plain manifold of typical sizes cannot do without. */
const UNDERSTOOD = new Set(["closeLosses", "jetInSight", "assumption"]);

const DRAWS = ["running", "cycleMean", "benchOneAtATime", "benchAllOpen"] as const;

/** Mirror images differ by rounding, and by where Newton's method stopped. */
const ROUNDING = 1e-7;

const largest = (figures: readonly number[]) => Math.max(...figures.map(Math.abs));

function unlike(banks: readonly (readonly number[])[]): number {
	const [first = []] = banks;
	return largest(banks.flatMap((bank) => bank.map((each, place) => each - (first[place] ?? 0))));
}

function unmirrored(banks: readonly (readonly number[])[]): number {
	return largest(
		banks.flatMap((bank) => bank.map((each, place) => each - (bank.at(-1 - place) ?? 0))),
	);
}

const benches = (study: Study): number[][][] => {
	const answer = solve(study);
	return (["benchOneAtATime", "benchAllOpen"] as const).map((draw) =>
		byBank(study, drawn(answer, draw).cylinders),
	);
};

for (const engine of ENGINES) {
	const name = engine.layout === "singleBank" ? `single bank of ${engine.inBank}` : engine.layout;
	describe(name, () => {
		for (const feed of FEEDS) {
			test(`fed ${feed}: solved in every draw with its certificate, and only notes that are understood`, () => {
				for (const pockets of POCKETS) {
					const study = made(choose(engine, feed, pockets));
					const answer = solve(study);
					expect(answer.runningNeeds).toEqual([]);
					const solved: Solved[] = DRAWS.map((draw) => drawn(answer, draw));
					for (const { certificate, cylinders, secondSolution } of solved) {
						expect(certificate.imbalance).toBeLessThanOrEqual(1e-10);
						expect(certificate.closure).toBeLessThanOrEqual(1e-9);
						expect(cylinders).toHaveLength(study.engine.cylinders.length);
						expect(secondSolution).toBeNull();
					}
					const warnings = [...answer.warnings, ...solved.flatMap((each) => each.warnings)];
					const others = warnings.filter(({ kind }) => !UNDERSTOOD.has(kind));
					expect(others.map(({ element, message }) => `${element} ${message}`)).toEqual([]);
				}
			});

			test(`fed ${feed}: banks opposite each other get the same on the bench`, () => {
				for (const pockets of POCKETS)
					for (const banks of benches(made(choose(engine, feed, pockets))))
						expect(unlike(banks)).toBeLessThan(ROUNDING);
			});
		}

		for (const feed of ["middle", "bothEnds", "above"] as const) {
			test(`fed ${feed}: front and rear are mirror images on the bench`, () => {
				for (const pockets of ["perPort", "open"] as const)
					for (const banks of benches(made(choose(engine, feed, pockets))))
						expect(unmirrored(banks)).toBeLessThan(ROUNDING);
			});
		}

		test("fed from above, with a pocket per port or none, every cylinder gets the same in every draw", () => {
			for (const pockets of ["perPort", "open"] as const) {
				const answer = solve(made(choose(engine, "above", pockets)));
				for (const draw of DRAWS) expect(drawn(answer, draw).spread).toBeLessThan(ROUNDING);
			}
		});

		test("fed at one end, the log regains pressure: with all ports open each gets more than the one before it", () => {
			for (const pockets of ["perPort", "open"] as const) {
				const [, allOpen = []] = benches(made(choose(engine, "oneEnd", pockets)));
				for (const bank of allOpen)
					for (const [place, each] of bank.entries())
						expect(each).toBeGreaterThan(bank[place - 1] ?? Number.NEGATIVE_INFINITY);
			}
		});

		test("fed at one end, with one port open only friction is left: each gets less than the one before it", () => {
			for (const pockets of ["perPort", "open"] as const) {
				const [oneOpen = []] = benches(made(choose(engine, "oneEnd", pockets)));
				for (const bank of oneOpen)
					for (const [place, each] of bank.entries())
						expect(each).toBeLessThan(bank[place - 1] ?? Number.POSITIVE_INFINITY);
			}
		});
	});
}

test("a wider log feeds more evenly, a narrower one less", () => {
	const spreadAt = (logArea: number) =>
		drawn(
			solve(made(choose({ layout: "inline4", inBank: 1 }, "oneEnd", "open"), { logArea })),
			"running",
		).spread;
	expect(spreadAt(0.006)).toBeLessThan(spreadAt(0.0036));
	expect(spreadAt(0.0025)).toBeGreaterThan(spreadAt(0.0036));
});

test("a pair of neighbours behind one window gets the same", () => {
	for (const feed of FEEDS) {
		for (const banks of benches(made(choose({ layout: "v8", inBank: 1 }, feed, "perPair"))))
			for (const bank of banks)
				for (const first of [0, 2])
					expect(bank[first]).toBeCloseTo(bank[first + 1] ?? Number.NaN, 7);
	}
});

test("what the starter leaves out is what the catalogue has a usual value for", () => {
	const study = made(choose({ layout: "v8", inBank: 1 }, "above", "perPort"));
	const depression = catalogue.bench.find(({ name }) => name === "depression");
	expect(study.settings.bench.depression).toBe(depression?.default);
});
