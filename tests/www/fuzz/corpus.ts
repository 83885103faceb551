/** The committed corpus: one file an input, read as it stands; a JSON file is one text with escapes. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

export type Surface = "link" | "paste" | "readings";

/** An input with the name of its file. */
export interface Entry {
	readonly name: string;
	readonly text: string;
}

/** The inputs of a surface, by name. */
export function corpus(surface: Surface): Entry[] {
	const folder = new URL(`../../fuzz/${surface}/`, import.meta.url);
	return readdirSync(folder)
		.sort()
		.map((name) => {
			const text = readFileSync(fileURLToPath(new URL(name, folder)), "utf8");
			return { name, text: name.endsWith(".json") ? (JSON.parse(text) as string) : text };
		});
}
