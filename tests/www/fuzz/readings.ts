/**
 * What is promised of whatever is typed as a number with its unit, and of whatever is pasted into the small
 * grids: bench readings, section schedules, efficiencies, a valve's points.
 */
import type { Grid } from "../../../www/src/efficiency/grid";
import { pasteGrid } from "../../../www/src/efficiency/paste";
import type { Decimal } from "../../../www/src/number/separators";
import { pasteReadings } from "../../../www/src/readings/paste";
import { type Columns, pasteRows } from "../../../www/src/schedule/paste";
import type { Row } from "../../../www/src/schedule/rows";
import { readSchedule } from "../../../www/src/schedule/whole";
import type { Quantity } from "../../../www/src/solver/types";
import { readPasted } from "../../../www/src/table/block";
import { cellText, chosenUnits, readNumber, UNITS, type UnitChoice } from "../../../www/src/units";
import { pastePoints } from "../../../www/src/valve/paste";
import type { Point } from "../../../www/src/valve/points";
import { catalogue } from "../wasm";
import { within } from "./guard";
import { allFinite, hold, MARK, picker, withMark } from "./hold";

const CHOICES: readonly UnitChoice[] = [
	chosenUnits(undefined, 101_325),
	chosenUnits({ length: "in", area: "in2", pressure: "inHg gauge", massFlow: "cfm" }, 98_000),
	chosenUnits({ temperature: "degF", pressure: "psi", massFlow: "lb/min", area: "cm2" }),
];
const QUANTITIES = Object.keys(UNITS) as Quantity[];
const DECIMALS: readonly (Decimal | undefined)[] = [undefined, "comma", "point"];
const COLUMNS: readonly Columns[] = ["perimeter", "diameter", "sides", "bends"];
const ROWS: readonly Row[] = [
	{ values: { at: 0, area: 0.001, depression: 7_000, flow: 0.1 }, texts: {} },
	{ values: { at: 0.1, area: 0.001, depression: 7_000, flow: 0.1 }, texts: { flow: "much" } },
];
const GRID: Grid = {
	speeds: [{ value: 50 }, { value: 100, text: "fast" }],
	ratios: [{ value: 1 }, { value: 1.5 }],
	values: [
		[{ value: 0.9 }, { value: 0.8 }],
		[{ value: 0.9, text: "?" }, { value: 0.8 }],
	],
};
const POINTS: readonly Point[] = [[{ value: 0.1 }, { value: 0.6 }]];

const MOST = 1e280;

/** Types a text into cells and pastes it into grids, as `where` tells. */
export function checkReadings(text: string, where: number): void {
	const next = picker(where);
	const units = CHOICES[next(CHOICES.length)] as UnitChoice;
	const quantity = QUANTITIES[next(QUANTITIES.length)] as Quantity;
	const decimal = DECIMALS[next(DECIMALS.length)];
	checkNumber(text, quantity, units, decimal);
	const lists = within(() => readSchedule(text, units));
	hold(allFinite(lists ?? []), "a number that is none");
	const read = within(() => readPasted(text));
	if (read.kind === "refused") {
		hold(read.reason !== "", "refused without a reason");
		return;
	}
	for (const cell of read.block.flat().slice(0, 3)) checkNumber(cell, quantity, units, decimal);
	// A heading is about the cells below it; what stands in it goes with it.
	const filled = read.block.filter((row) => row.some((each) => each.trim() !== ""));
	const block = withMark(filled.length > 0 ? filled : [[""]], 1, next);
	const place = { row: next(3), column: next(3) };
	const most = Math.max(ROWS.length, place.row + block.length);
	const pasted = within(() => pasteReadings(ROWS, place, block, catalogue.reading.fields, units));
	checkRows(pasted, most);
	const columns = COLUMNS[next(COLUMNS.length)] as Columns;
	checkRows(
		within(() => pasteRows(ROWS, place, block, columns, units)),
		most,
	);
	const ratios = next(2) === 0;
	const old = ratios
		? GRID
		: { ...GRID, ratios: [], values: GRID.values.map((row) => row.slice(0, 1)) };
	// The corner between speeds and ratios is no cell.
	const corner = { row: place.column === 0 ? place.row : place.row - 1, column: place.column - 1 };
	const grid = within(() => pasteGrid(old, corner, block, units, ratios));
	if (grid.kind === "grid") {
		const { speeds, values } = grid.grid;
		hold(speeds.length === values.length, "a speed without its efficiencies");
		hold(
			values.every((row) => row.length === values[0]?.length),
			"rows of different lengths",
		);
		hold(speeds.length <= most, "more rows than were pasted");
	}
	checkKept(grid);
	const at = { row: Math.min(place.row, POINTS.length), column: place.column % 2 };
	checkKept(within(() => pastePoints(POINTS, at, block, units)));
}

/** A number comes back when it is written in its unit and read again; what is none is told in words. */
function checkNumber(
	text: string,
	quantity: Quantity,
	units: UnitChoice,
	decimal: Decimal | undefined,
): void {
	const reading = within(() => readNumber(text, quantity, units, decimal));
	hold((reading.kind === "empty") === (text.trim() === ""), "empty, but there is a text");
	if (reading.kind === "unreadable") {
		hold(reading.message !== "", "unreadable without a reason");
		hold((reading.readings ?? []).every(Number.isFinite), "a number that is none");
		return;
	}
	if (reading.kind === "empty") return;
	const { value } = reading;
	hold(Number.isFinite(value), `${value} is no number`);
	// What is no measure of anything need not fit once its unit is on it.
	if (value !== 0 && (Math.abs(value) > MOST || Math.abs(value) < 1 / MOST)) return;
	const its = units[quantity];
	const shown = cellText(value, its, true);
	const again = readNumber(shown, quantity, units, "point");
	// Against a datum, what is far smaller than the datum is lost in its digits.
	const near = 1e-11 * (Math.abs(value) + Math.abs((its.plus * its.over) / its.times));
	const back = again.kind === "value" && Math.abs(again.value - value) <= near;
	hold(back, `${value} is written ${shown} and does not come back`);
}

type Rows = ReturnType<typeof pasteReadings>;

function checkRows(pasted: Rows, most: number): void {
	if (pasted.kind === "rows") hold(pasted.rows.length <= most, "more rows than were pasted");
	checkKept(pasted);
}

/** The mark is in a cell or named as having none; where nothing was pasted there is a reason. */
function checkKept(pasted: { readonly kind: string; readonly reason?: string }): void {
	if (pasted.kind === "refused") {
		hold(!!pasted.reason, "refused without a reason");
		return;
	}
	const all = JSON.stringify(pasted);
	hold(all.includes(MARK), "a text has been lost");
	hold(allFinite(pasted), "a number that is none");
}
