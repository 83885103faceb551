import { describe, expect, it } from "vitest";
import type { CadVerdict, Compared, Entered } from "../../../www/src/solver/types";
import { chosenUnits } from "../../../www/src/units";
import { hasCad, summary, withoutVolume } from "../../../www/src/view/cadCheck";

const UNITS = chosenUnits(undefined, 101_325);

function compared(verdict: CadVerdict, ...nodes: string[]): Compared {
	const without = verdict === "nothingEntered";
	return {
		nodes,
		entered: without ? null : 1e-3,
		cad: verdict === "noCad" ? null : 1e-3,
		difference: null,
		verdict,
		element: "",
		loss: null,
	};
}

function entered(chambers: CadVerdict[], total: CadVerdict, ports: CadVerdict[]): Entered {
	return {
		tolerance: 0.02,
		chambers: chambers.map((each, index) => compared(each, `box ${index}`, `next ${index}`)),
		total: compared(total),
		ports: ports.map((each, index) => compared(each, `port ${index}`)),
	};
}

describe("the check against CAD", () => {
	it("says in one sentence what comes of it", () => {
		for (const [found, said] of [
			[entered(["noCad"], "noCad", ["noCad"]), "No value from CAD is typed yet."],
			[entered([], "agrees", []), "Of 1 value from CAD, 1 agrees within 2 %."],
			[
				entered(["differs", "noCad"], "noCad", ["agrees", "agrees"]),
				"Of 3 values from CAD, 1 differs by more than 2 %, 2 agree within 2 %.",
			],
			[
				entered(["nothingEntered"], "incomplete", ["differs", "differs"]),
				"Of 4 values from CAD, 2 differ by more than 2 %, 2 cannot be compared.",
			],
		] as const) {
			expect(summary(found, UNITS).replaceAll("\u00a0", " ")).toBe(said);
		}
	});

	it("is there when any value from CAD is typed, and not by what is entered alone", () => {
		expect(hasCad(entered(["noCad"], "noCad", ["noCad"]))).toBe(false);
		expect(hasCad(entered(["nothingEntered"], "noCad", ["noCad"]))).toBe(true);
		expect(hasCad(entered(["noCad"], "noCad", ["agrees"]))).toBe(true);
		expect(hasCad(entered([], "differs", []))).toBe(true);
	});

	it("names one node of each chamber that the whole is without", () => {
		const found = entered(["agrees", "nothingEntered", "nothingEntered"], "incomplete", []);
		expect(withoutVolume(found)).toEqual(["box 1", "box 2"]);
	});
});
