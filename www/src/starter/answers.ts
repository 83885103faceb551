/** What the starter asks, and the typical sizes it offers until others are typed. */
import { type Numbering, numberings } from "../engine/numbering";
import { usualFiring, usualFlatFiring } from "./firing";
import { LAYOUTS, type LayoutName } from "./layouts";

export type Feed = "oneEnd" | "middle" | "bothEnds" | "above";
export type Pockets = "perPort" | "perPair" | "open";

/** Where the air comes in. */
export const FEED_WORDS: Readonly<Record<Feed, string>> = {
	oneEnd: "at the front end",
	middle: "in the middle",
	bothEnds: "at both ends",
	above: "from above, through a core",
};

/** What stands between the chamber and the runners. */
export const POCKET_WORDS: Readonly<Record<Pockets, string>> = {
	perPort: "a pocket per port",
	perPair: "a pocket per pair of neighbours",
	open: "no pockets, open",
};

/** What is chosen from lists. */
export interface Choices {
	readonly layout: LayoutName;
	/** How many cylinders a single bank has; the other layouts say it themselves. */
	readonly inBank: number;
	/** Null for what is usual. */
	readonly numbering: Numbering | null;
	readonly feed: Feed;
	readonly pockets: Pockets;
}

/** What is typed as a number, in SI. */
export interface Sizes {
	/** All cylinders together [m3]. */
	readonly displacement: number;
	/** [rev/s] */
	readonly speed: number;
	/** [-] */
	readonly volumetricEfficiency: number;
	/** Gauge pressure at the source [Pa]. */
	readonly boost: number;
	/** [K] */
	readonly temperature: number;
	/** [m2] */
	readonly runnerArea: number;
	/** [m] */
	readonly runnerLength: number;
	/** [rad] */
	readonly bendAngle: number;
	/** Between neighbouring cylinders of a bank [m]. */
	readonly spacing: number;
	/** [m2] */
	readonly logArea: number;
	/** Of one port [m2]. */
	readonly windowArea: number;
	/** Of one neck [m2]. */
	readonly neckArea: number;
	/** [m] */
	readonly neckLength: number;
	/** [m2] */
	readonly coreArea: number;
	/** At which the core costs `coreDrop` [kg/s]. */
	readonly coreFlow: number;
	/** [Pa] */
	readonly coreDrop: number;
}

export type SizeName = keyof Sizes;

/** How many cylinders and banks, and how they are numbered. */
export function engineOf({ layout, inBank, numbering }: Choices): {
	readonly banks: 1 | 2;
	readonly cylinders: number;
	readonly numbering: Numbering;
} {
	const { banks, cylinders, numbering: usual } = LAYOUTS[layout];
	const count = cylinders ?? inBank;
	const offered = numberings(count, banks);
	return {
		banks,
		cylinders: count,
		numbering: numbering && offered.includes(numbering) ? numbering : usual,
	};
}

/** The firing order to begin with; empty when none is widely known. */
export function firingOf(choices: Choices): readonly string[] {
	const { banks, cylinders, numbering } = engineOf(choices);
	return choices.layout.startsWith("flat")
		? usualFlatFiring(cylinders, numbering)
		: usualFiring(banks, cylinders, numbering);
}

/**
 * All sizes: those typed, and for the rest invented ones of a usual magnitude that grow with the engine.
 * The proportions are common practice without a source.
 */
export function sizesOf(choices: Choices, typed: Partial<Sizes>): Sizes {
	const { cylinders } = engineOf(choices);
	const layout = LAYOUTS[choices.layout];
	const displacement = typed.displacement ?? tidy(layout.sweptVolume * cylinders);
	const swept = displacement / cylinders;
	const runnerArea = typed.runnerArea ?? tidy(2.4 * swept);
	const bore = Math.cbrt((4 * swept) / Math.PI);
	return {
		displacement,
		speed: 100,
		volumetricEfficiency: 0.95,
		boost: 70_000,
		temperature: 333.15,
		runnerArea,
		runnerLength: layout.runnerLength,
		bendAngle: layout.bendAngle,
		spacing: tidy(1.1 * bore),
		logArea: tidy(0.75 * cylinders * runnerArea),
		windowArea: tidy(1.5 * runnerArea),
		neckArea: tidy((1.6 * displacement) / necks(choices.feed)),
		neckLength: 0.12,
		coreArea: tidy(5.6 * displacement),
		coreFlow: tidy(105 * displacement),
		coreDrop: 4200,
		...typed,
	};
}

/** The sizes that the answers make use of, in the order in which they are asked. */
export function asked(choices: Choices): {
	readonly running: readonly SizeName[];
	readonly manifold: readonly SizeName[];
} {
	const { feed, pockets } = choices;
	const { cylinders, banks } = engineOf(choices);
	const inBank = cylinders / banks;
	const places = pockets === "perPair" ? Math.ceil(inBank / 2) : inBank;
	const manifold: SizeName[] = ["runnerArea", "runnerLength", "bendAngle"];
	if (feed !== "above" && places > 1) manifold.push("logArea", "spacing");
	if (pockets !== "open") manifold.push("windowArea");
	manifold.push("neckArea", "neckLength");
	if (feed === "above") manifold.push("coreArea", "coreFlow", "coreDrop");
	return { running: ["speed", "boost", "temperature", "volumetricEfficiency"], manifold };
}

function necks(feed: Feed): number {
	return feed === "bothEnds" ? 2 : 1;
}

/** Three digits: more would claim that somebody has measured it. */
function tidy(value: number): number {
	return Number(value.toPrecision(3));
}
