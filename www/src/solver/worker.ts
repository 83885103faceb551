/** The worker's side: loads the solver once and answers whole documents with whole documents. */
import { expose } from "comlink";
import type { Catalogue, Part, Read, Solve, Study } from "./types";
import start, { laws, read, solve, version } from "./wasm/one/evenport_wasm";
import wasm from "./wasm/one/evenport_wasm_bg.wasm?url";

const ready = start({ module_or_path: wasm });

const solver = {
	async laws(): Promise<Catalogue> {
		await ready;
		return laws();
	},
	async read(text: string): Promise<Read> {
		await ready;
		return read(text);
	},
	async solve(study: Study, part: Part): Promise<Solve> {
		await ready;
		return solve(study, part);
	},
	async version(): Promise<string> {
		await ready;
		return version();
	},
};

/** What the page can ask of the worker. */
export type Solver = typeof solver;

expose(solver);
