/**
 * The lists of a section schedule, its stations and its bends, as rows of a small grid. A cell whose text is
 * no value keeps that text beside the value underneath, as every cell of the sheet does.
 */
import { keyOf, type Path, put, type Sheet, valueAt } from "../network/edit";

export interface Row {
	/** In SI, by field; a field that is left out is not there. */
	readonly values: Readonly<Record<string, number>>;
	/** Text that cannot be read as a value, by field. */
	readonly texts: Readonly<Record<string, string>>;
}

/** What a block of cells from a spreadsheet makes of a list of rows. */
export type PastedRows =
	| {
			readonly kind: "rows";
			readonly rows: readonly Row[];
			/** Texts for which there was no cell. */
			readonly unplaced: readonly string[];
	  }
	| Refused;

/** Nothing has been changed, for this reason. */
export interface Refused {
	readonly kind: "refused";
	readonly reason: string;
}

/** More rows than any study may have; so many cells would hold up the page. */
export const MOST_ROWS = 500;

/** Why a list of so many rows is refused. */
export function tooManyRows(rows: number): Refused {
	const reason = `A list has at most ${MOST_ROWS} rows, and these would be ${rows}.`;
	return { kind: "refused", reason };
}

/** The station of a new row behind the only one lies this far on [m]. */
const STEP = 0.1;

/** The rows that stand at a path of the sheet. */
export function readRows({ study, drafts }: Sheet, path: Path): Row[] {
	const list = (valueAt(study, path) ?? []) as readonly Record<string, number>[];
	const start = `${keyOf(path)}.`;
	const texts = list.map((): Record<string, string> => ({}));
	for (const [key, text] of Object.entries(drafts)) {
		if (!key.startsWith(start)) continue;
		const [row = "", field = ""] = key.slice(start.length).split(".");
		const there = texts[Number(row)];
		if (there) there[field] = text;
	}
	return list.map((values, row) => ({ values, texts: texts[row] ?? {} }));
}

/** Puts rows where they came from; without rows a list that may be left out is. */
export function putRows(sheet: Sheet, path: Path, rows: readonly Row[], needed: boolean): Sheet {
	const list = rows.map(({ values }) => values);
	const now = put(sheet, path, list.length > 0 || needed ? list : undefined);
	const kept = { ...now.drafts };
	for (const [row, { texts }] of rows.entries()) {
		for (const [field, text] of Object.entries(texts)) kept[keyOf([...path, row, field])] = text;
	}
	return { ...now, drafts: kept };
}

/** A station more behind one: halfway to the next, or a step on like the one before. */
export function withStation(rows: readonly Row[], behind: number): Row[] {
	const here = rows[behind]?.values ?? {};
	const next = rows[behind + 1]?.values;
	const before = rows[behind - 1]?.values;
	const at = here.at ?? 0;
	const step = before ? at - (before.at ?? 0) : STEP;
	const mean = (field: string) => ((here[field] ?? 0) + (next?.[field] ?? 0)) / 2;
	const values = next
		? { ...here, at: mean("at"), area: mean("area") }
		: { ...here, at: at + (step > 0 ? step : STEP) };
	return rows.toSpliced(behind + 1, 0, { values: tidy(values), texts: {} });
}

/** A bend more, in the middle of the way; what nobody can know is left open. */
export function withBend(rows: readonly Row[], stations: readonly Row[], angle: number): Row[] {
	const ends = [stations[0], stations.at(-1)].map((row) => row?.values.at ?? 0);
	const at = ((ends[0] ?? 0) + (ends[1] ?? 0)) / 2;
	return [...rows, { values: tidy({ at, angle, radius: 0 }), texts: { radius: "" } }];
}

/** The rows along the way. Rows at one station stay as they stand, for a jump has its direction. */
export function inOrder(rows: readonly Row[]): Row[] {
	return rows.toSorted((one, other) => (one.values.at ?? 0) - (other.values.at ?? 0));
}

/** Whether a row lies before the one above it. */
export function outOfOrder(rows: readonly Row[]): boolean {
	return rows.some(({ values }, row) => (values.at ?? 0) < (rows[row - 1]?.values.at ?? 0));
}

/** Without the dust of the last bits, so that files stay clean. */
function tidy(values: Readonly<Record<string, number>>): Record<string, number> {
	return Object.fromEntries(
		Object.entries(values).map(([field, value]) => [field, Number(value.toPrecision(12))]),
	);
}
