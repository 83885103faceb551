/** The whole page as one file that opens from disk: scripts, styles, both solvers and the laws inside. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { gzipSync } from "node:zlib";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { build, type Plugin, type Rolldown } from "vite";
import { integrity } from "./offline.ts";
import { ofOneFile } from "./policy.ts";

const NAME = "evenport.html";

/** Adds that file to what is built. */
export function oneFile(): Plugin {
	let root = "";
	return {
		name: "one-file",
		apply: "build",
		enforce: "post",
		configResolved(config) {
			root = config.root;
		},
		generateBundle: {
			order: "post",
			async handler(_, bundle) {
				const sheet = Object.values(bundle).find(({ fileName }) =>
					/laws-[^/]*\.css$/.test(fileName),
				);
				if (sheet?.type !== "asset") throw new Error("the page of laws has no style sheet");
				const source = await page(root, String(sheet.source));
				this.emitFile({ type: "asset", fileName: NAME, source });
			},
		},
	};
}

async function page(root: string, lawsStyle: string): Promise<string> {
	const read = (name: string) => readFileSync(resolve(root, name), "utf8");
	const { code, style } = await bundled(root, "src/main.ts");
	const script = harmless(code);
	const laws = read("laws.html")
		.replace(/<link rel="icon"[^>]*>\s*/, "")
		.replace(/<link rel="stylesheet"[^>]*>/, () => `<style>${lawsStyle}</style>`)
		.replace('<p><a href="./index.html">To the sheet</a></p>', "");
	const icon = `data:image/svg+xml;base64,${Buffer.from(read("public/icon.svg")).toString("base64")}`;
	const policy = ofOneFile(
		[`'${integrity(script)}'`],
		[style, lawsStyle].map((text) => `'${integrity(text)}'`),
	);
	const pieces: [string, string][] = [
		["<head>", `<head>\n\t\t<meta http-equiv="Content-Security-Policy" content="${policy}">`],
		["./icon.svg", icon],
		[
			'<script type="module" src="./src/main.ts"></script>',
			`<style>${style}</style>\n\t\t<script type="module">${script}</script>`,
		],
		[
			"</body>",
			`\t<script type="application/json" id="laws">"${packed(laws)}"</script>\n\t\t<script type="application/json" id="study">null</script>\n\t</body>`,
		],
	];
	return pieces.reduce((text, [from, to]) => {
		if (!text.includes(from)) throw new Error(`index.html holds no ${from}`);
		return text.replace(from, () => to);
	}, read("index.html"));
}

/** A program with everything that it imports, at once or later. */
async function bundled(root: string, input: string, format: "es" | "iife" = "es") {
	const made = (await build({
		configFile: false,
		root,
		base: "./",
		publicDir: false,
		logLevel: "warn",
		plugins: [inside(), svelte({ configFile: false, compilerOptions: { runes: true } })],
		build: {
			write: false,
			target: "es2022",
			assetsInlineLimit: 0,
			cssCodeSplit: false,
			modulePreload: false,
			rolldownOptions: { input, output: { format, codeSplitting: false } },
		},
	})) as Rolldown.RolldownOutput;
	const code = made.output.flatMap((file) => (file.type === "chunk" ? file.code : []));
	const style = made.output.flatMap((file) => (file.type === "asset" ? String(file.source) : []));
	if (code.length !== 1 || code[0] === undefined) throw new Error(`${input} is not one file`);
	return { code: code[0], style: style.join("\n") };
}

/** What the hosted page loads by an address, workers and the solver, is brought along instead. */
function inside(): Plugin {
	const WORKER = "?worker&url";
	const WASM = ".wasm?url";
	const MARK = "\0inside:";
	let root = "";
	return {
		name: "inside",
		enforce: "pre",
		configResolved(config) {
			root = config.root;
		},
		async resolveId(id, importer) {
			if (!id.endsWith(WORKER) && !id.endsWith(WASM)) return null;
			const found = await this.resolve(id.slice(0, id.indexOf("?")), importer, { skipSelf: true });
			return found && MARK + found.id + id.slice(id.indexOf("?"));
		},
		async load(id) {
			if (!id.startsWith(MARK)) return null;
			const path = id.slice(MARK.length, id.indexOf("?"));
			if (id.endsWith(WASM)) return UNPACKED.replace("PACKED", () => packed(readFileSync(path)));
			const { code } = await bundled(root, path, "iife");
			return `export default URL.createObjectURL(new Blob([${JSON.stringify(code)}], { type: "text/javascript" }));`;
		},
	};
}

/** The solver's loader takes a promise of bytes as well as an address. */
const UNPACKED = `
// Not through a Blob, which WebKit cannot read on a page from disk.
const bytes = Uint8Array.from(atob("PACKED"), (letter) => letter.charCodeAt(0));
const unpacked = new Response(bytes).body.pipeThrough(new DecompressionStream("gzip"));
export default new Response(unpacked).arrayBuffer();
`;

function packed(content: string | Uint8Array): string {
	return gzipSync(content, { level: 9 }).toString("base64");
}

/** A program as it may stand in markup: nothing in it ends its element or begins another. */
function harmless(code: string): string {
	return code.replaceAll("</script", "<\\/script").replaceAll("<!--", "\\x3C!--");
}
