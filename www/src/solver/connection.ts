/** A worker that answers questions, thrown away when it fails and started again. */
import { type Remote, wrap } from "comlink";
import { vouched } from "../vouched";

/** The way to one worker, which is started by the first question. */
export interface Connection<Side> {
	/**
	 * Puts a question to the worker. A worker that fails is thrown away, because its memory can no longer
	 * be trusted; another one is asked the same, once.
	 */
	ask<Reply>(question: (to: Remote<Side>) => PromiseLike<Reply>): Promise<Reply>;
	/** Gives up the worker; another one takes over what is under way. */
	restart(): void;
	/** Names who is told why when the worker has failed and another one takes over. */
	onRestart(tell: (reason: Error) => void): void;
}

/** The way to the worker at an address of this page. */
export function connection<Side>(address: string): Connection<Side> {
	let worker: Worker | null = null;
	let remote: Remote<Side> | null = null;
	let abandon: (reason: Error) => void = () => {};
	let broken: Promise<never> = new Promise(() => {});
	let restarted: (reason: Error) => void = () => {};

	async function ask<Reply>(
		question: (to: Remote<Side>) => PromiseLike<Reply>,
		again = true,
	): Promise<Reply> {
		const to = remote ?? start();
		try {
			return await Promise.race([question(to), broken]);
		} catch (reason) {
			if (remote === to) stop();
			if (!again) throw reason;
			restarted(reason as Error);
			return ask(question, false);
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
		remote = wrap<Side>(worker);
		return remote;
	}

	function stop() {
		worker?.terminate();
		worker = null;
		remote = null;
	}

	return {
		ask: (question) => ask(question),
		restart: () => abandon(new Error("it was stopped by hand")),
		onRestart(tell) {
			restarted = tell;
		},
	};
}
