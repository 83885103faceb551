import { describe, expect, it } from "vitest";
import { csvText, harmless } from "../../../www/src/table/csv";

describe("a cell of a file that a spreadsheet opens", () => {
	it("is made harmless where it begins like a formula", () => {
		for (const text of ["=1+1", "+cmd", "-2+3", "@sum", "\tx", "\r=1", "-", "+", "--1"])
			expect(harmless(text)).toBe(`'${text}`);
	});

	it("stays as it is where it is a number or a name", () => {
		for (const text of ["-1.15", "+0.5", "12", "-.5", "-0.00", "7", "cyl 1", "a=b", "", "1-2"])
			expect(harmless(text)).toBe(text);
	});
});

describe("a CSV file", () => {
	it("quotes what holds a comma, a quote or a line's end, and doubles quotes", () => {
		const text = csvText([
			["Cylinder", "Trim, %"],
			['the "front"', "-0.5"],
			["=a,b", "1\n2"],
		]);
		expect(text).toBe('\ufeffCylinder,"Trim, %"\r\n"the ""front""",-0.5\r\n"\'=a,b","1\n2"\r\n');
	});
});
