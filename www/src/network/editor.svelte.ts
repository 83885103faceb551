/** The one document that the page edits, as state the views can follow. */
import type { Place } from "../share/place";
import type { Study } from "../solver/types";
import { chosenUnits } from "../units";
import * as edit from "./edit";
import { look, type Versions, variantOn } from "./versions";

let history = $state.raw<edit.History | null>(null);
// What almost every cell looks at stands by itself, so that a keystroke does not make hundreds of cells
// ask whether it concerns them.
let drafts = $state.raw<edit.Drafts>({});
let versions = $state.raw<Versions>();
let unitNames = $state.raw<Study["settings"]["units"]>();
let room = $state.raw<number>();
let nodes = $state.raw<Study["network"]["nodes"]>([]);
let engine = $state.raw<Study["engine"]>();
let coolers = $state.raw<Study["coolers"]>();
const sheet = $derived(history?.present ?? null);
const typing = $derived((history?.group ?? null) !== null);
const draftCount = $derived(Object.keys(drafts).length);
const units = $derived(chosenUnits(unitNames, room));
/** Who is told of a study before anything that shows it. */
let told: (study: Study) => void = () => {};
/** Where each sheet is kept. An edit stays with the study that it was made to; undo can lead to another. */
const places = new WeakMap<edit.Sheet, Place>();

/** Which version each study is that has been on the sheet; only studies with variants have any. */
const names = new WeakMap<Study, string>();

/** The study on the sheet, its unreadable cells, and everything that can be done to it. */
export const editor = {
	/** Null only until the first study has been read. */
	get sheet() {
		return sheet;
	},
	get drafts() {
		return drafts;
	},
	/** All versions of the study on the sheet; none while it has no variants. */
	get versions() {
		return versions;
	},
	/** The version that a study is, which has been on the sheet: “base” or its variant; empty without variants. */
	versionOf(study: Study | null): string {
		return (versions && study && names.get(study)) ?? "";
	},
	/** The nodes of the network; the same list as long as no node is edited. */
	get nodes() {
		return nodes;
	},
	/** The engine; the same object as long as it is not edited. */
	get engine() {
		return engine;
	},
	/** The charge coolers; the same list as long as none is edited. */
	get coolers() {
		return coolers;
	},
	get draftCount() {
		return draftCount;
	},
	get units() {
		return units;
	},
	/** Whether an edit is still being typed. */
	get typing() {
		return typing;
	},
	/** Where the study on the sheet is kept. */
	get place(): Place | undefined {
		return history ? places.get(history.present) : undefined;
	},
	get canUndo() {
		return (history?.past.length ?? 0) > 0;
	},
	get canRedo() {
		return (history?.future.length ?? 0) > 0;
	},

	/** Has every study told at once, before the page is brought up to date, which takes as long as to solve it. */
	tell(of: (study: Study) => void) {
		told = of;
	},

	/** Lays a study on the sheet with no way back: the first one, or what another tab has made of it. */
	begin(first: edit.Sheet, place: Place) {
		show(edit.begin(first), place);
	},

	/** Lays another study on the sheet, as an edit. */
	replace(next: edit.Sheet, place: Place) {
		if (history)
			show(
				edit.change(history, null, () => next),
				place,
			);
	},

	/** Lays another version on the sheet: a variant by its place, or the base. This is no edit. */
	look(looking: number | null) {
		if (history) show(edit.turn(history, (sheet) => look(sheet, looking)));
	},

	/** Makes an edit; edits of one group are undone together. */
	change,

	/** Puts a value into a cell while it is being typed. */
	put(path: edit.Path, value: unknown) {
		change(edit.keyOf(path), (before) => edit.put(before, path, value));
	},

	/** Keeps a cell's text that is not a value. */
	draft(path: edit.Path, text: string) {
		change(edit.keyOf(path), (before) => edit.draft(before, path, text));
	},

	/** Ends the edit that is being typed. */
	close() {
		if (history) show(edit.close(history));
	},

	/** Takes back what has been typed into this cell since it was entered. */
	revert(path: edit.Path) {
		if (history?.group === edit.keyOf(path)) show(edit.undo(history));
	},

	/** Makes the last edit in another way, if nothing has been done since; else makes one more edit. */
	amend(
		made: edit.Sheet,
		again: (before: edit.Sheet) => edit.Sheet,
		after: (now: edit.Sheet) => edit.Sheet,
	) {
		if (!history) return;
		const last = history.past.at(-1);
		if (history.present !== made || last === undefined) change(null, after);
		else show({ ...history, present: again(last), group: null });
	},

	undo() {
		if (history) show(edit.undo(history));
	},

	redo() {
		if (history) show(edit.redo(history));
	},

	/** Whether undo leads to this study. */
	hasBehind(study: Study): boolean {
		return history?.past.some((each) => each.study === study) ?? false;
	},

	/** Goes back to this study, if undo leads there. */
	backTo(study: Study) {
		if (!editor.hasBehind(study)) return;
		while (history && history.present.study !== study) show(edit.undo(history));
	},
};

function change(group: string | null, by: (sheet: edit.Sheet) => edit.Sheet) {
	if (history) show(edit.change(history, group, by));
}

function show(next: edit.History, place = editor.place) {
	if (place && !places.has(next.present)) places.set(next.present, place);
	const { study } = next.present;
	const on = variantOn(next.present);
	if (next.present.versions) names.set(study, on ? worded(on.name) : "base");
	if (study !== history?.present.study) told(study);
	history = next;
	drafts = next.present.drafts;
	versions = next.present.versions;
	unitNames = study.settings.units;
	room = study.settings.bench.ambientPressure;
	nodes = study.network.nodes;
	engine = study.engine;
	coolers = study.coolers;
}

function worded(name: string): string {
	return /^variant\b/i.test(name) ? name : `variant ${name}`;
}
