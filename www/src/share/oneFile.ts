/** The page as one file that opens by itself: whether this one is, and the study that it brought along. */
import type { Kept } from "../network/restore";
import type { Study } from "../solver/types";

/** What such a file holds of a study: all that the sheet has. */
export interface Embedded {
	readonly study: Study;
	readonly drafts: Kept["drafts"];
	readonly looking?: number;
}

/** Whether this page is such a file: the build wrote the places of what it brings along. */
export const isOneFile = element("study") !== null;

/** The study that came with this page; null when none did. */
export function embedded(): Kept | null {
	const held = JSON.parse(brought("study") ?? "null") as Embedded | null;
	return held && { ...held, text: JSON.stringify(held.study) };
}

/** The text of something that came with this page. */
export function brought(id: "study" | "laws"): string | null {
	return element(id)?.textContent ?? null;
}

function element(id: string): Element | null {
	return document.querySelector(`body > script[type="application/json"]#${id}`);
}
