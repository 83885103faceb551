/** What a block of cells from a spreadsheet, or text with tabs, makes of the lists of a section schedule. */
import { unitInHeading } from "../number/heading";
import { type Decimal, evidence } from "../number/separators";
import { named } from "../number/written";
import type { Quantity } from "../solver/types";
import { startsWithNumber } from "../table/block";
import { type Reading, readNumber, type UnitChoice } from "../units";
import { MOST_ROWS, type PastedRows, type Row, tooManyRows } from "./rows";

type Block = readonly (readonly string[])[];

/** What the columns of a block are behind the station. */
export type Columns = "perimeter" | "diameter" | "sides" | "bends";

/** What a column holds. */
type Role = "at" | "area" | "perimeter" | "diameter" | "width" | "height" | "angle" | "radius";

interface Column {
	readonly role: Role;
	/** The unit that its heading names, as written there. */
	readonly unit: string;
}

const ROLES: Readonly<Record<Columns, readonly Role[]>> = {
	perimeter: ["at", "area", "perimeter"],
	diameter: ["at", "diameter"],
	sides: ["at", "width", "height"],
	bends: ["at", "angle", "radius"],
};

const QUANTITIES: Readonly<Record<Role, Quantity>> = {
	at: "length",
	area: "area",
	perimeter: "length",
	diameter: "length",
	width: "length",
	height: "length",
	angle: "angle",
	radius: "length",
};

/** Words with which headings begin, and what they mean. */
const WORDS: readonly (readonly [RegExp, Role])[] = [
	[/^(?:station|position|distance|at|x|s)(?![a-z])/i, "at"],
	[/^(?:section area|cross[- ]section(?:al)?(?: area)?|area|a)(?![a-z])/i, "area"],
	[/^(?:wetted perimeter|perimeter|p)(?![a-z])/i, "perimeter"],
	[/^(?:diameter|dia|d|ø|⌀)(?![a-z])/i, "diameter"],
	[/^(?:width|w|b)(?![a-z])/i, "width"],
	[/^(?:height|h)(?![a-z])/i, "height"],
	[/^(?:angle|turn)(?![a-z])/i, "angle"],
	[/^(?:axis radius|radius|r)(?![a-z])/i, "radius"],
];

/**
 * Pastes a block from a cell on; rows are added as it needs them. A block with a heading is a whole list,
 * whose columns stand in any order, and takes the place of the old one.
 */
export function pasteRows(
	old: readonly Row[],
	place: { readonly row: number; readonly column: number },
	given: Block,
	columns: Columns,
	units: UnitChoice,
): PastedRows {
	const block = given.filter((row) => row.some((text) => text.trim() !== ""));
	const head = block[0] ?? [];
	const headed = head.every((text) => !startsWithNumber(text));
	const body = headed ? block.slice(1) : block;
	const heading = headed ? readHeading(head, columns) : null;
	if (typeof heading === "string") return { kind: "refused", reason: heading };
	const its: readonly (Column | null)[] =
		heading ?? ROLES[columns].slice(place.column).map((role) => ({ role, unit: "" }));
	const start = headed ? 0 : place.row;
	const base = headed ? [] : old;
	if (body.length === 0) return { kind: "refused", reason: "There was no row below the heading." };
	if (start + body.length > MOST_ROWS) return tooManyRows(start + body.length);
	const decimal = evidence(body.flat());
	const rows = [...base];
	const unplaced: string[] = [];
	for (const [down, texts] of body.entries()) {
		const there = rows[start + down] ?? blank(columns);
		rows[start + down] = withTexts(there, texts, its, units, decimal);
		const lost = texts.filter((text, along) => text.trim() !== "" && !its[along]);
		unplaced.push(...lost.map((text) => text.trim()));
	}
	return { kind: "rows", rows, unplaced };
}

