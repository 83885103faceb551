import { describe, expect, it } from "vitest";
import { draft, put, type Sheet } from "../../../www/src/network/edit";
import { putSchedule, readSchedule, scheduleText } from "../../../www/src/schedule/whole";
import type { Loss } from "../../../www/src/solver/types";
import { readBlock } from "../../../www/src/table/block";
import { copy } from "../../../www/src/table/copy";
import { fillDown } from "../../../www/src/table/fill";
import { type Book, lines } from "../../../www/src/table/grid";
import { paste } from "../../../www/src/table/paste";
import { chosenUnits } from "../../../www/src/units";
import { at, SHEET, select } from "../table/fixture";
import { catalogue } from "../wasm";

const MM = chosenUnits(undefined);
const INCH = chosenUnits({ length: "in", area: "cm2" });
const BOOK: Book = { catalogue, units: MM };

const SHAPED: Loss = {
	kind: "schedule",
	roughness: 0.00001,
	stations: [
		{ at: 0, area: 0.0012 },
		{ at: 0.05, area: 0.001, perimeter: 0.12 },
	],
	bends: [{ at: 0.02, angle: Math.PI / 4, radius: 0.06 }],
};
const STRAIGHT: Loss = {
	kind: "schedule",
	roughness: 0,
	stations: [
		{ at: 0, area: 0.002 },
		{ at: 0.1, area: 0.002 },
	],
};
const TEXT = "stations mm mm²: 0 1200; 50 1000 120 bends mm °: 20 45 60";

/** Runner 1 has a shaped schedule behind its opening, runner 2 a straight one before its own. */
function sheet(): Sheet {
	const shaped = put(SHEET, ["network", "branches", 1, "losses", 1], SHAPED);
	return put(shaped, ["network", "branches", 2, "losses", 0], STRAIGHT);
}
const first = ["network", "branches", 1, "losses", 1];
const all = (of: Sheet) => lines("branches", of, catalogue);

describe("a schedule as one text", () => {
	it("says its units, and is read back to the last bit that it says", () => {
		expect(scheduleText(sheet(), first, MM)).toBe(TEXT);
		const back = readSchedule(TEXT, MM);
		expect(back?.stations).toEqual(SHAPED.stations);
		expect(back?.bends[0]?.angle).toBeCloseTo(Math.PI / 4, 12);
	});

	it("is read in the units that it says, whichever the page has", () => {
		expect(readSchedule(TEXT, INCH)?.stations).toEqual(SHAPED.stations);
		const inches = scheduleText(sheet(), first, INCH);
		expect(inches).toMatch(/^stations in cm²: 0 12; 1\.9685\d* 10 4\.724/);
		expect(readSchedule(inches, MM)?.stations[1]?.at).toBeCloseTo(0.05, 12);
	});

	it("is none where anything in it cannot be read", () => {
		for (const text of [
			"",
			"duct",
			"0 1200; 50 1000",
			"stations mm mm²: 0 1200; 50",
			"stations mm mm²: 0 1200; 50 wide",
			"stations mm furlong: 0 1200",
			"stations mm mm²: 0 1200 1 2",
			`${TEXT}; 30 45`,
		]) {
			expect(readSchedule(text, MM), text).toBeNull();
		}
	});
});

describe("in the table", () => {
	it("a copied loss carries stations and bends, which paste into a schedule and make one", () => {
		const copied = copy(sheet(), all(sheet()), select("1.losses.1.kind", undefined, true), BOOK);
		expect(copied?.text).toBe(`section schedule\t0.01\t${TEXT}`);
		const block = readBlock(copied?.text ?? "");
		const over = paste(
			sheet(),
			{
				table: "branches",
				all: all(sheet()),
				selection: select("2.losses.0.kind"),
				block,
				copied: null,
			} as Parameters<typeof paste>[1],
			BOOK,
		);
		expect(at(over.sheet, "network.branches.2.losses.0.stations")).toEqual(SHAPED.stations);
		const added = paste(
			sheet(),
			{
				table: "branches",
				all: all(sheet()),
				selection: select("0.losses.0.kind", undefined, true),
				block,
				copied: null,
			} as Parameters<typeof paste>[1],
			BOOK,
		);
		const made = at(added.sheet, "network.branches.0.losses.1") as typeof SHAPED;
		expect(made).toMatchObject({ kind: "schedule", stations: SHAPED.stations });
		expect(at(added.sheet, "network.branches.0.losses.1.bends.0.radius")).toBe(0.06);
	});

	it("text that holds no schedule is named, and changes nothing", () => {
		const result = paste(
			sheet(),
			{
				table: "branches",
				all: all(sheet()),
				selection: select("2.losses.0.stations"),
				block: [["a runner"]],
				copied: null,
			} as Parameters<typeof paste>[1],
			BOOK,
		);
		expect(result.unplaced).toEqual(["a runner"]);
		expect(result.sheet).toEqual(sheet());
	});

	it("filling carries the lists with the text of their cells, and takes bends away where there are none", () => {
		const written = draft(sheet(), [...first, "stations", 1, "area"], "wide");
		const filled = fillDown(written, all(written), select("1.id", "2.id", true), BOOK);
		expect(at(filled, "network.branches.2.losses.0")).toEqual(SHAPED);
		expect(filled.drafts["network.branches.2.losses.0.stations.1.area"]).toBe("wide");
		const other = putSchedule(sheet(), first, { stations: STRAIGHT.stations, bends: [] });
		const bare = put(other, ["network", "branches", 2, "losses", 0], SHAPED);
		const emptied = fillDown(bare, all(bare), select("1.id", "2.id", true), BOOK);
		expect(at(emptied, "network.branches.2.losses.0.stations")).toEqual(STRAIGHT.stations);
		expect(at(emptied, "network.branches.2.losses.0.bends")).toBeUndefined();
	});
});
