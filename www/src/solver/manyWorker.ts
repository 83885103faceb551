/** The side of the worker that solves a study again and again. */
import { offer } from "./offer";
import start, { answer, causes, deviations, figures, range, tell } from "./wasm/many/evenport_wasm";
import wasm from "./wasm/many/evenport_wasm_bg.wasm?url";

const many = { answer, causes, deviations, figures, range, tell };

/** What the page can ask of the worker. */
export type Many = typeof many;

offer(many, start({ module_or_path: wasm }));
