/** Units in the headings of pasted columns. */

/**
 * The unit in what a heading says beside its name: what stands in brackets or behind a mark is a unit; else
 * the last word is, if it is a `known` one. Empty when there is none.
 */
export function unitInHeading(rest: string, known: (unit: string) => boolean): string {
	const marked =
		/[([]\s*([^)\]]*?)\s*[)\]]/.exec(rest)?.[1] ?? /[,/:_]\s*(.+?)\s*$/.exec(rest)?.[1];
	if (marked !== undefined) return marked;
	const last = rest.trim().split(/\s+/).at(-1) ?? "";
	return known(last) ? last : "";
}
