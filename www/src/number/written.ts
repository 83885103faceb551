/** The names under which units are written behind a number, beside those that the page shows. */
import type { Quantity } from "../solver/types";

/** A written unit: value in SI = (number - plus) * over / times. */
export interface Written {
	readonly times: number;
	readonly over: number;
	readonly plus: number;
}

function scale(over: number, times = 1, plus = 0): Written {
	return { times, over, plus };
}

const INCH = 0.0254;
const POUND = 0.45359237;
const PSI = 6894.757293168;

const LENGTHS: Readonly<Record<string, Written>> = {
	um: scale(1, 1e6),
	mm: scale(1, 1000),
	cm: scale(1, 100),
	m: scale(1),
	in: scale(INCH),
	inch: scale(INCH),
	inches: scale(INCH),
	'"': scale(INCH),
	ft: scale(0.3048),
};

const PRESSURES: Readonly<Record<string, Written>> = {
	pa: scale(1),
	hpa: scale(100),
	kpa: scale(1000),
	mbar: scale(100),
	bar: scale(1e5),
	psi: scale(PSI),
	inhg: scale(3386.389),
	inh2o: scale(248.84),
	'"h2o': scale(248.84),
	'"hg': scale(3386.389),
};

/** Lower case, without spaces, raised and lowered figures as plain ones. */
const WRITTEN: Readonly<Record<Quantity, Readonly<Record<string, Written>>>> = {
	length: LENGTHS,
	area: {
		mm2: scale(1, 1e6),
		cm2: scale(1, 1e4),
		m2: scale(1),
		in2: scale(INCH ** 2),
		sqin: scale(INCH ** 2),
	},
	volume: {
		cc: scale(1, 1e6),
		cm3: scale(1, 1e6),
		ml: scale(1, 1e6),
		l: scale(1, 1000),
		litre: scale(1, 1000),
		litres: scale(1, 1000),
		m3: scale(1),
		in3: scale(INCH ** 3),
		cuin: scale(INCH ** 3),
	},
	angle: { "°": scale(Math.PI, 180), deg: scale(Math.PI, 180), rad: scale(1) },
	pressure: PRESSURES,
	pressureDifference: PRESSURES,
	boost: PRESSURES,
	temperature: {
		c: scale(1, 1, -273.15),
		"°c": scale(1, 1, -273.15),
		degc: scale(1, 1, -273.15),
		f: scale(5, 9, -459.67),
		"°f": scale(5, 9, -459.67),
		degf: scale(5, 9, -459.67),
		k: scale(1),
	},
	temperatureDifference: {
		k: scale(1),
		"°c": scale(1),
		c: scale(1),
		"°f": scale(5, 9),
		f: scale(5, 9),
	},
	altitude: { m: scale(1), km: scale(1000), ft: scale(0.3048) },
	velocity: { "m/s": scale(1), "ft/s": scale(0.3048), "km/h": scale(1, 3.6) },
	specificHeat: {
		"j/(kgk)": scale(1),
		"j/kgk": scale(1),
		"j/kg/k": scale(1),
		"kj/(kgk)": scale(1000),
		"kj/kgk": scale(1000),
		"kj/kg/k": scale(1000),
		"btu/(lb°f)": scale(4186.8),
		"btu/lb°f": scale(4186.8),
		"btu/lb/°f": scale(4186.8),
	},
	massFlow: {
		"g/s": scale(1, 1000),
		"kg/s": scale(1),
		"kg/h": scale(1, 3600),
		"lb/min": scale(POUND, 60),
		"lb/h": scale(POUND, 3600),
	},
	speed: { rpm: scale(1, 60), "rev/s": scale(1) },
	number: {},
	fraction: { "%": scale(1, 100) },
};

/** A unit that is written out, with what it says of gauge and absolute. */
export interface Named {
	readonly unit: Written;
	readonly datum: "gauge" | "absolute" | undefined;
}

/** Finds a unit by its written name; null when the quantity has none of that name. */
export function named(text: string, quantity: Quantity): Named | null {
	const name = plain(text);
	const known = WRITTEN[quantity];
	const itself = Object.hasOwn(known, name) ? known[name] : undefined;
	if (itself) return { unit: itself, datum: undefined };
	if (known !== PRESSURES) return null;
	const [, base = "", word = ""] = /^(.+?)\(?(gauge|gage|absolute|abs|g|a)\)?$/.exec(name) ?? [];
	const unit = Object.hasOwn(known, base) ? known[base] : undefined;
	return unit ? { unit, datum: word.startsWith("g") ? "gauge" : "absolute" } : null;
}

function plain(text: string): string {
	return text
		.toLowerCase()
		.replace(/[\s^]+/g, "")
		.replace(/[²₂]/g, "2")
		.replaceAll("³", "3")
		.replace(/[µμ]/g, "u")
		.replace(/[″”]/g, '"');
}
