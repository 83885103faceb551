import base from "../playwright.config";

/** Measures instead of testing: the same server and browser, one thing at a time. */
export default {
	...base,
	testDir: ".",
	testMatch: "page.ts",
	outputDir: "../../target/page-tests",
	tsconfig: "../tsconfig.json",
	webServer: base.webServer,
	timeout: 300_000,
	workers: 1,
	reporter: "line",
	use: { ...base.use, trace: "off" as const },
};
