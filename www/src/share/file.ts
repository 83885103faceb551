/** Studies as JSON files. */
import type { Study } from "../solver/types";

/** Hands the study to the browser as a download. */
export function saveFile(study: Study) {
	saveText(study.name, `${JSON.stringify(study, null, 2)}\n`);
}

/** Hands the text of a study to the browser as a download, whatever it holds. */
export function saveText(name: string, text: string) {
	download(text, "application/json", `${fileName(name)}.json`);
}

/** Hands a text or a picture to the browser as a file to keep. */
export function download(content: BlobPart, type: string, name: string) {
	const link = document.createElement("a");
	link.href = URL.createObjectURL(new Blob([content], { type }));
	link.download = name;
	link.click();
	setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/** A name that every file system takes. */
export function fileName(name: string): string {
	const plain = name.normalize("NFKD").replace(/[^a-zA-Z0-9]+/g, "-");
	return plain.replace(/^-+|-+$/g, "").slice(0, 60) || "study";
}
