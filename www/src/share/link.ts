/**
 * A study in the address: packed by the browser's own compression, whose checksum tells a link that has been
 * cut short or altered. What is behind the number sign of an address is never sent to any server.
 */
import type { Study } from "../solver/types";
import { through } from "./packing";

/** The part of an address that holds a study: the name, the form of what follows, and the packed text. */
const FORM = /^#study=(\d+)\.([\w-]*)$/;
const VERSION = 1;
/** A longer address is cut by many a mail program and messenger [characters]. */
export const LONGEST = 8000;
/** More is not unpacked: no study that fits into a link comes near [bytes]. */
const MOST = 1 << 20;
/** Nor is more than this tried [characters]. */
const MOST_PACKED = 1 << 16;

/** What an address holds. */
export type Linked =
	| { readonly kind: "none" }
	| { readonly kind: "text"; readonly text: string }
	| { readonly kind: "fault"; readonly message: string };

/** The part of an address that opens this study. */
export async function linkTo(study: Study): Promise<string> {
	const text = new TextEncoder().encode(JSON.stringify(study));
	const packed = await gathered(
		through(text, new CompressionStream("deflate")),
		Number.POSITIVE_INFINITY,
	);
	return `#study=${VERSION}.${written(packed ?? new Uint8Array())}`;
}

/** What the part of an address behind the number sign holds. */
export async function linked(hash: string): Promise<Linked> {
	if (!hash.startsWith("#study=")) return { kind: "none" };
	const [, version, packed] = FORM.exec(hash) ?? [];
	if (version === undefined || packed === undefined) return fault(BROKEN);
	if (Number(version) > VERSION) return fault(NEWER);
	if (Number(version) < VERSION) return fault(BROKEN);
	if (packed.length > MOST_PACKED) return fault(TOO_LARGE);
	try {
		const bytes = read(packed);
		const text = await gathered(through(bytes, new DecompressionStream("deflate")), MOST);
		if (!text) return fault(TOO_LARGE);
		return { kind: "text", text: new TextDecoder("utf-8", { fatal: true }).decode(text) };
	} catch {
		return fault(BROKEN);
	}
}

const BROKEN =
	"This link does not hold a whole study: it has been cut short or altered on its way. Ask for it again, or for the study's file.";
const NEWER =
	"This link was made by a newer version of the page. Load the page again; if that does not help, ask for the study's file.";
const TOO_LARGE =
	"This link would unpack to more than any study needs, so it was not opened. Ask for the study's file.";

function fault(message: string): Linked {
	return { kind: "fault", message };
}

/** All that a stream gives; nothing, and the stream given up, when it is more than `most`. */
async function gathered(
	stream: ReadableStream<Uint8Array>,
	most: number,
): Promise<Uint8Array | null> {
	const parts: Uint8Array[] = [];
	let length = 0;
	const reader = stream.getReader();
	for (;;) {
		const { done, value } = await reader.read();
		if (done) break;
		length += value.length;
		if (length > most) {
			await reader.cancel();
			return null;
		}
		parts.push(value);
	}
	const whole = new Uint8Array(length);
	let at = 0;
	for (const part of parts) {
		whole.set(part, at);
		at += part.length;
	}
	return whole;
}

/** Base64 with the two letters that addresses allow (RFC 4648, section 5). */
function written(bytes: Uint8Array): string {
	const letters = Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");
	return btoa(letters).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

function read(text: string): Uint8Array<ArrayBuffer> {
	const letters = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
	return Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
}
