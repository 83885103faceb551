/** The list of files that the service worker keeps, and the version that they make together. */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Plugin, Rolldown } from "vite";

const SERVICE = "service.js";

/** Tells the service worker what to keep, and the page which version it is. */
export function offline(): Plugin {
	let still = "";
	return {
		name: "offline",
		apply: "build",
		enforce: "post",
		configResolved({ publicDir }) {
			still = publicDir;
		},
		generateBundle: {
			order: "post",
			handler(_, bundle) {
				const service = bundle[SERVICE];
				const page = bundle["index.html"];
				if (service?.type !== "chunk" || page?.type !== "asset")
					throw new Error("the build made no page, or no service worker");
				if (service.imports.length > 0)
					throw new Error("the service worker shares code with the page; it has to be one file");
				const files = new Map<string, string | Uint8Array>(
					Object.values(bundle)
						.filter(({ fileName }) => fileName !== SERVICE)
						.map((file) => [file.fileName, contentOf(file)]),
				);
				for (const name of readdirSync(still)) files.set(name, readFileSync(join(still, name)));
				const version = versionOf(files, service.code);
				page.source = String(page.source).replace(
					"</title>",
					`</title>\n\t\t<meta name="version" content="${version}">`,
				);
				// Asked for by the folder's name: some hosts lead from the file's name to that.
				files.delete("index.html");
				files.set("./", page.source);
				const list = [...files].map(([name, content]) => [name, integrity(content)]).sort();
				service.code = `const VERSION=${JSON.stringify(version)},FILES=${JSON.stringify(list)};\n${service.code}`;
			},
		},
	};
}

function contentOf(file: Rolldown.OutputAsset | Rolldown.OutputChunk): string | Uint8Array {
	return file.type === "chunk" ? file.code : file.source;
}

/** The same files make the same version. */
function versionOf(files: ReadonlyMap<string, string | Uint8Array>, service: string): string {
	const hash = createHash("sha256").update(service);
	for (const name of [...files.keys()].sort()) hash.update(name).update(files.get(name) ?? "");
	return hash.digest("hex").slice(0, 12);
}

/** What a browser checks a file against. */
export function integrity(content: string | Uint8Array): string {
	return `sha256-${createHash("sha256").update(content).digest("base64")}`;
}
