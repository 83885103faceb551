/**
 * Where each cylinder stands, seen from above, by the usual ways of numbering an engine.
 *
 * All of these are common practice, stated here without a source; makers differ, so each is only offered.
 * Left and right are the engine's own: seen from its rear, looking towards its front. In a list of
 * cylinders the order within a bank is the order from the front to the rear.
 */
import type { Cylinder } from "../solver/types";

/** A way of numbering: by its own name in the code, never in a file. */
export type Numbering =
	| "frontToRear"
	| "rearToFront"
	| "oddLeft"
	| "evenLeft"
	| "firstHalfLeft"
	| "firstHalfRight";

/** The names of the two banks of an engine that has two. */
export const LEFT = "left";
export const RIGHT = "right";

/** What each is called on the page. */
export const NUMBERING_WORDS: Readonly<Record<Numbering, string>> = {
	frontToRear: "front to rear",
	rearToFront: "rear to front",
	oddLeft: "odd left, even right",
	evenLeft: "even left, odd right",
	firstHalfLeft: "first half left, second half right",
	firstHalfRight: "first half right, second half left",
};

const ONE_BANK: readonly Numbering[] = ["frontToRear", "rearToFront"];
const TWO_BANKS: readonly Numbering[] = ["oddLeft", "evenLeft", "firstHalfLeft", "firstHalfRight"];

/** The ways to number so many cylinders in so many banks, the most usual first. */
export function numberings(cylinders: number, banks: number): readonly Numbering[] {
	if (banks === 1) return ONE_BANK;
	if (banks !== 2) return [];
	return cylinders % 2 === 0 ? TWO_BANKS : TWO_BANKS.slice(0, 2);
}

/**
 * The same cylinders, placed by a way of numbering: banks given, and in order from front to rear. A list
 * that is not numbered from 1 on without gaps has no such order and comes back as it is.
 */
export function placed(cylinders: readonly Cylinder[], numbering: Numbering): readonly Cylinder[] {
	if (!isNumbered(cylinders)) return cylinders;
	const sorted = cylinders.toSorted((one, other) => Number(one.id) - Number(other.id));
	const banked = sorted.map((cylinder, index) => {
		const { bank: _, ...rest } = cylinder;
		const bank = bankOf(index + 1, sorted.length, numbering);
		return bank === null ? rest : { ...rest, bank };
	});
	return numbering === "rearToFront" ? banked.reverse() : banked;
}

/** The way in which a list is numbered, or null when it is none of these. */
export function numberingOf(cylinders: readonly Cylinder[]): Numbering | null {
	if (cylinders.length === 0 || !isNumbered(cylinders)) return null;
	const rows = bankRows(cylinders);
	const offered = numberings(cylinders.length, rows.length);
	return offered.find((each) => sameRows(rows, bankRows(placed(cylinders, each)))) ?? null;
}

/** One bank: its name, empty when it has none, and its cylinders from the front to the rear. */
export interface BankRow {
	readonly bank: string;
	readonly cylinders: readonly string[];
}

/** The banks of a list, the left one before the right one, others as they come. */
export function bankRows(cylinders: readonly Cylinder[]): readonly BankRow[] {
	const rows = new Map<string, string[]>();
	for (const { id, bank = "" } of cylinders) {
		const row = rows.get(bank);
		if (row) row.push(id);
		else rows.set(bank, [id]);
	}
	return [...rows]
		.map(([bank, ids]) => ({ bank, cylinders: ids }))
		.sort((one, other) => side(one.bank) - side(other.bank));
}

/** Whether the cylinders are called 1, 2, 3 and so on, in whatever order they stand. */
export function isNumbered(cylinders: readonly Cylinder[]): boolean {
	const ids = new Set(cylinders.map(({ id }) => id));
	return cylinders.every((_, index) => ids.has(String(index + 1)));
}

function bankOf(number: number, count: number, numbering: Numbering): string | null {
	switch (numbering) {
		case "frontToRear":
		case "rearToFront":
			return null;
		case "oddLeft":
			return number % 2 === 1 ? LEFT : RIGHT;
		case "evenLeft":
			return number % 2 === 0 ? LEFT : RIGHT;
		case "firstHalfLeft":
			return number <= count / 2 ? LEFT : RIGHT;
		case "firstHalfRight":
			return number <= count / 2 ? RIGHT : LEFT;
	}
}

function side(bank: string): number {
	if (sameName(bank, LEFT)) return 0;
	return sameName(bank, RIGHT) ? 1 : 2;
}

/** A single bank is the same whatever it is called; of two, left and right must be where they should be. */
function sameRows(found: readonly BankRow[], wanted: readonly BankRow[]): boolean {
	return (
		found.length === wanted.length &&
		found.every(({ bank, cylinders }, index) => {
			const other = wanted[index];
			if (!other || (found.length > 1 && !sameName(bank, other.bank))) return false;
			return cylinders.join() === other.cylinders.join();
		})
	);
}

function sameName(one: string, other: string): boolean {
	return one.trim().toLowerCase() === other;
}
