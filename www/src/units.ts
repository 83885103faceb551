/** The only place where display units meet SI. */
import { type Decimal, LONGEST } from "./number/separators";
import { readSum } from "./number/sum";
import { named } from "./number/written";
import type { FieldInfo, Quantity, Settings } from "./solver/types";

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
	/** The conditions that belong to the unit. */
	readonly conditions?: string;
}

/** Text that was read as a value, or why it could not be. */
export type Reading =
	| { readonly kind: "value"; readonly value: number }
	| { readonly kind: "empty" }
	| {
			readonly kind: "unreadable";
			readonly message: string;
			/** Text that can be read in two ways: its comma before decimals, and between thousands. */
			readonly readings?: readonly [decimals: number, thousands: number];
	  };

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

/** A pressure is shown absolute, or against the room pressure of the study's bench. */
function pressures(
	name: string,
	label: string,
	over: number,
	decimals: number,
): readonly [Unit, Unit] {
	return [
		unit(name, `${label} abs`, 1, over, decimals),
		unit(`${name}${GAUGE}`, `${label} gauge`, 1, over, decimals),
	];
}

const GAUGE = " gauge";

/**
 * A cubic foot a minute is a mass only at stated conditions: 101.325 kPa absolute and 20 degrees C, from
 * which the solver's bench starts, where dry air weighs 1.2041 kg/m3.
 */
const CFM = (0.3048 ** 3 / 60) * (101_325 / (287.05 * 293.15));
const CFM_CONDITIONS = "1 cfm is taken at 101.325 kPa abs and 20 °C, where air weighs 1.2041 kg/m³";

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
		...pressures("kPa", "kPa", 1000, 2),
		...pressures("bar", "bar", 1e5, 4),
		...pressures("psi", "psi", 6894.757293168, 3),
		...pressures("inHg", "inHg", 3386.389, 2),
		...pressures("inH2O", "inH₂O", 248.84, 1),
	],
	pressureDifference: [
		unit("kPa", "kPa", 1, 1000, 3),
		unit("Pa", "Pa", 1, 1, 0),
		unit("bar", "bar", 1, 1e5, 5),
		unit("psi", "psi", 1, 6894.757293168, 4),
		unit("inHg", "inHg", 1, 3386.389, 3),
		unit("inH2O", "inH₂O", 1, 248.84, 2),
	],
	boost: [
		unit("kPa", "kPa", 1, 1000, 2),
		unit("bar", "bar", 1, 1e5, 4),
		unit("psi", "psi", 1, 6894.757293168, 2),
		unit("inHg", "inHg", 1, 3386.389, 2),
	],
	temperature: [
		unit("degC", "°C", 1, 1, 1, -273.15),
		unit("degF", "°F", 9, 5, 1, -459.67),
		unit("K", "K", 1, 1, 1),
	],
	temperatureDifference: [unit("K", "K", 1, 1, 1), unit("degF", "°F", 9, 5, 1)],
	altitude: [unit("m", "m", 1, 1, 0), unit("ft", "ft", 1, 0.3048, 0)],
	velocity: [unit("m/s", "m/s", 1, 1, 1), unit("ft/s", "ft/s", 1, 0.3048, 1)],
	specificHeat: [
		unit("J/(kg K)", "J/(kg K)", 1, 1, 0),
		unit("Btu/(lb °F)", "Btu/(lb °F)", 1, 4186.8, 4),
	],
	massFlow: [
		unit("g/s", "g/s", 1000, 1, 2),
		unit("kg/h", "kg/h", 3600, 1, 1),
		unit("lb/min", "lb/min", 60, 0.45359237, 3),
		{ ...unit("cfm", "cfm at 20 °C", 1, CFM, 1), conditions: CFM_CONDITIONS },
	],
	speed: [unit("rpm", "rpm", 60, 1, 0)],
	number: [unit("1", "", 1, 1, 3)],
	fraction: [unit("percent", "%", 100, 1, 2)],
};

/** Power and heat are always shown in this unit. */
export const KILOWATT: Unit = unit("kW", "kW", 1, 1000, 2);

