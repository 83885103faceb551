import { svelte } from "@sveltejs/vite-plugin-svelte";
import type { Plugin } from "vite";
import { defineConfig } from "vitest/config";
import { offline } from "./build/offline.ts";
import { oneFile } from "./build/oneFile.ts";
import { contentSecurityPolicy } from "./build/policy.ts";

export default defineConfig({
	// Relative addresses, so that the page works in any folder of any static host.
	base: "./",
	plugins: [
		svelte({ configFile: false, compilerOptions: { runes: true } }),
		contentSecurityPolicy(),
		readableFromDisk(),
		oneFile(),
		offline(),
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
		rolldownOptions: {
			// Beside the page itself the page of all laws, which `cargo task build` writes, and the service worker.
			input: ["index.html", "laws.html", "service/service.ts"],
			output: {
				// Browsers know a service worker by its name, which has to stay.
				entryFileNames: ({ name }) =>
					name === "service" ? "[name].js" : "assets/[name]-[hash].js",
			},
		},
	},
	test: {
		dir: "..",
		include: ["www/src/**/*.test.ts", "tests/www/**/*.test.ts"],
	},
});

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
