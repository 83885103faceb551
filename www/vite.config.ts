import { svelte } from "@sveltejs/vite-plugin-svelte";
import type { Plugin } from "vite";
import { defineConfig } from "vitest/config";

export default defineConfig({
	// Relative addresses, so that the page works in any folder of any static host.
	base: "./",
	plugins: [
		svelte({ configFile: false, compilerOptions: { runes: true } }),
		contentSecurityPolicy(),
		readableFromDisk(),
	],
	worker: { format: "es" },
	// The examples lie beside this folder: Cargo runs them and the page opens them.
	server: { fs: { allow: [".."] } },
	build: {
		// Nothing is inlined as a data: address, which the policy would refuse.
		assetsInlineLimit: 0,
		target: "es2022",
		// What it brings to browsers without preloading is a moment; everybody would load it.
		modulePreload: { polyfill: false },
		// Beside the page itself the page of all laws, which `cargo task build` writes.
		rolldownOptions: { input: ["index.html", "laws.html"] },
	},
	test: {
		dir: "..",
		include: ["www/src/**/*.test.ts", "tests/www/**/*.test.ts"],
	},
});

/** Lets the page reach nothing but its own files, whatever a study's text holds. */
function contentSecurityPolicy(): Plugin {
	let developing = false;
	return {
		name: "content-security-policy",
		configResolved(config) {
			developing = config.command === "serve";
		},
		transformIndexHtml: {
			order: "pre",
			handler: () => [
				{
					tag: "meta",
					attrs: { "http-equiv": "Content-Security-Policy", content: policy(developing) },
					injectTo: "head-prepend",
				},
			],
		},
	};
}

/**
 * Takes the mark of other origins off the style sheet of the page of laws: a file opened from disk has no origin, and
 * browsers would refuse it its own sheet.
 */
function readableFromDisk(): Plugin {
	return {
		name: "readable-from-disk",
		transformIndexHtml: {
			order: "post",
			handler: (html, { path }) =>
				path.endsWith("laws.html") ? html.replaceAll(" crossorigin", "") : html,
		},
	};
}

function policy(developing: boolean): string {
	const rules: Record<string, string[]> = {
		"default-src": ["'none'"],
		// Compiling WebAssembly counts as evaluating; evaluating text stays forbidden.
		"script-src": ["'self'", "'wasm-unsafe-eval'"],
		"style-src": ["'self'"],
		"img-src": ["'self'"],
		"connect-src": ["'self'"],
		"worker-src": ["'self'"],
		"manifest-src": ["'self'"],
		"base-uri": ["'none'"],
		"form-action": ["'none'"],
		// Text can become markup or code only through these: the templates that Svelte has compiled,
		// and the address of the worker.
		"require-trusted-types-for": ["'script'"],
		"trusted-types": ["svelte-trusted-html", "evenport-worker"],
	};
	if (developing) {
		// Vite puts styles into the page as it goes and tells it of changes over a socket.
		rules["style-src"] = ["'self'", "'unsafe-inline'"];
		rules["connect-src"] = ["'self'", "ws://localhost:*", "ws://127.0.0.1:*"];
	}
	return Object.entries(rules)
		.map(([rule, sources]) => `${rule} ${sources.join(" ")}`)
		.join("; ");
}
