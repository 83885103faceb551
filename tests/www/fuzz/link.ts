/** What is promised of whatever stands behind the number sign of an address. */
import { linked, linkTo } from "../../../www/src/share/link";
import type { Study } from "../../../www/src/solver/types";
import { passes } from "../wasm";
import { withinWait } from "./guard";
import { hold } from "./hold";

/** More is not unpacked [bytes], so no text is longer [characters]. */
const MOST = 1 << 20;

/**
 * Opens a link. It is none, a fault in words, or a text no longer than is unpacked, which the gate of the
 * page's own solver takes or refuses with reasons; what the gate takes is the same in a link made of it.
 */
export async function checkLink(hash: string): Promise<void> {
	const found = await withinWait(() => linked(hash));
	if (!hash.startsWith("#study=")) {
		hold(found.kind === "none", "not a link, but opened");
		return;
	}
	hold(found.kind !== "none", "a link, but not opened");
	if (found.kind === "fault") {
		hold(found.message !== "", "a fault without words");
		return;
	}
	if (found.kind !== "text") return;
	hold(found.text.length <= MOST, "longer than is unpacked");
	const study = passes(found.text);
	if (study === null) return;
	const again = await linked(await linkTo(study as Study));
	hold(
		again.kind === "text" && again.text === JSON.stringify(study),
		"another study in a link made of it",
	);
}
