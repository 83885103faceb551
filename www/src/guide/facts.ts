/** What the guide reads from an answer: three draws, all of them solved. */
import type { Answer, Draw, Solved, Study } from "../solver/types";

/** One draw's figures beside its limit. */
export interface Reading {
	readonly solved: Solved;
	readonly limit: number;
}

/** The draws that the guide compares. */
export interface Facts {
	readonly running: Reading;
	readonly oneOpen: Reading;
	readonly allOpen: Reading;
}

/** The spread of each draw, kept while the sheet goes on to another form of the log. */
export interface Spreads {
	readonly running: number;
	readonly oneOpen: number;
	readonly allOpen: number;
}

/** Reads an answer; null when a draw is missing or refused. */
export function factsOf(answer: Answer | null): Facts | null {
	const running = reading(answer, "running");
	const oneOpen = reading(answer, "benchOneAtATime");
	const allOpen = reading(answer, "benchAllOpen");
	return running && oneOpen && allOpen ? { running, oneOpen, allOpen } : null;
}

export function spreadsOf({ running, oneOpen, allOpen }: Facts): Spreads {
	return {
		running: running.solved.spread,
		oneOpen: oneOpen.solved.spread,
		allOpen: allOpen.solved.spread,
	};
}

/** The same manifold with every section of its log larger by a factor; runners stay. */
export function widened(study: Study, factor: number): Study {
	const wider = (area: number) => Number((area * factor).toPrecision(9));
	const { nodes, branches } = study.network;
	return {
		...study,
		network: {
			nodes: nodes.map((node) =>
				node.kind === "header" ? { ...node, area: wider(node.area) } : node,
			),
			branches: branches.map((branch) =>
				branch.toLeg === "run"
					? {
							...branch,
							losses: branch.losses.map((loss) =>
								"area" in loss ? { ...loss, area: wider(loss.area) } : loss,
							),
						}
					: branch,
			),
		},
	};
}

function reading(answer: Answer | null, draw: Draw): Reading | null {
	const found = answer?.draws.find((each) => each.draw === draw);
	return found?.outcome.kind === "solved" ? { solved: found.outcome, limit: found.limit } : null;
}
