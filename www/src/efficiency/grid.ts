/**
 * An efficiency table as a small grid: a row for each speed, a column for each pressure ratio. A cell whose
 * text is no value keeps that text beside the value underneath, as every cell of the sheet does.
 */
import { keyOf, type Path, put, type Sheet, valueAt } from "../network/edit";
import type { EfficiencyTable } from "../solver/types";

export interface GridCell {
	readonly value: number;
	/** Text that cannot be read as a value. */
	readonly text?: string;
}

export interface Grid {
	readonly speeds: readonly GridCell[];
	/** Empty when the efficiency goes over speed alone: then there is one column. */
	readonly ratios: readonly GridCell[];
	/** By speed, then by pressure ratio. */
	readonly values: readonly (readonly GridCell[])[];
}

/** The lists of a table in the study. */
export type Part = "speeds" | "ratios" | "values";

/** A step to the next pressure ratio, and between the first two speeds when there is only one. */
const STEP = { ratio: 0.5, speed: 2 } as const;

/** The grid that stands at a path of the sheet; empty where none stands. */
export function readGrid({ study, drafts }: Sheet, path: Path): Grid {
	return gridOf(
		(valueAt(study, path) ?? { speeds: [], values: [] }) as EfficiencyTable,
		drafts,
		path,
	);
}

/** The grid of a table at a path, with the text kept of its cells. Lists that do not fit are filled up. */
export function gridOf(table: EfficiencyTable, drafts: Sheet["drafts"], path: Path): Grid {
	const key = keyOf(path);
	const cell = (part: Part, index: number): GridCell => {
		const value = table[part]?.[index] ?? 0;
		const text = drafts[`${key}.${part}.${index}`];
		return text === undefined ? { value } : { value, text };
	};
	const columns = Math.max(table.ratios?.length ?? 0, 1);
	return {
		speeds: table.speeds.map((_, row) => cell("speeds", row)),
		ratios: (table.ratios ?? []).map((_, column) => cell("ratios", column)),
		values: table.speeds.map((_, row) =>
			Array.from({ length: columns }, (_, column) => cell("values", row * columns + column)),
		),
	};
}

/** Puts a grid where it came from. */
export function putGrid(sheet: Sheet, path: Path, grid: Grid): Sheet {
	const parts: Readonly<Record<Part, readonly GridCell[]>> = {
		speeds: grid.speeds,
		ratios: grid.ratios,
		values: grid.values.flat(),
	};
	const numbers = (part: Part) => parts[part].map(({ value }) => value);
	const table: EfficiencyTable = { speeds: numbers("speeds"), values: numbers("values") };
	if (grid.ratios.length > 0) table.ratios = numbers("ratios");
	const now = put(sheet, path, table);
	const kept = { ...now.drafts };
	for (const part of Object.keys(parts) as Part[]) {
		for (const [index, { text }] of parts[part].entries()) {
			if (text !== undefined) kept[keyOf([...path, part, index])] = text;
		}
	}
	return { ...now, drafts: kept };
}

/** A row more at the end, a step on from the last one, with the last one's efficiencies. */
export function withRow(grid: Grid): Grid {
	const { speeds, values } = grid;
	return {
		...grid,
		speeds: [...speeds, next(speeds, STEP.speed * (speeds.at(-1)?.value ?? 0))],
		values: [...values, (values.at(-1) ?? []).map(({ value }) => ({ value }))],
	};
}

/** A column more at the end. The first one stands for every pressure ratio until there is a second. */
export function withColumn(grid: Grid): Grid {
	const first = grid.ratios.length > 0 ? grid.ratios : [{ value: 1 }];
	return {
		...grid,
		ratios: [...first, next(first, (first.at(-1)?.value ?? 1) + STEP.ratio)],
		values: grid.values.map((row) => [...row, { value: row.at(-1)?.value ?? 0 }]),
	};
}

/** Without one row. */
export function withoutRow(grid: Grid, row: number): Grid {
	return {
		...grid,
		speeds: grid.speeds.toSpliced(row, 1),
		values: grid.values.toSpliced(row, 1),
	};
}

/** Without one column. */
export function withoutColumn(grid: Grid, column: number): Grid {
	return {
		...grid,
		ratios: grid.ratios.toSpliced(column, 1),
		values: grid.values.map((each) => each.toSpliced(column, 1)),
	};
}

/** A point one step on; `second` is where it goes from a single one. */
function next(axis: readonly GridCell[], second: number): GridCell {
	const [before, last] = axis.slice(-2);
	if (!before || !last) return { value: second };
	const value = Number((2 * last.value - before.value).toPrecision(12));
	return { value: value > last.value ? value : last.value + 1 };
}
