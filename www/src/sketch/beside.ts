/** Which part of a sketch lies next in a direction, for the arrow keys. */
import type { Dot } from "./drawing";

/** A part that can be chosen, with the place it is known by. */
export interface Part extends Dot {
	readonly id: string;
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
		const ahead = x * direction.x + y * direction.y;
		const aside = Math.abs(x * direction.y) + Math.abs(y * direction.x);
		if (ahead < 1 || aside > 3 * ahead) continue;
		const cost = ahead + 2 * aside;
		if (!best || cost < best.cost) best = { part, cost };
	}
	return best?.part ?? null;
}
