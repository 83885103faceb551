/** Units in the headings of pasted columns. */
import { LONGEST } from "./separators";

/**
 * The unit in what a heading says beside its name: what stands in brackets or behind a mark is a unit; else
 * the last word is, if it is a `known` one. Empty when there is none.
 */
export function unitInHeading(rest: string, known: (unit: string) => boolean): string {
	const near = rest.slice(0, LONGEST).trim();
	const marked = /[([]([^)\]]*)[)\]]/.exec(near)?.[1] ?? /[,/:_](.+)$/.exec(near)?.[1];
	if (marked !== undefined) return marked.trim();
	const last = near.split(/\s+/).at(-1) ?? "";
	return known(last) ? last : "";
}
