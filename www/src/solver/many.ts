/**
 * The page's side of the worker that solves a study again and again: over speeds, with a dimension swept,
 * in many possible truths. It is another worker than the sheet's, so that no edit waits for it.
 */
import { connection } from "./connection";
import type { Many } from "./manyWorker";
import address from "./manyWorker?worker&url";

const many = connection<Many>(address);

/** Solves the running draw at `count` speeds of a study's range, from the one at `first`. */
export const range = many.function("range");

/** Every draw of a study. */
export const answer = many.function("answer");

/** Some draws of several studies in a few numbers: a list by study of lists by draw. */
export const figures = many.function("figures");

/** Versions in the same possible truths: deviations by world, then by version, then by cylinder. */
export const deviations = many.function("deviations");

/** What makes every two versions hard to tell apart. */
export const causes = many.function("causes");

/** What deviations tell of versions, `confidence` being asked for before one counts as the more even. */
export const tell = many.function("tell");
