/** What the reader has chosen to look at: a draw, and a port for the pressure budget. */
import { latest } from "../solver/latest.svelte";
import type { Draw } from "../solver/types";

let chosenDraw = $state.raw<Draw | null>(null);
let chosenPort = $state.raw<string | null>(null);

const drawAnswer = $derived(
	latest.answer?.draws.find(({ draw }) => draw === chosenDraw) ?? latest.answer?.draws[0] ?? null,
);
const solved = $derived(drawAnswer?.outcome.kind === "solved" ? drawAnswer.outcome : null);
const path = $derived(
	solved?.paths.find(({ port }) => port === chosenPort) ??
		solved?.paths.find(({ cylinder }) => cylinder === solved.gap?.worst) ??
		solved?.paths[0] ??
		null,
);
const branches = $derived(new Map(solved?.branches.map((each) => [each.branch, each])));
const nodes = $derived(new Map(solved?.nodes.map((each) => [each.node, each])));

/** The part of the answer that is on the screen. */
export const choice = {
	/** The draw looked at: the chosen one, else the headline. */
	get draw() {
		return drawAnswer;
	},
	/** Chooses the draw to look at. */
	chooseDraw(draw: Draw) {
		chosenDraw = draw;
	},
	/** Its figures, when it is solved. */
	get solved() {
		return solved;
	},
	/** The way to the port looked at: the chosen one, else the worst cylinder's. */
	get path() {
		return path;
	},
	/** Chooses the port whose pressure budget is shown. */
	choosePort(port: string) {
		chosenPort = port;
	},
	/** Figures by branch id. */
	get branches() {
		return branches;
	},
	/** Figures by node id. */
	get nodes() {
		return nodes;
	},
};
