/** Opens the page's study and keeps solver and storage up to date with it. */
import { untrack } from "svelte";
import { openExample } from "./examples";
import { editor } from "./network/editor.svelte";
import { readKept } from "./network/restore";
import { keep, keepNow, kept } from "./share/storage";
import { latest } from "./solver/latest.svelte";
import type { Study } from "./solver/types";
import { catalogue } from "./view/catalogue.svelte";
import { choice } from "./view/choice.svelte";

/** Starts everything; the page fills as replies arrive. */
export function start() {
	$effect.root(() => {
		// Before the page is brought up to date, so that the worker solves while the page renders.
		$effect.pre(() => {
			const { sheet } = editor;
			if (!sheet) return;
			latest.ask(
				sheet.study,
				untrack(() => choice.draw?.draw),
			);
			keep(sheet);
		});
		// An edit that is complete is not left to the delay.
		$effect(() => {
			if (editor.sheet && !editor.typing) keepNow();
		});
	});
	document.addEventListener("visibilitychange", keepNow);
	window.addEventListener("pagehide", keepNow);
	open().catch((reason: unknown) => latest.fail(reason));
}

/** Both questions are put at once: the worker is still loading, and answers them one after the other. */
async function open() {
	const found = kept();
	const [study] = await Promise.all([found ? readKept(found) : firstExample(), catalogue.load()]);
	if (study) editor.begin(study, found?.drafts);
	else editor.begin(await firstExample());
}

async function firstExample(): Promise<Study> {
	const reply = await openExample();
	if (reply.kind === "study") return reply.study;
	throw new Error(reply.errors.map((error) => error.message).join(" "));
}
