/** The page's side of the solver: whole documents across, answered by the worker. */
import { type Remote, wrap } from "comlink";
import type { Catalogue, Part, Range, Read, Solve, Study } from "./types";
import type { Solver } from "./worker";
import address from "./worker?worker&url";

/** The policy of the page lets scripts start only from an address that is vouched for: this one. */
const vouching = (globalThis as { trustedTypes?: TrustedTypes }).trustedTypes?.createPolicy(
	"evenport-worker",
	{
		createScriptURL(asked) {
			if (asked !== address) throw new TypeError("not the worker's address");
			return asked;
		},
	},
);

let worker: Worker | null = null;
let solver: Remote<Solver> | null = null;
let abandon: (reason: Error) => void = () => {};
let broken: Promise<never> = new Promise(() => {});
let restarted: (reason: Error) => void = () => {};

/** Names who is told why when the worker has failed and another one takes over. */
export function onRestart(tell: (reason: Error) => void) {
	restarted = tell;
}

/** Gives up the worker; another one takes over what is under way. */
export function restart() {
	abandon(new Error("it was stopped by hand"));
}

/** What a study can hold. */
export function laws(): Promise<Catalogue> {
	return ask((to) => to.laws());
}

/** Reads a study from outside text. */
export function read(text: string): Promise<Read> {
	return ask<Read>((to) => to.read(text) as Promise<Read>);
}

/** Solves a study in some of its draws. */
export function solve(study: Study, part: Part): Promise<Solve> {
	return ask<Solve>((to) => to.solve(study, part) as Promise<Solve>);
}

/** Solves the running draw at `count` speeds of a study's range, from the one at `first`. */
export function range(study: Study, first: number, count: number): Promise<Range> {
	return ask<Range>((to) => to.range(study, first, count) as Promise<Range>);
}

/** The program's version. */
export function version(): Promise<string> {
	return ask((to) => to.version());
}

/**
 * Puts a question to the worker. A worker that fails is thrown away, because its memory can no longer
 * be trusted; another one is asked the same, once.
 */
async function ask<Reply>(
	question: (to: Remote<Solver>) => PromiseLike<Reply>,
	again = true,
): Promise<Reply> {
	const to = solver ?? start();
	try {
		return await Promise.race([question(to), broken]);
	} catch (reason) {
		if (solver === to) stop();
		if (!again) throw reason;
		restarted(reason as Error);
		return ask(question, false);
	}
}

function start(): Remote<Solver> {
	broken = new Promise((_, reject) => {
		abandon = reject;
	});
	broken.catch(() => {});
	worker = new Worker(vouching?.createScriptURL(address) ?? address, { type: "module" });
	worker.addEventListener("error", (event) => {
		// Browsers put their own words before the message of an error that nobody has caught.
		const message = event.message?.replace(/^Uncaught (\w*Error: )?/, "");
		abandon(new Error(message || "it could not be loaded"));
	});
	solver = wrap<Solver>(worker);
	return solver;
}

function stop() {
	worker?.terminate();
	worker = null;
	solver = null;
}

/** What the browser offers of the standard on trusted types; some browsers have none. */
interface TrustedTypes {
	createPolicy(
		name: string,
		rules: { createScriptURL: (asked: string) => string },
	): { createScriptURL: (asked: string) => string };
}
