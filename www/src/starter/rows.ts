/** Rows of a network as the starter makes them. What nobody is asked for is typical: common practice. */
import type { Branch, Leg, Loss } from "../solver/types";
import type { Sizes } from "./answers";

/** A casting that has been cleaned [m]. */
const ROUGHNESS = 1e-4;
/** Edge radius over the diameter of the section entered [-]. */
const EDGE = 0.15;
/** Radius of a bend's axis over the diameter [-]. */
const TURN = 1.5;
/** Of a window with edges as cast [-]. */
const DISCHARGE = 0.7;
/** Sections closer than this are the same to the solver [-]. */
const SAME_SECTION = 1e-3;

/** A way from the source to a chamber, or to the log. */
export function neck(id: string, to: string, sizes: Sizes, rest: Partial<Branch> = {}): Branch {
	const { neckArea, neckLength } = sizes;
	const losses = [entry(neckArea), ...duct(neckArea, neckLength), ...(rest.losses ?? [])];
	return { id, from: "source", to, ...rest, losses };
}

/** What a neck that goes on straight into the log has beside its own losses. */
export function intoLog({ neckArea, logArea }: Sizes, length: number): Loss[] {
	const same = Math.abs(neckArea / logArea - 1) <= SAME_SECTION;
	const change: Loss[] = same
		? []
		: [{ kind: "suddenChange", areaFrom: neckArea, areaTo: logArea }];
	return [...change, ...duct(logArea, length)];
}

/** A part of the log between two take-offs. */
export function run(id: string, from: string, to: string, area: number, length: number): Branch {
	return { id, from, to, fromLeg: "run", toLeg: "run", losses: duct(area, length) };
}

/** The way from a chamber, or from the log, to a port. */
export function runner(cylinder: string, from: string, leg: Leg | undefined, sizes: Sizes): Branch {
	const { runnerArea: area, runnerLength, bendAngle: angle } = sizes;
	const losses = [entry(area), ...duct(area, runnerLength)];
	if (angle > 0) {
		const radius = rounded(TURN * diameter(area));
		losses.push({ kind: "bend", area, angle, radius, roughness: ROUGHNESS });
	}
	return { id: `runner ${cylinder}`, from, ...legged(leg), to: `port ${cylinder}`, losses };
}

/** The window of a pocket, as large as its ports need together. */
export function window(of: string, from: string, leg: Leg | undefined, area: number): Branch {
	const losses: Loss[] = [{ kind: "opening", area, dischargeCoefficient: DISCHARGE }];
	return { id: `window ${of}`, from, ...legged(leg), to: `pocket ${of}`, losses };
}

/** The core between the upper chamber and the lid; its lower point is at half the flow. */
export function core(from: string, to: string, pressure: number, sizes: Sizes): Branch {
	const { coreArea: area, coreFlow, coreDrop, temperature } = sizes;
	const measured = { pressure, temperature, flow2: coreFlow, drop2: coreDrop };
	const half = { flow1: rounded(coreFlow / 2), drop1: rounded(0.31 * coreDrop) };
	return {
		id: "core",
		from,
		to,
		losses: [{ kind: "core", area, fraction: 1, ...measured, ...half }],
	};
}

/** Only a header tells run and side legs apart. */
function legged(leg: Leg | undefined): Partial<Branch> {
	return leg ? { fromLeg: leg } : {};
}

function entry(area: number): Loss {
	return { kind: "entryRounded", area, radius: rounded(EDGE * diameter(area)) };
}

function duct(area: number, length: number): Loss[] {
	return [{ kind: "duct", area, length: rounded(length), roughness: ROUGHNESS }];
}

function diameter(area: number): number {
	return Math.sqrt((4 * area) / Math.PI);
}

function rounded(value: number): number {
	return Number(value.toPrecision(4));
}
