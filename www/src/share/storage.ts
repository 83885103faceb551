/** Keeps the sheet in the browser, so that closing or reloading the page loses nothing. */
import type { Sheet } from "../network/edit";
import type { Kept } from "../network/restore";

const KEY = "evenport-sheet";

/** The longest that what is being typed waits before it is written [ms]. */
const DELAY = 100;

let waiting: Sheet | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Writes the sheet soon; of several within the delay only the newest is written. */
export function keep(sheet: Sheet) {
	waiting = sheet;
	timer ??= setTimeout(keepNow, DELAY);
}

/**
 * Writes at once what still waits. The browser's storage for small things is used because it is done
 * when the call returns: a page that is being closed has no time left to wait for anything.
 */
export function keepNow() {
	clearTimeout(timer);
	timer = undefined;
	if (!waiting) return;
	const { study, drafts } = waiting;
	waiting = null;
	const entry: Kept = { text: JSON.stringify(study), drafts };
	try {
		localStorage.setItem(KEY, JSON.stringify(entry));
	} catch {
		// Without storage the page still works; it only forgets.
	}
}

/** What was kept last; null when there is nothing, or the browser gives no storage. */
export function kept(): Kept | null {
	try {
		const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? "null");
		return isKept(found) ? found : null;
	} catch {
		return null;
	}
}

function isKept(found: unknown): found is Kept {
	if (typeof found !== "object" || found === null) return false;
	const { text, drafts } = found as Partial<Kept>;
	if (typeof text !== "string" || typeof drafts !== "object" || drafts === null) return false;
	return Object.values(drafts).every((each) => typeof each === "string");
}
