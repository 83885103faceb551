/**
 * What the reader has chosen to look at: a draw, a port for the pressure budget, and a part of the network
 * that sketch, table and budget mark together.
 */
import type { Answer, Draw, DrawAnswer } from "../solver/types";

let chosenDraw = $state.raw<Draw | null>(null);
let chosenPort = $state.raw<string | null>(null);
let part = $state.raw<Part | null>(null);

/** It stands by itself, so that draws out of sight that come later are no news to whatever shows this one. */
let drawAnswer = $state.raw<DrawAnswer | null>(null);
const solved = $derived(drawAnswer?.outcome.kind === "solved" ? drawAnswer.outcome : null);
const path = $derived(
	solved?.paths.find(({ port }) => port === chosenPort) ??
		solved?.paths.find(({ cylinder }) => cylinder === solved.gap?.worst) ??
		solved?.paths[0] ??
		null,
);
const branches = $derived(new Map(solved?.branches.map((each) => [each.branch, each])));
const nodes = $derived(new Map(solved?.nodes.map((each) => [each.node, each])));

/** A node or a branch, or one loss of a branch. */
export interface Part {
	readonly element: string;
	/** Position in the branch's list of losses, from 0. */
	readonly loss: number | null;
}

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
	/** Looks at the chosen draw of this answer. */
	follow(answer: Answer | null) {
		const draws = answer?.draws ?? [];
		drawAnswer = draws.find(({ draw }) => draw === chosenDraw) ?? draws[0] ?? null;
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
	/** The part of the network looked at; null before any has been chosen. */
	get part() {
		return part;
	},
	/** Chooses a part of the network to look at. */
	choosePart(element: string, loss: number | null = null) {
		if (part?.element !== element || part.loss !== loss) part = { element, loss };
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
