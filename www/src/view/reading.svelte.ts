/** A study that came by a link: read first, edited as a copy. */
import { put } from "../network/edit";
import { editor } from "../network/editor.svelte";
import { mendable, readOutside } from "../network/restore";
import { keeper } from "../share/keeper.svelte";
import { linked } from "../share/link";
import { copyName } from "../share/settle";

/** The name that an address gives to what it holds. */
const NAMED = "#study=";

let on = $state.raw(false);
let expected = $state.raw(location.hash.startsWith(NAMED));
let fault = $state.raw("");
/** The part of the address that the study on the sheet came by. */
let address = "";

export const reading = {
	/** Whether the sheet is only read. */
	get on() {
		return on;
	},
	/** Whether the study in the address has still to be opened. */
	get expected() {
		return expected;
	},
	/** Why a link could not be opened; empty when there is nothing to say. */
	get fault() {
		return fault;
	},

	/** Opens the study in the address, if it holds one; tells whether it has been laid on the sheet. */
	async open(hash: string): Promise<boolean> {
		try {
			return await opened(hash);
		} finally {
			expected = false;
		}
	},

	/** The address has changed: to another study, or to a place on the page, which is not to cost the link. */
	async turn(hash: string) {
		if (!(await reading.open(hash)) && on) history.replaceState(null, "", address);
	},

	/** Goes on with a copy, which is kept as any study is. */
	editCopy() {
		leave();
		editor.change(null, (before) => put(before, ["name"], copyName(before.study.name, Date.now())));
	},

	dismiss() {
		fault = "";
		forgetAddress();
	},
};

async function opened(hash: string): Promise<boolean> {
	const found = await linked(hash);
	if (found.kind === "none") return false;
	if (found.kind === "fault") {
		fault = found.message;
		return false;
	}
	const reply = await readOutside(found.text);
	// Its reader is told by the sheet what is wrong with it.
	const study = reply.kind === "wrong" ? mendable(reply) : reply.study;
	if (!study) {
		const first = reply.kind === "wrong" ? reply.errors[0] : undefined;
		fault = `This link holds no study that can be read: ${[first?.element, first?.message].filter(Boolean).join(": ")}. Ask for it again, or for the study's file.`;
		return false;
	}
	fault = "";
	on = true;
	address = hash;
	// Kept by nobody before it is edited.
	keeper.invite(study);
	return true;
}

/** Another study has been laid on the sheet. */
function leave() {
	on = false;
	forgetAddress();
}

/** A reload is to bring back what is on the sheet, not the link. */
function forgetAddress() {
	history.replaceState(null, "", location.pathname + location.search);
}
