/** How far each node is from the ports, and what lies next to it. */
import type { Point, Structure, Way } from "./structure";

/** One end of a way, seen from a node. */
export interface Neighbour {
	readonly id: string;
	readonly way: Way;
	/** Whether the way is a run leg of this node. */
	readonly run: boolean;
}

/** The nodes by their distance from the nearest port, in ways. */
export interface Layers {
	/** Nodes by distance, each list in the study's order; the ports come first. */
	readonly byDistance: readonly (readonly Point[])[];
	readonly distance: ReadonlyMap<string, number>;
	readonly neighbours: ReadonlyMap<string, readonly Neighbour[]>;
	/** Nodes that no port can be reached from. */
	readonly apart: readonly Point[];
}

/** Counts the ways from each node to the nearest of these ports. */
export function layersOf({ points, ways }: Structure, ports: readonly Point[]): Layers {
	const neighbours = new Map<string, Neighbour[]>(points.map(({ id }) => [id, []]));
	for (const way of ways) {
		neighbours.get(way.from)?.push({ id: way.to, way, run: way.fromRun });
		neighbours.get(way.to)?.push({ id: way.from, way, run: way.toRun });
	}
	const distance = new Map<string, number>();
	let edge = ports.map(({ id }) => id);
	for (const id of edge) distance.set(id, 0);
	for (let steps = 1; edge.length > 0; steps += 1) {
		const next: string[] = [];
		for (const id of edge) {
			for (const neighbour of neighbours.get(id) ?? []) {
				if (distance.has(neighbour.id)) continue;
				distance.set(neighbour.id, steps);
				next.push(neighbour.id);
			}
		}
		edge = next;
	}
	const byDistance: Point[][] = [];
	const apart: Point[] = [];
	for (const point of points) {
		const steps = distance.get(point.id);
		if (steps === undefined) {
			apart.push(point);
			continue;
		}
		byDistance[steps] ??= [];
		byDistance[steps].push(point);
	}
	return { byDistance, distance, neighbours, apart };
}
