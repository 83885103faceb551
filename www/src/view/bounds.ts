/** What is wrong with a value, in the units of the page. The solver speaks SI. */
import type { Catalogue, FieldInfo, KindInfo, Study, StudyError } from "../solver/types";
import { cellText, type UnitChoice, unitsOf } from "../units";

/** Between which values a field may lie. */
export function bounds(info: FieldInfo, units: UnitChoice): string {
	const unit = unitsOf(info, units)[info.quantity];
	const from = cellText(info.minimum, unit);
	return `between ${from} and ${cellText(info.maximum, unit)} ${unit.label}`.trimEnd();
}

/** An error's message, a range of values in the units of the page. */
export function wording(
	error: StudyError,
	study: Study,
	catalogue: Catalogue,
	units: UnitChoice,
): string {
	const info = error.kind === "outOfBounds" ? fieldAt(error, study, catalogue) : undefined;
	const said = info ? `${info.label} must lie ${bounds(info, units)}` : error.message;
	const [, list, row] = /\.(station|bend|reading)s\[(\d+)\]/.exec(error.field) ?? [];
	return list ? `${list} ${Number(row) + 1}: ${said}` : said;
}

/** What the catalogue says of the number in a cell. */
export function fieldAt(
	{ element, field }: Pick<StudyError, "element" | "field">,
	{ network, engine, coolers }: Study,
	catalogue: Catalogue,
): FieldInfo | undefined {
	const name = field.split(".").at(-1);
	const loss = /^losses\[(\d+)\]/.exec(field)?.[1];
	const of = (kinds: readonly KindInfo[], kind: string | undefined) =>
		kinds.find((each) => each.kind === kind)?.fields ?? [];
	const branch = network.branches.find(({ id }) => id === element);
	const node = network.nodes.find(({ id }) => id === element);
	const lists: (readonly FieldInfo[])[] = [];
	if (element === "engine") {
		lists.push(field.startsWith("fuel.") ? catalogue.fuel : catalogue.engine);
	}
	if (element === "settings") {
		const group = field.split(".")[0];
		if (group === "bench" || group === "running" || group === "ambient" || group === "check") {
			lists.push(field.includes(".readings[") ? catalogue.reading.fields : catalogue[group]);
		}
	}
	if (branch && field.startsWith("blower.")) lists.push(catalogue.blower.fields);
	else if (branch && loss && field.includes("].stations[")) lists.push(catalogue.station);
	else if (branch && loss && field.includes("].bends[")) lists.push(catalogue.stationBend);
	else if (branch) {
		lists.push(loss ? of(catalogue.losses, branch.losses[Number(loss)]?.kind) : catalogue.branch);
	}
	if (coolers?.some(({ id }) => id === element)) lists.push(catalogue.cooler.fields);
	if (node) {
		const valve = field.startsWith("valve.dischargeTable[")
			? catalogue.valveCurve.fields
			: catalogue.valve;
		lists.push(field.startsWith("valve.") ? valve : of(catalogue.nodes, node.kind));
	}
	if (engine.cylinders.some(({ id }) => id === element)) lists.push(catalogue.cylinder);
	return lists.flat().find((info) => info.name === name);
}
