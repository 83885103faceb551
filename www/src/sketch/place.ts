/**
 * Places a network around its engine, seen from above with the front on the left.
 *
 * Ports stand in rows, one row a bank: the only bank, or the left one, at the bottom. What is as far from
 * the ports as another node stands on the same line between the rows, over the middle of what it feeds; a
 * chamber that feeds several places is as long as they are apart. What feeds a long chamber, or the end of
 * a run, and nothing else stands at its end, so that the way in leads along the engine. All of this comes
 * from who is joined to whom; no figure has a part in it. Places are counted in cylinders along the engine
 * and in lines across it.
 */
import { type Layers, layersOf } from "./layers";
import type { Point, Structure } from "./structure";

/** Half of a box's length, in cylinders. */
export const HALF = 0.36;
/** Half of a port's. */
export const PORT_HALF = 0.15;
/** The part of a cylinder's room that its ports share. */
export const SEATS = 0.8;
/** Least room between two boxes on a line. */
const GAP = 0.1;
/** Room for the way between a chamber and what stands at its end. */
const END_GAP = 0.4;
/** Lines between a port and the middle of the engine, and nodes one after the other at an end. */
const DEEPEST = 7;
/** The least room for one of several boxes at one place. */
const CRAMPED = 0.08;

/** Towards which bank: the only or left one below, the right one above, or between them. */
export type Side = -1 | 0 | 1;

/** Where a node stands. */
export interface Spot {
	readonly id: string;
	readonly kind: Point["kind"];
	/** Its ends along the engine. */
	readonly from: number;
	readonly to: number;
	/** Its line across the engine, from the bottom. */
	readonly line: number;
}

/** Where a cylinder stands. */
export interface Stand {
	readonly id: string;
	readonly at: number;
	readonly side: Side;
	readonly ports: readonly string[];
}

/** A network around its engine. */
export interface Plan {
	readonly spots: readonly Spot[];
	readonly stands: readonly Stand[];
	/** Names of the banks by their side. */
	readonly banks: readonly { readonly name: string; readonly side: Side }[];
	readonly lines: number;
	/** Nodes that no way joins to a port. */
	readonly apart: readonly string[];
}

/** A plan, or why the network has none. */
export type Placing = { readonly plan: Plan } | { readonly plan: null; readonly why: string };

interface Placed {
	readonly point: Point;
	readonly side: Side;
	/** Line on its side from the bank inwards; of the middle lines 0 is the centre line. */
	readonly row: number;
	/** The middle of what it feeds; what feeds it goes by this, however many share the place. */
	readonly over: number;
	readonly from: number;
	readonly to: number;
	/** How many stand between it and the chamber at whose end it stands. */
	readonly chained: number;
}

/** Places every node, or says why this network has no engine's shape. */
export function placed(structure: Structure): Placing {
	const { banks } = structure;
	if (banks.length > 2) return none("the cylinders stand in more than two banks");
	const stands = standsOf(structure);
	const seats = new Set(stands.flatMap((stand) => stand.ports));
	const ports = structure.points.filter(({ id }) => seats.has(id));
	if (ports.length === 0) return none("no port belongs to a cylinder of the engine");
	const layers = layersOf(structure, ports);
	if (layers.byDistance.length > DEEPEST + 1)
		return none(`some nodes are more than ${DEEPEST} ways from the nearest port`);
	const board = new Board(layers);
	for (const { at, side, ports: own } of stands) {
		own.forEach((id, index) => {
			const point = ports.find((port) => port.id === id);
			const its = at + ((index + 0.5) / own.length - 0.5) * SEATS;
			if (point)
				board.add({
					point,
					side,
					row: 0,
					over: its,
					from: its - PORT_HALF,
					to: its + PORT_HALF,
					chained: 0,
				});
		});
	}
	for (const points of layers.byDistance.slice(1)) board.addLayer(points);
	if (board.cramped) return none("too many nodes would stand at one place");
	return {
		plan: board.plan(
			stands,
			banks.map(({ bank }, index) => ({ name: bank, side: sideOf(index) })),
		),
	};
}

