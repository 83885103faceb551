/** A small invented study and the part of the catalogue that it uses. */
import type { Path, Sheet } from "../../../www/src/network/edit";
import type {
	Catalogue,
	FieldInfo,
	KindInfo,
	Quantity,
	Study,
} from "../../../www/src/solver/types";
import { type Book, lines, type TableName } from "../../../www/src/table/grid";
import type { Selection } from "../../../www/src/table/select";
import { chosenUnits } from "../../../www/src/units";

function field(name: string, quantity: Quantity, required = true): FieldInfo {
	const bounds = { minimum: 0, maximum: 1e9 };
	return { name, label: name, quantity, ...bounds, required, default: null, help: "" };
}

function kind(name: string, label: string, fields: FieldInfo[]): KindInfo {
	const law = { help: "", equation: "", source: "", range: "", scatter: 0, scatterOrigin: "" };
	return { kind: name, label, ...law, fields, laws: [] };
}

export const CATALOGUE: Catalogue = {
	nodes: [
		kind("source", "source", [field("pressure", "pressure", false)]),
		kind("plenum", "plenum", []),
		kind("tee", "tee", [field("area", "area"), field("sideArea", "area")]),
		kind("joint", "joint", []),
		kind("port", "port", [field("cadSection", "area", false)]),
	],
	losses: [
		kind("duct", "duct friction", [
			field("area", "area"),
			field("perimeter", "length", false),
			field("length", "length"),
		]),
		kind("opening", "opening in a wall", [
			field("area", "area"),
			field("dischargeCoefficient", "number"),
		]),
		kind("typedK", "typed K", [
			field("k", "number"),
			field("kReversed", "number", false),
			field("area", "area"),
		]),
	],
	junctionLaws: [{ name: "bassett2001", label: "Bassett 2001", help: "" }],
	branch: [field("jetFraction", "fraction", false)],
	engine: [],
	cylinder: [field("sweptVolume", "volume", false)],
	valve: [field("diameter", "length"), field("count", "number")],
	valveCurve: { fields: [], usual: [], origin: "" },
	bench: [],
	running: [],
	ambient: [],
	fuel: [],
	fuelSettings: [],
	cycles: [],
	blower: kind("blower", "blower", []),
	cooler: kind("cooler", "charge cooler", []),
	mixings: [],
	check: [],
	station: [],
	stationBend: [],
	reading: kind("reading", "bench reading", []),
};

export const STUDY: Study = {
	format: "evenport-study",
	version: 1,
	name: "two runners",
	notes: "",
	engine: {
		cylinders: [{ id: "1", sweptVolume: 0.0005, bank: "left" }, { id: "2" }],
		reference: { at: "ambient" },
	},
	settings: {
		bench: {
			ambientPressure: 101325,
			ambientTemperature: 293.15,
			depression: 6967.5,
			blowing: false,
			limit: 0.03,
		},
		running: { limit: 0.004 },
	},
	network: {
		nodes: [
			{ id: "room", kind: "source", pressure: 150_000 },
			{ id: "lid", kind: "plenum" },
			{ id: "port 1", kind: "port", cylinder: "1" },
			{ id: "port 2", kind: "port", cylinder: "2" },
		],
		branches: [
			{
				id: "neck",
				from: "room",
				to: "lid",
				losses: [{ kind: "opening", area: 0.002, dischargeCoefficient: 0.6 }],
			},
			{
				id: "runner 1",
				from: "lid",
				to: "port 1",
				jetFraction: 0.1,
				losses: [
					{ kind: "opening", area: 0.001, dischargeCoefficient: 0.65 },
					{ kind: "duct", area: 0.001, length: 0.12, roughness: 0 },
				],
			},
			{
				id: "runner 2",
				from: "lid",
				to: "port 2",
				losses: [
					{ kind: "duct", area: 0.0015, length: 0.2, perimeter: 0.16, roughness: 0 },
					{ kind: "opening", area: 0.0015, dischargeCoefficient: 0.7 },
				],
			},
		],
	},
};

export const SHEET: Sheet = { study: STUDY, drafts: {} };
export const BOOK: Book = { catalogue: CATALOGUE, units: chosenUnits(undefined, 101_325) };

/** The lines of a table of a sheet. */
export function all(table: TableName = "branches", sheet = SHEET, order?: readonly number[]) {
	return lines(table, sheet, CATALOGUE, order);
}

/** A selection by the ends of paths: `1.from` among the branches. */
export function select(
	anchor: string,
	head = anchor,
	rows = false,
	list = "network.branches",
): Selection {
	return { anchor: `${list}.${anchor}`, head: `${list}.${head}`, rows };
}

/** A value by its path as text. */
export function at(sheet: Sheet, path: string): unknown {
	const keys: Path = path.split(".");
	return keys.reduce<unknown>(
		(value, key) => (value as Record<string, unknown>)?.[key],
		sheet.study,
	);
}
