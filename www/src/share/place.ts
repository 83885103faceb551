/** Where a study is kept: on the shelf, in a record that only this page writes. */
import type { Sheet } from "../network/edit";
import type { Entry, Version } from "./records";

export interface Place {
	/** The study's name among studies; another one after a parting from it. */
	study: string;
	key: string;
	turn: number;
	/** How often this page has written the record. */
	revision: number;
	/** The record that this page took over. */
	replaces: Version | undefined;
	/** What the shelf holds as far as this page has seen. */
	known: Version | undefined;
	/** The sheet that the shelf holds. */
	sheet: Sheet | undefined;
	/** The sheet that was laid there first. */
	laid: Sheet | undefined;
	/** Whether it is an example that nobody has edited. */
	untouched: boolean;
	/** Whether it has been laid there by itself; such an example is not kept before it is edited. */
	uninvited: boolean;
}

/** A place for a study that is not on the shelf yet. */
export function newPlace(given: Partial<Pick<Place, "untouched" | "uninvited">> = {}): Place {
	return {
		study: freshId(),
		key: freshId(),
		turn: 0,
		revision: 0,
		replaces: undefined,
		known: undefined,
		sheet: undefined,
		laid: undefined,
		untouched: false,
		uninvited: false,
		...given,
	};
}

/** The place of a study that is on the shelf. */
export function placeOf(entry: Entry): Place {
	const place = newPlace({ untouched: entry.untouched ?? false });
	place.study = entry.study;
	takeOver(place, entry);
	return place;
}

/** Goes on from what the shelf holds now. */
export function takeOver(place: Place, entry: Entry) {
	const { key, revision } = entry;
	place.known = { key, revision };
	if (key === place.key) return;
	place.replaces = place.known;
	place.turn = entry.turn + 1;
	// What this page had written is contained in it or parted from it, so the record is begun anew.
	place.key = freshId();
	place.revision = 0;
}

/** From now on it is a study of its own. */
export function part(place: Place) {
	Object.assign(place, newPlace());
}

/** The shelf does not hold it any more. */
export function forget(place: Place) {
	place.known = undefined;
	place.sheet = undefined;
}

/** Whether the shelf still holds what this page has seen last. */
export function isKnown({ known }: Place, { key, revision }: Version): boolean {
	return known?.key === key && known.revision === revision;
}

/** Unlike the browser's own unique ids these need no secure origin. */
export function freshId(): string {
	const bytes = crypto.getRandomValues(new Uint8Array(12));
	return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
