/** Which of a branch's seldom-used fields its row shows: few branches have one, and rows are to be low. */
import { keyOf, type Path, type Sheet } from "../network/edit";
import type { Branch, FieldInfo, KindInfo, Loss } from "../solver/types";

/** What tells whether a field is shown. */
export interface Sight {
	/** Whether the branch leaves a plenum, where a jet can be felt. */
	readonly jets: boolean;
	/** Text of cells that cannot be read as a value. */
	readonly drafts: Readonly<Record<string, string>>;
	/** Fields that have been opened, by branch and field. */
	readonly opened: ReadonlySet<string>;
}

/** These place a branch's mouth against a jet; one of them says little without the others. */
const PLACED: ReadonlySet<string> = new Set(["jetDistance", "jetOffset", "jetAngle"]);

/** The name of a field of a branch among those that have been opened. */
export function openedKey(branch: string, field: string): string {
	return `${branch}|${field}`;
}

/** The fields that mean something for a branch: a jet is felt only where it leaves a plenum. */
export function possible(fields: readonly FieldInfo[], { jets }: Pick<Sight, "jets">): FieldInfo[] {
	return fields.filter(({ name }) => jets || !name.startsWith("jet"));
}

/** The fields that are shown: what holds something, what belongs to it, and what has been opened. */
export function shownFields(
	branch: Branch,
	index: number,
	fields: readonly FieldInfo[],
	sight: Sight,
): FieldInfo[] {
	const values = branch as unknown as Record<string, unknown>;
	const holds = (name: string) =>
		values[name] != null || sight.drafts[keyOf(["network", "branches", index, name])] !== undefined;
	const placed = [...PLACED].some(holds);
	const usable = new Set(possible(fields, sight));
	return fields.filter(
		(info) =>
			holds(info.name) ||
			(usable.has(info) &&
				(sight.opened.has(openedKey(branch.id, info.name)) || (placed && PLACED.has(info.name)))),
	);
}

/** Fields of a loss that always show; one behind them that may stay empty shows when it holds something. */
const ALWAYS = 4;

/** Whether a loss has anything that shows only when it is asked for. */
export function lossesHaveMore(
	losses: readonly Loss[],
	kinds: ReadonlyMap<string, KindInfo>,
): boolean {
	return losses.some(({ kind }) => {
		const info = kinds.get(kind);
		return info && (info.laws.length > 0 || info.fields.some(seldom));
	});
}

/** The fields of a loss that are in sight. */
export function shownLossFields(
	loss: Loss,
	path: Path,
	fields: readonly FieldInfo[],
	drafts: Sheet["drafts"],
	opened: boolean,
): readonly FieldInfo[] {
	const values = loss as unknown as Record<string, unknown>;
	return fields.filter(
		(info, place) =>
			opened ||
			!seldom(info, place) ||
			values[info.name] !== undefined ||
			drafts[keyOf([...path, info.name])] !== undefined,
	);
}

function seldom({ required }: FieldInfo, place: number): boolean {
	return !required && place >= ALWAYS;
}
