/** What is wrong with a valve's table, cell by cell: the solver names the table, the page the cell. */
import type { FieldInfo } from "../solver/types";
import { cellText, readNumber, type UnitChoice } from "../units";
import { bounds } from "../view/bounds";
import { begun } from "../view/sentence";
import type { Point, PointCell } from "./points";

export interface PointFault {
	readonly row: number;
	readonly column: number;
	readonly message: string;
}

/** Every fault, with its point and column in words. */
export function pointFaults(
	points: readonly Point[],
	infos: readonly FieldInfo[],
	units: UnitChoice,
): PointFault[] {
	const found: PointFault[] = [];
	for (const [row, point] of points.entries()) {
		for (const [column, cell] of point.entries()) {
			const info = infos[column];
			const fault = info && faultOf(cell, info, units);
			if (!fault) continue;
			found.push({ row, column, message: `${begun(info.label)}, point ${row + 1}: ${fault}` });
		}
		const before = points[row - 1];
		const read = before && before[0].text === undefined && point[0].text === undefined;
		if (read && point[0].value <= before[0].value) {
			const text = cellText(point[0].value, units.number);
			const message = `Point ${row + 1}: ${text} does not come after ${cellText(before[0].value, units.number)}.`;
			found.push({ row, column: 0, message });
		}
	}
	return found;
}

/** Text that is no value, or a value out of its bounds. */
function faultOf({ value, text }: PointCell, info: FieldInfo, units: UnitChoice) {
	if (text !== undefined) {
		const reading = readNumber(text, info.quantity, units);
		return reading.kind === "unreadable" ? `“${text}”: ${reading.message}` : "a value is needed.";
	}
	const inside = value >= info.minimum && value <= info.maximum;
	return inside ? undefined : `must lie ${bounds(info, units)}.`;
}
