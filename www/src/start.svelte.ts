/** Opens the page's study and keeps solver and storage up to date with it. */
import { untrack } from "svelte";
import { openExample } from "./examples";
import { editor } from "./network/editor.svelte";
import { keeper } from "./share/keeper.svelte";
import { embedded, isOneFile } from "./share/oneFile";
import { latest } from "./solver/latest.svelte";
import type { Study } from "./solver/types";
import { catalogue } from "./view/catalogue.svelte";
import { choice } from "./view/choice.svelte";
import { aimClipboard } from "./view/clipboard";
import { growth } from "./view/gradually.svelte";
import { opening } from "./view/opening.svelte";
import { reading } from "./view/reading.svelte";
import { sketch } from "./view/sketch.svelte";

/** Starts everything; the page fills as replies arrive. */
export function start() {
	// The worker solves while the page is brought up to date.
	editor.tell((study) => latest.ask(study, choice.draw?.draw));
	$effect.root(() => {
		$effect.pre(() => {
			const { sheet, place } = editor;
			if (sheet && place) untrack(() => keeper.see(sheet, place));
		});
		$effect(() => {
			if (growth.done) latest.askWhole();
		});
		$effect.pre(() => choice.follow(latest.answer));
		$effect.pre(() => sketch.follow(editor.sheet?.study));
		// An edit that is complete is not left to the delay.
		$effect(() => {
			if (editor.sheet && !editor.typing) keeper.now();
		});
	});
	document.addEventListener("visibilitychange", () => keeper.leaving());
	window.addEventListener("pagehide", () => keeper.leaving());
	window.addEventListener("beforeunload", (event) => {
		if (keeper.atRisk) event.preventDefault();
	});
	aimClipboard();
	// A link that is opened where the page is open already.
	window.addEventListener("hashchange", () => {
		reading.turn(location.hash).catch((reason: unknown) => latest.fail(reason));
	});
	if (isOneFile) document.addEventListener("click", leadToLaws);
	open().catch((reason: unknown) => latest.fail(reason));
}

/** Both questions are put at once: the worker is still loading, and answers them one after the other. */
async function open() {
	if (reading.expected) {
		const [read] = await Promise.all([reading.open(location.hash), catalogue.load()]);
		if (!read) await own();
		return;
	}
	await Promise.all([own(), catalogue.load()]);
}

/** The study in this file, what this tab had on its sheet, or the first example. */
async function own() {
	if (!(await (isOneFile ? unpack() : keeper.resume()))) keeper.invite(await firstExample());
}

/** A page that is a file opens with the study in it. */
async function unpack(): Promise<boolean> {
	const kept = embedded();
	if (!kept) return false;
	const errors = await keeper.unpack(kept);
	if (errors.length > 0)
		opening.lay("The study in this file", { kind: "wrong", errors: [...errors] });
	return errors.length === 0;
}

async function firstExample(): Promise<Study> {
	const reply = await openExample();
	if (reply.kind === "study") return reply.study;
	throw new Error(reply.errors.map((error) => error.message).join(" "));
}

/** The page of laws lies inside such a file; beside it, where the links lead, it need not be. */
async function leadToLaws(event: MouseEvent) {
	const link = event.target instanceof Element ? event.target.closest("a") : null;
	if (link?.target !== "evenport-laws") return;
	event.preventDefault();
	const { openLaws } = await import("./share/pageFile");
	openLaws(link.hash);
}