/** What each quantity is called where its unit is chosen. */
export const QUANTITY_WORDS: Readonly<Record<Quantity, string>> = {
	length: "Length",
	area: "Section area",
	volume: "Volume",
	angle: "Angle",
	pressure: "Pressure",
	pressureDifference: "Pressure difference",
	boost: "Boost",
	temperature: "Temperature",
	temperatureDifference: "Temperature difference",
	altitude: "Altitude",
	velocity: "Velocity",
	specificHeat: "Specific heat",
	massFlow: "Mass flow",
	speed: "Speed",
	number: "Plain number",
	fraction: "Part of the whole",
};

/** The display unit of each quantity, and the room pressure from which gauge pressures count [Pa]. */
export type UnitChoice = Readonly<Record<Quantity, Unit>> & { readonly room?: number };

/**
 * The units that a study asks for; an unknown name falls back to the usual unit. Without a room pressure
 * nothing can be shown or typed as gauge.
 */
export function chosenUnits(units: Settings["units"], room?: number): UnitChoice {
	const entries = (Object.keys(UNITS) as Quantity[]).map((quantity) => {
		const name = units?.[quantity];
		const offered = UNITS[quantity];
		return [quantity, offered.find((each) => each.name === name) ?? offered[0]];
	});
	const choice = Object.fromEntries(entries) as Record<Quantity, Unit>;
	const { pressure } = choice;
	if (room === undefined) return { ...choice, pressure: absolute(pressure) };
	if (!pressure.name.endsWith(GAUGE)) return { ...choice, room };
	const plus = (-room * pressure.times) / pressure.over;
	return { ...choice, room, pressure: { ...pressure, plus } };
}

/** The pressures of still air, by their labels: they are told absolute, for gauge counts from such a one. */
const STILL: ReadonlySet<string> = new Set(["room pressure", "ambient pressure"]);

/** The units of a field. */
export function unitsOf(info: FieldInfo, units: UnitChoice): UnitChoice {
	if (!STILL.has(info.label)) return units;
	return { ...units, pressure: absolute(units.pressure), room: undefined };
}

/** The same unit of pressure, against nothing. */
export function absolute(pressure: Unit): Unit {
	const name = pressure.name.replace(GAUGE, "");
	return UNITS.pressure.find((each) => each.name === name) ?? UNITS.pressure[0];
}

/** A value in its display unit. */
export function shown(value: number, { times, over, plus }: Unit): number {
	return (value * times) / over + plus;
}

