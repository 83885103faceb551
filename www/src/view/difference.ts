/** How a cell differs from the base, in words. */
import type { Mark } from "../network/differing";
import type { FieldInfo } from "../solver/types";
import { cellText, minus, shownSpan, signed, type Unit, type UnitChoice, unitsOf } from "../units";

/** What the base has in a cell, and by how much the variant differs from it. */
export function difference(
	mark: Mark,
	now: unknown,
	info: FieldInfo | undefined,
	units: UnitChoice,
): string {
	if (mark.kind === "new") return "New in this variant, not in the base";
	const { was } = mark;
	if (was == null || was === "") return "In the base: empty";
	if (typeof was === "object") return "In the base: otherwise";
	if (typeof was !== "number" || !info) return `In the base: ${String(was)}`;
	const unit = unitsOf(info, units)[info.quantity];
	const there = `In the base: ${cellText(was, unit)} ${unit.label}`.trimEnd();
	if (typeof now !== "number") return there;
	// Where zero is not nothing, as in °C or gauge pressure, there is a difference but no ratio.
	const isRatio = was !== 0 && unit.plus === 0 && info.quantity !== "pressure";
	const ratio = isRatio ? `, ${signed(now / was - 1, units.fraction, 1)} %` : "";
	return `${there}; here ${step(now - was, unit)}${ratio}`;
}

/** A difference is the same against the room and against nothing. */
function step(span: number, unit: Unit): string {
	const number = Number(shownSpan(span, unit).toPrecision(7));
	const text = number > 0 ? `+${number}` : minus(String(number));
	return `${text} ${unit.label.replace(/ (abs|gauge)$/, "")}`.trimEnd();
}
