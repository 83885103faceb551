/**
 * Versions in the same possible truths: asked for in parts, so that it can be stopped, told anew as the
 * worlds grow in number, and at last told for errors that are all common and all of the place.
 */
import { causes, deviations, tell } from "../solver/many";
import type { Draw, PairCauses, Split, Study, Told } from "../solver/types";
import { gathered, partSize } from "./worlds";

/** What many worlds tell. */
export interface Sampled {
	/** The versions that it is told of, as they were asked for. */
	readonly studies: readonly Study[];
	readonly draw: Draw;
	readonly told: Told;
	readonly causes: readonly PairCauses[];
	/** The same if errors were split in another way; absent until then. */
	readonly common: Told | null;
	readonly place: Told | null;
}

/** Worlds of the whole answer, of the first one, and of either other split. */
export const WORLDS = 2000;
const FIRST = 200;
const OTHERS = 500;
/** The series of worlds: the same study has the same answer each time. */
const SEED = 1;
/** Worlds in which each law is off by itself, to name what causes most of the doubt. */
const CAUSES = 400;

let shown = $state.raw<Sampled | null>(null);
let drawn = $state.raw(0);
let running = $state.raw(false);
let failure = $state.raw("");
let question = { stopped: true };

export const sampling = {
	/** The last answer. */
	get shown() {
		return shown;
	},
	/** Worlds drawn so far of what is under way, other splits included. */
	get drawn() {
		return drawn;
	},
	/** Worlds of all that is under way. */
	get of() {
		return WORLDS + 2 * OTHERS;
	},
	get running() {
		return running;
	},
	/** Why there is no newer answer; empty when there is. */
	get failure() {
		return failure;
	},
	/** Draws worlds for some versions, `confidence` being asked for. */
	async start(studies: Study[], draw: Draw, confidence: number) {
		sampling.stop();
		const own = { stopped: false };
		question = own;
		running = true;
		drawn = 0;
		failure = "";
		try {
			await sample(own, studies, draw, confidence);
		} catch (reason) {
			if (!own.stopped) failure = reason instanceof Error ? reason.message : String(reason);
		}
		if (question === own) running = false;
	},
	/** Stops; what has been told so far stays. */
	stop() {
		question.stopped = true;
		running = false;
	},
};

async function sample(own: { stopped: boolean }, studies: Study[], draw: Draw, confidence: number) {
	const cylinders = studies[0]?.engine.cylinders.length ?? 0;
	const worlds = (split: Split, first: number, count: number) => ({
		draw,
		seed: SEED,
		split,
		first,
		count,
	});
	/** Draws `of` worlds, telling `each` what all so far hold; false when it has been stopped. */
	async function all(
		split: Split,
		of: number,
		each: (found: Float64Array, done: number) => Promise<void>,
	) {
		const found = gathered(of * studies.length * cylinders);
		let count = partSize(studies.length);
		for (let done = 0; done < of; ) {
			const begun = performance.now();
			const part = Math.min(count, of - done, done < FIRST ? FIRST - done : of);
			const reply = await deviations(studies, worlds(split, done, part));
			if (own.stopped) return false;
			if (reply.kind === "wrong") throw new Error("a version is wrong");
			done += part;
			drawn += part;
			await each(found.add(reply.deviations), done);
			if (own.stopped) return false;
			count = partSize(studies.length, part, performance.now() - begun);
		}
		return true;
	}
	const telling = (found: Float64Array) => tell(found, studies.length, cylinders, confidence);
	let named: PairCauses[] = [];
	const asStated = await all("asStated", WORLDS, async (found, done) => {
		if (done < FIRST) return;
		const told = await telling(found);
		if (own.stopped) return;
		if (named.length === 0) {
			const reply = await causes(studies, worlds("asStated", 0, CAUSES));
			if (own.stopped) return;
			if (reply.kind === "solved") named = reply.pairs;
		}
		shown = { studies, draw, told, causes: named, common: null, place: null };
	});
	if (!asStated) return;
	for (const split of ["allCommon", "allPlace"] as const) {
		const done = await all(split, OTHERS, async (found, count) => {
			if (count < OTHERS) return;
			const told = await telling(found);
			if (own.stopped || !shown) return;
			shown = split === "allCommon" ? { ...shown, common: told } : { ...shown, place: told };
		});
		if (!done) return;
	}
}
