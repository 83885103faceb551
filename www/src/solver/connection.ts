/** A worker that answers questions, thrown away when it fails and started again. */
import { wrap } from "comlink";
import { vouched } from "../vouched";
import type { Functions } from "./offer";

/** A function of a worker as the page sees it. */
type Later<Answer> = Answer extends (...asked: infer Asked) => infer Reply
	? (...asked: Asked) => Promise<Reply>
	: never;

/** A worker's functions. */
type Remote<Side> = Record<keyof Side, (...asked: unknown[]) => Promise<unknown>>;

/** Why a question has no answer: nobody waits for it any more. */
export class Dropped extends Error {
	constructor(readonly asked: string) {
		super("a newer question has taken its place");
	}
}

/** The way to one worker, which is started by the first question. */
export interface Connection<Side> {
	/**
	 * A function that is answered by the worker. A worker that fails is thrown away, because its memory can
	 * no longer be trusted; another one is asked the same, once.
	 */
	function<Name extends keyof Side>(name: Name): Later<Side[Name]>;
	/** Gives up the worker; another one takes over what is under way. */
	restart(): void;
	/** Gives up the worker and the questions of one function; another one takes over the others. */
	drop(name: keyof Side & string): void;
	/** Names who is told why when the worker has failed and another one takes over. */
	onRestart(tell: (reason: Error) => void): void;
}

/** The way to the worker at an address of this page. */
export function connection<Side extends Functions>(address: string): Connection<Side> {
	let worker: Worker | null = null;
	let remote: Remote<Side> | null = null;
	let abandon: (reason: Error) => void = () => {};
	let broken: Promise<never> = new Promise(() => {});
	let restarted: (reason: Error) => void = () => {};

	async function ask(name: keyof Side, asked: unknown[], again = true): Promise<unknown> {
		const to = remote ?? start();
		try {
			return await Promise.race([to[name](...asked), broken]);
		} catch (reason) {
			if (remote === to) stop();
			const isDropped = reason instanceof Dropped;
			if (isDropped ? reason.asked === name : !again) throw reason;
			if (!isDropped) restarted(reason as Error);
			return ask(name, asked, again && isDropped);
		}
	}

	function start(): Remote<Side> {
		broken = new Promise((_, reject) => {
			abandon = reject;
		});
		broken.catch(() => {});
		// From a page on disk browsers start no modules.
		const type = address.startsWith("blob:") ? "classic" : "module";
		worker = new Worker(vouched(address), { type });
		worker.addEventListener("error", (event) => {
			// Browsers put their own words before the message of an error that nobody has caught.
			const message = event.message?.replace(/^Uncaught (\w*Error: )?/, "");
			abandon(new Error(message || "it could not be loaded"));
		});
		remote = wrap(worker) as unknown as Remote<Side>;
		return remote;
	}

	function stop() {
		worker?.terminate();
		worker = null;
		remote = null;
	}

	return {
		function: <Name extends keyof Side>(name: Name) =>
			((...asked: unknown[]) => ask(name, asked)) as Later<Side[Name]>,
		restart: () => abandon(new Error("it was stopped by hand")),
		drop: (name) => abandon(new Dropped(name)),
		onRestart(tell) {
			restarted = tell;
		},
	};
}
