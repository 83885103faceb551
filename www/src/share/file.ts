/** Studies as JSON files. */
import { readOutside } from "../network/restore";
import type { Read, Study } from "../solver/types";

/** Reads a file that somebody picked. */
export async function openFile(file: File): Promise<Read> {
	return readOutside(await file.text());
}

/** Hands the study to the browser as a download. */
export function saveFile(study: Study) {
	saveText(study.name, `${JSON.stringify(study, null, 2)}\n`);
}

/** Hands the text of a study to the browser as a download, whatever it holds. */
export function saveText(name: string, text: string) {
	download(text, "application/json", `${fileName(name)}.json`);
}

/** Hands a text to the browser as a file to keep. */
export function download(text: string, type: string, name: string) {
	const link = document.createElement("a");
	link.href = URL.createObjectURL(new Blob([text], { type }));
	link.download = name;
	link.click();
	setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/** A name that every file system takes. */
export function fileName(name: string): string {
	const plain = name.normalize("NFKD").replace(/[^a-zA-Z0-9]+/g, "-");
	return plain.replace(/^-+|-+$/g, "").slice(0, 60) || "study";
}
