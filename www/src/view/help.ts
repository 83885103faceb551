/** What a cell explains of itself: from the solver's catalogue, and in plain words where that is silent. */
import type { Catalogue, ChoiceInfo, KindInfo, Study } from "../solver/types";
import { cellText, type UnitChoice } from "../units";
import { bounds, fieldAt } from "./bounds";

/** A cell by the names under which errors know it. */
export interface Cell {
	readonly element: string;
	readonly field: string;
}

export interface Help {
	readonly title: string;
	readonly text: string;
	/** The law that reads the cell; absent where nothing is computed. Its kind is where the page of all laws tells more. */
	readonly law?: Pick<KindInfo, "kind" | "label" | "equation" | "source" | "range">;
}

/** What there is to say of a cell; null when there is nothing. */
export function helpOn(
	cell: Cell,
	study: Study,
	catalogue: Catalogue,
	units: UnitChoice,
): Help | null {
	const name = cell.field.split(".").at(-1) ?? "";
	const kind = kindAt(cell, study, catalogue);
	const law = kind?.equation ? { law: kind } : {};
	if (name === "kind" && kind) return { title: kind.label, text: kind.help, ...law };
	if (name === "law") {
		const author = authorAt(cell, study, catalogue);
		if (author) return { title: author.label, text: author.help, ...law };
	}
	const info = fieldAt(cell, study, catalogue);
	if (info) {
		const usual =
			info.default != null && !info.required
				? `; ${cellText(info.default, units[info.quantity])} when left empty`
				: info.required
					? ""
					: "; may be left empty";
		const text = `${info.help}; ${bounds(info, units)}${usual}`;
		const of = cell.field.startsWith("valve.") ? {} : law;
		return { title: info.label, text, ...of };
	}
	const plain = PLAIN[name];
	const of = kind && OF_LAW.has(name) ? law : {};
	return plain ? { title: plain[0], text: plain[1], ...of } : null;
}

/** Cells that hold no number and no kind: the catalogue has no entry for them. */
const PLAIN: Readonly<Record<string, readonly [string, string]>> = {
	id: ["name", "its own among nodes and branches; what refers to it follows a new name"],
	from: ["from", "node at the branch's first end; flow out of it counts as positive"],
	to: ["to", "node at the branch's other end"],
	fromLeg: ["leg", "whether the branch is the straight run of that node or a side leg of it"],
	toLeg: ["leg", "whether the branch is the straight run of that node or a side leg of it"],
	cylinder: ["cylinder", "the cylinder that this port feeds; a cylinder may have several ports"],
	origin: ["origin of K", "where the typed value comes from, for whoever reads the study later"],
	bank: ["bank", "the bank that the cylinder stands in"],
	at: ["reference", "where the density is taken that the volumetric efficiency refers to"],
	node: ["reference node", "the node whose density the volumetric efficiency refers to"],
	way: [
		"pressure",
		"how the source's pressure is given: typed, found for a boost at a named node, or that of the ambient air",
	],
	boostNode: [
		"boost read at",
		"the plenum, or the header, tee or wye, whose static pressure is the boost; others may share it",
	],
	cooler: ["heat exchanged in", "the charge cooler that this core is a passage of"],
	bypass: ["round the blower", "ticked where the branch leads round a blower, back to its inlet"],
	cycle: ["cycle", "turns of the crankshaft in which every cylinder fills once"],
	setting: ["fuel", "who gets how much of the fuel"],
	drive: [
		"drive",
		"how the crankshaft turns the blower, or the boost that its drive ratio is found for",
	],
	speeds: ["speed", "of this row of the table, rising from row to row"],
	ratios: ["pressure ratio", "of this column of the table, rising from column to column"],
	values: ["efficiency", "at the speed of its row and the pressure ratio of its column"],
	mixing: ["mixing", "which side of the core is mixed across its own flow"],
	series: ["coolant", "side by side through all passages, or through one after the other"],
	firingOrder: [
		"firing order",
		"cylinder names with spaces between them, evenly spaced over the cycle; may be left empty",
	],
};

/** Of these the law of the blower or of the charge cooler makes something. */
const OF_LAW: ReadonlySet<string> = new Set([
	"drive",
	"speeds",
	"ratios",
	"values",
	"mixing",
	"series",
]);

function kindAt({ element, field }: Cell, { network, coolers }: Study, catalogue: Catalogue) {
	if (field.startsWith("blower.")) return catalogue.blower;
	if (element === "settings" && field.startsWith("bench.readings")) return catalogue.reading;
	const loss = /^losses\[(\d+)\]/.exec(field)?.[1];
	if (loss !== undefined) {
		const branch = network.branches.find(({ id }) => id === element);
		const kind = branch?.losses[Number(loss)]?.kind;
		return catalogue.losses.find((each) => each.kind === kind);
	}
	const kind = network.nodes.find(({ id }) => id === element)?.kind;
	if (!kind && coolers?.some(({ id }) => id === element)) return catalogue.cooler;
	return catalogue.nodes.find((each) => each.kind === kind);
}

function authorAt(
	{ element }: Cell,
	{ network }: Study,
	catalogue: Catalogue,
): ChoiceInfo | undefined {
	const node = network.nodes.find(({ id }) => id === element);
	const law = node?.kind === "tee" || node?.kind === "wye" ? node.law : undefined;
	return catalogue.junctionLaws.find((each) => each.name === law);
}
