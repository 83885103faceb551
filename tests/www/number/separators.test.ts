import { describe, expect, it } from "vitest";
import { type Decimal, evidence, readDigits } from "../../../www/src/number/separators";

function read(text: string, decimal?: Decimal): string {
	const digits = readDigits(text, decimal);
	return digits.kind === "plain" ? digits.digits : digits.kind;
}

describe("separators in a number", () => {
	it("can be read in two ways only where a comma stands before three digits", () => {
		for (const text of ["1,234", "12,345", "999,000"]) expect(read(text)).toBe("either");
		expect(read("0,234")).toBe("0.234");
		expect(read("2,5")).toBe("2.5");
		expect(read("1,2345")).toBe("1.2345");
		expect(read("1234,567")).toBe("1234.567");
		expect(read("1.234")).toBe("1.234");
	});

	it("are told by what surrounds the number", () => {
		expect(read("1,234", "comma")).toBe("1.234");
		expect(read("1,234", "point")).toBe("1234");
		expect(read("1.234", "comma")).toBe("1234");
		expect(read("1.234", "point")).toBe("1.234");
	});

	it("tell by themselves where there are two kinds, or several of one", () => {
		expect(read("1,234.5")).toBe("1234.5");
		expect(read("1.234,5")).toBe("1234.5");
		expect(read("1,234,567")).toBe("1234567");
		expect(read("1.234.567,8")).toBe("1234567.8");
		expect(read("1\u202f234,567")).toBe("1234.567");
		expect(read("1’234.5")).toBe("1234.5");
	});

	it("are wrong where they do not fit together", () => {
		for (const text of ["1,2,3", "1.2.3", "1,23.4", "1.234,567,8", "12’34"]) {
			expect(read(text)).toBe("wrong");
		}
	});
});

describe("a block's evidence", () => {
	it("is a number with two separators, or decimals that are no thousands", () => {
		expect(evidence(["1,234", "2,5"])).toBe("comma");
		expect(evidence(["1,234", "0.25"])).toBe("point");
		expect(evidence(["1,234", "12,345.6"])).toBe("point");
		expect(evidence(["1,234", "12.345,6"])).toBe("comma");
		expect(evidence(["1,234", "1,234,567"])).toBe("point");
		expect(evidence(["1,234", "0,125 mm"])).toBe("comma");
		expect(evidence(["44,5 x 60", "1,234"])).toBe("comma");
	});

	it("is missing where no number tells, and where numbers contradict each other", () => {
		expect(evidence(["1,234", "12,345", "7", "pipe"])).toBeUndefined();
		expect(evidence(["1,234", "1.234"])).toBeUndefined();
		expect(evidence(["2,5", "2.5", "1,234"])).toBeUndefined();
		expect(evidence(["lid v1.25", "1,234"])).toBeUndefined();
	});
});
