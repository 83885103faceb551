/**
 * A section schedule as a whole: in one cell of a copied row, with its units, and filled over another. In a
 * cell it reads `stations mm mm²: 0 1664; 110 1664 150 bends mm °: 40 45 60`, a third number being a
 * station's perimeter and a bend's radius.
 */
import { keyOf, type Path, put, type Sheet, valueAt } from "../network/edit";
import type { Quantity, Station, StationBend } from "../solver/types";
import { cellText, readNumber, type UnitChoice } from "../units";
import { putRows, readRows } from "./rows";

export interface Lists {
	readonly stations: readonly Station[];
	readonly bends: readonly StationBend[];
}

type Columns = readonly (readonly [field: string, quantity: Quantity])[];

const STATIONS: Columns = [
	["at", "length"],
	["area", "area"],
	["perimeter", "length"],
];
const BENDS: Columns = [
	["at", "length"],
	["angle", "angle"],
	["radius", "length"],
];

/** The lists of the schedule at a path as one text. */
export function scheduleText(sheet: Sheet, loss: Path, units: UnitChoice): string {
	const lists = valueAt(sheet.study, loss) as Partial<Lists> | undefined;
	const list = (word: string, rows: readonly object[], columns: Columns) => {
		const [first, second] = columns.map(([, quantity]) => units[quantity].label);
		const texts = rows.map((row) =>
			columns
				.flatMap(([field, quantity]) => {
					const value = (row as Record<string, number | undefined>)[field];
					return value === undefined ? [] : [cellText(value, units[quantity], true)];
				})
				.join(" "),
		);
		return `${word} ${first} ${second}: ${texts.join("; ")}`;
	};
	const stations = list("stations", lists?.stations ?? [], STATIONS);
	const bends = lists?.bends ?? [];
	return bends.length > 0 ? `${stations} ${list("bends", bends, BENDS)}` : stations;
}

/** The lists that such a text holds; null when it holds none. */
export function readSchedule(text: string, units: UnitChoice): Lists | null {
	const [, one = "", other = "", stations = "", bend = "", angle = "", bends = ""] =
		/^\s*stations (\S+) (\S+): (.*?)(?: bends (\S+) (\S+): (.*))?$/i.exec(text) ?? [];
	const read = (rows: string, columns: Columns, its: readonly string[], least: number) =>
		rows.split(";").map((row) => {
			const given = row.trim().split(/\s+/);
			if (given.length < least || given.length > columns.length) return null;
			const values: Record<string, number> = {};
			for (const [place, number] of given.entries()) {
				const [field = "", quantity = "number"] = columns[place] ?? [];
				const reading = readNumber(`${number} ${its[place]}`, quantity as Quantity, units, "point");
				if (reading.kind !== "value") return null;
				values[field] = reading.value;
			}
			return values;
		});
	const found = read(stations, STATIONS, [one, other, one], 2);
	const turns = bends === "" ? [] : read(bends, BENDS, [bend, angle, bend], 3);
	if (found.includes(null) || turns.includes(null)) return null;
	return {
		stations: found as unknown as Station[],
		bends: turns as unknown as StationBend[],
	};
}

/** Gives the schedule at a path other lists. */
export function putSchedule(sheet: Sheet, loss: Path, { stations, bends }: Lists): Sheet {
	const now = put(sheet, [...loss, "stations"], stations);
	return put(now, [...loss, "bends"], bends.length > 0 ? bends : undefined);
}

/** Gives one schedule the lists of another, with the text of their cells that is no value. */
export function fillSchedule(sheet: Sheet, from: Path, to: Path): Sheet {
	if (keyOf(from) === keyOf(to)) return sheet;
	return (["stations", "bends"] as const).reduce(
		(now, list) => putRows(now, [...to, list], readRows(now, [...from, list]), list === "stations"),
		sheet,
	);
}
