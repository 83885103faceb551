/** Parts of the page that few visits need: loaded when they are asked for, so that the page opens sooner. */
import type { Component } from "svelte";

const LOADERS = {
	starter: () => import("./Starter.svelte"),
	guide: () => import("./Guide.svelte"),
	studies: () => import("./Studies.svelte"),
	check: () => import("./CadTables.svelte"),
	report: () => import("./Report.svelte"),
	link: () => import("./LinkSheet.svelte"),
	engine: () => import("./EnginePanels.svelte"),
	sweep: () => import("./Sweep.svelte"),
} as const;

export type Extra = keyof typeof LOADERS;

let shown = $state.raw<Readonly<Partial<Record<Extra, Component>>>>({});
let failure = $state.raw("");

export const extras = {
	/** What is open, by its name. */
	get shown() {
		return shown;
	},
	/** Why the last one could not be loaded; empty when it was. */
	get failure() {
		return failure;
	},
	async open(extra: Extra) {
		try {
			const { default: part } = await LOADERS[extra]();
			failure = "";
			shown = { ...shown, [extra]: part };
		} catch {
			failure =
				"A part of the page could not be loaded. The sheet is as it was; save it to a file, then load the page again.";
		}
	},
	close(extra: Extra) {
		const { [extra]: _, ...rest } = shown;
		shown = rest;
	},
};
