/** Every engine, feed and kind of pockets that the starter offers, made and read through the gate. */
import { bankRows } from "../../../www/src/engine/numbering";
import type { Study } from "../../../www/src/solver/types";
import {
	type Choices,
	FEED_WORDS,
	type Feed,
	firingOf,
	POCKET_WORDS,
	type Pockets,
	type Sizes,
	sizesOf,
} from "../../../www/src/starter/answers";
import { LAYOUTS, type LayoutName } from "../../../www/src/starter/layouts";
import { roomPressure } from "../../../www/src/starter/questions";
import { type Draft, studyOf, usualName } from "../../../www/src/starter/study";
import { catalogue, read } from "../wasm";

export const FEEDS = Object.keys(FEED_WORDS) as Feed[];
export const POCKETS = Object.keys(POCKET_WORDS) as Pockets[];

/** An even and an odd single bank beside the layouts that say their number. */
export const ENGINES: readonly Pick<Choices, "layout" | "inBank">[] = [
	...(Object.keys(LAYOUTS) as LayoutName[])
		.filter((layout) => layout !== "singleBank")
		.map((layout) => ({ layout, inBank: 1 })),
	{ layout: "singleBank", inBank: 1 },
	{ layout: "singleBank", inBank: 2 },
	{ layout: "singleBank", inBank: 7 },
	{ layout: "singleBank", inBank: 16 },
];

/** The answers for one manifold. */
export function choose(engine: Pick<Choices, "layout" | "inBank">, feed: Feed, pockets: Pockets) {
	return { ...engine, numbering: null, feed, pockets } satisfies Choices;
}

/** What the starter makes of them. */
export function drafted(choices: Choices, typed: Partial<Sizes> = {}): Draft {
	const surroundings = { room: roomPressure(catalogue), units: undefined };
	const firing = firingOf(choices);
	return studyOf(choices, sizesOf(choices, typed), firing, usualName(choices), [], surroundings);
}

/** The same as the gate has read it. */
export function made(choices: Choices, typed: Partial<Sizes> = {}): Study {
	return read(drafted(choices, typed));
}

/** A figure of each cylinder, bank by bank from the front to the rear. */
export function byBank(
	study: Study,
	cylinders: readonly { readonly cylinder: string; readonly deviation: number }[],
): number[][] {
	const deviations = new Map(cylinders.map((each) => [each.cylinder, each.deviation]));
	return bankRows(study.engine.cylinders).map((row) =>
		row.cylinders.map((id) => deviations.get(id) ?? Number.NaN),
	);
}
