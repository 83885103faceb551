/** What is wrong with an efficiency table, cell by cell: the solver names the table, the page the cell. */

import type { FieldInfo } from "../solver/types";
import { cellText, type UnitChoice } from "../units";
import { cellFault } from "../view/cellFault";
import type { Grid, GridCell, Part } from "./grid";

/** One cell with a fault. */
export interface GridFault {
	readonly part: Part;
	/** Its place in the list of the study. */
	readonly index: number;
	readonly message: string;
}

/** The fields whose units and bounds the cells have. */
export type GridInfos = Readonly<Record<Part, FieldInfo>>;

/** Every fault, with its row and column in words. */
export function gridFaults(grid: Grid, infos: GridInfos, units: UnitChoice): GridFault[] {
	const text = (part: Part, { value, text }: GridCell) =>
		text ?? cellText(value, units[infos[part].quantity]);
	const found: GridFault[] = [];
	const check = (part: Part, index: number, cell: GridCell, place: string, before?: GridCell) => {
		const fault = cellFault(cell, infos[part], units) ?? falling(cell, before);
		if (fault === undefined) return;
		const after = fault === "" ? ` does not come after ${text(part, before as GridCell)}.` : "";
		const message = after ? `${place}: ${text(part, cell)}${after}` : `${place}: ${fault}`;
		found.push({ part, index, message });
	};
	for (const [column, cell] of grid.ratios.entries()) {
		check("ratios", column, cell, `Pressure ratio, column ${column + 1}`, grid.ratios[column - 1]);
	}
	for (const [row, cell] of grid.speeds.entries()) {
		check("speeds", row, cell, `Speed, row ${row + 1}`, grid.speeds[row - 1]);
		const columns = grid.values[row]?.length ?? 0;
		for (const [column, value] of (grid.values[row] ?? []).entries()) {
			const place =
				columns > 1
					? `Efficiency, row ${row + 1}, column ${column + 1}`
					: `Efficiency, row ${row + 1}`;
			check("values", row * columns + column, value, place);
		}
	}
	return found;
}

/** An empty text where the axis does not rise. */
function falling({ value }: GridCell, before: GridCell | undefined): "" | undefined {
	return before && value <= before.value ? "" : undefined;
}
