/** Keeps the study on the sheet, and minds that two tabs never edit one study. */
import { put, type Sheet } from "../network/edit";
import { editor } from "../network/editor.svelte";
import { type Kept, readKept } from "../network/restore";
import { documentDrafts, documentOf, isSameEdit, sheetOf } from "../network/versions";
import type { Study, StudyError } from "../solver/types";
import { type Hold, takeAway, takeFree, takeLater } from "./holding";
import { isOneFile } from "./oneFile";
import { forget, isKnown, newPlace, type Place, part, placeOf, takeOver } from "./place";
import type { Entry } from "./records";
import * as records from "./records";
import { copyName } from "./settle";
import { newest, tidy } from "./shelf";
import { tell } from "./tabs";

/** The longest that what is being typed waits before it is written [ms]. */
const DELAY = 50;

/** Where a tab remembers its study, for a reload. */
const OPEN = "evenport-open";

/** Where a page that goes leaves what is still on its way: once in forty times that does not reach the database. */
const LAST = "evenport-last";

/** Where a browser remembers that it has kept something. */
const KEPT = "evenport-kept";

/** Whose the study on the sheet is to edit. */
export type Standing = "own" | "watching" | "takenAway";

/** Why nothing is kept. */
export interface Trouble {
	readonly kind: "full" | "denied" | "failed";
	readonly message: string;
}

/** What there is to say once. */
export type Notice =
	| { readonly kind: "copied"; readonly name: string }
	| { readonly kind: "regained"; readonly name: string }
	| { readonly kind: "unreadable"; readonly entry: Entry; readonly errors: readonly StudyError[] };

let standing = $state.raw<Standing>("own");
let trouble = $state.raw<Trouble | null>(null);
let notice = $state.raw<Notice | null>(null);

/** Whether the browser is given nothing to keep: a page that is a file has to be asked to. */
let withheld = $state(isOneFile);
let isEdited = $state(false);

let current: Place | null = null;
/** The sheet that is to be written; of several only the newest is. */
let waiting: Sheet | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;
let written: Promise<unknown> = Promise.resolve();
/** What has been handed to the browser and is not known to be in its database. */
let unconfirmed: Entry | null = null;

let hold: Hold | null = null;
/** Whether it is not known yet if another tab has the study. */
let claiming = false;
/** Ended when the tab's part in the study on the sheet changes; what is under way then is dropped. */
let role = new AbortController();

/** Places that undo may lead back to. */
const visited: Place[] = [];

const others = tell(heard);

