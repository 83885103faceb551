/** Every input of the committed corpus keeps every promise, in many places. */
import { describe, it } from "vitest";
import { corpus } from "./corpus";
import { SURFACES } from "./surfaces";

/** A machine that others use may stand still for seconds; an input's own time is measured apart [ms]. */
const PATIENCE = 60_000;

/** Numbers that lead to different sheets, tables, cells, units and columns. */
const PLACES = Array.from({ length: 24 }, (_, at) => at * 7_919 ** 3 + at);

describe.each(Object.entries(SURFACES))("%s", (name, { check }) => {
	it.each(corpus(name).map((entry) => [entry.name, entry] as const))(
		"%s",
		async (_, entry) => {
			const places = entry.where === undefined ? PLACES : [entry.where];
			for (const where of name === "link" ? [0] : places) await check(entry.text, where);
		},
		PATIENCE,
	);
});
