/** Where the guide stands, and what it has done to the sheet. */
import { openExample } from "../examples";
import { type Facts, factsOf, type Spreads, spreadsOf, widened } from "../guide/facts";
import { editor } from "../network/editor.svelte";
import { latest } from "../solver/latest.svelte";
import type { Read, Study } from "../solver/types";
import { opening } from "./opening.svelte";

/** The steps in order; those that change the sheet do it by a button. */
export const STEPS = ["begin", "verdict", "pattern", "cause", "widen", "taper", "end"] as const;

export type Step = (typeof STEPS)[number];

/** The forms of the log whose spreads are kept for comparison. */
export type Form = "found" | "wider" | "tapered";

/** Half as much section again. */
const WIDER = 1.5;

let at = $state(0);
/** What the steps taken so far have laid on the sheet. */
let done = $state.raw<Readonly<Partial<Record<Step, Study>>>>({});
let trouble = $state.raw("");
let before: Study | null = null;

const step = $derived(STEPS[at] ?? "begin");
/** Null while the sheet waits for its answer, or has none. */
const facts = $derived(
	latest.whole && latest.study === editor.sheet?.study && editor.draftCount === 0
		? factsOf(latest.answer)
		: null,
);
let measured = $state.raw<Readonly<Partial<Record<Form, Spreads>>>>({});

export const guide = {
	get step(): Step {
		return step;
	},
	get number() {
		return at + 1;
	},
	get facts(): Facts | null {
		return facts;
	},
	get measured() {
		return measured;
	},
	/** Whether the step's own change has been made. */
	get isDone() {
		return done[step] !== undefined;
	},
	/** Starts from the beginning. */
	start() {
		at = 0;
		done = {};
		measured = {};
		before = editor.sheet?.study ?? null;
	},
	next() {
		at = Math.min(at + 1, STEPS.length - 1);
	},
	/** Goes back, and takes the step's change back when nothing has been changed since. */
	back() {
		const { [step]: made, ...rest } = done;
		if (made && editor.sheet?.study === made) editor.undo();
		done = rest;
		at = Math.max(at - 1, 0);
	},
	/** Why the step's change could not be made; empty when it could. */
	get trouble() {
		return trouble;
	},
	/** Makes the step's change to the sheet. */
	async act() {
		trouble = "";
		try {
			if (step === "begin") await lay("Inline log", openExample("inline_log"));
			else if (step === "taper") await lay("Tapered log", openExample("tapered_log"));
			else if (step === "widen") {
				editor.change(null, (sheet) => ({
					...sheet,
					study: widened(sheet.study, WIDER),
					drafts: {},
				}));
				remember();
			}
		} catch {
			trouble = "The example could not be loaded. The sheet is as it was; try again.";
		}
	},
	/** Keeps the spreads of the sheet when they are those of a form that is compared. */
	measure() {
		const study = editor.sheet?.study;
		if (!facts || !study) return;
		const form = FORMS.find(([name]) => done[name] === study)?.[1];
		if (form && !measured[form]) measured = { ...measured, [form]: spreadsOf(facts) };
	},
	/** The study from before the guide, while undo leads to it. */
	get own(): Study | null {
		return behind(before);
	},
	/** The wider log, while undo leads to it. */
	get wider(): Study | null {
		return behind(done.widen);
	},
};

const FORMS: readonly (readonly [Step, Form])[] = [
	["begin", "found"],
	["widen", "wider"],
	["taper", "tapered"],
];

async function lay(name: string, reply: Promise<Read>) {
	opening.lay(name, await reply, true);
	remember();
	if (step === "begin") at = 1;
}

function behind(study: Study | null | undefined): Study | null {
	return study && editor.hasBehind(study) ? study : null;
}

function remember() {
	if (editor.sheet) done = { ...done, [step]: editor.sheet.study };
}
