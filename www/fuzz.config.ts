import { defineConfig } from "vitest/config";

/** One surface at a time, for as long as it is told, in little memory: what needs more of it fails. */
export default defineConfig({
	test: {
		dir: "..",
		include: ["tests/www/fuzz/run.fuzz.ts"],
		testTimeout: 0,
		pool: "forks",
		execArgv: ["--max-old-space-size=256"],
		disableConsoleIntercept: true,
		reporters: ["dot"],
	},
});
