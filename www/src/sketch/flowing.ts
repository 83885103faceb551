/** How the answer shows on a way: width by flow, darkness by loss, an arrowhead by direction. */
import type { BranchAnswer } from "../solver/types";
import { round } from "./drawing";

/** The largest figures of a draw, to which the ways are drawn. */
export interface Scale {
	/** Largest flow of a branch [kg/s]. */
	readonly flow: number;
	/** Largest pressure that a branch loses [Pa]. */
	readonly fall: number;
}

/** What one way looks like. */
export interface Look {
	/** Its width in pixels. */
	readonly width: number;
	/** Part of the ink, from 0 for nothing lost to 1 for the branch that loses most. */
	readonly ink: number;
	/** Along its branch, against it, or no flow that shows. */
	readonly direction: 1 | -1 | 0;
	readonly choked: boolean;
}

const THINNEST = 1.5;
/** Steps of darkness; finer ones nobody can tell apart. */
const STEPS = 20;
/** Less than this part of the largest flow shows no direction. */
const STILL = 1e-4;

/** What a branch loses, its ends included [Pa]. */
export function fallOf({ losses }: BranchAnswer): number {
	return losses.reduce((sum, { fall }) => sum + fall, 0);
}

/** The largest figures among these branches. */
export function scaleOf(branches: Iterable<BranchAnswer>): Scale {
	let flow = 0;
	let fall = 0;
	for (const branch of branches) {
		flow = Math.max(flow, Math.abs(branch.flow));
		fall = Math.max(fall, Math.abs(fallOf(branch)));
	}
	return { flow, fall };
}

/**
 * The look of a branch in a drawing that has this much room for it. Where nothing shows another look it is
 * the very one given as `before`, so that most ways stay as they are while one types.
 */
export function lookOf(
	branch: BranchAnswer | undefined,
	scale: Scale,
	room: number,
	before?: Look,
): Look {
	const now = lookNow(branch, scale, room);
	const same =
		before?.width === now.width &&
		before.ink === now.ink &&
		before.direction === now.direction &&
		before.choked === now.choked;
	return same ? before : now;
}

function lookNow(branch: BranchAnswer | undefined, scale: Scale, room: number): Look {
	if (!branch || scale.flow === 0) return { width: THINNEST, ink: 0, direction: 0, choked: false };
	const flow = Math.abs(branch.flow) / scale.flow;
	const fall = scale.fall === 0 ? 0 : Math.abs(fallOf(branch)) / scale.fall;
	return {
		width: round(Math.max(room * flow, THINNEST)),
		// The eye tells light tones apart better than dark ones.
		ink: Math.round(Math.sqrt(fall) * STEPS) / STEPS,
		direction: flow < STILL ? 0 : branch.flow < 0 ? -1 : 1,
		choked: branch.choked,
	};
}
