/** The only place where display units meet SI. */
import type { Quantity, Settings } from "./solver/types";

/** A display unit: shown = SI * times / over + plus. */
export interface Unit {
	/** Its name in the study's settings. */
	readonly name: string;
	/** Its name on the page. */
	readonly label: string;
	readonly times: number;
	readonly over: number;
	readonly plus: number;
	/** Decimals of a computed figure, fixed so that columns stand still while answers change. */
	readonly decimals: number;
}

/** Text that was read as a value, or why it could not be. */
export type Reading =
	| { readonly kind: "value"; readonly value: number }
	| { readonly kind: "empty" }
	| { readonly kind: "unreadable"; readonly message: string };

function unit(
	name: string,
	label: string,
	times: number,
	over: number,
	decimals: number,
	plus = 0,
): Unit {
	return { name, label, times, over, plus, decimals };
}

/** The units of each quantity, the usual one first. An inch of water is the one at 60 degrees F. */
export const UNITS: Readonly<Record<Quantity, readonly [Unit, ...Unit[]]>> = {
	length: [unit("mm", "mm", 1000, 1, 1), unit("in", "in", 1, 0.0254, 3)],
	area: [
		unit("mm2", "mm²", 1e6, 1, 0),
		unit("cm2", "cm²", 1e4, 1, 2),
		unit("in2", "in²", 1, 0.00064516, 3),
	],
	volume: [
		unit("cc", "cc", 1e6, 1, 1),
		unit("L", "L", 1000, 1, 3),
		unit("in3", "in³", 1, 1.6387064e-5, 2),
	],
	angle: [unit("deg", "°", 180, Math.PI, 1)],
	pressure: [
		unit("kPa", "kPa abs", 1, 1000, 2),
		unit("bar", "bar abs", 1, 1e5, 4),
		unit("psi", "psi abs", 1, 6894.757293168, 3),
		unit("inHg", "inHg abs", 1, 3386.389, 2),
	],
	pressureDifference: [
		unit("kPa", "kPa", 1, 1000, 3),
		unit("Pa", "Pa", 1, 1, 0),
		unit("inH2O", "inH₂O", 1, 248.84, 2),
		unit("psi", "psi", 1, 6894.757293168, 4),
	],
	temperature: [
		unit("degC", "°C", 1, 1, 1, -273.15),
		unit("degF", "°F", 9, 5, 1, -459.67),
		unit("K", "K", 1, 1, 1),
	],
	massFlow: [
		unit("g/s", "g/s", 1000, 1, 2),
		unit("kg/h", "kg/h", 3600, 1, 1),
		unit("lb/min", "lb/min", 60, 0.45359237, 3),
	],
	speed: [unit("rpm", "rpm", 60, 1, 0)],
	number: [unit("1", "", 1, 1, 3)],
	fraction: [unit("percent", "%", 100, 1, 2)],
};

/** What each quantity is called where its unit is chosen. */
export const QUANTITY_WORDS: Readonly<Record<Quantity, string>> = {
	length: "Length",
	area: "Section area",
	volume: "Volume",
	angle: "Angle",
	pressure: "Absolute pressure",
	pressureDifference: "Pressure difference",
	temperature: "Temperature",
	massFlow: "Mass flow",
	speed: "Speed",
	number: "Plain number",
	fraction: "Part of the whole",
};

/** The display unit of each quantity. */
export type UnitChoice = Readonly<Record<Quantity, Unit>>;

/** The units that a study asks for; an unknown name falls back to the usual unit. */
export function chosenUnits(units: Settings["units"]): UnitChoice {
	const entries = (Object.keys(UNITS) as Quantity[]).map((quantity) => {
		const name = units?.[quantity];
		const offered = UNITS[quantity];
		return [quantity, offered.find((each) => each.name === name) ?? offered[0]];
	});
	return Object.fromEntries(entries) as UnitChoice;
}

/** A value in its display unit. */
export function shown(value: number, { times, over, plus }: Unit): number {
	return (value * times) / over + plus;
}

/** A value typed in a display unit, in SI. The dust of the last bits is cut so that files stay clean. */
export function inSi(value: number, { times, over, plus }: Unit): number {
	return Number((((value - plus) * over) / times).toPrecision(15));
}

/** A value as it stands in a cell: short when looked at, exact while it is edited. */
export function cellText(value: number, its: Unit, exact = false): string {
	const number = Number(shown(value, its).toPrecision(exact ? 12 : 7));
	return Object.is(number, -0) ? "0" : String(number);
}

/** A computed value with its fixed number of decimals and a true minus sign, without its unit. */
export function figure(value: number, its: Unit, decimals = its.decimals): string {
	return minus(shown(value, its).toFixed(decimals));
}

/** The same with a sign in front, whatever the sign. */
export function signed(value: number, its: Unit, decimals = its.decimals): string {
	const text = figure(value, its, decimals);
	if (text.startsWith("−")) return text;
	return /[1-9]/.test(text) ? `+${text}` : `±${text}`;
}

/** A label with its unit after a comma, or alone when the quantity has none. */
export function withUnit(label: string, its: Unit): string {
	return its.label === "" ? label : `${label}, ${its.label}`;
}

/**
 * Reads what was typed, with a decimal point or a decimal comma. An area is also taken as `d 44`, a
 * round section, and as `44 x 60`, a rectangular one, in the chosen unit of length.
 */
export function readNumber(text: string, quantity: Quantity, units: UnitChoice): Reading {
	const typed = text.trim();
	if (typed === "") return { kind: "empty" };
	if (quantity === "area") {
		const area = readSection(typed, units.length);
		if (area !== null) return { kind: "value", value: area };
	}
	const number = plainNumber(typed);
	if (number !== null) return { kind: "value", value: inSi(number, units[quantity]) };
	const message =
		typed.includes(",") && /[.,].*[.,]/.test(typed)
			? "Write one decimal point or comma, and nothing between thousands."
			: quantity === "area"
				? "Not an area. Write a number, or d 44, or 44 x 60."
				: "Not a number.";
	return { kind: "unreadable", message };
}

function readSection(typed: string, length: Unit): number | null {
	const round = /^(?:d|ø|⌀)\s*(.+)$/i.exec(typed);
	const rectangle = /^([^x×]+?)\s*[x×]\s*([^x×]+)$/i.exec(typed);
	const sides = round ? [round[1]] : rectangle ? [rectangle[1], rectangle[2]] : [];
	const [first, second] = sides.map((side) => plainNumber(side ?? ""));
	if (first == null || second === null) return null;
	const one = inSi(first, length);
	const area = second === undefined ? (Math.PI / 4) * one * one : one * inSi(second, length);
	return Number(area.toPrecision(9));
}

function plainNumber(typed: string): number | null {
	const text = typed.trim().replace("−", "-").replace(",", ".");
	if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text)) return null;
	const number = Number(text);
	return Number.isFinite(number) ? number : null;
}

function minus(text: string): string {
	if (!text.startsWith("-")) return text;
	return /[1-9]/.test(text) ? `−${text.slice(1)}` : text.slice(1);
}
