/** The side of the worker that solves a study again and again. */
import { expose } from "comlink";
import type {
	Causes,
	Deviations,
	Draw,
	FiguresOutcome,
	Range,
	Study,
	Told,
	Whole,
	Worlds,
} from "./types";
import start, { answer, causes, deviations, figures, range, tell } from "./wasm/many/evenport_wasm";
import wasm from "./wasm/many/evenport_wasm_bg.wasm?url";

const ready = start({ module_or_path: wasm });

const many = {
	async range(study: Study, first: number, count: number): Promise<Range> {
		await ready;
		return range(study, first, count);
	},
	async answer(study: Study): Promise<Whole> {
		await ready;
		return answer(study);
	},
	async figures(studies: Study[], draws: Draw[]): Promise<FiguresOutcome[][]> {
		await ready;
		return figures(studies, draws);
	},
	async deviations(versions: Study[], worlds: Worlds): Promise<Deviations> {
		await ready;
		return deviations(versions, worlds);
	},
	async causes(versions: Study[], worlds: Worlds): Promise<Causes> {
		await ready;
		return causes(versions, worlds);
	},
	async tell(
		found: Float64Array,
		versions: number,
		cylinders: number,
		confidence: number,
	): Promise<Told> {
		await ready;
		return tell(found, versions, cylinders, confidence);
	},
};

/** What the page can ask of the worker. */
export type Many = typeof many;

expose(many);
