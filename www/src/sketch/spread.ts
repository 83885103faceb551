/** Sets things apart on a line. */

/**
 * Places as near as possible to the wanted ones, at least `apart` from each other and in the wanted order,
 * equal wishes in the order given: the least sum of squared moves, found by pooling neighbours that are too
 * close. A wish list that is its own mirror image gives places that are too.
 */
export function spread(wanted: readonly number[], apart: number): number[] {
	const order = wanted.map((_, index) => index);
	order.sort((one, other) => (wanted[one] ?? 0) - (wanted[other] ?? 0) || one - other);
	const pools: { sum: number; count: number }[] = [];
	order.forEach((place, rank) => {
		pools.push({ sum: (wanted[place] ?? 0) - rank * apart, count: 1 });
		for (let last = pools.at(-1), before = pools.at(-2); last && before; before = pools.at(-2)) {
			if (before.sum / before.count <= last.sum / last.count) break;
			before.sum += last.sum;
			before.count += last.count;
			pools.pop();
			last = before;
		}
	});
	const places: number[] = new Array(wanted.length).fill(0);
	let rank = 0;
	for (const { sum, count } of pools) {
		for (let each = 0; each < count; each += 1, rank += 1) {
			places[order[rank] ?? 0] = sum / count + rank * apart;
		}
	}
	return places;
}
