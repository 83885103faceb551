/** The studies that come with the page. */
import first from "../../examples/v8_lid/network.json?raw";
import { readOutside } from "./network/restore";
import type { Read, Study } from "./solver/types";

const FIRST = "v8_lid";

const files = import.meta.glob<string>(
	["../../examples/*/network.json", "!../../examples/v8_lid/network.json"],
	{ query: "?raw", import: "default" },
);

const loaders = new Map<string, () => Promise<string>>(
	Object.entries(files).map(([path, load]) => [path.split("/").at(-2) ?? path, load]),
);
loaders.set(FIRST, async () => first);

/** Names of all examples, the one the page opens with first. */
export const EXAMPLES: readonly string[] = [
	FIRST,
	...[...loaders.keys()].filter((name) => name !== FIRST).sort(),
];

/** What an example is called in the menu. */
export function exampleLabel(name: string): string {
	const words = name.replaceAll("_", " ").replace(/\bv8\b/, "V8");
	return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Reads an example through the same gate as any file. */
export async function openExample(name: string = FIRST): Promise<Read> {
	const load = loaders.get(name);
	if (!load) return { kind: "wrong", errors: [] };
	return readOutside(await load());
}

/** Whether this is the example that the page opens with, by what it says of itself. */
export function isFirstExample({ name, notes }: Study): boolean {
	own ??= JSON.parse(first) as Study;
	return name === own.name && notes === own.notes;
}

let own: Study | undefined;
