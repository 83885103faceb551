/** The answers given to the starter. They outlive its dialog, so that closing it by mistake loses nothing. */
import { editor } from "../network/editor.svelte";
import type { Catalogue, FieldInfo } from "../solver/types";
import {
	asked,
	type Choices,
	engineOf,
	firingOf,
	type SizeName,
	type Sizes,
	sizesOf,
} from "../starter/answers";
import { MOST_IN_A_BANK } from "../starter/layouts";
import { roomPressure, sizeInfo } from "../starter/questions";
import { sentenceOn, studyOf, usualName } from "../starter/study";
import { cellText, readNumber, shown, type Unit } from "../units";
import { bounds } from "./bounds";
import { catalogue } from "./catalogue.svelte";
import { firingText, readFiring } from "./firing";

/** What was typed as a number, in the unit that was chosen then. */
interface Entry {
	readonly text: string;
	readonly unit: Unit;
	/** In SI; null when the text is no value within bounds. */
	readonly value: number | null;
	readonly fault: string;
}

let choices = $state.raw<Choices>({
	layout: "v8",
	inBank: 4,
	numbering: null,
	feed: "above",
	pockets: "perPort",
});
let entries = $state.raw<Readonly<Partial<Record<SizeName, Entry>>>>({});
/** Null while the usual text stands. */
let countText = $state.raw<string | null>(null);
let orderText = $state.raw<string | null>(null);
let nameText = $state.raw<string | null>(null);

const engine = $derived(engineOf(choices));
const names = $derived(asked(choices));
const room = $derived(catalogue.entries ? roomPressure(catalogue.entries) : 0);
const sizes = $derived(sizesOf(choices, typed()));
const ids = $derived(Array.from({ length: engine.cylinders }, (_, at) => ({ id: String(at + 1) })));
const order = $derived(orderText ?? firingText(firingOf(choices)));
const firing = $derived(readFiring(order, ids));
const orderFault = $derived(faultOf(firing));
const countFault = $derived(
	countText === null || readCount(countText) !== null
		? ""
		: `A whole number from 1 to ${MOST_IN_A_BANK}.`,
);
const studyName = $derived(nameText?.trim() || usualName(choices));
const faults = $derived(
	[countFault, orderFault, ...used().map((name) => entries[name]?.fault ?? "")].filter(Boolean)
		.length,
);
const study = $derived(
	studyOf(
		choices,
		sizes,
		firing,
		studyName,
		used().filter((name) => entries[name]?.value == null),
		{ room, units: editor.sheet?.study.settings.units },
	),
);

export const starter = {
	get choices() {
		return choices;
	},
	get engine() {
		return engine;
	},
	/** The numbers to ask for. */
	get names() {
		return names;
	},
	/** How many answers cannot be used. */
	get faults() {
		return faults;
	},
	/** The study that the answers make. */
	get study() {
		return study;
	},
	/** What it will be, in a sentence. */
	get sentence() {
		return sentenceOn(choices, sizes, study, editor.units);
	},
	/** The study's name as it stands in its field; without one it gets its usual name. */
	get name() {
		return nameText ?? studyName;
	},
	set name(text: string) {
		nameText = text;
	},
	get order() {
		return order;
	},
	set order(text: string) {
		orderText = text;
	},
	get orderFault() {
		return orderFault;
	},
	get count() {
		return countText ?? String(choices.inBank);
	},
	set count(text: string) {
		countText = text;
		const count = readCount(text);
		if (count !== null) choose({ inBank: count });
	},
	get countFault() {
		return countFault;
	},
	choose,

	/** How a number is asked for. */
	info(name: SizeName, from: Catalogue): FieldInfo {
		return sizeInfo(name, from, room, engine.cylinders);
	},
	/** The text of a number: as typed, or the typical size. */
	text(name: SizeName, { quantity }: FieldInfo): string {
		const entry = entries[name];
		const unit = editor.units[quantity];
		if (!entry) return String(Number(shown(sizes[name], unit).toPrecision(4)));
		if (entry.unit === unit || entry.value === null) return entry.text;
		return cellText(entry.value, unit);
	},
	/** Whether a number is still the typical one. */
	typical(name: SizeName): boolean {
		return !entries[name];
	},
	fault(name: SizeName): string {
		return entries[name]?.fault ?? "";
	},
	/** Takes what is typed; an empty text brings the typical size back when the field is left. */
	type(name: SizeName, info: FieldInfo, text: string) {
		const reading = readNumber(text, info.quantity, editor.units);
		const unit = editor.units[info.quantity];
		const inside =
			reading.kind === "value" && reading.value >= info.minimum && reading.value <= info.maximum;
		const fault =
			reading.kind === "unreadable"
				? reading.message
				: reading.kind === "value" && !inside
					? `Must lie ${bounds(info, editor.units)}.`
					: "";
		const value = inside ? reading.value : null;
		entries = { ...entries, [name]: { text, unit, value, fault } };
	},
	/** The field is left. */
	leave(name: SizeName) {
		if (entries[name]?.text.trim() !== "") return;
		const { [name]: _, ...rest } = entries;
		entries = rest;
	},
};

function choose(part: Partial<Choices>) {
	choices = { ...choices, ...part };
}

function used(): SizeName[] {
	return ["displacement", ...names.running, ...names.manifold];
}

function typed(): Partial<Sizes> {
	const known = Object.entries(entries).filter(([, { value }]) => value !== null);
	return Object.fromEntries(known.map(([name, { value }]) => [name, value]));
}

function readCount(text: string): number | null {
	const count = /^\s*\d+\s*$/.test(text) ? Number(text) : 0;
	return count >= 1 && count <= MOST_IN_A_BANK ? count : null;
}

function faultOf(fired: readonly string[]): string {
	if (fired.length === 0) return "";
	const strange = fired.find((id) => !ids.some((each) => each.id === id));
	if (strange) return `There is no cylinder ${strange}.`;
	const twice = fired.find((id, place) => fired.indexOf(id) !== place);
	if (twice) return `Cylinder ${twice} stands in it twice.`;
	return fired.length < ids.length ? "Name every cylinder, or leave it empty." : "";
}
