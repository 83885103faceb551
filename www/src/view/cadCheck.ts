/** What is said of the check against CAD. */
import type { CadVerdict, Compared, Entered } from "../solver/types";
import { cellText, type UnitChoice } from "../units";

/** A verdict is told by a word and a shape, never by colour alone. */
export const CAD_WORDS: Readonly<Record<CadVerdict, { word: string; shape: string }>> = {
	agrees: { word: "agrees", shape: "=" },
	differs: { word: "differs", shape: "≠" },
	noCad: { word: "no CAD value", shape: "–" },
	nothingEntered: { word: "no volume entered", shape: "?" },
	incomplete: { word: "not all is entered", shape: "?" },
};

/** Whether any value from CAD has been typed. */
export function hasCad(entered: Entered): boolean {
	return withCad(entered).length > 0;
}

/** A node of each chamber of which nothing is entered that gives a volume. */
export function withoutVolume({ chambers }: Entered): string[] {
	return chambers.flatMap(({ entered, nodes }) => (entered === null ? nodes.slice(0, 1) : []));
}

/** What comes of all comparisons, in one sentence. */
export function summary(entered: Entered, units: UnitChoice): string {
	const typed = withCad(entered);
	if (typed.length === 0) return "No value from CAD is typed yet.";
	const count = (verdict: CadVerdict) => typed.filter((each) => each.verdict === verdict).length;
	const [agree, differ] = [count("agrees"), count("differs")];
	const open = typed.length - agree - differ;
	const tolerance = `${cellText(entered.tolerance, units.fraction)}\u00a0${units.fraction.label}`;
	const parts = [
		differ > 0 && `${differ} ${differ === 1 ? "differs" : "differ"} by more than ${tolerance}`,
		agree > 0 && `${agree} ${agree === 1 ? "agrees" : "agree"} within ${tolerance}`,
		open > 0 && `${open} cannot be compared`,
	].filter((part) => part !== false);
	const all = `${typed.length} ${typed.length === 1 ? "value" : "values"}`;
	return `Of ${all} from CAD, ${parts.join(", ")}.`;
}

function withCad({ chambers, total, ports }: Entered): Compared[] {
	return [...chambers, total, ...ports].filter(({ cad }) => cad !== null);
}
