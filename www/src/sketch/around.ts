/** From a plan around an engine, in cylinders and lines, to pixels. */
import {
	type Box,
	type Dot,
	type Drawing,
	fitting,
	type Gauge,
	type Line,
	type Note,
	type Room,
	round,
} from "./drawing";
import { NAME, named } from "./names";
import { type Plan, SEATS, type Spot } from "./place";
import { type Corner, routed } from "./route";
import type { Structure } from "./structure";

const MARGIN = 6;
/** Least and most room for one cylinder along the engine. */
const PITCH = { least: 26, most: 130 };
const BOX = 17;
const PORT = 22;
/** From the boxes of one line to those of the next. */
const STEP = 27;
/** A line of notes above and below. */
const NOTES = 14;
/** Height of the scale of a deviation, and of the words there. */
const SCALE = 32;
const WORDS: Readonly<Record<Room, number>> = { wide: 25, whole: 36, short: 36, sign: 13 };
/** Ways side by side along a line make its boxes taller, up to so many pixels. */
const LANE = { most: 8, all: 72 };
const WIDEST = 14;

/** Draws a plan in a given width, so many times as large as it would be in what there is room for. */
export function drawn(plan: Plan, { points, ways }: Structure, width: number, times = 1): Drawing {
	const seats = plan.stands.map(({ at }) => ({ from: at - 0.5, to: at + 0.5 }));
	const first = Math.min(...[...plan.spots, ...seats].map(({ from }) => from));
	const last = Math.max(...[...plan.spots, ...seats].map(({ to }) => to));
	const fits = (width - 2 * MARGIN) / (last - first);
	const pitch = Math.min(Math.max(fits, PITCH.least), PITCH.most * times);
	const step = STEP * Math.min(times, 2);
	const left = Math.max((width - (last - first) * pitch) / 2, MARGIN);
	const x = (at: number) => round(left + (at - first) * pitch);
	const size = roomOf(pitch);
	const both = plan.banks.length > 1;

	const routes = routed(plan, ways);
	const tall = tallness(
		plan,
		routes.flatMap(({ corners }) => corners),
	);
	// Heights are summed up from the top, where the last line is.
	const band = 3 + SCALE + WORDS[size];
	const middles: number[] = [];
	let top = MARGIN + NOTES + (both ? band : 0);
	for (let line = plan.lines - 1; line >= 0; line -= 1) {
		middles[line] = top + tall(line) / 2;
		top += tall(line) + step;
	}
	const height = top - step + band + (both ? NOTES : 0) + MARGIN;
	const y = (line: number) => {
		const low = middles[Math.floor(line)] ?? 0;
		return low + ((middles[Math.ceil(line)] ?? low) - low) * (line % 1);
	};

	const cylinders = new Map(points.map(({ id, cylinder }) => [id, cylinder]));
	const mostPorts = Math.max(...plan.stands.map(({ ports }) => ports.length));
	const port = Math.min(PORT, (pitch * SEATS) / mostPorts - 2);
	const box = ({ id, kind, from, to, line }: Spot): Box => {
		const own = (to - from) * pitch;
		const wide = kind === "port" ? port : kind === "joint" ? Math.min(BOX, own) : own;
		const text = kind === "port" ? (cylinders.get(id) ?? "") : id;
		const label = kind === "port" ? text.slice(0, 3) : fitting(text, NAME, wide - 4);
		return { id, kind, x: x((from + to) / 2), y: y(line), width: wide, height: tall(line), label };
	};
	const dot = ({ at, line, edge, lane: [index, count] = [0, 1] }: Corner): Dot => ({
		x: x(at),
		y: y(line) - (edge * tall(line)) / 2 + (index - (count - 1) / 2) * laneOf(count),
	});
	const boxes = plan.spots.map(box);
	const joined = new Map(ways.map((way) => [way.id, way]));
	const lines = routes.map(({ id, corners, over }): Line => {
		const { from = "", to = "" } = joined.get(id) ?? {};
		const lanes = Math.max(...corners.map(({ lane }) => lane?.[1] ?? 1));
		const room = Math.min(WIDEST, 0.19 * pitch, lanes > 1 ? laneOf(lanes) * 0.75 : WIDEST);
		return { id, from, to, dots: corners.map(dot), room, over, name: null };
	});
	const gauges = plan.stands.map(({ id, at, side, ports }): Gauge => {
		const seat = { x: x(at), y: y(side < 0 ? 0 : plan.lines - 1) };
		const scale = side < 0 ? seat.y + PORT / 2 + 3 : seat.y - PORT / 2 - 3 - SCALE;
		const words = side < 0 ? scale + SCALE + 10 : scale - 4;
		return {
			cylinder: id,
			ports,
			seat,
			x: x(at - 0.5),
			y: scale,
			width: pitch,
			height: SCALE,
			words: { x: seat.x, y: words },
			follow: side < 0 ? "below" : "above",
			size,
		};
	});
	const centre = y((plan.lines - 1) / 2);
	const whole = Math.max(width, (last - first) * pitch + 2 * MARGIN);
	return {
		width: whole,
		height,
		boxes,
		lines: named(lines, boxes, whole),
		gauges,
		notes: notesOf(plan, left, x(last), height),
		axes: both
			? [
					[
						{ x: left - 4, y: centre },
						{ x: x(last) + 4, y: centre },
					],
				]
			: [],
	};
}

function roomOf(pitch: number): Room {
	if (pitch >= 98) return "wide";
	if (pitch >= 60) return "whole";
	return pitch >= 40 ? "short" : "sign";
}

function laneOf(count: number): number {
	return Math.min(LANE.most, LANE.all / count);
}

/** How tall the boxes of each line are. */
function tallness(plan: Plan, corners: readonly Corner[]): (line: number) => number {
	const lanes = new Map<number, number>();
	for (const { line, lane } of corners)
		if (lane) lanes.set(line, Math.max(lanes.get(line) ?? 1, lane[1]));
	const ofPorts = (line: number) =>
		line === 0 || (plan.banks.length > 1 && line === plan.lines - 1);
	return (line) => {
		const count = lanes.get(line) ?? 1;
		return ofPorts(line) ? PORT : Math.max(BOX, count * laneOf(count) + 4);
	};
}

function notesOf(plan: Plan, left: number, right: number, height: number): Note[] {
	const notes: Note[] = [{ text: "◂ front", x: left, y: MARGIN + 8, anchor: "start" }];
	if (plan.banks.length < 2) return notes;
	for (const { name, side } of plan.banks) {
		const text = name === "" ? "no bank" : `${name} bank`;
		const y = side > 0 ? MARGIN + 8 : height - MARGIN;
		notes.push({ text, x: right, y, anchor: "end" });
	}
	return notes;
}
