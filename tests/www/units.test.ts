import { describe, expect, it } from "vitest";
import type { FieldInfo, Quantity } from "../../www/src/solver/types";
import {
	cellText,
	chosenUnits,
	figure,
	inSi,
	readNumber,
	shown,
	signed,
	UNITS,
	unitsOf,
	withUnit,
} from "../../www/src/units";

const ROOM = 101_325;
const usual = chosenUnits(undefined, ROOM);

const ROOM_FIELD: FieldInfo = {
	name: "ambientPressure",
	label: "room pressure",
	quantity: "pressure",
	minimum: 1e3,
	maximum: 1e7,
	required: true,
	default: ROOM,
	help: "",
};

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
	["massFlow", (0.3048 ** 3 / 60) * 1.20412, "cfm", 1],
	["pressure", 24884, "inH2O", 100],
	["pressureDifference", 3386.389, "inHg", 1],
	["pressureDifference", 6967.52, "bar", 0.0696752],
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

	it("say absolute or gauge with every pressure, and offer both of each", () => {
		for (const unit of UNITS.pressure) expect(unit.label).toMatch(/ (abs|gauge)$/);
		expect(UNITS.pressure.map(({ name }) => name).filter((name) => / gauge$/.test(name))).toEqual([
			"kPa gauge",
			"bar gauge",
			"psi gauge",
			"inHg gauge",
			"inH2O gauge",
		]);
	});

	it("count gauge pressures from the room pressure, which itself is absolute", () => {
		const gauge = chosenUnits({ pressure: "psi gauge" }, 100_000);
		expect(cellText(100_000 + 6894.757293168 * 10, gauge.pressure)).toBe("10");
		expect(read("10", "pressure", gauge)).toBe(168_947.57293168);
		expect(unitsOf(ROOM_FIELD, gauge).pressure.label).toBe("psi abs");
		expect(chosenUnits({ pressure: "psi gauge" }).pressure.label).toBe("psi abs");
	});

	it("state the conditions of a volume flow", () => {
		const cfm = UNITS.massFlow.find(({ name }) => name === "cfm");
		expect(cfm?.label).toBe("cfm at 20 °C");
		expect(cfm?.conditions).toContain("101.325 kPa abs");
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

	it("tells by itself what two kinds of separators mean", () => {
		expect(read("1,200.5", "number")).toBe(1200.5);
		expect(read("1.200,5", "number")).toBe(1200.5);
	});

	it("is not guessed when it can be read in two ways, but both are said", () => {
		expect(readNumber("1,234", "length", usual)).toEqual({
			kind: "unreadable",
			message: "“1,234” can mean 1.234 mm or 1234 mm.",
			readings: [0.001234, 1.234],
		});
		const inches = readNumber("1,234 in", "length", usual);
		expect(inches).toMatchObject({ readings: [1.234 * 0.0254, 1234 * 0.0254] });
		expect(readNumber("1,234 x 2", "area", usual)).toMatchObject({
			readings: [2.468e-6, 2.468e-3],
		});
		expect(read("1,234+0", "number")).toBe("unreadable");
	});

	it("is refused with letters, or a unit of something else", () => {
		for (const text of ["1,2,3", "12 mm", "abc", "-", "1 200", "Infinity", "2..5", "NaN", "0x10"]) {
			expect(read(text, "number")).toBe("unreadable");
		}
		expect(read("3 kPa", "length")).toBe("unreadable");
		expect(read("3 toString", "length")).toBe("unreadable");
	});

	it("may bring a unit of its own", () => {
		expect(read("1.5 in", "length")).toBe(0.0381);
		expect(read('1 1/2"', "length")).toBe(0.0381);
		expect(read("10 µm", "length")).toBe(1e-5);
		expect(read("3*12.5 mm", "length")).toBe(0.0375);
		expect(read("3 in²", "area")).toBeCloseTo(3 * 0.00064516, 12);
		expect(read("21 cm^2", "area")).toBe(0.0021);
		expect(read("28 inH2O", "pressureDifference")).toBe(6967.52);
		expect(read("68 °F", "temperature")).toBe(293.15);
		expect(read("300 K", "temperature")).toBe(300);
		expect(read("5,7 litres", "volume")).toBe(0.0057);
		expect(read("350 cu in", "volume")).toBeCloseTo(350 * 1.6387064e-5, 12);
		expect(read("60 lb/min", "massFlow")).toBe(0.45359237);
		expect(read("100 cfm", "massFlow")).toBeCloseTo(0.056827, 5);
		expect(read("6500 rpm", "speed")).toBeCloseTo(108.3333, 4);
		expect(read("90 deg", "angle")).toBeCloseTo(Math.PI / 2, 12);
		expect(read("3 %", "fraction")).toBe(0.03);
	});

	it("of a pressure says gauge or absolute, unless it is the column's own unit", () => {
		expect(read("10 psi gauge", "pressure")).toBeCloseTo(ROOM + 68_947.57293, 4);
		expect(read("10 psig", "pressure")).toBe(read("10 psi gauge", "pressure"));
		expect(read("0.5 bar (g)", "pressure")).toBe(ROOM + 50_000);
		expect(read("1.5 bar abs", "pressure")).toBe(150_000);
		expect(read("20 inHg abs", "pressure")).toBeCloseTo(67_727.78, 2);
		expect(read("186 kPa", "pressure")).toBe(186_000);
		expect(read("186", "pressure")).toBe(186_000);
		expect(readNumber("10 psi", "pressure", usual)).toEqual({
			kind: "unreadable",
			message: "Say which: “psi gauge” or “psi abs”.",
		});
		const gauge = chosenUnits({ pressure: "kPa gauge" }, ROOM);
		expect(read("50 kPa", "pressure", gauge)).toBe(ROOM + 50_000);
		expect(read("150 kPa abs", "pressure", gauge)).toBe(150_000);
		expect(read("10 psi gauge", "pressure", unitsOf(ROOM_FIELD, usual))).toBe("unreadable");
		expect(read("28 inH2O gauge", "pressureDifference")).toBe("unreadable");
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
		expect(read("44 x 60 mm", "area", chosenUnits({ length: "in" }))).toBeCloseTo(0.00264, 10);
		expect(read("44 mm x 2 in", "area")).toBeCloseTo(0.044 * 0.0508, 10);
		expect(read("d 1.75 in", "area")).toBeCloseTo((Math.PI / 4) * 0.04445 ** 2, 10);
		expect(read("40+4 x 60", "area")).toBeCloseTo(0.00264, 10);
		expect(read("44 x 60 mm2", "area")).toBe("unreadable");
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
