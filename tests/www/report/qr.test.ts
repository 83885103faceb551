import { describe, expect, it } from "vitest";
import { codeOf } from "../../../www/src/report/qr";

/** Data that a code of the largest version holds at the lowest correction, in bytes (ISO/IEC 18004, table 7). */
const MOST = 2953;

describe("a link's code", () => {
	it("holds as much as the standard's largest, and says when it is more", () => {
		// Version 40 has 177 modules on a side, with an edge of four on either.
		expect(codeOf("a".repeat(MOST))?.modules).toBe(177 + 8);
		expect(codeOf("a".repeat(MOST + 1))).toBeNull();
	});

	it("has dots that a phone can read, and fits beside words on the narrower paper", () => {
		for (const length of [40, 400, 1400, 2000, MOST]) {
			const { width, modules } = codeOf("a".repeat(length)) ?? { width: 0, modules: 1 };
			expect(width / modules).toBeGreaterThan(0.4);
			expect(width).toBeLessThan(90);
		}
	});
});
