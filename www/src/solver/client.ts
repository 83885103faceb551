/** The page's side of the solver: whole documents across, answered by the worker. */
import { connection } from "./connection";
import type { Solver } from "./worker";
import address from "./worker?worker&url";

const solver = connection<Solver>(address);

/** Names who is told why when the worker has failed and another one takes over. */
export const onRestart = solver.onRestart;

/** Gives up the worker; another one takes over what is under way. */
export const restart = solver.restart;

/** Gives up what is being solved: a newer study has taken its place. */
export const drop = () => solver.drop("solve");

/** What a study can hold. */
export const laws = solver.function("laws");

/** Reads a study from outside text. */
export const read = solver.function("read");

/** Solves a study in some of its draws. */
export const solve = solver.function("solve");

/** The program's version. */
export const version = solver.function("version");
