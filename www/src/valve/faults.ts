/** What is wrong with a valve's table, cell by cell: the solver names the table, the page the cell. */
import type { FieldInfo } from "../solver/types";
import { cellText, type UnitChoice } from "../units";
import { cellFault } from "../view/cellFault";
import { begun } from "../view/sentence";
import type { Point } from "./points";

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
			const fault = info && cellFault(cell, info, units);
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
