import { describe, expect, it } from "vitest";
import { gapBars, shareBars, versionBars } from "../../../www/src/share/bars";
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

	it("of versions stand below each other by cylinder, on one scale that holds them all", () => {
		const other = drawn(solve(example("blown_v8")), "running");
		const versions = [
			{ name: "Base", solved },
			{ name: "Other", solved: other },
		];
		const { rows, strip, columns, width } = versionBars(versions, 0.004, units.fraction);
		expect(rows.slice(0, 3).map(({ words }) => words)).toEqual([
			["1", "Base"],
			["", "Other"],
			["2", "Base"],
		]);
		const length = (row: number) => (rows[row]?.bar[1] ?? 0) - (rows[row]?.bar[0] ?? 0);
		const ratio = (solved.cylinders[6]?.deviation ?? 0) / (other.cylinders[6]?.deviation ?? 1);
		expect(length(12) / length(13)).toBeCloseTo(ratio, 9);
		for (const { bar } of rows) for (const x of bar) expect(x).toBeLessThanOrEqual(strip[1]);
		expect(Math.max(...columns, strip[1])).toBeLessThan(width);
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
