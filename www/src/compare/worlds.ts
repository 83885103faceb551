/** Worlds in parts: how many are asked for at a time, and what has come so far. */

/** A part should not take longer, or Stop would seem not to work [ms]. */
const PATIENCE = 150;
const FEWEST = 5;
const MOST = 500;

/** Worlds to ask for, after `count` of them took so long [ms]; at first a number by the versions. */
export function partSize(versions: number, count?: number, took?: number): number {
	if (count === undefined || took === undefined)
		return Math.max(Math.round(100 / Math.max(versions, 1)), FEWEST);
	const wanted = Math.round((count * PATIENCE) / Math.max(took, 1));
	return Math.min(Math.max(wanted, FEWEST), MOST);
}

/** Room for numbers that come in parts. */
export function gathered(length: number) {
	const room = new Float64Array(length);
	let filled = 0;
	return {
		/** Adds a part, and gives all so far. */
		add(part: Float64Array): Float64Array {
			room.set(part, filled);
			filled += part.length;
			return room.slice(0, filled);
		},
	};
}
