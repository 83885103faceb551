/**
 * Lighthouse over the page as built, on a phone and on a desk: `npm run lighthouse`, or with the number of runs of
 * each behind it. Prints every run and the middle ones, and fails when a middle one is below what is wanted.
 */
import { execFile } from "node:child_process";
import { mkdtemp, readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { gzipSync } from "node:zlib";

/** Fetched when it is asked for: it is larger than all else that the page is built with. */
const LIGHTHOUSE = "lighthouse@12.8.2";
const WANTED = 95;
const CATEGORIES = ["performance", "accessibility", "best-practices"];
const FIGURES = [
	"first-contentful-paint",
	"largest-contentful-paint",
	"total-blocking-time",
	"cumulative-layout-shift",
];
const TYPES = {
	".html": "text/html; charset=utf-8",
	".js": "text/javascript; charset=utf-8",
	".css": "text/css; charset=utf-8",
	".svg": "image/svg+xml",
	".wasm": "application/wasm",
};

const root = fileURLToPath(new URL("../dist/", import.meta.url));
const runs = Number(process.argv[2] ?? 3);
const folder = await mkdtemp(join(tmpdir(), "evenport-lighthouse-"));

/** Serves the built page as static hosts do: compressed. */
const server = createServer(async ({ url = "/" }, response) => {
	const path = normalize(new URL(url, "http://localhost").pathname);
	try {
		const file = await readFile(join(root, path.endsWith("/") ? `${path}index.html` : path));
		response.writeHead(200, {
			"Content-Type": TYPES[extname(path) || ".html"] ?? "application/octet-stream",
			"Content-Encoding": "gzip",
		});
		response.end(gzipSync(file));
	} catch {
		response.writeHead(404).end();
	}
});
await new Promise((listening) => server.listen(0, "127.0.0.1", listening));
const address = `http://127.0.0.1:${server.address().port}/`;

let missed = false;
for (const form of ["phone", "desk"]) {
	const reports = [];
	for (let run = 1; run <= runs; run += 1) {
		const report = await measured(form, join(folder, `${form}-${run}.json`));
		console.log(`${form}, run ${run}: ${said(report)}`);
		reports.push(report);
	}
	for (const category of CATEGORIES) {
		const scores = reports.map(({ categories }) => Math.round(100 * categories[category].score));
		const middle = scores.sort((one, other) => one - other)[Math.floor(runs / 2)];
		missed ||= middle < WANTED;
		console.log(`${form}, ${category}: ${middle}${middle < WANTED ? `, below ${WANTED}` : ""}`);
	}
}
console.log(`The reports are in ${folder}.`);
server.close();
process.exitCode = missed ? 1 : 0;

async function measured(form, output) {
	await promisify(execFile)("npx", [
		"--yes",
		LIGHTHOUSE,
		address,
		"--quiet",
		"--output=json",
		`--output-path=${output}`,
		`--only-categories=${CATEGORIES.join(",")}`,
		"--chrome-flags=--headless=new --no-sandbox --disable-dev-shm-usage",
		...(form === "desk" ? ["--preset=desktop"] : []),
	]);
	return JSON.parse(await readFile(output, "utf8"));
}

function said({ categories, audits }) {
	const scores = CATEGORIES.map((name) => `${name} ${Math.round(100 * categories[name].score)}`);
	const figures = FIGURES.map((name) => `${audits[name].title} ${audits[name].displayValue}`);
	return [...scores, ...figures].join(", ");
}