/** A difference between two values in their display unit. */
export function shownSpan(value: number, { times, over }: Unit): number {
	return (value * times) / over;
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

/** The same for a file that other programs read: with the hyphen that they know as a minus sign. */
export function plainFigure(value: number, its: Unit, decimals = its.decimals): string {
	return figure(value, its, decimals).replace("−", "-");
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
 * Reads what was typed: a number with a decimal point or comma, a simple sum or product, a unit of its
 * own behind it. An area is also taken as `d 44`, a round section, and as `44 x 60`, a rectangular one.
 * `decimal` is what the surroundings of the text have told of its commas.
 */
export function readNumber(
	text: string,
	quantity: Quantity,
	units: UnitChoice,
	decimal?: Decimal,
): Reading {
	const typed = text.trim();
	if (typed === "") return { kind: "empty" };
	const section = quantity === "area" && typed.length <= LONGEST;
	const read = section ? readSection(typed, units, decimal) : undefined;
	const part = read ?? readPart(typed, quantity, units, decimal);
	if (part.kind === "wrong") return { kind: "unreadable", message: part.message };
	// A unit or a second side can make too much of a number that is none too large itself.
	if (!Number.isFinite(part.value)) return { kind: "unreadable", message: TOO_LARGE };
	if (!part.either) return { kind: "value", value: part.value };
	const [decimals, thousands] = (["comma", "point"] as const).map((each) => {
		const reading = readNumber(typed, quantity, units, each);
		return reading.kind === "value" ? reading.value : Number.NaN;
	}) as [number, number];
	const its = units[quantity];
	const [one, other] = [decimals, thousands].map((each) =>
		`${cellText(each, its)} ${its.label}`.trimEnd(),
	);
	return {
		kind: "unreadable",
		message: `“${typed}” can mean ${one} or ${other}.`,
		readings: [decimals, thousands],
	};
}

const TOO_LARGE = "Too large for a number.";

/** A number in SI, and whether its comma can be read in two ways. */
type Part =
	| { readonly kind: "value"; readonly value: number; readonly either: boolean }
	| { readonly kind: "wrong"; readonly message: string };

function readPart(
	typed: string,
	quantity: Quantity,
	units: UnitChoice,
	decimal: Decimal | undefined,
): Part {
	const sum = readSum(typed, decimal);
	if (sum.kind === "wrong") {
		const plain = sum.message === "Not a number.";
		return plain && quantity === "area" ? { kind: "wrong", message: NOT_AN_AREA } : sum;
	}
	const its = sum.rest === "" ? units[quantity] : writtenUnit(sum.rest, quantity, units);
	if (typeof its === "string") return { kind: "wrong", message: its };
	return { kind: "value", value: inSi(sum.value, its), either: sum.either };
}

const NOT_AN_AREA = "Not an area. Write a number, or d 44, or 44 x 60.";

/** A round or a rectangular section; undefined when the text is neither. */
function readSection(
	typed: string,
	units: UnitChoice,
	decimal: Decimal | undefined,
): Part | undefined {
	const round = /^(?:d|ø|⌀)\s*(.+)$/i.exec(typed)?.[1];
	const [first = "", second, ...more] = round ? [round] : typed.split(/[x×]/i);
	if (!round && second === undefined) return undefined;
	if (more.length > 0) return { kind: "wrong", message: NOT_AN_AREA };
	const unitOf = (side = "") => {
		const sum = readSum(side, decimal);
		return sum.kind === "value" ? sum.rest : "";
	};
	// A unit behind one side holds for both.
	const shared = unitOf(second) || unitOf(first);
	const sides: number[] = [];
	let either = false;
	for (const side of second === undefined ? [first] : [first, second]) {
		const whole = unitOf(side) === "" ? `${side} ${shared}` : side;
		const part = readPart(whole.trim(), "length", units, decimal);
		if (part.kind === "wrong" || part.value < 0) return { kind: "wrong", message: NOT_AN_AREA };
		either ||= part.either;
		sides.push(part.value);
	}
	const [one = 0, other] = sides;
	const area = other === undefined ? (Math.PI / 4) * one * one : one * other;
	return { kind: "value", value: Number(area.toPrecision(9)), either };
}

/** The unit that stands behind a number, or what is wrong with it. */
function writtenUnit(text: string, quantity: Quantity, units: UnitChoice): Unit | string {
	const its = units[quantity];
	const cfm = UNITS.massFlow.find(({ conditions }) => conditions);
	if (cfm && quantity === "massFlow" && (/^cfm$/i.test(text) || text === cfm.label)) return cfm;
	const found = named(text, quantity);
	if (!found) return unknownUnit(text, quantity);
	const { unit: scale, datum } = found;
	const asUnit: Unit = { ...its, ...scale };
	if (quantity !== "pressure") {
		return datum ? "A pressure difference is neither gauge nor absolute." : asUnit;
	}
	if (datum === "absolute") return asUnit;
	if (datum === undefined) {
		const same = scale.over === its.over && scale.times === its.times;
		return same ? its : `Say which: “${text} gauge” or “${text} abs”.`;
	}
	if (units.room === undefined) return "Gauge counts from this pressure: write it as absolute.";
	return { ...asUnit, plus: (-units.room * scale.times) / scale.over };
}

function unknownUnit(text: string, quantity: Quantity): string {
	if (quantity === "area") return `${NOT_AN_AREA} Units: mm², cm², in².`;
	const labels = UNITS[quantity].map(({ label }) => label).filter((label) => label !== "");
	if (labels.length === 0) return `Not a number: “${text}” stands behind it, and it has no unit.`;
	return `“${text}” is no unit here. Units: ${labels.join(", ")}.`;
}

/** Digits with a true minus sign, which a zero has not. */
export function minus(text: string): string {
	if (!text.startsWith("-")) return text;
	return /[1-9]/.test(text) ? `−${text.slice(1)}` : text.slice(1);
}
