/** All that a study was solved from, in words: what a report lists, enough to type it in again. */
import { inOrder } from "../network/passages";
import { sourceWay } from "../network/source";
import { scheduleText } from "../schedule/whole";
import type {
	Blower,
	Branch,
	Catalogue,
	ChoiceInfo,
	Cylinder,
	EfficiencyTable,
	FieldInfo,
	KindInfo,
	Loss,
	Node,
	Study,
} from "../solver/types";
import { cellText, type Unit, type UnitChoice, unitsOf } from "../units";
import { firingText } from "../view/firing";
import { LEG_WORDS, REFERENCE_WORDS, SOURCE_WORDS } from "../view/words";

/** One thing that has been entered, with what is said of it. */
export interface Entered {
	readonly name: string;
	/** What it is, or what it leads to. */
	readonly kind: string;
	/** Line by line; each of its parts is one value. */
	readonly lines: readonly (readonly string[])[];
}

export interface Group {
	readonly title: string;
	readonly entries: readonly Entered[];
}

const NODES = "Nodes";
const BRANCHES = "Branches";
const NETWORK = new Set([NODES, BRANCHES]);

/** What the words are made with. */
interface Book {
	readonly study: Study;
	readonly catalogue: Catalogue;
	readonly units: UnitChoice;
}

/** Everything that has been entered, in the units of the study. */
export function entered(study: Study, catalogue: Catalogue, units: UnitChoice): Group[] {
	const book = { study, catalogue, units };
	const coolers = (study.coolers ?? []).map((cooler) => ({
		name: cooler.id,
		kind: catalogue.cooler.label,
		lines: [
			[
				...numbers(cooler, catalogue.cooler.fields, book),
				chosen("mixing", cooler.mixing, catalogue.mixings),
				`passages ${inOrder(study, cooler).join(", ")}`,
				...(cooler.series?.length ? ["coolant passes them in this order"] : []),
			],
		],
	}));
	return [
		{ title: "Engine and conditions", entries: conditions(book) },
		{
			title: "Cylinders",
			entries: study.engine.cylinders.map((each) => cylinderEntry(each, book)),
		},
		{ title: NODES, entries: study.network.nodes.map((node) => nodeEntry(node, book)) },
		{ title: BRANCHES, entries: study.network.branches.map((each) => branchEntry(each, book)) },
		...(coolers.length > 0 ? [{ title: "Charge coolers", entries: coolers }] : []),
	];
}

/** Entries that say the same, as one. */
export function together(entries: readonly Entered[]): Entered[] {
	const found = new Map<string, Entered>();
	for (const { name, kind, lines } of entries) {
		const key = JSON.stringify([kind, lines]);
		const there = found.get(key);
		found.set(key, { name: there ? `${there.name}, ${name}` : name, kind, lines });
	}
	return [...found.values()];
}

/** How one version differs from another: what stands in it otherwise, and the names that are gone. */
export interface Otherwise {
	readonly entries: readonly Entered[];
	readonly gone: readonly string[];
}

/** What a version has entered otherwise than the base. */
export function otherwise(base: readonly Group[], version: readonly Group[]): Otherwise {
	// The versions share all but their networks, whose names are unique.
	const networks = (groups: readonly Group[]) =>
		groups.filter(({ title }) => NETWORK.has(title)).flatMap(({ entries }) => entries);
	const before = new Map(networks(base).map((each) => [each.name, each]));
	const after = networks(version);
	const names = new Set(after.map(({ name }) => name));
	return {
		entries: after.filter((each) => JSON.stringify(each) !== JSON.stringify(before.get(each.name))),
		gone: [...before.keys()].filter((name) => !names.has(name)),
	};
}

function conditions(book: Book): Entered[] {
	const { study, catalogue, units } = book;
	const { engine, settings } = study;
	const refers = REFERENCE_WORDS[engine.reference.at];
	const order = firingText(engine.firingOrder);
	const all: Entered[] = [
		{
			name: "Engine",
			kind: "",
			lines: [
				[
					...numbers(engine, catalogue.engine, book),
					...table("volumetric efficiency", engine.volumetricTable, units),
					`volumetric efficiency refers to ${engine.reference.at === "node" ? engine.reference.node : refers}`,
					chosen("cycle", engine.cycle ?? catalogue.cycles[0]?.name, catalogue.cycles),
					`firing order ${order === "" ? "not known" : order}`,
				],
			],
		},
		{
			name: "Fuel",
			kind: "",
			lines: [
				[
					chosen(
						"metered",
						engine.fuel?.setting ?? catalogue.fuelSettings[0]?.name,
						catalogue.fuelSettings,
					),
					...numbers(engine.fuel, catalogue.fuel, book),
				],
			],
		},
		{ name: "Ambient air", kind: "", lines: [numbers(settings.ambient, catalogue.ambient, book)] },
		{
			name: "Flow bench",
			kind: settings.bench.blowing ? "blows into the source" : "sucks at the port",
			lines: [
				numbers(settings.bench, catalogue.bench, book),
				...(settings.bench.readings ?? []).map((reading, place) => [
					`reading ${place + 1}`,
					...numbers(reading, catalogue.reading.fields, book),
				]),
			],
		},
		{ name: "Running", kind: "", lines: [numbers(settings.running, catalogue.running, book)] },
		{
			name: "Check against CAD",
			kind: "",
			lines: [numbers(settings.check, catalogue.check, book)],
		},
	];
	return all
		.map((each) => ({ ...each, lines: each.lines.filter(({ length }) => length > 0) }))
		.filter(({ lines, kind }) => lines.length > 0 || kind !== "");
}

