/** What is fuzzed on the page's side: for each surface its inputs and what is promised of them. */
import type fc from "fast-check";
import { corpus } from "./corpus";
import { checkLink } from "./link";
import { links } from "./links";
import { near } from "./mutate";
import { checkPaste } from "./paste";
import { checkReadings } from "./readings";

export interface Surface {
	readonly inputs: () => fc.Arbitrary<string>;
	/** Fails when a promise is broken. `where` is where a text is pasted. */
	readonly check: (text: string, where: number) => void | Promise<void>;
}

/** By the name of the folder in which the corpus lies. */
export const SURFACES: Readonly<Record<string, Surface>> = {
	link: { inputs: links, check: checkLink },
	paste: { inputs: () => nearCorpus("paste"), check: checkPaste },
	// A cell that is typed and a cell that is pasted are read alike.
	readings: { inputs: () => nearCorpus("readings", "paste"), check: checkReadings },
};

/** Longer entries, which are there for their length, are tested as they stand: changed ones would take all the time. */
const SHORT = 2_000;

function nearCorpus(...folders: readonly string[]): fc.Arbitrary<string> {
	const texts = folders.flatMap((folder) => corpus(folder).map(({ text }) => text));
	return near(texts.filter(({ length }) => length <= SHORT));
}
