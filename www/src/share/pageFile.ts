/** Writes the page as one file that opens by itself, with a study in it; opens what such a file brings along. */
import type { Sheet } from "../network/edit";
import { documentDrafts, documentOf } from "../network/versions";
import { download, fileName } from "./file";
import { brought, type Embedded, isOneFile } from "./oneFile";
import { through } from "./packing";

const ADDRESS = "./evenport.html";

/** The place of the study in the file. The build writes it; it holds `null` there. */
const BEGIN = '<script type="application/json" id="study">';
const END = "</script>";

/** Hands such a file with what is on the sheet to the browser as a download. */
export async function savePage(sheet: Sheet) {
	const page = filled(isOneFile ? own() : await fetched(), sheet);
	download(page, "text/html", `${fileName(sheet.study.name)}.html`);
}

/** A page with a study put into it, in place of what it held. */
export function filled(page: string, sheet: Sheet): string {
	const from = page.lastIndexOf(BEGIN) + BEGIN.length;
	const to = page.indexOf(END, from);
	if (from < BEGIN.length || to < 0) throw new Error("what was loaded is not this page");
	const looking = sheet.versions?.looking;
	const held: Embedded = {
		study: documentOf(sheet),
		drafts: documentDrafts(sheet),
		...(looking != null && { looking }),
	};
	return page.slice(0, from) + inMarkup(held) + page.slice(to);
}

/** A value as JSON that no reader of markup takes for markup, whatever its texts hold. */
function inMarkup(value: unknown): string {
	return JSON.stringify(value).replaceAll("<", "\\u003c");
}

/** This page as it was before it filled itself. */
function own(): string {
	const root = document.documentElement.cloneNode(true) as HTMLElement;
	root.removeAttribute("style");
	const body = root.querySelector("body");
	for (const each of body?.children ?? []) if (each.id === "page") each.replaceChildren();
	return `<!doctype html>\n${root.outerHTML}\n`;
}

async function fetched(): Promise<string> {
	const response = await fetch(ADDRESS).catch(() => null);
	if (response?.ok) return response.text();
	throw new Error(
		"the empty page could not be loaded; try again with network, or save the study as a file",
	);
}

/** Opens the laws that this file brings along; links to their page lead nowhere from a file alone. */
export function openLaws(place: string) {
	laws ??= unpack(JSON.parse(brought("laws") ?? '""') as string);
	const tab = window.open("", "_blank");
	laws.then((address) => {
		if (tab) tab.location.href = `${address}${place}`;
	});
}

let laws: Promise<string> | undefined;

async function unpack(packed: string): Promise<string> {
	const bytes = Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0));
	const text = through(bytes, new DecompressionStream("gzip"));
	const blob = new Blob([await new Response(text).arrayBuffer()], { type: "text/html" });
	return URL.createObjectURL(blob);
}