function cylinderEntry(cylinder: Cylinder, book: Book): Entered {
	const parts = numbers(cylinder, book.catalogue.cylinder, book);
	return {
		name: cylinder.id,
		kind: cylinder.bank ? `bank ${cylinder.bank}` : "",
		lines: parts.length > 0 ? [parts] : [],
	};
}

function nodeEntry(node: Node, book: Book): Entered {
	const { catalogue, units } = book;
	const info = catalogue.nodes.find(({ kind }) => kind === node.kind);
	const parts = numbers(node, info?.fields ?? [], book);
	if (node.kind === "source") {
		parts.push(`pressure ${SOURCE_WORDS[sourceWay(node)]}`);
		if (node.boostNode) parts.push(`boost read at ${node.boostNode}`);
	}
	if (node.kind === "tee" || node.kind === "wye")
		parts.push(chosen("by", node.law, catalogue.junctionLaws));
	const lines = parts.length > 0 ? [parts] : [];
	if (node.kind !== "port") return { name: node.id, kind: info?.label ?? node.kind, lines };
	if (node.valve) {
		const { dischargeTable } = node.valve;
		lines.push(["valve", ...numbers(node.valve, catalogue.valve, book)]);
		if (dischargeTable)
			lines.push([pairs("discharge coefficient over lift/diameter", dischargeTable, units.number)]);
	}
	return { name: node.id, kind: `${info?.label ?? node.kind} of cylinder ${node.cylinder}`, lines };
}

function branchEntry(branch: Branch, book: Book): Entered {
	const { catalogue } = book;
	const own = numbers(branch, catalogue.branch, book);
	if (branch.bypass) own.push("leads round a blower");
	const { blower } = branch;
	return {
		name: branch.id,
		kind: `${end(branch.from, branch.fromLeg)} to ${end(branch.to, branch.toLeg)}`,
		lines: [
			...(own.length > 0 ? [own] : []),
			...(blower ? [blowerLine(blower, book)] : []),
			...branch.losses.map((loss, place) => lossLine(loss, place, branch, book)),
		],
	};
}

function end(node: string, leg: keyof typeof LEG_WORDS | undefined): string {
	return leg ? `${node} (${LEG_WORDS[leg]})` : node;
}

function blowerLine(blower: Blower, book: Book): string[] {
	const { catalogue, units } = book;
	return [
		catalogue.blower.label,
		...numbers(blower, catalogue.blower.fields, book),
		...(blower.boostNode ? [`boost read at ${blower.boostNode}`] : []),
		...table("volumetric efficiency", blower.volumetricTable, units),
		...table("isentropic efficiency", blower.isentropicTable, units),
	];
}

function lossLine(loss: Loss, place: number, branch: Branch, book: Book): string[] {
	const { study, catalogue, units } = book;
	const info = catalogue.losses.find(({ kind }) => kind === loss.kind);
	const parts = [
		`${place + 1}. ${info?.label ?? loss.kind}`,
		...numbers(loss, info?.fields ?? [], book),
		...author(loss, info),
	];
	if (loss.kind === "typedK" && loss.origin) parts.push(`K from ${loss.origin}`);
	if (loss.kind === "core" && loss.cooler) parts.push(`passage of ${loss.cooler}`);
	if (loss.kind === "schedule") {
		const index = study.network.branches.indexOf(branch);
		const path = ["network", "branches", index, "losses", place];
		parts.push(scheduleText({ study, drafts: {} }, path, units));
	}
	return parts;
}

/** Whose formula is followed, where there are several. */
function author(loss: Loss, info: KindInfo | undefined): string[] {
	if (!info || info.laws.length === 0) return [];
	const law = "law" in loss ? loss.law : undefined;
	return [chosen("by", law ?? info.laws[0]?.name, info.laws)];
}

/** The numbers that stand in a thing, each with its name and unit. */
function numbers(
	thing: object | undefined,
	fields: readonly FieldInfo[],
	{ units }: Book,
): string[] {
	const values = (thing ?? {}) as Readonly<Record<string, unknown>>;
	return fields.flatMap((info) => {
		const value = values[info.name];
		const unit = unitsOf(info, units)[info.quantity];
		return typeof value === "number" ? [`${info.label} ${withUnit(value, unit)}`] : [];
	});
}

/** A value as it stands in its cell, and its unit on the same line. */
function withUnit(value: number, unit: Unit): string {
	return unit.label === "" ? cellText(value, unit) : `${cellText(value, unit)}\u00a0${unit.label}`;
}

function chosen(what: string, name: string | undefined, from: readonly ChoiceInfo[]): string {
	return `${what}: ${from.find((each) => each.name === name)?.label ?? name ?? "–"}`;
}

function pairs(what: string, rows: readonly (readonly [number, number])[], unit: Unit): string {
	const texts = rows.map((row) => row.map((value) => cellText(value, unit)).join(" "));
	return `${what}: ${texts.join("; ")}`;
}

/** An efficiency over speed, and over pressure ratio where it depends on that. */
function table(what: string, given: EfficiencyTable | undefined, units: UnitChoice): string[] {
	if (!given) return [];
	const ratios = given.ratios ?? [];
	const width = Math.max(ratios.length, 1);
	const rows = given.speeds.map((speed, place) => {
		const values = given.values.slice(place * width, (place + 1) * width);
		return [
			withUnit(speed, units.speed),
			...values.map((value) => cellText(value, units.fraction)),
		].join(" ");
	});
	const head = ratios.length > 0 ? ` at pressure ratios ${ratios.join(" ")}` : "";
	return [`${what} over speed, ${units.fraction.label}${head}: ${rows.join("; ")}`];
}
