/** Laying files and examples on the sheet, or saying why they cannot be. */
import { mendable, readOutside } from "../network/restore";
import { keeper } from "../share/keeper.svelte";
import type { Read, Study, StudyError } from "../solver/types";
import { extras } from "./extras.svelte";

/** A file that was not opened, and why. */
interface Refused {
	readonly name: string;
	readonly errors: readonly StudyError[];
	/** What can be put right on the sheet, such as a file that was saved in the middle of an edit. */
	readonly study: Study | null;
}

let refused = $state.raw<readonly Refused[]>([]);
let taken = $state("");

/** A study has some hundred kilobytes; what is larger is none, and would only hold up the page [bytes]. */
const LARGEST = 64 * 1024 * 1024;

export const opening = {
	/** What could not be opened last, and why; the sheet was left alone. */
	get refused() {
		return refused;
	},
	/** What came of a file with many studies; empty when there was none. */
	get taken() {
		return taken;
	},

	/** Opens files one after the other: the last one is on the sheet, the others among the studies. */
	async open(files: readonly File[]) {
		const failed: Refused[] = [];
		for (const file of files) {
			const found = await openOne(file);
			if (found.errors.length > 0) failed.push({ name: file.name, ...found });
		}
		refused = failed;
	},

	/** Lays a study on the sheet although it has errors: its cells say what is wrong. */
	putRight(one: Refused) {
		if (one.study) keeper.lay(one.study);
		refused = refused.filter((other) => other !== one);
	},

	/**
	 * Lays what was read on the sheet, as a study of its own and as an edit that can be undone. An example
	 * is only kept for good once it has been edited.
	 */
	lay(name: string, reply: Read, example = false) {
		if (reply.kind === "study") {
			refused = [];
			keeper.lay(reply.study, example);
		} else {
			refused = [{ name, errors: reply.errors, study: null }];
		}
	},
	dismiss() {
		refused = [];
	},
	told() {
		taken = "";
	},
};

/** What is wrong with a file; nothing when it has been opened. */
type Found = Omit<Refused, "name">;

const OPENED: Found = { errors: [], study: null };

async function openOne(file: File): Promise<Found> {
	const size = Math.round(file.size / 1e6);
	if (file.size > LARGEST) return because(`it has ${size} MB, too much for a study`);
	try {
		const text = await file.text();
		return (await openMany(file.name, text)) ?? (await openStudy(text));
	} catch (reason) {
		return because(`it could not be read: ${(reason as Error).message}`);
	}
}

async function openStudy(text: string): Promise<Found> {
	const reply = await readOutside(text);
	if (reply.kind === "wrong") return { errors: reply.errors, study: mendable(reply) };
	keeper.lay(reply.study);
	return OPENED;
}

/** Takes the studies of a file that holds many onto the shelf, and shows it; null for any other file. */
async function openMany(name: string, text: string): Promise<Found | null> {
	const { bundleOf, takeIn } = await import("../share/bundle");
	const bundle = bundleOf(text);
	if (!bundle) return null;
	if (bundle.length === 0) return because("it holds no studies");
	const { added, refused } = await takeIn(bundle);
	if (added === 0) return { errors: refused.map(({ why, name }) => error(why, name)), study: null };
	const left = refused.map((each) => `${each.name} (${each.why})`).join("; ");
	taken = `${name}: ${added} of ${bundle.length} studies put among these.${left && ` ⚠ Not ${left}.`}`;
	extras.open("studies");
	return OPENED;
}

function because(message: string): Found {
	return { errors: [error(message)], study: null };
}

function error(message: string, element = ""): StudyError {
	return { kind: "notAStudy", element, field: "", message };
}
