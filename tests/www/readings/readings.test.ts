import { describe, expect, it } from "vitest";
import { pasteReadings } from "../../../www/src/readings/paste";
import { foundTexts, readingTable } from "../../../www/src/readings/table";
import type { Row } from "../../../www/src/schedule/rows";
import type { ConvertedReading } from "../../../www/src/solver/types";
import { readBlock } from "../../../www/src/table/block";
import { chosenUnits } from "../../../www/src/units";
import { catalogue } from "../wasm";

const UNITS = chosenUnits({ massFlow: "cfm", pressureDifference: "inH2O", temperature: "degF" });
const INFOS = catalogue.reading.fields;
const INCH = 248.84;
const CFM = (0.3048 ** 3 / 60) * (101_325 / (287.05 * 293.15));
const OLD: Row = { values: { depression: 7_000, flow: 0.1, pressure: 1e5 }, texts: {} };

function paste(text: string, place = { row: 0, column: 0 }, old: readonly Row[] = [OLD]) {
	const pasted = pasteReadings(old, place, readBlock(text), INFOS, UNITS);
	if (pasted.kind === "refused") throw new Error(pasted.reason);
	return pasted;
}

function refusal(text: string) {
	const pasted = pasteReadings([], { row: 0, column: 0 }, readBlock(text), INFOS, UNITS);
	return pasted.kind === "refused" ? pasted.reason : "";
}

describe("readings pasted from a spreadsheet", () => {
	it("go over the cells from the one they are pasted in, in the units of the page", () => {
		const { rows } = paste("10\t120\n15", { row: 1, column: 0 });
		expect(rows[0]).toBe(OLD);
		expect(rows[1]?.values.depression).toBeCloseTo(10 * INCH, 6);
		expect(rows[1]?.values.flow).toBeCloseTo(120 * CFM, 9);
		// The second row is short: its air read is asked for.
		expect(rows[2]?.texts).toEqual({ flow: "" });
	});

	it("with a heading take the place of the list, their columns in any order and unit", () => {
		const { rows } = paste(
			"Air flow, kg/h\tBarometer (hPa abs)\tTest pressure [kPa]\n360\t1000\t2,5\n",
		);
		expect(rows).toHaveLength(1);
		expect(rows[0]?.texts).toEqual({});
		expect(rows[0]?.values.flow).toBeCloseTo(0.1, 12);
		expect(rows[0]?.values.pressure).toBeCloseTo(1e5, 6);
		expect(rows[0]?.values.depression).toBeCloseTo(2_500, 9);
	});

	it("keep text that is no value in its cell, and name what has no cell", () => {
		const { rows, unplaced } = paste("10\tmuch\t\t68\tlift 5");
		expect(rows[0]?.texts).toEqual({ flow: "much" });
		expect(rows[0]?.values.flow).toBe(0.1);
		// An empty cell of the room is the study's own room again.
		expect(rows[0]?.values).not.toHaveProperty("pressure");
		expect(rows[0]?.values.temperature).toBeCloseTo(293.15, 9);
		expect(unplaced).toEqual(["lift 5"]);
	});

	it("are refused with a reason where a heading makes no list", () => {
		expect(refusal("Depression\tLift\n10\t5")).toBe(
			"The heading names no column with the air read.",
		);
		expect(refusal("Depression (furlong)\tFlow\n10\t5")).toBe(
			"Heading of column 1, “Depression (furlong)”: “furlong” is no unit of depression here.",
		);
		expect(refusal("Flow\tAir flow\n10\t5")).toContain("another column is the air read already");
		expect(refusal(Array(501).fill("10\t5").join("\n"))).toContain("at most 500 rows");
	});
});

describe("what readings become", () => {
	const found: ConvertedReading = {
		flow: 100 * CFM,
		bySquareRoot: 102.5 * CFM,
		sharpEdged: null,
		effectiveArea: 1e-3,
		readChoked: false,
		choked: true,
	};

	it("is told in the units of the page, with the rule's difference and what chokes", () => {
		expect(foundTexts(found, UNITS)).toEqual(["100.0 choked", "102.5", "+2.5", "–", "1000"]);
		expect(foundTexts(undefined, UNITS)).toEqual(["–", "–", "–", "–", "–"]);
	});

	it("is copied with its units and the room that counts", () => {
		const bench = {
			ambientPressure: 101_325,
			ambientTemperature: 293.15,
			depression: 28 * INCH,
			blowing: false,
			limit: 0.03,
		};
		const readings = [
			{ depression: 10 * INCH, flow: 60 * CFM },
			{ depression: 12 * INCH, flow: 70 * CFM, temperature: 303.15 },
		];
		const [head, first, second] = readingTable(readings, [found, undefined], bench, INFOS, UNITS);
		expect(head?.slice(0, 5)).toEqual([
			"depression, inH₂O",
			"air read, cfm at 20 °C",
			"room pressure, kPa abs",
			"room temperature, °F",
			"Becomes, cfm at 20 °C",
		]);
		expect(first).toEqual(["10.00", "60.0", "101.33", "68.0", "100.0", "102.5", "2.5", "", "1000"]);
		expect(second).toEqual(["12.00", "70.0", "101.33", "86.0"]);
	});
});
