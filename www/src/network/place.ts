/** Where a boost is read, as a first guess that somebody can change. */
import type { Study } from "../solver/types";

/** Kinds of nodes that have a static pressure to read. */
const CHAMBERS: ReadonlySet<string> = new Set(["plenum", "header", "tee", "wye"]);

/**
 * The node whose boost another source asks for already, and that boost; else the node that the engine's
 * volumetric efficiency refers to, else the chamber with the most legs that no blower draws from.
 */
export function boostPlace({ network, engine }: Study): { node: string; boost?: number } {
	for (const node of network.nodes) {
		if (node.kind === "source" && node.boostNode) {
			const { boost } = node;
			return boost === undefined ? { node: node.boostNode } : { node: node.boostNode, boost };
		}
	}
	const drawn = new Set(network.branches.flatMap(({ blower, from }) => (blower ? [from] : [])));
	const chambers = network.nodes.filter(({ kind, id }) => CHAMBERS.has(kind) && !drawn.has(id));
	const { reference } = engine;
	const named = chambers.find(({ id }) => reference.at === "node" && reference.node === id);
	if (named) return { node: named.id };
	const legs = new Map<string, number>();
	for (const end of network.branches.flatMap(({ from, to }) => [from, to])) {
		legs.set(end, (legs.get(end) ?? 0) + 1);
	}
	const most = chambers.toSorted(
		(one, other) => (legs.get(other.id) ?? 0) - (legs.get(one.id) ?? 0),
	);
	return { node: most[0]?.id ?? "" };
}