function none(why: string): Placing {
	return { plan: null, why };
}

function sideOf(bank: number): Side {
	return bank === 0 ? -1 : 1;
}

/** Rows of unequal length stand with their middles across from each other. */
function standsOf({ banks, points }: Structure): Stand[] {
	const longest = Math.max(0, ...banks.map(({ cylinders }) => cylinders.length));
	return banks.flatMap(({ cylinders }, bank) =>
		cylinders.map((id, index) => ({
			id,
			at: index + (longest - cylinders.length) / 2,
			side: sideOf(bank),
			ports: points.filter(({ cylinder }) => cylinder === id).map((port) => port.id),
		})),
	);
}

/** The middle between two ends. */
export function middle({ from, to }: { from: number; to: number }): number {
	return (from + to) / 2;
}

/** What has been placed so far. */
class Board {
	/** Whether a place holds more boxes than it has room for. */
	cramped = false;
	private readonly layers: Layers;
	private readonly all: Placed[] = [];
	private readonly byId = new Map<string, Placed>();
	/** Lines in use on each side, the ports' own included. */
	private readonly rows = new Map<Side, number>([
		[-1, 1],
		[0, 0],
		[1, 1],
	]);

	constructor(layers: Layers) {
		this.layers = layers;
	}

	add(one: Placed) {
		this.all.push(one);
		this.byId.set(one.point.id, one);
	}

	/** Places all nodes of one distance. */
	addLayer(points: readonly Point[]) {
		const rest = points.filter((point) => !this.endOf(point));
		for (const side of [-1, 0, 1] as const) {
			this.addSide(
				side,
				rest.filter((point) => this.sideOf(point) === side),
			);
		}
		for (const point of points) {
			const chamber = rest.includes(point) ? null : this.endOf(point);
			if (chamber && !this.addAtEnd(point, chamber)) this.addSide(chamber.side, [point]);
		}
	}

	/** The board with lines counted across the whole engine. */
	plan(stands: readonly Stand[], banks: Plan["banks"]): Plan {
		const deep = Math.max(this.count(-1), this.count(1));
		const wings = Math.floor(this.count(0) / 2);
		const both = banks.length > 1;
		const lines = both ? 2 * deep + 2 * wings + 1 : deep;
		const line = ({ side, row }: Placed) => {
			if (side === 0) return deep + wings + (row % 2 === 1 ? -1 : 1) * Math.ceil(row / 2);
			return side < 0 ? row : lines - 1 - row;
		};
		const spots = this.all.map((one) => ({
			id: one.point.id,
			kind: one.point.kind,
			from: one.from,
			to: one.to,
			line: line(one),
		}));
		const apart = this.layers.apart;
		return {
			spots: [...spots, ...shelved(apart, spots, lines)],
			stands,
			banks,
			lines,
			apart: apart.map(({ id }) => id),
		};
	}

	/** What a node feeds: its neighbours nearer to the ports. */
	private fed({ id }: Point): Placed[] {
		const steps = this.layers.distance.get(id) ?? 0;
		const ids = (this.layers.neighbours.get(id) ?? [])
			.filter((each) => this.layers.distance.get(each.id) === steps - 1)
			.map((each) => each.id);
		return [...new Set(ids)].flatMap((each) => this.byId.get(each) ?? []);
	}

	private sideOf(point: Point): Side {
		const sides = new Set(this.fed(point).map(({ side }) => side));
		const [only] = sides;
		return sides.size === 1 && only !== undefined ? only : 0;
	}

	/** The chamber at whose end a node belongs, if it feeds only that one. */
	private endOf(point: Point): Placed | null {
		const fed = this.fed(point);
		const chamber = fed[0];
		if (fed.length !== 1 || !chamber || chamber.point.kind === "port") return null;
		const joined = this.layers.neighbours.get(chamber.point.id) ?? [];
		const alongRun = joined.some(({ id, run }) => id === point.id && run);
		const long = chamber.to - chamber.from > 2 * HALF + 0.01;
		const inMiddle = chamber.side === 0;
		return long || inMiddle || chamber.chained > 0 || alongRun ? chamber : null;
	}

