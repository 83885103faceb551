import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { defineConfig } from "@playwright/test";

// Several checkouts can be tested side by side, each on its own port.
const port = Number(process.env.EVENPORT_PORT ?? 4173);

export default defineConfig({
	testDir: "../tests/www",
	testMatch: "**/*.spec.ts",
	outputDir: "../target/page-tests",
	// The tests lie outside this folder and find its packages through the paths written there.
	tsconfig: "./tsconfig.node.json",
	reporter: "list",
	fullyParallel: true,
	// Looking the whole sheet through for accessibility takes a third of this on two busy cores.
	timeout: 60_000,
	// Two busy cores are now and then slower than the usual five seconds.
	expect: { timeout: 15_000 },
	workers: 2,
	forbidOnly: true,
	retries: 0,
	use: {
		baseURL: `http://127.0.0.1:${port}/`,
		// Recording doubles the time of a test: the whole sheet is copied at every step. `--trace on` asks for it.
		trace: "off",
		// Laying the page in costs time that only the tests of that need.
		serviceWorkers: "block",
		launchOptions: {
			executablePath: chromium(),
			args: [
				"--no-sandbox",
				"--disable-gpu",
				"--disable-quic",
				"--disable-dev-shm-usage",
				"--no-first-run",
				"--disable-background-networking",
				"--disable-component-update",
				"--disable-sync",
			],
		},
	},
	// The server that people get, over the page that was built before.
	webServer: {
		command: `cargo task serve --as-built --port ${port}`,
		cwd: "..",
		url: `http://127.0.0.1:${port}/`,
		reuseExistingServer: false,
		timeout: 120_000,
	},
});

/** The browser that `cargo task test` found, or the first one on the search path. */
function chromium(): string | undefined {
	if (process.env.EVENPORT_CHROMIUM) return process.env.EVENPORT_CHROMIUM;
	const names = [
		"chromium-headless-shell",
		"chromium",
		"chromium-browser",
		"google-chrome",
		"google-chrome-stable",
		"chrome",
	];
	const folders = (process.env.PATH ?? "").split(delimiter);
	return names
		.flatMap((name) => folders.map((folder) => join(folder, name)))
		.find((path) => existsSync(path));
}
