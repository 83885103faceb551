/**
 * Firing orders that are widely known for an engine numbered in a certain way: common practice, without
 * a source, and not the only ones in use. Where none is widely known the order is left for its owner.
 */
import type { Numbering } from "../engine/numbering";

/** The usual firing order; empty when none is widely known. */
export function usualFiring(
	banks: 1 | 2,
	cylinders: number,
	numbering: Numbering,
): readonly string[] {
	// The order along a single bank reads the same from either end.
	const order = banks === 1 ? ONE_BANK[cylinders] : TWO_BANKS[`${cylinders} ${numbering}`];
	return order?.split(" ") ?? [];
}

/** The usual firing order of a flat engine, whose cranks differ from those of a vee. */
export function usualFlatFiring(cylinders: number, numbering: Numbering): readonly string[] {
	return FLAT[`${cylinders} ${numbering}`]?.split(" ") ?? [];
}

const ONE_BANK: Readonly<Record<number, string>> = {
	1: "1",
	2: "1 2",
	3: "1 2 3",
	4: "1 3 4 2",
	5: "1 2 4 5 3",
	6: "1 5 3 6 2 4",
};

const TWO_BANKS: Readonly<Record<string, string>> = {
	"6 oddLeft": "1 2 3 4 5 6",
	"6 firstHalfRight": "1 4 2 5 3 6",
	"8 oddLeft": "1 8 4 3 6 5 7 2",
	"8 firstHalfRight": "1 3 7 2 6 5 4 8",
	"10 oddLeft": "1 10 9 4 3 6 5 8 7 2",
	"10 firstHalfRight": "1 6 5 10 2 7 3 8 4 9",
	"12 firstHalfRight": "1 7 5 11 3 9 6 12 2 8 4 10",
};

const FLAT: Readonly<Record<string, string>> = {
	"4 evenLeft": "1 3 2 4",
	"4 firstHalfRight": "1 4 3 2",
	"6 firstHalfLeft": "1 6 2 4 3 5",
	"6 evenLeft": "1 6 3 2 5 4",
};
