/** What stands beside each other: a figure of every version in a row. */
import { DRAWS } from "../solver/draws";
import type { Answer, Draw, Solved, StudyError } from "../solver/types";
import { figure, signed, type Unit, type UnitChoice, withUnit } from "../units";
import { DRAW_WORDS, STATE_WORDS } from "../view/words";

/** A version as far as rows are concerned. */
export interface Told {
	readonly name: string | null;
	readonly answer: Answer | null;
	readonly errors: readonly StudyError[];
}

/** One row: a figure or words of every version. */
export interface Row {
	readonly label: string;
	/** Unit of the figures; absent in a row of words. */
	readonly unit?: Unit;
	/** Nothing where a version has no such figure. */
	readonly values: readonly (number | null)[];
	/** What stands instead of figures, or beside them. */
	readonly words: readonly string[];
}

/** A version's name on the page. */
export function nameOf(name: string | null): string {
	return name === null ? "Base" : name.trim() === "" ? "no name" : name;
}

/** A version's figures in a draw. */
export function solvedIn(told: Told, draw: Draw | undefined): Solved | null {
	const outcome = told.answer?.draws.find((each) => each.draw === draw)?.outcome;
	return outcome?.kind === "solved" ? outcome : null;
}

/** Rows under one heading. */
export interface Group {
	/** Empty where every row says all by itself. */
	readonly heading: string;
	readonly rows: readonly Row[];
}

/** The spread of every version in every draw. */
export function spreads(told: readonly Told[], units: UnitChoice): Group {
	const rows = DRAWS.filter((each) =>
		told.some(({ answer }) => answer?.draws.some((one) => one.draw === each)),
	).map((draw) => ({
		label: DRAW_WORDS[draw],
		unit: units.fraction,
		values: told.map((each) => solvedIn(each, draw)?.spread ?? null),
		words: [],
	}));
	return { heading: withUnit("Spread", units.fraction), rows };
}

/** What the draw looked at says of the whole of each version. */
export function wholes(told: readonly Told[], draw: Draw, units: UnitChoice): Group {
	const inDraw = told.map((each) => solvedIn(each, draw));
	const number = (
		label: string,
		unit: Unit,
		read: (solved: Solved) => number | undefined,
	): Row => ({
		label: withUnit(label, unit),
		unit,
		values: inDraw.map((solved) => (solved ? (read(solved) ?? null) : null)),
		words: [],
	});
	const base = inDraw[0]?.total;
	const rows = [
		worst(inDraw, units.fraction),
		number("Total air", units.massFlow, (solved) => solved.total),
	];
	if (base !== undefined)
		rows.push(
			number(
				"Loss at the base's air",
				units.pressureDifference,
				({ resistance }) => resistance * base * base,
			),
		);
	if (inDraw.some((solved) => solved?.operating))
		rows.push(
			number(
				"Charge temperature",
				units.temperature,
				({ operating }) => operating?.chargeTemperature,
			),
		);
	return { heading: DRAW_WORDS[draw], rows };
}

/** Deviation of every cylinder from the mean, by version. */
export function deviations(told: readonly Told[], draw: Draw, units: UnitChoice): Group {
	const inDraw = told.map((each) => solvedIn(each, draw));
	const names = inDraw.find((solved) => solved)?.cylinders.map(({ cylinder }) => cylinder) ?? [];
	const rows = names.map((name, place) => ({
		label: `Cyl. ${name}`,
		unit: units.fraction,
		values: inDraw.map((solved) => solved?.cylinders[place]?.deviation ?? null),
		words: inDraw.map((solved) => {
			const state = solved?.cylinders[place]?.state;
			return state ? STATE_WORDS[state].shape : "";
		}),
	}));
	return { heading: withUnit("From the mean", units.fraction), rows };
}

/** The pressure budget of one port in all versions: losses at the same place stand in one row. */
export function budgets(told: readonly Told[], draw: Draw, port: string, units: UnitChoice): Group {
	const paths = told.map((each) => solvedIn(each, draw)?.paths.find((path) => path.port === port));
	const places: string[] = [];
	const labels = new Map<string, string>();
	const falls = paths.map((path) => {
		const own = new Map<string, number>();
		let before = -1;
		for (const { element, label, fall } of path?.items ?? []) {
			const key = keyOf(own, `${element}: ${label}`);
			own.set(key, fall);
			labels.set(key, `${element}: ${label}`);
			const at = places.indexOf(key);
			// What only this version has comes behind what it has before it.
			if (at < 0) places.splice(before + 1, 0, key);
			before = at < 0 ? before + 1 : at;
		}
		return own;
	});
	const unit = units.pressureDifference;
	const rows = places.map((key) => ({
		label: labels.get(key) ?? key,
		unit,
		values: falls.map((own) => own.get(key) ?? null),
		words: [],
	}));
	const whole = {
		label: "Whole fall to the port",
		unit,
		values: paths.map((path) => path?.fall ?? null),
		words: [],
	};
	return { heading: withUnit(`Pressure budget of ${port}`, unit), rows: [...rows, whole] };
}

/** What a row says in a column, as it stands or as the difference from the base. */
export function cell({ unit, values, words }: Row, column: number, asDifference: boolean): string {
	const value = values[column];
	const word = words[column] ?? "";
	if (!unit) return word || "–";
	if (value === null || value === undefined) return "–";
	const base = values[0];
	if (!asDifference || column === 0) return join(word, ofRow(unit, value, words));
	if (base === null || base === undefined) return "–";
	return signed(value - base, spanOf(unit));
}

/** The whole comparison as a table of text, headings first. */
export function table(
	told: readonly Told[],
	groups: readonly Group[],
	asDifference: boolean,
): string[][] {
	const head = ["", ...told.map(({ name }) => nameOf(name))];
	const lines = groups.flatMap(({ heading, rows }) =>
		rows.map((row) => [
			`${heading}: ${row.label}`,
			...told.map((_, column) => plain(cell(row, column, asDifference))),
		]),
	);
	return [head, ...lines];
}

function ofRow(unit: Unit, value: number, words: readonly string[]): string {
	// Deviations have a sign, other figures none.
	return words.length > 0 ? signed(value, unit) : figure(value, unit);
}

/** With the signs that other programs read. */
function plain(text: string): string {
	return text.replaceAll("−", "-").replace(/±(?=0)/, "");
}

function join(word: string, text: string): string {
	return word ? `${word} ${text}` : text;
}

/** A difference of temperatures has no zero point of its own. */
function spanOf(unit: Unit): Unit {
	return { ...unit, plus: 0 };
}

function keyOf(known: ReadonlyMap<string, unknown>, name: string): string {
	let key = name;
	for (let nth = 2; known.has(key); nth += 1) key = `${name}, ${nth}`;
	return key;
}

function worst(inDraw: readonly (Solved | null)[], unit: Unit): Row {
	return {
		label: "Farthest from the mean",
		values: inDraw.map(() => null),
		words: inDraw.map((solved) => {
			const far = solved?.cylinders.reduce((one, other) =>
				Math.abs(other.deviation) > Math.abs(one.deviation) ? other : one,
			);
			if (!far) return "–";
			const { shape, word } = STATE_WORDS[far.state];
			return `Cyl. ${far.cylinder}: ${signed(far.deviation, unit)} ${unit.label} ${shape} ${word}`;
		}),
	};
}
