/** The study that the answers make: a document like any other, read through the same gate. */
import { NUMBERING_WORDS, numberings, placed } from "../engine/numbering";
import type { Settings, Study } from "../solver/types";
import { cellText, UNITS, type UnitChoice } from "../units";
import {
	type Choices,
	engineOf,
	FEED_WORDS,
	POCKET_WORDS,
	type SizeName,
	type Sizes,
} from "./answers";
import { LAYOUTS } from "./layouts";
import { networkOf } from "./network";
import { SIZE_LABELS } from "./questions";

/** What stands beside the answers: the room, and what the sheet's own study holds. */
export interface Surroundings {
	/** Absolute pressure of the room, from which boost counts [Pa]. */
	readonly room: number;
	readonly units: Settings["units"];
}

/** A study as JSON text is read: what has a default may be left out. */
export type Draft = Omit<Study, "settings"> & { settings: { units: Settings["units"] } };

/** Makes the study. Sizes that nobody typed are named in its notes. */
export function studyOf(
	choices: Choices,
	sizes: Sizes,
	firing: readonly string[],
	name: string,
	typical: readonly SizeName[],
	{ room, units }: Surroundings,
): Draft {
	const { cylinders: count, numbering } = engineOf(choices);
	const sweptVolume = Number((sizes.displacement / count).toPrecision(9));
	const cylinders = placed(
		Array.from({ length: count }, (_, index) => ({ id: String(index + 1), sweptVolume })),
		numbering,
	);
	const pressure = Number((room + sizes.boost).toPrecision(9));
	return {
		format: "evenport-study",
		version: 1,
		name,
		notes: notesOn(choices, typical),
		engine: {
			cylinders: [...cylinders],
			speed: sizes.speed,
			volumetricEfficiency: sizes.volumetricEfficiency,
			reference: { at: "ports" },
			...(firing.length > 0 ? { firingOrder: [...firing] } : {}),
		},
		settings: { units },
		network: networkOf(choices, cylinders, sizes, pressure),
	};
}

/** What the study is called until somebody gives it a name. */
export function usualName(choices: Choices): string {
	const { label, cylinders } = LAYOUTS[choices.layout];
	const engine = cylinders === null ? `single bank of ${choices.inBank}` : label;
	return `${engine.charAt(0).toUpperCase()}${engine.slice(1)}, fed ${FEED_WORDS[choices.feed]}`;
}

/** One sentence on what the answers will build. */
export function sentenceOn(
	choices: Choices,
	sizes: Sizes,
	study: Draft,
	units: UnitChoice,
): string {
	const { cylinders, numbering, banks } = engineOf(choices);
	const litres = UNITS.volume.find((each) => each.name === "L") ?? units.volume;
	const volume = `${cellText(Number(sizes.displacement.toPrecision(3)), litres)} ${litres.label}`;
	const { label, cylinders: fixed } = LAYOUTS[choices.layout];
	const engine = fixed === null ? `single bank of ${cylinders}` : label;
	const numbered =
		numberings(cylinders, banks).length > 0 && cylinders > 1
			? `, numbered ${NUMBERING_WORDS[numbering]}`
			: "";
	const source = study.network.nodes.find((node) => node.kind === "source");
	const pressure = source?.kind === "source" ? (source.pressure ?? 0) : 0;
	const { nodes, branches } = study.network;
	return (
		`${/^[aeiou]/.test(engine) ? "An" : "A"} ${engine} of ${volume}${numbered}, ` +
		`fed ${FEED_WORDS[choices.feed]}, with ${POCKET_WORDS[choices.pockets]}; ` +
		`${cellText(Number(pressure.toPrecision(4)), units.pressure)} ${units.pressure.label} at the source: ` +
		`a network of ${nodes.length} nodes and ${branches.length} branches.`
	);
}

function notesOn(choices: Choices, typical: readonly SizeName[]): string {
	const begun = `Begun from questions: fed ${FEED_WORDS[choices.feed]}, ${POCKET_WORDS[choices.pockets]}.`;
	if (typical.length === 0) return begun;
	const labels = typical.map((each) => SIZE_LABELS[each]).join(", ");
	return `${begun} Nobody has measured these; they are typical sizes, common practice without a source: ${labels}; so are roughness, edge radii, bend radii and discharge coefficients.`;
}
