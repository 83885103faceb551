/** Keeps the sheet in the browser, so that closing or reloading the page loses nothing. */
import { get, set } from "idb-keyval";
import type { Sheet } from "../network/edit";
import type { Kept } from "../network/restore";

const KEY = "sheet";

/** The longest that an edit waits before it is written [ms]. */
const DELAY = 100;

let newest: Sheet | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Writes the sheet soon; of several within the delay only the newest is written. */
export function keep(sheet: Sheet) {
	newest = sheet;
	timer ??= setTimeout(write, DELAY);
}

/** Writes at once what still waits, for a page that is being hidden or closed. */
export function keepNow() {
	if (timer !== undefined) write();
}

/** What was kept last; null when there is nothing, or the browser gives no storage. */
export async function kept(): Promise<Kept | null> {
	try {
		const found: unknown = await get(KEY);
		return isKept(found) ? found : null;
	} catch {
		return null;
	}
}

function write() {
	clearTimeout(timer);
	timer = undefined;
	if (!newest) return;
	const { study, drafts } = newest;
	const entry: Kept = { text: JSON.stringify(study), drafts };
	// Without storage the page still works; it only forgets.
	set(KEY, entry).catch(() => {});
}

function isKept(found: unknown): found is Kept {
	if (typeof found !== "object" || found === null) return false;
	const { text, drafts } = found as Partial<Kept>;
	if (typeof text !== "string" || typeof drafts !== "object" || drafts === null) return false;
	return Object.values(drafts).every((each) => typeof each === "string");
}
