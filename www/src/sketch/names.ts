/** Gives ways their names where there is room, so that names thin out before they run into anything. */
import { type Box, type Dot, type Line, textWidth } from "./drawing";

/** Size of names in the drawing, in pixels. */
export const NAME = 9.5;

interface Area {
	readonly left: number;
	readonly right: number;
	readonly top: number;
	readonly bottom: number;
}

/** The same lines, those with a name that have room for it beside their longest straight piece. */
export function named(lines: readonly Line[], boxes: readonly Box[], width: number): Line[] {
	const full: Area[] = boxes.map(({ x, y, width, height }) => ({
		left: x - width / 2,
		right: x + width / 2,
		top: y - height / 2,
		bottom: y + height / 2,
	}));
	const ways = lines.map(({ id, dots, room }) => ({ id, pieces: piecesOf(dots, room / 2) }));
	return lines.map((line) => {
		const place = placeOf(line);
		if (!place) return line;
		const area = areaOf(place, line.id);
		if (area.left < 0 || area.right > width) return line;
		const others = ways.filter(({ id }) => id !== line.id).flatMap(({ pieces }) => pieces);
		if ([...full, ...others].some((one) => meet(one, area))) return line;
		full.push(area);
		return { ...line, name: place };
	});
}

/** To the right of a piece that goes across, above one that goes along; none on a slant. */
function placeOf({ id, dots, room }: Line): Dot | null {
	let longest: { start: Dot; end: Dot; length: number } | null = null;
	for (const [index, end] of dots.slice(1).entries()) {
		const start = dots[index] ?? end;
		const length = Math.hypot(end.x - start.x, end.y - start.y);
		if (!longest || length > longest.length) longest = { start, end, length };
	}
	if (!longest) return null;
	const { start, end, length } = longest;
	const middle = { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 };
	const wide = textWidth(id, NAME);
	if (Math.abs(end.x - start.x) < 1 && length >= NAME + 4)
		return { x: middle.x + room / 2 + 4, y: middle.y + NAME * 0.35 };
	if (Math.abs(end.y - start.y) < 1 && length >= wide)
		return { x: middle.x - wide / 2, y: middle.y - room / 2 - 4 };
	return null;
}

function areaOf({ x, y }: Dot, text: string): Area {
	return {
		left: x,
		right: x + textWidth(text, NAME),
		top: y - NAME * 0.8,
		bottom: y + NAME * 0.25,
	};
}

function piecesOf(dots: readonly Dot[], half: number): Area[] {
	return dots.slice(1).map((end, index) => {
		const start = dots[index] ?? end;
		return {
			left: Math.min(start.x, end.x) - half,
			right: Math.max(start.x, end.x) + half,
			top: Math.min(start.y, end.y) - half,
			bottom: Math.max(start.y, end.y) + half,
		};
	});
}

function meet(one: Area, other: Area): boolean {
	return (
		one.left < other.right + 1 &&
		one.right > other.left - 1 &&
		one.top < other.bottom &&
		one.bottom > other.top
	);
}
