/** The draws in the order in which they are always shown. */
import type { Draw } from "./types";

export const DRAWS: readonly Draw[] = ["running", "cycleMean", "benchOneAtATime", "benchAllOpen"];
