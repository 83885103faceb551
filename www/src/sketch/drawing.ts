/** What is drawn where, in pixels: the same for a network around its engine and for one in layers. */
import type { NodeKind } from "../solver/types";

/** A place on the paper. */
export interface Dot {
	readonly x: number;
	readonly y: number;
}

/** A node. */
export interface Box {
	readonly id: string;
	readonly kind: NodeKind["kind"];
	/** Its middle. */
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
	/** What has room in it: its name, of a port its cylinder's. */
	readonly label: string;
}

/** A branch. */
export interface Line {
	readonly id: string;
	readonly from: string;
	readonly to: string;
	/** From the branch's first end to its other. */
	readonly dots: readonly Dot[];
	/** Widest it may be drawn. */
	readonly room: number;
	/** Whether it passes over a box that it does not join. */
	readonly over: boolean;
	/** Where its name begins; null when there is no room. */
	readonly name: Dot | null;
}

/** How much room the words at a port have: all in two lines or three, without the unit, the sign alone. */
export type Room = "wide" | "whole" | "short" | "sign";

/** Where the deviation of a cylinder is drawn, by its port. */
export interface Gauge {
	readonly cylinder: string;
	/** Its ports, the first of which is chosen with it. */
	readonly ports: readonly string[];
	/** Where the cylinder is when no port shows it. */
	readonly seat: Dot;
	/** Left and upper end of the scale, on which up is more air. */
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
	/** Middle of the base of the line of words next to the scale, and where the others follow. */
	readonly words: Dot;
	readonly follow: "above" | "below";
	readonly size: Room;
}

/** A word that belongs to the drawing as a whole. */
export interface Note {
	readonly text: string;
	readonly x: number;
	readonly y: number;
	readonly anchor: "start" | "middle" | "end";
}

/** Everything that stands still while figures change. */
export interface Drawing {
	readonly width: number;
	readonly height: number;
	readonly boxes: readonly Box[];
	readonly lines: readonly Line[];
	readonly gauges: readonly Gauge[];
	readonly notes: readonly Note[];
	/** Centre lines, dash and dot. */
	readonly axes: readonly (readonly [Dot, Dot])[];
}

/** The path of a way as SVG writes it. */
export function pathOf(dots: readonly Dot[]): string {
	return dots
		.map(({ x, y }, index) => `${index === 0 ? "M" : "L"}${round(x)} ${round(y)}`)
		.join("");
}

/** A place on a way and the direction there, in degrees. */
export interface Mark extends Dot {
	readonly angle: number;
}

/** The place after this part of a way's length. */
export function along(dots: readonly Dot[], part: number): Mark {
	const pieces = dots.slice(1).map((end, index) => {
		const start = dots[index] ?? end;
		return { start, end, length: Math.hypot(end.x - start.x, end.y - start.y) };
	});
	let left = part * pieces.reduce((sum, { length }) => sum + length, 0);
	for (const [index, { start, end, length }] of pieces.entries()) {
		if (left > length && index < pieces.length - 1) {
			left -= length;
			continue;
		}
		const share = length === 0 ? 0 : left / length;
		return {
			x: round(start.x + (end.x - start.x) * share),
			y: round(start.y + (end.y - start.y) * share),
			angle: round((Math.atan2(end.y - start.y, end.x - start.x) * 180) / Math.PI),
		};
	}
	return { x: dots[0]?.x ?? 0, y: dots[0]?.y ?? 0, angle: 0 };
}

/** Tenths of a pixel are fine enough, and short to write. */
export function round(value: number): number {
	return Math.round(value * 10) / 10;
}

/**
 * As much of a text as has room, cut in the middle if need be, since names like to differ at their end;
 * nothing when not even three letters have room.
 */
export function fitting(text: string, size: number, room: number): string {
	if (textWidth(text, size) <= room) return text;
	const letters = Math.floor(room / textWidth("m", size)) - 1;
	if (letters < 3) return "";
	const tail = Math.floor(letters / 2);
	return `${text.slice(0, letters - tail).trimEnd()}…${text.slice(-tail).trimStart()}`;
}

/** About how wide a text is at this size; the page's letters are no wider. */
export function textWidth(text: string, size: number): number {
	return text.length * size * 0.56;
}
