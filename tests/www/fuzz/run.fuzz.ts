/**
 * The fuzzing of one surface, started by `cargo task fuzz`: so many seconds or so many inputs, from a seed.
 * An input that breaks a promise is made smaller, printed, and written to a file for the corpus.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import fc from "fast-check";
import { it } from "vitest";
import { SURFACES } from "./surfaces";

const { EVENPORT_SURFACE = "", EVENPORT_FAILED = "" } = process.env;
const seconds = Number(process.env.EVENPORT_SECONDS);
const inputs = Number(process.env.EVENPORT_INPUTS);
const seed = Number(process.env.EVENPORT_SEED) | 0;

it(EVENPORT_SURFACE, async () => {
	const surface = SURFACES[EVENPORT_SURFACE];
	if (!surface) throw new Error(`no surface is called ${EVENPORT_SURFACE}`);
	const started = performance.now();
	const limit = seconds > 0 ? { interruptAfterTimeLimit: seconds * 1000 } : {};
	const promise = fc.asyncProperty(surface.inputs(), fc.maxSafeNat(), async (text, where) => {
		await surface.check(text, where);
	});
	const run = await fc.check(promise, {
		seed,
		numRuns: inputs > 0 ? inputs : Number.MAX_SAFE_INTEGER,
		...limit,
	});
	const time = (performance.now() - started) / 1000;
	const pace = `${run.numRuns} inputs in ${time.toFixed(1)} s, ${(run.numRuns / time).toFixed(0)} a second`;
	const memory = `${Math.round(process.resourceUsage().maxRSS / 1024)} MiB at most`;
	console.log(`${EVENPORT_SURFACE}: ${pace}, ${memory}, seed ${seed}`);
	if (!run.failed || !run.counterexample) return;
	const [text, where] = run.counterexample;
	const entry = JSON.stringify({ text, where });
	mkdirSync(EVENPORT_FAILED, { recursive: true });
	const file = `${EVENPORT_FAILED}/${EVENPORT_SURFACE}-${seed}.json`;
	writeFileSync(file, `${entry}\n`);
	throw new Error(
		`${entry}\n${String(run.errorInstance)}\nThe input is in ${file}; mended, it belongs to tests/fuzz/${EVENPORT_SURFACE}.`,
	);
});
