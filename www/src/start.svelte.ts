/** Opens the page's study and keeps solver and storage up to date with it. */
import { untrack } from "svelte";
import { openExample } from "./examples";
import { editor } from "./network/editor.svelte";
import { keeper } from "./share/keeper.svelte";
import { latest } from "./solver/latest.svelte";
import type { Study } from "./solver/types";
import { catalogue } from "./view/catalogue.svelte";
import { choice } from "./view/choice.svelte";
import { reading } from "./view/reading.svelte";

/** Starts everything; the page fills as replies arrive. */
export function start() {
	$effect.root(() => {
		// Before the page is brought up to date, so that the worker solves while the page renders.
		$effect.pre(() => {
			const { sheet, place } = editor;
			if (!sheet || !place) return;
			latest.ask(
				sheet.study,
				untrack(() => choice.draw?.draw),
			);
			untrack(() => keeper.see(sheet, place));
		});
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
	// A link that is opened where the page is open already.
	window.addEventListener("hashchange", () => {
		reading.turn(location.hash).catch((reason: unknown) => latest.fail(reason));
	});
	open().catch((reason: unknown) => latest.fail(reason));
}

/** Both questions are put at once: the worker is still loading, and answers them one after the other. */
async function open() {
	if (location.hash.startsWith("#study=")) {
		const [read] = await Promise.all([reading.open(location.hash), catalogue.load()]);
		if (!read) await own();
		return;
	}
	await Promise.all([own(), catalogue.load()]);
}

/** What this tab had on its sheet, or the first example. */
async function own() {
	if (!(await keeper.resume())) keeper.invite(await firstExample());
}

async function firstExample(): Promise<Study> {
	const reply = await openExample();
	if (reply.kind === "study") return reply.study;
	throw new Error(reply.errors.map((error) => error.message).join(" "));
}
