/** The solver as the page runs it, for tests that need no browser. */
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type {
	Answer,
	Catalogue,
	Causes,
	Deviations,
	Draw,
	FiguresOutcome,
	Part,
	Range,
	Read,
	Solve,
	Solved,
	Study,
	Told,
	Worlds,
} from "../../www/src/solver/types";

interface Solver {
	read(text: string): Read;
	solve(study: Study, part: Part): Solve;
	laws(): Catalogue;
}

interface Many {
	range(study: Study, first: number, count: number): Range;
	figures(studies: readonly Study[], draws: readonly Draw[]): FiguresOutcome[][];
	deviations(versions: readonly Study[], worlds: Worlds): Deviations;
	causes(versions: readonly Study[], worlds: Worlds): Causes;
	tell(found: Float64Array, versions: number, cylinders: number, confidence: number): Told;
}

const solver = await loaded<Solver>("one");

/** What solves a study again and again. */
export const many = await loaded<Many>("many");

async function loaded<Module>(name: string): Promise<Module> {
	const folder = new URL(`../../www/src/solver/wasm/${name}/`, import.meta.url);
	const binary = fileURLToPath(new URL("evenport_wasm_bg.wasm", folder));
	if (!existsSync(binary))
		throw new Error("The solver is not built: run `cargo task build` first.");
	const module = await import(/* @vite-ignore */ new URL("evenport_wasm.js", folder).href);
	module.initSync({ module: readFileSync(binary) });
	return module as Module;
}

/** What a study can hold. */
export const catalogue: Catalogue = solver.laws();

/** Reads a document through the gate; what is wrong with it fails the test. */
export function read(document: unknown): Study {
	const reply = solver.read(JSON.stringify(document));
	if (reply.kind === "study") return reply.study;
	throw new Error(reply.errors.map((each) => `${each.element} ${each.message}`).join("; "));
}

/** The study that the gate lets through; null where it gives reasons for a refusal. */
export function passes(text: string): Study | null {
	const reply = solver.read(text);
	if (reply.kind === "study") return reply.study;
	if (reply.errors.length === 0) throw new Error("refused without a reason");
	return null;
}

/** Reads an example through the gate. */
export function example(name: string): Study {
	const file = new URL(`../../examples/${name}/network.json`, import.meta.url);
	return read(JSON.parse(readFileSync(fileURLToPath(file), "utf8")));
}

/** Solves some speeds of a study's range. */
export const range = many.range;

/** Solves a study that the gate has read. */
export function solve(study: Study): Answer {
	const reply = solver.solve(study, "whole");
	if (reply.kind === "solved") return reply.answer;
	throw new Error(reply.errors.map((each) => `${each.element} ${each.message}`).join("; "));
}

/** One draw of an answer; a refusal fails the test. */
export function drawn(answer: Answer, draw: Answer["headline"]): Solved {
	const outcome = answer.draws.find((each) => each.draw === draw)?.outcome;
	if (outcome?.kind === "solved") return outcome;
	throw new Error(`${draw}: ${outcome?.sentence ?? "is not among the draws"}`);
}
