/** In which order the rows of a table are shown, and which of them. The study never knows. */

/** What a table is sorted by: a name for its menu, and what stands in each row. */
export interface Sorting {
	readonly by: string;
	readonly falling: boolean;
}

/** The rows that hold every word of the filter, in the order of their keys. */
export function arranged(
	texts: readonly string[],
	filter: string,
	keys: readonly (string | number | undefined)[] | null,
	falling: boolean,
	always: ReadonlySet<number>,
): number[] {
	const words = filter.toLowerCase().split(/\s+/).filter(Boolean);
	const places = [...texts.keys()].filter((place) => {
		const text = texts[place]?.toLowerCase() ?? "";
		return always.has(place) || words.every((word) => text.includes(word));
	});
	if (!keys) return places;
	const sign = falling ? -1 : 1;
	// Rows without a value stand last either way.
	return places.sort((one, other) => {
		const [left, right] = [keys[one], keys[other]];
		if (left === undefined || right === undefined) {
			return Number(left === undefined) - Number(right === undefined);
		}
		return sign * compare(left, right);
	});
}

const words = new Intl.Collator(undefined, { numeric: true });

function compare(left: string | number, right: string | number): number {
	if (typeof left === "number" && typeof right === "number") return left - right;
	return words.compare(String(left), String(right));
}
