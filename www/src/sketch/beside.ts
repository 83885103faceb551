/** Which part of a sketch lies next in a direction, for the arrow keys. */
import { along, type Dot, type Drawing } from "./drawing";

/** A part that can be chosen: its middle, and how far it reaches to all sides. */
export interface Part extends Dot {
	readonly id: string;
	readonly halfWidth: number;
	readonly halfHeight: number;
}

/** All parts of a drawing. */
export function partsOf({ boxes, lines }: Drawing): Part[] {
	return [
		...boxes.map(({ id, x, y, width, height }) => ({
			id,
			x,
			y,
			halfWidth: width / 2,
			halfHeight: height / 2,
		})),
		...lines.map(({ id, dots }) => ({ id, ...along(dots, 0.5), halfWidth: 0, halfHeight: 0 })),
	];
}

const DIRECTIONS: Readonly<Record<string, Dot>> = {
	ArrowLeft: { x: -1, y: 0 },
	ArrowRight: { x: 1, y: 0 },
	ArrowUp: { x: 0, y: -1 },
	ArrowDown: { x: 0, y: 1 },
};

/** The nearest part in the direction of an arrow key, straight ahead before aside; null when there is none. */
export function beside(parts: readonly Part[], from: Part, key: string): Part | null {
	const direction = DIRECTIONS[key];
	if (!direction) return null;
	let best: { part: Part; cost: number } | null = null;
	for (const part of parts) {
		const x = part.x - from.x;
		const y = part.y - from.y;
		if (x * direction.x + y * direction.y < 1) continue;
		const sideways = Math.max(Math.abs(x) - part.halfWidth, 0);
		const upright = Math.max(Math.abs(y) - part.halfHeight, 0);
		const ahead = direction.x === 0 ? upright : sideways;
		const aside = direction.x === 0 ? sideways : upright;
		if (aside > 3 * ahead + 1) continue;
		const cost = ahead + 2 * aside;
		if (!best || cost < best.cost) best = { part, cost };
	}
	return best?.part ?? null;
}
