/** What the tabs of this page tell each other of a study. */

type Message = "ask" | "kept" | "yielded";

/** A tab that has not answered by then does not answer [ms]. */
const PATIENCE = 1000;

/** Listens to the other tabs, and gives what can be said to them. */
export function tell(heard: (said: "ask" | "kept", study: string) => void) {
	// Without it other tabs are only not told at once.
	const channel = "BroadcastChannel" in globalThis ? new BroadcastChannel("evenport") : null;
	let answered: (study: string) => void = () => {};
	const say = (said: Message, study: string) => channel?.postMessage([said, study]);
	channel?.addEventListener("message", ({ data }: MessageEvent<[Message, string]>) => {
		const [said, study] = data;
		if (said === "yielded") answered(study);
		else heard(said, study);
	});
	return {
		/** The study has been written. */
		kept: (study: string) => say("kept", study),
		/** What was asked for is written, and nothing more is. */
		yielded: (study: string) => say("yielded", study),
		/** Asks the tab that has the study to write all that it has; waits until it has, or is silent. */
		ask(study: string): Promise<void> {
			return new Promise((resolve) => {
				const timer = setTimeout(resolve, PATIENCE);
				answered = (said) => {
					if (said !== study) return;
					clearTimeout(timer);
					resolve();
				};
				say("ask", study);
			});
		},
	};
}
