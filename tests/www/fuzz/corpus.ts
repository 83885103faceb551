/**
 * The committed corpus: one file an input, read as it stands. A JSON file is a text with escapes, or an input
 * that failed once, with the place in which it was pasted.
 */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

export interface Entry {
	readonly name: string;
	readonly text: string;
	/** Where it is pasted, for those of the properties that have places; anywhere when it is not said. */
	readonly where?: number;
}

/** The inputs of a folder, by name. */
export function corpus(folder: string): Entry[] {
	const address = new URL(`../../fuzz/${folder}/`, import.meta.url);
	return readdirSync(address)
		.sort()
		.map((name) => {
			const text = readFileSync(fileURLToPath(new URL(name, address)), "utf8");
			if (!name.endsWith(".json")) return { name, text };
			const found = JSON.parse(text) as string | Omit<Entry, "name">;
			return typeof found === "string" ? { name, text: found } : { name, ...found };
		});
}

/** The texts of a folder, whatever their form. */
export function texts(folder: string): string[] {
	const address = new URL(`../../fuzz/${folder}/`, import.meta.url);
	return readdirSync(address)
		.sort()
		.map((name) => readFileSync(fileURLToPath(new URL(name, address)), "utf8"));
}
