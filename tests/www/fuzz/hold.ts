/** What all properties use: a promise, choices out of one number, and a text that is never to be lost. */

/** Fails when something does not hold. */
export function hold(holds: boolean, otherwise: string): void {
	if (!holds) throw new Error(otherwise);
}

/** Choices out of one number, the same for the same one. */
export function picker(from: number): (below: number) => number {
	let left = from;
	return (below) => {
		const taken = left % below;
		left = Math.floor(left / below);
		return taken;
	};
}

/** A text that is no name of anything, no number and no unit. */
export const MARK = "⟦never lost⟧";

/** The block with the mark in one cell of a row, from the row `first` on where there is one. */
export function withMark(
	block: readonly string[][],
	first: number,
	next: (below: number) => number,
): string[][] {
	const above = Math.min(first, block.length - 1);
	const row = above + next(block.length - above);
	const cells = block[row] ?? [];
	return block.with(row, cells.with(next(cells.length), MARK));
}

/** Nothing in it is a number that is none: what is not finite becomes null on its way into a file. */
export function allFinite(value: unknown): boolean {
	return !/[[:,]null/.test(JSON.stringify(value));
}
