/** Edits of the variants themselves: made, named, moved, taken away, made the base. */
import { unusedName } from "./blank";
import type { Sheet } from "./edit";
import { look, type NamedVersion, ofNetwork, type Versions, variantOn } from "./versions";

const FIRST = "Variant 1";
const FORMER = "Former base";

/** Makes a variant of the version on the sheet, behind all others, and lays it there. */
export function addVariant(sheet: Sheet, wanted = FIRST, notes = ""): Sheet {
	const all = versionsIn(sheet);
	const name = freeName(all, wanted);
	return withCopy(sheet, all, all.variants.length, { name, notes });
}

/** Makes a copy of the variant on the sheet behind it, and lays that there. */
export function duplicateVariant(sheet: Sheet): Sheet {
	const all = versionsIn(sheet);
	const on = variantOn(sheet);
	if (!on || all.looking === null) return sheet;
	const { name, notes } = on;
	return withCopy(sheet, all, all.looking + 1, { name: freeName(all, name), notes });
}

/** Gives a variant a name or a note. */
export function tellVariant(
	sheet: Sheet,
	place: number,
	told: Partial<Pick<NamedVersion, "name" | "notes">>,
): Sheet {
	return withVariants(sheet, (variants) =>
		variants.map((each, at) => (at === place ? { ...each, ...told } : each)),
	);
}

/** What is wrong with a variant's name; empty when it is right. */
export function nameFault({ variants }: Versions, place: number): string {
	const name = variants[place]?.name.trim() ?? "";
	if (name === "") return "A variant needs a name; type one.";
	const isTaken = variants.some((each, at) => at !== place && each.name.trim() === name);
	return isTaken ? "Another variant has this name; give one of them another." : "";
}

/** Moves a variant to another place among the variants. */
export function moveVariant(sheet: Sheet, from: number, to: number): Sheet {
	const { versions } = sheet;
	const moved = versions?.variants[from];
	if (!versions || !moved || !versions.variants[to]) return sheet;
	const variants = versions.variants.toSpliced(from, 1).toSpliced(to, 0, moved);
	const on = variantOn(sheet);
	const looking = on ? variants.indexOf(on) : null;
	return { ...sheet, versions: { ...versions, variants, looking } };
}

/** Takes a variant away; if it was on the sheet, the base is there next. */
export function removeVariant(sheet: Sheet, place: number): Sheet {
	const shown = sheet.versions?.looking === place ? look(sheet, null) : sheet;
	const { versions, ...alone } = shown;
	if (!versions?.variants[place]) return sheet;
	const variants = versions.variants.toSpliced(place, 1);
	if (variants.length === 0) return alone;
	const { looking } = versions;
	const now = looking !== null && looking > place ? looking - 1 : looking;
	return { ...alone, versions: { ...versions, variants, looking: now } };
}

/** Makes the variant on the sheet the base; the former base takes its place among the variants. */
export function makeBase(sheet: Sheet): Sheet {
	const { study, versions } = sheet;
	const on = variantOn(sheet);
	if (!versions || !on) return sheet;
	const former: NamedVersion = {
		...versions.base,
		name: freeName(versions, FORMER),
		notes: [`The base until “${on.name}” took its place.`, on.notes].filter(Boolean).join(" "),
	};
	const base = { network: study.network, drafts: {} };
	const variants = versions.variants.map((each) => (each === on ? former : each));
	return { ...sheet, versions: { ...versions, base, variants, looking: null } };
}

function versionsIn({ study, versions }: Sheet): Versions {
	const base = { network: study.network, drafts: {} };
	return versions ?? { looking: null, base, variants: [], made: { looking: null } };
}

function withCopy(
	sheet: Sheet,
	all: Versions,
	place: number,
	told: Pick<NamedVersion, "name" | "notes">,
): Sheet {
	const copy = { ...told, network: sheet.study.network, drafts: ofNetwork(sheet.drafts) };
	const variants = all.variants.toSpliced(place, 0, copy);
	const looking = all.looking !== null && all.looking >= place ? all.looking + 1 : all.looking;
	return look({ ...sheet, versions: { ...all, variants, looking } }, place);
}

function withVariants(
	sheet: Sheet,
	change: (variants: readonly NamedVersion[]) => readonly NamedVersion[],
): Sheet {
	const { versions } = sheet;
	return versions
		? { ...sheet, versions: { ...versions, variants: change(versions.variants) } }
		: sheet;
}

function freeName({ variants }: Versions, name: string): string {
	return unusedName(new Set(variants.map((each) => each.name.trim())), name);
}
