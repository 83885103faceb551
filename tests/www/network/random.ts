/** Edits at random of a small manifold, the same in every run. */
import type { Branch, Loss, Network, Node } from "../../../www/src/solver/types";

/** Whole numbers below a bound, from a seed. */
export function numbers(seed: number): (below: number) => number {
	let state = seed;
	return (below) => {
		// A linear congruential generator; its high bits are random enough to choose rows by.
		state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
		return Math.floor((state / 2 ** 32) * below);
	};
}

/** A plenum with some runners. */
export function manifold(runners: number): Network {
	const names = Array.from({ length: runners }, (_, at) => String(at + 1));
	return {
		nodes: [
			{ id: "air", kind: "source" },
			{ id: "lid", kind: "plenum" },
			...names.map((name): Node => ({ id: `port ${name}`, kind: "port", cylinder: name })),
		],
		branches: [
			{ id: "feed", from: "air", to: "lid", losses: [duct(0.2)] },
			...names.map(
				(name): Branch => ({
					id: `run ${name}`,
					from: "lid",
					to: `port ${name}`,
					losses: [{ kind: "entrySharp", area: 0.001 }, duct(0.3)],
				}),
			),
		],
	};
}

/** The network after one edit of a kind that the page can make. */
export function edited(network: Network, next: (below: number) => number, name: string): Network {
	const { nodes, branches } = network;
	const at = next(branches.length);
	const branch = branches[at];
	if (!branch) return network;
	const changed = (change: Partial<Branch>) => ({
		nodes,
		branches: branches.with(at, { ...branch, ...change }),
	});
	const { losses } = branch;
	const place = next(losses.length);
	const loss = losses[place];
	switch (next(8)) {
		case 0:
			return changed({ temperatureRise: next(9) });
		case 1:
			return loss && "area" in loss
				? changed({ losses: losses.with(place, { ...loss, area: 0.001 * (1 + next(9)) }) })
				: network;
		case 2:
			return changed({ losses: losses.toSpliced(place, 0, duct(0.1 * (1 + next(9)))) });
		case 3:
			return losses.length > 1 ? changed({ losses: losses.toSpliced(place, 1) }) : network;
		case 4:
			return { nodes, branches: branches.toSpliced(at, 1) };
		case 5:
			return { nodes, branches: branches.toSpliced(at, 1).toSpliced(next(at + 1), 0, branch) };
		case 6:
			return { nodes: nodes.toSpliced(next(nodes.length), 1), branches };
		default:
			return {
				nodes: nodes.toSpliced(next(nodes.length + 1), 0, { id: `node ${name}`, kind: "joint" }),
				branches: branches.toSpliced(at, 0, {
					...branch,
					id: `branch ${name}`,
					to: `node ${name}`,
				}),
			};
	}
}

export function duct(length: number): Loss {
	return { kind: "duct", area: 0.001, length, roughness: 0.000001 };
}
