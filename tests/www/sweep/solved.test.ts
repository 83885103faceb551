/** Sweeps with the solver that the page runs. */
import { describe, expect, it } from "vitest";
import { put, type Sheet, valueAt } from "../../../www/src/network/edit";
import { sheetOf } from "../../../www/src/network/versions";
import { type Swept, sweptAt } from "../../../www/src/sweep/cells";
import { bestOf, figuresIn } from "../../../www/src/sweep/found";
import { type Axis, pointsOf, putAt } from "../../../www/src/sweep/plan";
import { chosenUnits } from "../../../www/src/units";
import { fieldAt } from "../../../www/src/view/bounds";
import { catalogue, drawn, example, many, solve } from "../wasm";

const UNITS = chosenUnits(undefined);
const STUDY = example("symmetric_lid");
const RUNNER = STUDY.network.branches.findIndex(({ id }) => id === "runner 1");
const DUCT = STUDY.network.branches[RUNNER]?.losses.findIndex(({ kind }) => kind === "duct") ?? -1;
const PATH = ["network", "branches", RUNNER, "losses", DUCT, "length"];

function runner(): Swept {
	const field = `losses[${DUCT}].length`;
	const info = fieldAt({ element: "runner 1", field }, STUDY, catalogue);
	if (!info) throw new Error("runner 1 has no length");
	return sweptAt(STUDY, PATH, info);
}

/** The length of the runners, which are all alike. */
const others = valueAt(STUDY, PATH) as number;
const axis: Axis = {
	cells: [runner()],
	tie: "same",
	from: others * 0.5,
	to: others * 1.5,
	count: 21,
};

describe("a runner of an even lid swept in length", () => {
	// One runner is made another length, so that the sweep has something to find. The mean over the cycle
	// leaves out the firing order, in which the lid is not even.
	const uneven: Sheet = put(sheetOf(STUDY), PATH, others * 0.6);
	const points = pointsOf([axis], UNITS);
	const studies = points.map((at) => putAt(uneven, [axis], at).study);
	const outcomes = many.figures(studies, ["cycleMean"]).map(([outcome]) => outcome);

	it("comes out even at the length of the others", () => {
		const best = bestOf(outcomes);
		expect(points[best]?.[0]).toBeCloseTo(others, 9);
		expect(figuresIn(outcomes[best])?.spread).toBeLessThan(1e-6);
		expect(figuresIn(outcomes[0])?.spread).toBeGreaterThan(5e-5);
	});

	it("has at each point what the study edited by hand has", () => {
		for (const at of [0, 7, 20]) {
			const edited = put(sheetOf(STUDY), PATH, points[at]?.[0]).study;
			const { spread, cylinders } = drawn(solve(edited), "cycleMean");
			const figures = figuresIn(outcomes[at]);
			expect(figures?.spread).toBeCloseTo(spread, 7);
			cylinders.forEach(({ share }, place) => {
				expect(figures?.shares[place]).toBeCloseTo(share, 7);
			});
		}
	});
});
