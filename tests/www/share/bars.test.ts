import { describe, expect, it } from "vitest";
import { gapBars, shareBars } from "../../../www/src/share/bars";
import { chosenUnits } from "../../../www/src/units";
import { drawn, example, solve } from "../wasm";

const study = example("v8_lid");
const solved = drawn(solve(study), "running");
const units = chosenUnits({}, 101_325);

describe("bars as a drawing", () => {
	it("stand on the side of the mean that their cylinder is on, within their whisker, all in the strip", () => {
		const bars = shareBars(solved, study.settings.running.limit, units.fraction);
		const [from, to] = bars.strip;
		expect(bars.rows).toHaveLength(solved.cylinders.length);
		bars.rows.forEach(({ bar, whisker = [Number.NaN, Number.NaN] }, place) => {
			const { deviation = 0 } = solved.cylinders[place] ?? {};
			expect(Math.sign(bar[1] - bar[0])).toBe(Math.sign(deviation));
			expect(bar[1]).toBeCloseTo((whisker[0] + whisker[1]) / 2, 9);
			for (const x of [...bar, ...whisker]) {
				expect(x).toBeGreaterThanOrEqual(from);
				expect(x).toBeLessThanOrEqual(to);
			}
		});
	});

	it("of a gap are as long as their parts, the largest as long as there is room", () => {
		const parts = solved.gap?.parts ?? [];
		const { rows, strip } = gapBars(parts, units.pressureDifference, 3);
		const lengths = rows.map(({ bar: [from, to] }) => to - from);
		const most = Math.max(...parts.map(({ amount }) => Math.abs(amount)));
		expect(lengths.length).toBeGreaterThan(2);
		lengths.forEach((length, place) => {
			const part = (parts[place]?.amount ?? 0) / most;
			expect(length).toBeCloseTo((part * (strip[1] - strip[0])) / 2, 9);
		});
	});
});
