/** The worker's side: loads the solver once and answers whole documents with whole documents. */
import { offer } from "./offer";
import start, { laws, read, solve, version } from "./wasm/one/evenport_wasm";
import wasm from "./wasm/one/evenport_wasm_bg.wasm?url";

const solver = { laws, read, solve, version };

/** What the page can ask of the worker. */
export type Solver = typeof solver;

offer(solver, start({ module_or_path: wasm }));
