/** What a sketch is drawn from: who is joined to whom, and where the cylinders stand. No figures. */
import { type BankRow, bankRows } from "../engine/numbering";
import type { Branch, Engine, Network, Node, NodeKind } from "../solver/types";

/** A node, with the cylinder it feeds when it is a port. */
export interface Point {
	readonly id: string;
	readonly kind: NodeKind["kind"];
	readonly cylinder: string | null;
}

/** A branch between two nodes that exist. */
export interface Way {
	readonly id: string;
	readonly from: string;
	readonly to: string;
	/** Whether it is a run leg of the junction at that end. */
	readonly fromRun: boolean;
	readonly toRun: boolean;
}

/** Everything that decides where things stand in a sketch. */
export interface Structure {
	readonly points: readonly Point[];
	readonly ways: readonly Way[];
	/** Banks with their cylinders from the front to the rear. */
	readonly banks: readonly BankRow[];
}

/**
 * The structure of a network and its engine. While only figures change it is the very structure given as
 * `before`, so that nothing is placed anew. Rows that are half typed, without their ends or with a name
 * that is taken, are left out until they are whole.
 */
export function structureOf(network: Network, engine: Engine, before?: Structure): Structure {
	const points = unique(network.nodes.map(pointOf));
	const known = new Set(points.map(({ id }) => id));
	const ways = unique(network.branches.map(wayOf)).filter(
		({ from, to }) => from !== to && known.has(from) && known.has(to),
	);
	const now = { points, ways, banks: bankRows(engine.cylinders) };
	return before && isSame(before, now) ? before : now;
}

function pointOf(node: Node): Point {
	return { id: node.id, kind: node.kind, cylinder: node.kind === "port" ? node.cylinder : null };
}

function wayOf({ id, from, to, fromLeg, toLeg }: Branch): Way {
	return { id, from, to, fromRun: fromLeg === "run", toRun: toLeg === "run" };
}

function unique<Row extends { readonly id: string }>(rows: readonly Row[]): Row[] {
	const seen = new Set<string>();
	return rows.filter(({ id }) => {
		const first = id !== "" && !seen.has(id);
		seen.add(id);
		return first;
	});
}

function isSame(one: Structure, other: Structure): boolean {
	return (
		alike(one.points, other.points, samePoint) &&
		alike(one.ways, other.ways, sameWay) &&
		alike(one.banks, other.banks, sameBank)
	);
}

function alike<Item>(
	one: readonly Item[],
	other: readonly Item[],
	same: (one: Item, other: Item) => boolean,
): boolean {
	return (
		one.length === other.length &&
		one.every((item, index) => {
			const there = other[index];
			return there !== undefined && same(item, there);
		})
	);
}

function samePoint(one: Point, other: Point): boolean {
	return one.id === other.id && one.kind === other.kind && one.cylinder === other.cylinder;
}

function sameWay(one: Way, other: Way): boolean {
	return (
		one.id === other.id &&
		one.from === other.from &&
		one.to === other.to &&
		one.fromRun === other.fromRun &&
		one.toRun === other.toRun
	);
}

function sameBank(one: BankRow, other: BankRow): boolean {
	return (
		one.bank === other.bank &&
		alike(one.cylinders, other.cylinders, (left, right) => left === right)
	);
}