export const keeper = {
	get standing() {
		return standing;
	},
	get trouble() {
		return trouble;
	},
	get notice() {
		return notice;
	},
	/** The study on the sheet, by its name on the shelf. */
	get study() {
		return current?.study ?? null;
	},
	/** Whether the browser is not to keep anything before somebody says so. */
	get withheld() {
		return withheld;
	},
	/** Whether nobody has kept anything in this browser, as far as that is known before its database is open. */
	get isNew() {
		return !withheld && read(() => localStorage, KEPT) === null;
	},
	/** Whether there is an edit that neither a shelf nor the page's own file has. */
	get unkept() {
		return withheld && isEdited;
	},
	/** Whether closing the tab would lose something. */
	get atRisk() {
		if (withheld) return isEdited;
		return trouble !== null && current?.uninvited === false && editor.sheet !== current.sheet;
	},

	/** Lays the study on the sheet that this tab had, or that was written last; false when there is none. */
	async resume(): Promise<boolean> {
		await finish().catch(fail);
		const entry = await lastEntry().catch(fail);
		if (!entry) return false;
		const errors = await keeper.open(entry);
		if (errors.length > 0) notice = { kind: "unreadable", entry, errors };
		return errors.length === 0;
	},

	/** Lays an example on the sheet of somebody who has nothing of their own there. */
	invite(example: Study) {
		lay(sheetOf(example), newPlace({ untouched: true, uninvited: true }));
	},

	/** Lays the study on the sheet that a page brought along, or tells what is wrong with it. */
	async unpack(kept: Kept): Promise<readonly StudyError[]> {
		const reply = await readKept(kept);
		if (reply.kind === "wrong") return reply.errors;
		lay(sheetOf(reply.study, kept.drafts, kept.looking), newPlace());
		return [];
	},

	/** Lays a study on the sheet that is new to the shelf. */
	lay(study: Study, untouched = false) {
		lay(sheetOf(study), newPlace({ untouched }));
	},

	/** Lays a study from the shelf on the sheet, or tells what is wrong with it. */
	async open(entry: Entry): Promise<readonly StudyError[]> {
		const reply = await readKept(entry);
		if (reply.kind === "wrong") return reply.errors;
		const place = visited.find(({ study }) => study === entry.study) ?? placeOf(entry);
		takeOver(place, entry);
		lay(sheetOf(reply.study, entry.drafts, entry.looking), place);
		return [];
	},

	/** The study has been taken off the shelf; if it comes back to the sheet, it comes back to the shelf. */
	removed(study: string) {
		for (const place of visited) if (place.study === study) forget(place);
	},

	/** Follows the sheet: called whenever it has changed. */
	see(sheet: Sheet, place: Place) {
		if (place !== current) enter(place, sheet);
		if (place.untouched && !isSameEdit(sheet, place.laid))
			place.untouched = place.uninvited = false;
		isEdited ||= !isSameEdit(sheet, place.laid);
		if (sheet === place.sheet || place.uninvited || withheld) return;
		// A tab that watches may look at any version.
		if (standing !== "own" && isSameEdit(sheet, place.sheet)) return;
		waiting = sheet;
		if (standing !== "own" && !claiming) partFrom(sheet);
		timer ??= setTimeout(keeper.now, DELAY);
	},

	/** Writes at once what still waits. */
	now() {
		clearTimeout(timer);
		timer = undefined;
		if (!waiting || !current || claiming) return;
		const sheet = waiting;
		waiting = null;
		write(current, sheet);
	},

	/** Writes what still waits even if another tab may have the study: the page may be gone next. */
	leaving() {
		claiming = false;
		keeper.now();
		if (unconfirmed) note(() => sessionStorage, LAST, JSON.stringify(unconfirmed));
	},

	/** Tries once more to keep what could not be kept. */
	retry() {
		trouble = null;
		if (current?.uninvited === false) waiting ??= editor.sheet;
		keeper.now();
	},

	/** From now on the browser keeps what this page edits, as it does for a page from a host. */
	keep() {
		if (!withheld) return;
		withheld = false;
		if (!current || current.uninvited) return;
		remember(current);
		waiting = editor.sheet;
		keeper.now();
	},

	/** Edits the study here; the tab that had it shows it from now on. */
	async carryOn() {
		if (!current || standing === "own") return;
		const { signal } = role;
		await others.ask(current.study);
		if (signal.aborted) return;
		newRole();
		// What is typed from now on is meant for this study.
		claiming = true;
		const taken = await takeAway(current.study, lost);
		if (taken) return own(taken, null);
		claiming = false;
		if (waiting) partFrom(waiting);
	},

	/** Goes on with a copy of the study. */
	copy() {
		if (editor.sheet && standing !== "own") partFrom(editor.sheet);
	},

	dismiss() {
		notice = null;
	},
};

function lay(sheet: Sheet, place: Place) {
	keeper.leaving();
	if (editor.sheet) editor.replace(sheet, place);
	else editor.begin(sheet, place);
	if (place.known) place.sheet = editor.sheet ?? undefined;
}

function enter(place: Place, sheet: Sheet) {
	leave();
	current = place;
	place.laid ??= sheet;
	if (!visited.includes(place)) visited.push(place);
	standing = "own";
	remember(place);
	claim(place, sheet);
}

function leave() {
	keeper.leaving();
	newRole();
	// An example that nobody has edited can be had again from the examples.
	if (current?.untouched && current.known) {
		records.exchange([current.known]).catch(() => {});
		forget(current);
	}
}

function newRole() {
	role.abort();
	role = new AbortController();
	hold?.release();
	hold = null;
}

/** Takes the study if no other tab has it. `entered` is the sheet that it came with. */
async function claim(place: Place, entered: Sheet) {
	const { signal } = role;
	claiming = true;
	const taken = await takeFree(place.study, lost);
	if (signal.aborted) taken?.release();
	else if (taken) await own(taken, entered);
	else await watch("watching", entered);
}

/** This tab has the study; what another tab has made of it meanwhile comes onto the sheet. */
async function own(taken: Hold, entered: Sheet | null) {
	const { signal } = role;
	hold = taken;
	await follow(entered);
	if (signal.aborted) return;
	standing = "own";
	claiming = false;
	keeper.now();
}

/** Another tab has the study; when that is gone, this one has it. */
async function watch(as: Standing, entered: Sheet | null) {
	const { signal } = role;
	await follow(entered);
	if (signal.aborted || !current) return;
	standing = as;
	claiming = false;
	if (waiting && !isSameEdit(waiting, entered)) return partFrom(waiting);
	waiting = null;
	const taken = await takeLater(current.study, signal, lost);
	if (!taken) return;
	if (signal.aborted) return taken.release();
	await own(taken, null);
	if (!signal.aborted) notice = { kind: "regained", name: editor.sheet?.study.name ?? "" };
}

