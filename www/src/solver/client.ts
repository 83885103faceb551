/** The page's side of the solver: whole documents across, answered by the worker. */
import { connection } from "./connection";
import type { Catalogue, Part, Read, Solve, Study } from "./types";
import type { Solver } from "./worker";
import address from "./worker?worker&url";

const solver = connection<Solver>(address);

/** Names who is told why when the worker has failed and another one takes over. */
export const onRestart = solver.onRestart;

/** Gives up the worker; another one takes over what is under way. */
export const restart = solver.restart;

/** What a study can hold. */
export function laws(): Promise<Catalogue> {
	return solver.ask((to) => to.laws());
}

/** Reads a study from outside text. */
export function read(text: string): Promise<Read> {
	return solver.ask<Read>((to) => to.read(text) as Promise<Read>);
}

/** Solves a study in some of its draws. */
export function solve(study: Study, part: Part): Promise<Solve> {
	return solver.ask<Solve>((to) => to.solve(study, part) as Promise<Solve>);
}

/** The program's version. */
export function version(): Promise<string> {
	return solver.ask((to) => to.version());
}