	private addSide(side: Side, points: readonly Point[]) {
		if (points.length === 0) return;
		const wanted = points.map((point) => {
			const places = this.fed(point).map(({ over }) => over);
			return { point, least: Math.min(...places), most: Math.max(...places) };
		});
		const short = wanted.filter(({ least, most }) => most - least < 0.01);
		const long = wanted.filter(({ least, most }) => most - least >= 0.01);
		const first = this.count(side);
		for (const { least: place } of short) {
			const together = short.filter(({ least }) => Math.abs(least - place) < 0.01);
			if (together[0]?.least !== place || this.byId.has(together[0].point.id)) continue;
			const others = short.map(({ least }) => Math.abs(least - place)).filter((far) => far >= 0.01);
			// Several at one place share its room, so that none of their neighbours has to move.
			const room = Math.min(2 * HALF + GAP, ...others) / together.length;
			if (room < CRAMPED) this.cramped = true;
			const half = (room - Math.min(GAP, room / 4)) / 2;
			together.forEach(({ point }, index) => {
				const at = place + (index - (together.length - 1) / 2) * room;
				this.put(point, side, first, place, at - half, at + half);
			});
		}
		for (const { point, least, most } of long) {
			let row = first;
			while (!this.isFree(side, row, least - HALF - GAP, most + HALF + GAP)) row += 1;
			this.put(point, side, row, (least + most) / 2, least - HALF, most + HALF);
		}
	}

	/** Away from what the chamber's line holds already, else to the front; false when both ends are taken. */
	private addAtEnd(point: Point, chamber: Placed): boolean {
		if (chamber.chained >= DEEPEST) return false;
		const { side, row } = chamber;
		const beside = (this.layers.neighbours.get(chamber.point.id) ?? [])
			.flatMap(({ id }) => this.byId.get(id) ?? [])
			.filter((other) => other.side === side && other.row === row && other.point !== point);
		const lean = beside.reduce((sum, other) => sum + Math.sign(middle(other) - middle(chamber)), 0);
		const front = lean > 0 || (lean === 0 && middle(chamber) <= this.centre() + 0.01);
		for (const toFront of [front, !front]) {
			const at = toFront ? chamber.from - END_GAP - HALF : chamber.to + END_GAP + HALF;
			const from = Math.min(at - HALF - GAP, chamber.to);
			const to = Math.max(at + HALF + GAP, chamber.from);
			if (!this.isFree(side, row, from, to, chamber)) continue;
			const chained = chamber.chained + 1;
			this.add({ point, side, row, over: at, from: at - HALF, to: at + HALF, chained });
			return true;
		}
		return false;
	}

	/** The middle of the engine. */
	private centre(): number {
		const ports = this.all.filter(({ point }) => point.kind === "port").map(middle);
		return (Math.min(...ports) + Math.max(...ports)) / 2;
	}

	private put(point: Point, side: Side, row: number, over: number, from: number, to: number) {
		this.add({ point, side, row, over, from, to, chained: 0 });
		this.rows.set(side, Math.max(this.count(side), row + 1));
	}

	private count(side: Side): number {
		return this.rows.get(side) ?? 0;
	}

	private isFree(side: Side, row: number, from: number, to: number, but?: Placed): boolean {
		return this.all.every(
			(one) =>
				one === but || one.side !== side || one.row !== row || one.to <= from || one.from >= to,
		);
	}
}

/** What is joined to no port stands by itself behind the engine. */
function shelved(apart: readonly Point[], spots: readonly Spot[], lines: number): Spot[] {
	const rear = Math.max(...spots.map(({ to }) => to));
	return apart.map(({ id, kind }, index) => {
		const at = rear + END_GAP + HALF + Math.floor(index / lines) * (2 * HALF + GAP);
		return { id, kind, from: at - HALF, to: at + HALF, line: index % lines };
	});
}
