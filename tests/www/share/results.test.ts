import { describe, expect, it } from "vitest";
import { type Results, resultsTable } from "../../../www/src/share/results";
import type { DrawAnswer } from "../../../www/src/solver/types";
import { csvText } from "../../../www/src/table/csv";
import { chosenUnits } from "../../../www/src/units";
import { drawn, example, solve } from "../wasm";

const study = example("v8_lid");
const solved = drawn(solve(study), "running");
const limit = study.settings.running.limit;
const draw: DrawAnswer = { draw: "running", limit, outcome: { kind: "solved", ...solved } };
const units = chosenUnits({}, 101_325);
const results: Results = { study, version: "", program: "0.1.0", draw, units };

/** The rows from one heading to the empty line after it. */
function table(heading: string): string[][] {
	const rows = resultsTable(results);
	const from = rows.findIndex(([first]) => first === heading);
	const length = rows.slice(from).findIndex(([first]) => first === "");
	return rows.slice(from, length < 0 ? undefined : from + length).map((row) => [...row]);
}

describe("results as a table", () => {
	it("say what they are of, and that they are an estimate", () => {
		const head = new Map(resultsTable(results).map(([first = "", second = ""]) => [first, second]));
		expect(head.get("Study")).toBe(study.name);
		expect(head.get("Draw")).toBe("Running");
		expect(head.get("Standing")).toBe("Estimate, not a measurement");
		expect(head.has("Version")).toBe(false);
		expect(resultsTable({ ...results, version: "variant 2" })).toContainEqual([
			"Version",
			"variant 2",
		]);
	});

	it("have a row for every cylinder, branch and node, with the unit of each figure in its heading", () => {
		expect(table("Cylinder")).toHaveLength(1 + study.engine.cylinders.length);
		expect(table("Branch")).toHaveLength(1 + study.network.branches.length);
		expect(table("Node")).toHaveLength(1 + study.network.nodes.length);
		expect(table("Cylinder")[0]).toContain("From mean, %");
		expect(table("Branch")[0]).toContain("Air, g/s");
		for (const name of ["Cylinder", "Branch", "Node", "Budget of port"]) {
			const [heads = [], ...rows] = table(name);
			for (const row of rows) expect(row).toHaveLength(heads.length);
		}
	});

	it("add up: shares to the whole, the falls of a port to its whole fall", () => {
		const shares = table("Cylinder")
			.slice(1)
			.map((row) => Number(row[1]));
		expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 0);
		const port = solved.paths[0]?.port;
		const falls = table("Budget of port")
			.filter(([first]) => first === port)
			.map((row) => Number(row.at(-1)));
		const whole = falls.pop() ?? Number.NaN;
		expect(falls.length).toBeGreaterThan(3);
		expect(Math.abs(falls.reduce((sum, fall) => sum + fall, 0) - whole)).toBeLessThan(
			0.001 * falls.length,
		);
	});

	it("reach a spreadsheet without a formula, and with numbers that are numbers", () => {
		const named = { ...study, name: "=HYPERLINK(1)" };
		const text = csvText(resultsTable({ ...results, study: named }));
		expect(text).toContain("Study,'=HYPERLINK(1)");
		expect(text).toMatch(/,-\d+\.\d+,/);
		expect(text).not.toContain("−");
	});

	it("of a draw without an answer are refused", () => {
		const refused = { draw: "running", limit, outcome: { kind: "refused" } } as DrawAnswer;
		expect(() => resultsTable({ ...results, draw: refused })).toThrow(/no answer/);
	});
});
