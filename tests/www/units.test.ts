import { describe, expect, it } from "vitest";
import type { Quantity } from "../../www/src/solver/types";
import {
	cellText,
	chosenUnits,
	figure,
	inSi,
	readNumber,
	shown,
	signed,
	UNITS,
	withUnit,
} from "../../www/src/units";

const usual = chosenUnits(undefined);

function read(text: string, quantity: Quantity, units = usual): number | string {
	const reading = readNumber(text, quantity, units);
	return reading.kind === "value" ? reading.value : reading.kind;
}

/** Conversions as tables of units print them: value in SI, unit, value shown. */
const PRINTED: [Quantity, number, string, number][] = [
	["length", 0.0254, "in", 1],
	["length", 0.044, "mm", 44],
	["area", 0.00064516, "in2", 1],
	["area", 0.0015, "mm2", 1500],
	["area", 0.0015, "cm2", 15],
	["volume", 1.6387064e-5, "in3", 1],
	["volume", 0.0057, "L", 5.7],
	["angle", Math.PI, "deg", 180],
	["pressure", 101325, "psi", 14.6959],
	["pressure", 101325, "inHg", 29.9213],
	["pressure", 101325, "bar", 1.01325],
	["pressureDifference", 6967.52, "inH2O", 28],
	["temperature", 273.15, "degC", 0],
	["temperature", 273.15, "degF", 32],
	["temperature", 373.15, "degF", 212],
	["massFlow", 0.45359237 / 60, "lb/min", 1],
	["massFlow", 1, "kg/h", 3600],
	["speed", 108.333333333333, "rpm", 6500],
	["fraction", 0.004, "percent", 0.4],
];

describe("display units", () => {
	it.each(PRINTED)("shows %s %d in %s as %d", (quantity, si, name, expected) => {
		const unit = chosenUnits({ [quantity]: name })[quantity];
		expect(unit.name).toBe(name);
		expect(shown(si, unit)).toBeCloseTo(expected, 4);
		expect(inSi(expected, unit) / si).toBeCloseTo(1, 5);
	});

	it("give back what was typed, in every unit", () => {
		for (const unit of Object.values(UNITS).flat()) {
			for (const typed of [44, 0.1, 1234.5, -3.7]) {
				expect(Number(cellText(inSi(typed, unit), unit))).toBe(typed);
			}
		}
	});

	it("leave no dust of the last bits in the study", () => {
		expect(read("44", "length")).toBe(0.044);
		expect(read("0.4", "fraction")).toBe(0.004);
		expect(read("20", "temperature")).toBe(293.15);
	});

	it("say absolute with every pressure that is", () => {
		for (const unit of UNITS.pressure) expect(unit.label).toMatch(/ abs$/);
	});

	it("fall back to the usual one when a study names another", () => {
		expect(chosenUnits({ length: "furlong" }).length.name).toBe("mm");
	});
});

describe("a typed number", () => {
	it("takes a decimal point or a decimal comma, and a true minus sign", () => {
		expect(read("12.5", "number")).toBe(12.5);
		expect(read("12,5", "number")).toBe(12.5);
		expect(read(" −1,5 ", "number")).toBe(-1.5);
		expect(read("1e-3", "number")).toBe(0.001);
	});

	it("is not guessed when it has two separators, a unit or letters", () => {
		for (const text of ["1,200.5", "1.200,5", "1,2,3", "12 mm", "abc", "-", "1 200", "Infinity"]) {
			expect(read(text, "number")).toBe("unreadable");
		}
	});

	it("is empty when there is only space", () => {
		expect(read("  ", "number")).toBe("empty");
	});

	it("can be a round or a rectangular section where an area is wanted", () => {
		expect(read("d 44", "area")).toBeCloseTo((Math.PI / 4) * 0.044 ** 2, 10);
		expect(read("Ø44", "area")).toBeCloseTo((Math.PI / 4) * 0.044 ** 2, 10);
		expect(read("44 x 60", "area")).toBeCloseTo(0.00264, 10);
		expect(read("44,5×60", "area")).toBeCloseTo(0.00267, 10);
		expect(read("2 x 2", "area", chosenUnits({ length: "in" }))).toBeCloseTo(4 * 0.00064516, 10);
		expect(read("d 44", "length")).toBe("unreadable");
		expect(read("44 x", "area")).toBe("unreadable");
		expect(read("44 x 60 x 2", "area")).toBe("unreadable");
	});
});

describe("a computed figure", () => {
	const kilopascal = usual.pressureDifference;

	it("keeps its decimals, so that columns stand still", () => {
		expect(figure(1500, kilopascal)).toBe("1.500");
		expect(figure(1, kilopascal)).toBe("0.001");
	});

	it("has a true minus sign, and none when it reads as nothing", () => {
		expect(figure(-1500, kilopascal)).toBe("−1.500");
		expect(figure(-0.1, kilopascal)).toBe("0.000");
		expect(signed(1500, kilopascal)).toBe("+1.500");
		expect(signed(-0.1, kilopascal)).toBe("±0.000");
	});

	it("names its unit after a comma, if it has one", () => {
		expect(withUnit("area", usual.area)).toBe("area, mm²");
		expect(withUnit("regain", usual.number)).toBe("regain");
	});
});
