/** The content security policy: what the page may reach, run and show, whatever a study's text holds. */
import type { Plugin } from "vite";

/** Writes the policy into every page. */
export function contentSecurityPolicy(): Plugin {
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
					attrs: {
						"http-equiv": "Content-Security-Policy",
						content: written(developing ? WHILE_DEVELOPING : HOSTED),
					},
					injectTo: "head-prepend",
				},
			],
		},
	};
}

/** The policy of the page that is one file: no address at all, and only the text that it was built with. */
export function ofOneFile(scripts: readonly string[], styles: readonly string[]): string {
	return written({
		...HOSTED,
		"script-src": [...scripts, "'wasm-unsafe-eval'"],
		"style-src": styles,
		"img-src": ["data:", "blob:"],
		"connect-src": ["'none'"],
		"worker-src": ["blob:"],
		"manifest-src": ["'none'"],
	});
}

type Rules = Readonly<Record<string, readonly string[]>>;

const HOSTED: Rules = {
	"default-src": ["'none'"],
	// Compiling WebAssembly counts as evaluating; evaluating text stays forbidden.
	"script-src": ["'self'", "'wasm-unsafe-eval'"],
	"style-src": ["'self'"],
	// A drawing that the page itself has made becomes a picture by way of such an address.
	"img-src": ["'self'", "blob:"],
	"connect-src": ["'self'"],
	"worker-src": ["'self'"],
	"manifest-src": ["'self'"],
	"base-uri": ["'none'"],
	"form-action": ["'none'"],
	// Text can become markup or code only through these: the templates that Svelte has compiled,
	// and the addresses of the workers.
	"require-trusted-types-for": ["'script'"],
	"trusted-types": ["svelte-trusted-html", "evenport-worker"],
};

/** Vite puts styles into the page as it goes and tells it of changes over a socket. */
const WHILE_DEVELOPING: Rules = {
	...HOSTED,
	"style-src": ["'self'", "'unsafe-inline'"],
	"connect-src": ["'self'", "ws://localhost:*", "ws://127.0.0.1:*"],
};

function written(rules: Rules): string {
	return Object.entries(rules)
		.map(([rule, sources]) => `${rule} ${sources.join(" ")}`)
		.join("; ");
}
