/** The page's own words for the closed lists of the study and the answer. */
import type { SourceWay } from "../network/source";
import type { Draw, GapQuantity, Leg, Reference, State, WarningKind } from "../solver/types";
import type { Option } from "./options";

export const DRAW_WORDS: Readonly<Record<Draw, string>> = {
	running: "Running",
	cycleMean: "Cycle mean",
	benchOneAtATime: "Bench, one port at a time",
	benchAllOpen: "Bench, all ports open",
};

/** A state is told by a word and a shape, never by colour alone. */
export const STATE_WORDS: Readonly<Record<State, { word: string; shape: string }>> = {
	starved: { word: "starved", shape: "▼" },
	overfed: { word: "overfed", shape: "▲" },
	even: { word: "even", shape: "=" },
	tooCloseToTell: { word: "too close to tell", shape: "≈" },
};

/** How to read the bars of the cylinders' deviations. */
export const SHARES_KEY =
	"Bar: deviation from the mean. Whisker: its doubt. Dashed: half the limit on either side; past it a cylinder is starved ▼ or overfed ▲.";

export const GAP_WORDS: Readonly<Record<GapQuantity, string>> = {
	share: "share of the air",
	portPressure: "stagnation pressure at the port",
};

export const LEG_WORDS: Readonly<Record<Leg, string>> = { run: "run", side: "side leg" };

export const REFERENCE_WORDS: Readonly<Record<Reference["at"], string>> = {
	ambient: "the ambient air",
	node: "a named node",
	ports: "the ports",
};

export const SOURCE_WORDS: Readonly<Record<SourceWay, string>> = {
	typed: "typed",
	boost: "found for a boost",
	ambient: "ambient air",
};

export const SOURCE_OPTIONS: readonly Option[] = Object.entries(SOURCE_WORDS).map(
	([name, label]) => ({ name, label }),
);

export const WARNING_WORDS: Readonly<Record<WarningKind, string>> = {
	outsideRange: "Outside its range",
	sectionJump: "Sections differ",
	perfectEntry: "Perfect entry",
	closeLosses: "Losses close together",
	highMach: "High Mach number",
	jetInSight: "In sight of a jet",
	deadEnd: "Dead end",
	pastLimit: "Past its limit",
	secondSolution: "Second solution",
	assumption: "Assumed",
};