/** Another tab has taken the study away. What it cannot have seen becomes a copy. */
function lost() {
	newRole();
	if (waiting) partFrom(waiting);
	else watch("takenAway", null);
}

/** Brings onto the sheet what another tab has written, unless something was typed here meanwhile. */
async function follow(entered: Sheet | null) {
	const place = current;
	if (!place?.known) return;
	const { signal } = role;
	try {
		const entry = await newest(place.study);
		if (!entry || isKnown(place, entry)) return;
		const reply = await readKept(entry);
		if (signal.aborted || reply.kind === "wrong") return;
		if (waiting && !isSameEdit(waiting, entered)) return partFrom(waiting);
		waiting = null;
		takeOver(place, entry);
		// Each tab looks at the version that it has chosen.
		const looking = editor.versions ? editor.versions.looking : entry.looking;
		editor.begin(sheetOf(reply.study, entry.drafts, looking), place);
		place.sheet = editor.sheet ?? undefined;
	} catch (reason) {
		fail(reason);
	}
}

/** The sheet goes on as a study of its own, under a name that says so. */
function partFrom(sheet: Sheet) {
	if (!current) return;
	newRole();
	part(current);
	standing = "own";
	waiting = sheet;
	remember(current);
	claim(current, sheet);
	const name = copyName(sheet.study.name, Date.now());
	editor.change(null, (before) => put(before, ["name"], name));
	notice = { kind: "copied", name };
}

function write(place: Place, sheet: Sheet) {
	place.revision += 1;
	const { key, study, turn, revision, replaces, untouched } = place;
	const looking = sheet.versions?.looking;
	const entry: Entry = {
		key,
		study,
		turn,
		revision,
		...(replaces && { replaces }),
		...(untouched && { untouched }),
		name: sheet.study.name,
		saved: Date.now(),
		...(looking != null && { looking }),
		text: JSON.stringify(documentOf(sheet)),
		drafts: documentDrafts(sheet),
	};
	place.sheet = sheet;
	place.known = { key, revision };
	if (revision === 1) note(() => localStorage, KEPT, "yes");
	unconfirmed = entry;
	const done = records.put(entry).then(
		() => {
			if (unconfirmed === entry) confirm();
			trouble = null;
			others.kept(study);
			if (replaces && revision === 1) tidy(study).catch(() => {});
		},
		(reason) => {
			if (place.sheet === sheet) place.sheet = undefined;
			fail(reason);
		},
	);
	written = Promise.all([written, done]);
}

function confirm() {
	unconfirmed = null;
	note(() => sessionStorage, LAST, null);
}

/** Writes what the page before this one in the tab has left behind, unless it has arrived. */
async function finish() {
	const left = read(() => sessionStorage, LAST);
	if (left === null) return;
	const entry = JSON.parse(left) as Entry;
	const there = await records.entries(entry.study);
	const arrived = there.find(({ key }) => key === entry.key)?.revision ?? 0;
	if (arrived < entry.revision) await records.put(entry);
	confirm();
}

/** What another tab says of a study. */
async function heard(said: "ask" | "kept", study: string) {
	if (study !== current?.study) return;
	if (said === "kept" && standing !== "own") await follow(null);
	if (said !== "ask" || !hold) return;
	keeper.now();
	await written;
	others.yielded(study);
}

const DENIED = ["SecurityError", "InvalidStateError", "TypeError"];

function fail(reason: unknown) {
	const { name, message } = reason as Error;
	const kind = name === "QuotaExceededError" ? "full" : DENIED.includes(name) ? "denied" : "failed";
	trouble = { kind, message };
}

/** The study that this tab had on its sheet; else the one that was written last in any tab. */
async function lastEntry(): Promise<Entry | undefined> {
	return (
		(await newest(read(() => sessionStorage, OPEN))) ?? (await newest(await records.newestStudy()))
	);
}

function remember({ study }: Place) {
	// Without it a reload opens the study that was written last.
	if (!withheld) note(() => sessionStorage, OPEN, study);
}

/** A browser that gives no storage throws where it is asked for. */
function read(storage: () => Storage, name: string): string | null {
	try {
		return storage().getItem(name);
	} catch {
		return null;
	}
}

function note(storage: () => Storage, name: string, text: string | null) {
	try {
		if (text === null) storage().removeItem(name);
		else storage().setItem(name, text);
	} catch {
		// Nothing depends on it alone.
	}
}
