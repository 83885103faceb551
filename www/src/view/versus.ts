/** Two pressure budgets beside each other: which path to compare with, and which losses belong together. */
import { max } from "d3-array";
import type { BudgetItem, Path, Solved } from "../solver/types";

/** A loss of one path and its like on the other; one of them is missing where only one path has it. */
export interface Pair {
	readonly own: BudgetItem | null;
	readonly other: BudgetItem | null;
	/** What the first path loses more here [Pa]. */
	readonly more: number;
}

/** The path that another is compared with. */
export interface Rival {
	readonly path: Path;
	/** Whether its cylinder gets most or least of all, in words; empty when neither. */
	readonly gets: string;
}

/**
 * The path to compare one with: that of the cylinder at the other end of the gap, and for that cylinder
 * itself the one the gap is told of. Of several ports the one that brings most air stands for its cylinder.
 */
export function rivalOf({ gap, cylinders, paths }: Solved, path: Path): Rival | null {
	if (!gap) return null;
	const name = path.cylinder === gap.best ? gap.worst : gap.best;
	const cylinder = cylinders.find((each) => each.cylinder === name);
	if (!cylinder || name === path.cylinder) return null;
	const most = max(cylinder.ports, ({ flow }) => flow);
	const port = cylinder.ports.find(({ flow }) => flow === most)?.port;
	const rival = paths.find((each) => each.port === port);
	if (!rival) return null;
	const others = cylinders.filter((each) => each !== cylinder).map(({ deviation }) => deviation);
	const { deviation } = cylinder;
	const gets = others.every((each) => each < deviation)
		? "which gets most"
		: others.every((each) => each > deviation)
			? "which gets least"
			: "";
	return { path: rival, gets };
}

/**
 * Pairs the losses of two paths in their order: those at the same place, else those of the same kind, as
 * many as go together without crossing, and rather near the ports, where paths are most alike.
 */
export function paired(own: readonly BudgetItem[], other: readonly BudgetItem[]): Pair[] {
	// best[i][j]: how well what comes from own[i] and other[j] on can be paired.
	const best: number[][] = Array.from({ length: own.length + 1 }, () =>
		new Array<number>(other.length + 1).fill(0),
	);
	const at = (i: number, j: number) => best[i]?.[j] ?? 0;
	const match = (i: number, j: number) => {
		const [one, two] = [own[i], other[j]];
		if (!one || !two) return 0;
		const likeness = alike(one, two);
		return likeness > 0 && own.length - i === other.length - j ? likeness + 0.5 : likeness;
	};
	for (let i = own.length - 1; i >= 0; i -= 1) {
		for (let j = other.length - 1; j >= 0; j -= 1) {
			const together = match(i, j);
			const row = best[i];
			if (!row) continue;
			row[j] = Math.max(at(i + 1, j), at(i, j + 1), together > 0 ? together + at(i + 1, j + 1) : 0);
		}
	}
	const pairs: Pair[] = [];
	let i = 0;
	let j = 0;
	while (i < own.length || j < other.length) {
		const together = match(i, j);
		if (together > 0 && at(i, j) === together + at(i + 1, j + 1)) {
			pairs.push(pair(own[i], other[j]));
			i += 1;
			j += 1;
		} else if (i < own.length && (j === other.length || at(i, j) === at(i + 1, j))) {
			pairs.push(pair(own[i], undefined));
			i += 1;
		} else {
			pairs.push(pair(undefined, other[j]));
			j += 1;
		}
	}
	return pairs;
}

function pair(own: BudgetItem | undefined, other: BudgetItem | undefined): Pair {
	return { own: own ?? null, other: other ?? null, more: (own?.fall ?? 0) - (other?.fall ?? 0) };
}

function alike(one: BudgetItem, other: BudgetItem): number {
	if (one.element === other.element && one.loss === other.loss && one.label === other.label)
		return 3;
	// What a node costs is labelled with the node's own name.
	const kind = ({ label, element }: BudgetItem) => label.replace(element, "").trim();
	return kind(one) === kind(other) ? 2 : 0;
}

/** What the losses are called in drawing and table: numbers on the first path, letters on the other alone. */
export function tags(pairs: readonly Pair[]): string[] {
	let number = 0;
	let letter = 0;
	return pairs.map(({ own }) => {
		if (own) {
			number += 1;
			return String(number);
		}
		letter += 1;
		return letterOf(letter);
	});
}

/** a to z, then aa and so on. */
function letterOf(count: number): string {
	const last = String.fromCharCode(97 + ((count - 1) % 26));
	return count > 26 ? letterOf(Math.floor((count - 1) / 26)) + last : last;
}
