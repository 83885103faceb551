/** Places for the names at the ends of lines, so that none stands on another. */

/** Names stand at least this far apart [px]. */
export const APART = 12;

/**
 * Places as near to where the lines end as they can be, in the lines' order: names that would touch are
 * moved apart together, about the middle of where they belong, and none leaves the room there is.
 */
export function spaced(ends: readonly number[], from: number, to: number, apart = APART): number[] {
	const order = ends.map((_, index) => index).sort((a, b) => (ends[a] ?? 0) - (ends[b] ?? 0));
	/** Names that stand shoulder to shoulder, by the place of the first. */
	const groups: { first: number; wanted: number[] }[] = [];
	const settle = (wanted: readonly number[]) => {
		const mean = wanted.reduce((sum, end, place) => sum + end - place * apart, 0) / wanted.length;
		return Math.max(from, Math.min(mean, to - (wanted.length - 1) * apart));
	};
	for (const index of order) {
		let group = { first: 0, wanted: [ends[index] ?? 0] };
		group.first = settle(group.wanted);
		for (let last = groups.at(-1); last; last = groups.at(-1)) {
			if (last.first + last.wanted.length * apart <= group.first) break;
			groups.pop();
			const wanted = [...last.wanted, ...group.wanted];
			group = { first: settle(wanted), wanted };
		}
		groups.push(group);
	}
	const places = groups.flatMap(({ first, wanted }) =>
		wanted.map((_, place) => first + place * apart),
	);
	const found = new Array<number>(ends.length).fill(0);
	order.forEach((index, place) => {
		found[index] = places[place] ?? 0;
	});
	return found;
}
