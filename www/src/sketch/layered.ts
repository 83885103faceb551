/** Networks that have no engine's shape, drawn in layers from the sources down to the ports. */
import { Graph, layout } from "@dagrejs/dagre";
import {
	type Box,
	type Drawing,
	fitting,
	type Gauge,
	type Line,
	type Room,
	round,
	textWidth,
} from "./drawing";
import { layersOf } from "./layers";
import { NAME, named } from "./names";
import type { Point, Structure } from "./structure";

const MARGIN = 8;
const BOX = 17;
const PORT = { width: 66, box: 22, scale: 30 };
const WORDS = 38;
/** Taller than this a drawing is made smaller. */
const TALLEST = 520;
const WIDEST = 10;

interface Size {
	readonly width: number;
	readonly height: number;
}

interface Corners {
	readonly points: readonly { readonly x: number; readonly y: number }[];
}

/**
 * Draws a network in layers, made smaller where it would be wider than `width`, or taller than so many
 * times what reads well in a column.
 */
export function layered(structure: Structure, width: number, times = 1): Drawing {
	const graph = new Graph({ multigraph: true });
	graph.setGraph({ rankdir: "TB", nodesep: 14, ranksep: 30, edgesep: 12 });
	graph.setDefaultEdgeLabel(() => ({}));
	for (const point of structure.points) graph.setNode(point.id, { ...sizeOf(point) });
	const ways = downwards(structure);
	for (const { id, upper, lower } of ways) graph.setEdge(upper, lower, {}, id);
	layout(graph);
	const whole = graph.graph() as Size;
	const scale = Math.min(1, (width - 2 * MARGIN) / whole.width, (TALLEST * times) / whole.height);
	const left = Math.max((width - whole.width * scale) / 2, MARGIN);
	const x = (at: number) => round(left + at * scale);
	const y = (at: number) => round(MARGIN + at * scale);

	const boxes: Box[] = [];
	const gauges: Gauge[] = [];
	for (const { id, kind, cylinder } of structure.points) {
		const node = graph.node(id) as Size & { x: number; y: number };
		const isPort = kind === "port";
		const box = (isPort ? PORT.box : node.height) * scale;
		const top = y(node.y - node.height / 2);
		const wide = isPort ? PORT.box * scale : node.width * scale;
		const text = isPort ? (cylinder ?? "").slice(0, 3) : id;
		const label = box < 11 ? "" : isPort ? text : fitting(text, NAME, wide - 3);
		boxes.push({ id, kind, x: x(node.x), y: top + box / 2, width: wide, height: box, label });
		if (cylinder === null) continue;
		const size: Room = scale < 0.65 ? "sign" : scale < 0.95 ? "short" : "whole";
		const below = top + box + 3;
		gauges.push({
			cylinder,
			ports: [id],
			seat: { x: x(node.x), y: top + box / 2 },
			x: x(node.x - node.width / 2),
			y: below,
			width: node.width * scale,
			height: PORT.scale * scale,
			words: { x: x(node.x), y: below + PORT.scale * scale + 10 },
			follow: "below",
			size,
		});
	}
	const lines = ways.map(({ id, from, to, upper, lower }): Line => {
		const { points } = graph.edge(upper, lower, id) as Corners;
		const dots = points.map((point) => ({ x: x(point.x), y: y(point.y) }));
		// Room for the words at a port is no part of it: the way goes on to the port itself.
		const port = boxes.find((box) => box.id === lower && box.kind === "port");
		if (port) dots.splice(-1, 1, { x: port.x, y: port.y - port.height / 2 });
		const room = Math.max(WIDEST * scale, 2);
		if (upper !== from) dots.reverse();
		return { id, from, to, dots, room, over: false, name: null };
	});
	const height = whole.height * scale + 2 * MARGIN;
	return { width, height, boxes, lines: named(lines, boxes, width), gauges, notes: [], axes: [] };
}

function sizeOf({ id, kind }: Point): Size {
	if (kind === "port") return { width: PORT.width, height: PORT.box + 3 + PORT.scale + WORDS };
	return { width: Math.max(textWidth(id, NAME) + 14, 26), height: BOX };
}

/**
 * Ways with their end that is farther from the ports as the upper one, whichever end the study names first
 * and whichever way the air goes.
 */
function downwards(structure: Structure) {
	const ports = structure.points.filter(({ kind }) => kind === "port");
	const { distance } = layersOf(structure, ports);
	const far = (id: string) => distance.get(id) ?? 0;
	return structure.ways.map((way) => {
		const turned = far(way.from) < far(way.to);
		return { ...way, upper: turned ? way.to : way.from, lower: turned ? way.from : way.to };
	});
}
