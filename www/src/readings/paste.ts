/** What a block of cells from a spreadsheet, or text with tabs, makes of the list of bench readings. */
import { unitInHeading } from "../number/heading";
import { evidence } from "../number/separators";
import { MOST_ROWS, type PastedRows, type Row, tooManyRows } from "../schedule/rows";
import type { FieldInfo } from "../solver/types";
import { startsWithNumber } from "../table/block";
import { readNumber, type UnitChoice } from "../units";

interface Column {
	readonly info: FieldInfo;
	/** The unit that its heading names, as written there. */
	readonly unit: string;
}

/** Words with which headings begin, and the field that they mean. */
const WORDS: readonly (readonly [RegExp, string])[] = [
	[/^(?:test (?:pressure|depression)|depression|[dΔ]p)(?![a-z])/i, "depression"],
	[/^(?:air read|air ?flow|mass flow|flow|air|q|m)(?![a-z])/i, "flow"],
	[/^(?:room pressure|barometer|pressure|p)(?![a-z])/i, "pressure"],
	[/^(?:room temperature|temperature|temp\.?|t)(?![a-z])/i, "temperature"],
];

/**
 * Pastes a block from a cell on; rows are added as it needs them. A block with a heading is a whole list,
 * whose columns stand in any order, and takes the place of the old one.
 */
export function pasteReadings(
	old: readonly Row[],
	place: { readonly row: number; readonly column: number },
	given: readonly (readonly string[])[],
	infos: readonly FieldInfo[],
	units: UnitChoice,
): PastedRows {
	const block = given.filter((row) => row.some((text) => text.trim() !== ""));
	const head = block[0] ?? [];
	const headed = block.length > 1 && head.every((text) => !startsWithNumber(text));
	const body = headed ? block.slice(1) : block;
	const columns = headed
		? readHeading(head, infos, units)
		: infos.slice(place.column).map((info) => ({ info, unit: "" }));
	if (typeof columns === "string") return { kind: "refused", reason: columns };
	const start = headed ? 0 : place.row;
	if (start + body.length > MOST_ROWS) return tooManyRows(start + body.length);
	const decimal = evidence(body.flat());
	const rows: Row[] = headed ? [] : [...old];
	const unplaced: string[] = [];
	for (const [down, texts] of body.entries()) {
		let row = rows[start + down] ?? blank(infos);
		for (const [along, given] of texts.entries()) {
			const text = given.trim();
			const column = columns[along];
			if (!column) {
				if (text !== "") unplaced.push(text);
				continue;
			}
			const { info, unit } = column;
			// A unit of its own goes before that of the heading.
			const own = /[a-z"″°]/i.test(text.replace(/\de[+-]?\d/i, ""));
			const whole = unit === "" || text === "" || own ? text : `${text} ${unit}`;
			row = filled(row, info, whole, readNumber(whole, info.quantity, units, decimal));
		}
		rows[start + down] = row;
	}
	return { kind: "rows", rows, unplaced };
}

/** A row of which nothing is known: the cells that must hold something ask for it. */
export function blank(infos: readonly FieldInfo[]): Row {
	const needed = infos.filter(({ required }) => required);
	return {
		values: Object.fromEntries(needed.map((info) => [info.name, info.default ?? info.minimum])),
		texts: Object.fromEntries(needed.map(({ name }) => [name, ""])),
	};
}

/** What its cells say are the columns; a reason where they are no list of readings. */
function readHeading(
	head: readonly string[],
	infos: readonly FieldInfo[],
	units: UnitChoice,
): (Column | undefined)[] | string {
	const found: (Column | undefined)[] = [];
	for (const [along, text] of head.entries()) {
		const typed = text.trim();
		const word = WORDS.find(([pattern]) => pattern.test(typed));
		const info = infos.find(({ name }) => name === word?.[1]);
		if (!word || !info) {
			found.push(undefined);
			continue;
		}
		const known = (unit: string) =>
			unit !== "" && readNumber(`1 ${unit}`, info.quantity, units).kind === "value";
		const unit = unitInHeading(typed.replace(word[0], ""), known);
		const where = `Heading of column ${along + 1}, “${typed}”`;
		if (unit !== "" && !known(unit)) return `${where}: “${unit}” is no unit of ${info.label} here.`;
		if (found.some((each) => each?.info === info)) {
			return `${where}: another column is the ${info.label} already.`;
		}
		found.push({ info, unit });
	}
	const lacks = infos.find((each) => each.required && !found.some((one) => one?.info === each));
	return lacks ? `The heading names no column with the ${lacks.label}.` : found;
}

function filled(
	{ values, texts }: Row,
	info: FieldInfo,
	text: string,
	reading: ReturnType<typeof readNumber>,
): Row {
	const { [info.name]: _, ...others } = texts;
	if (reading.kind === "value") {
		return { values: { ...values, [info.name]: reading.value }, texts: others };
	}
	if (reading.kind === "empty" && !info.required) {
		const { [info.name]: _, ...left } = values;
		return { values: left, texts: others };
	}
	return { values, texts: { ...others, [info.name]: text } };
}
