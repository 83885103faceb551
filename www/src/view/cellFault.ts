/** What is wrong with a cell of a small grid, in words that follow the cell's name. */
import type { FieldInfo } from "../solver/types";
import { readNumber, type UnitChoice, unitsOf } from "../units";
import { bounds } from "./bounds";

/** What is wrong with text that stands in a cell as it was typed. */
export function unread(text: string, info: FieldInfo, units: UnitChoice): string {
	const reading = readNumber(text, info.quantity, unitsOf(info, units));
	if (reading.kind !== "unreadable") return "a value is needed.";
	const { message } = reading;
	return message.startsWith("“") ? message : `“${text}”: ${message}`;
}

/** What is wrong with a cell: text that is no value, or a value out of its bounds. */
export function cellFault(
	{ value, text }: { readonly value: number; readonly text?: string | undefined },
	info: FieldInfo,
	units: UnitChoice,
): string | undefined {
	if (text !== undefined) return unread(text, info, units);
	const inside = value >= info.minimum && value <= info.maximum;
	return inside ? undefined : `must lie ${bounds(info, units)}.`;
}
