import { expose } from "comlink";

/** What a worker answers, by name. */
export type Functions = Record<string, (...asked: never[]) => unknown>;

/** Offers functions of the solver to the page; whoever asks before it is ready waits for it. */
export function offer(functions: Functions, ready: Promise<unknown>) {
	const later = Object.entries(functions).map(([name, answer]) => [
		name,
		async (...asked: never[]) => {
			await ready;
			return answer(...asked);
		},
	]);
	expose(Object.fromEntries(later));
}
