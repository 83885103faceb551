import { describe, expect, it } from "vitest";
import { readSum } from "../../../www/src/number/sum";

function value(text: string): number | string {
	const sum = readSum(text);
	if (sum.kind === "wrong") return sum.message;
	return sum.rest === "" ? sum.value : `${sum.value} then ${sum.rest}`;
}

describe("a sum in a cell", () => {
	it.each([
		["3*12.5", 37.5],
		["12+3/4", 12.75],
		["1 3/4", 1.75],
		["2*1 1/2", 3],
		["(2+3)*4", 20],
		["2+3*4", 14],
		["8/2/2", 2],
		["10-2-3", 5],
		["-3 + +5", 2],
		["−2*−3", 6],
		["2 × 2,5", 5],
		["1e-3*2", 0.002],
		[".5+,5", 1],
	])("%s is %d", (text, expected) => {
		expect(value(text)).toBe(expected);
	});

	it("is worked out exactly, where floating point is not", () => {
		expect(value("0.3-0.1")).toBe(0.2);
		expect(value("12.7-12.6")).toBe(0.1);
		expect(value("1/3*3")).toBe(1);
		expect(value("0.1+0.2")).toBe(0.3);
		expect(value("1/3")).toBe(1 / 3);
		expect(value("2/3*1e250")).toBeCloseTo((2 / 3) * 1e250, -236);
	});

	it("leaves what stands behind it, for a unit", () => {
		expect(value("3*12.5 mm")).toBe("37.5 then mm");
		expect(value("12+3/4in")).toBe("12.75 then in");
		expect(value("5 g/s")).toBe("5 then g/s");
	});

	it("says what is wrong with it", () => {
		expect(value("3*")).toBe("A number is missing.");
		expect(value("(2+3")).toBe("A bracket is open: “)” is missing.");
		expect(value("2/(1-1)")).toBe("Nothing can be divided by zero.");
		expect(value("1,2,3")).toBe("“1,2,3” has separators that do not fit together.");
		expect(value("apples")).toBe("Not a number.");
		expect(value("1e999")).toBe("Too large for a number.");
		expect(value("9".repeat(201))).toBe("Too long for a number.");
		expect(value(`1e300*1e300`)).toBe("Too large for a number.");
	});
});