/** What its cells say are the columns; a reason where that is no list of this sort. */
function readHeading(head: readonly string[], columns: Columns): (Column | null)[] | string {
	const bends = columns === "bends";
	const known = bends ? ROLES.bends : [...new Set(Object.values(ROLES).flat())];
	const found: (Column | null)[] = [];
	for (const [along, text] of head.entries()) {
		const typed = text.trim();
		const word = WORDS.find(([word, role]) => word.test(typed) && known.includes(role));
		if (!word) {
			found.push(null);
			continue;
		}
		const [pattern, role] = word;
		const unit = unitInHeading(
			typed.replace(pattern, ""),
			(unit) => !!named(unit, QUANTITIES[role]),
		);
		if (unit !== "" && !named(unit, QUANTITIES[role])) {
			return `Heading of column ${along + 1}, “${typed}”: “${unit}” is no unit of ${QUANTITIES[role]} here.`;
		}
		if (found.some((each) => each?.role === role)) {
			return `Heading of column ${along + 1}, “${typed}”: another column is the ${NAMES[role]} already.`;
		}
		found.push({ role, unit });
	}
	const has = (...roles: Role[]) =>
		roles.every((role) => found.some((each) => each?.role === role));
	if (!has("at")) return "The heading names no column with the station.";
	if (bends) return has("angle", "radius") ? found : "The heading names no angle or no radius.";
	const ways = [has("area"), has("diameter"), has("width", "height")].filter(Boolean).length;
	if (ways === 0) return "The heading names no area, no diameter, and no width with a height.";
	return ways > 1 ? "The heading names the section in two ways: keep one of them." : found;
}

const NAMES: Readonly<Record<Role, string>> = {
	at: "station",
	area: "area",
	perimeter: "perimeter",
	diameter: "diameter",
	width: "width",
	height: "height",
	angle: "angle",
	radius: "radius",
};

/** A row of which nothing is known: every cell that must hold something asks for it. */
function blank(columns: Columns): Row {
	const needed = columns === "bends" ? ["at", "angle", "radius"] : ["at", "area"];
	return {
		values: Object.fromEntries(needed.map((field) => [field, 0])),
		texts: Object.fromEntries(needed.map((field) => [field, ""])),
	};
}

/** A row with the texts of a block in its cells. */
function withTexts(
	row: Row,
	given: readonly string[],
	columns: readonly (Column | null)[],
	units: UnitChoice,
	decimal: Decimal | undefined,
): Row {
	const texts: Partial<Record<Role, string>> = {};
	for (const [along, column] of columns.entries()) {
		const text = given[along]?.trim();
		// Where a row of the block is shorter than others, its cells are left alone.
		if (!column || text === undefined) continue;
		// A unit of its own goes before that of the heading.
		const own = /[a-z"″²°]/i.test(text.replace(/\de[+-]?\d/i, ""));
		const bare = column.unit === "" || text === "" || own;
		texts[column.role] = bare ? text : `${text} ${column.unit}`;
	}
	let now = row;
	const read = (text: string, quantity: Quantity) => readNumber(text, quantity, units, decimal);
	const fill = (field: string, text: string, quantity: Quantity) => {
		now = filled(now, field, text, read(text, quantity));
	};
	for (const [role, text] of Object.entries(texts) as [Role, string][]) {
		if (role === "diameter" || role === "width" || role === "height") continue;
		fill(role, text, QUANTITIES[role]);
	}
	if (texts.diameter !== undefined) {
		fill("area", texts.diameter && `d ${texts.diameter}`, "area");
		now = filled(now, "perimeter", "", { kind: "empty" });
	}
	const { width, height } = texts;
	if (width !== undefined || height !== undefined) {
		// The area's own cell holds what cannot be read, as a section is written there.
		fill("area", `${width ?? ""} x ${height ?? ""}`, "area");
		const sides = [width ?? "", height ?? ""].map((text) => read(text, "length"));
		const whole = sides.map((side) => (side.kind === "value" ? side.value : Number.NaN));
		const around = 2 * ((whole[0] ?? Number.NaN) + (whole[1] ?? Number.NaN));
		now = filled(
			now,
			"perimeter",
			"",
			Number.isFinite(around)
				? { kind: "value", value: Number(around.toPrecision(12)) }
				: { kind: "empty" },
		);
	}
	return now;
}

function filled({ values, texts }: Row, field: string, text: string, reading: Reading): Row {
	const { [field]: _, ...others } = texts;
	if (reading.kind === "value") {
		return { values: { ...values, [field]: reading.value }, texts: others };
	}
	if (reading.kind === "empty" && field === "perimeter") {
		const { perimeter: _, ...left } = values;
		return { values: left, texts: others };
	}
	return { values, texts: { ...others, [field]: text } };
}
