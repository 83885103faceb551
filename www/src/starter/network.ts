/**
 * The network that the answers describe.
 *
 *     fed at an end          fed in the middle         fed from above
 *
 *     source                     source                source - upper - core - lid
 *       |                          |                                          |
 *     log - log - log       log - log - log                       window per pocket, or none
 *      |     |     |         |     |     |                                    |
 *     ports, each behind its runner, and behind a window and a pocket where there are pockets
 *
 * A place of the log that feeds pockets or runners is a header: air that stays in the log keeps part of
 * its velocity head. A log with one such place only is a plenum.
 */
import { type BankRow, bankRows } from "../engine/numbering";
import type { Branch, Cylinder, Leg, Network, Node } from "../solver/types";
import type { Choices, Pockets, Sizes } from "./answers";
import { core, intoLog, neck, run, runner, window } from "./rows";

/** A place along the log: its distance from the front in spacings, and the ports each pocket there has. */
interface Place {
	readonly at: number;
	readonly pockets: readonly (readonly string[])[];
}

/** Makes the network; `pressure` is the source's, absolute [Pa]. */
export function networkOf(
	{ feed, pockets }: Choices,
	cylinders: readonly Cylinder[],
	sizes: Sizes,
	pressure: number,
): Network {
	const banks = bankRows(cylinders);
	const nodes: Node[] = [
		{ id: "source", kind: "source", pressure, temperature: sizes.temperature },
	];
	const branches: Branch[] = [];
	const network = { nodes, branches };
	const places = placesOf(banks, pockets);
	if (feed === "above") {
		nodes.push({ id: "upper", kind: "plenum" }, { id: "lid", kind: "plenum" });
		branches.push(neck("neck", "upper", sizes), core("upper", "lid", pressure, sizes));
		for (const place of places) hang(network, place, pockets, "lid", undefined, sizes);
		return network;
	}
	const length = Math.max(...banks.map((bank) => bank.cylinders.length));
	if (places.length === 1) {
		nodes.push({ id: "plenum", kind: "plenum" });
		const ids = feed === "bothEnds" ? ["neck front", "neck rear"] : ["neck"];
		branches.push(...ids.map((id) => neck(id, "plenum", sizes)));
		for (const place of places) hang(network, place, pockets, "plenum", undefined, sizes);
		return network;
	}
	const middle = length / 2;
	const along =
		feed === "middle" && !places.some(({ at }) => at === middle)
			? [...places, { at: middle, pockets: [] }].sort((one, other) => one.at - other.at)
			: places;
	lay(network, along, sizes);
	const ends = { front: along[0] as Place, rear: along.at(-1) as Place };
	const straight = (id: string, to: Place, spacings: number) =>
		neck(id, nameOf(to), sizes, {
			toLeg: "run",
			losses: intoLog(sizes, spacings * sizes.spacing),
		});
	if (feed === "oneEnd") branches.unshift(straight("neck", ends.front, ends.front.at));
	if (feed === "bothEnds") {
		branches.unshift(
			straight("neck front", ends.front, ends.front.at),
			straight("neck rear", ends.rear, length - ends.rear.at),
		);
	}
	if (feed === "middle") {
		const entered = along.find(({ at }) => at === middle) as Place;
		branches.unshift(neck("neck", nameOf(entered), sizes, { toLeg: "side" }));
	}
	for (const place of along) hang(network, place, pockets, nameOf(place), "side", sizes);
	return network;
}

/** The headers of the log and what lies between them. */
function lay({ nodes, branches }: Network, along: readonly Place[], sizes: Sizes) {
	for (const [index, place] of along.entries()) {
		nodes.push({ id: nameOf(place), kind: "header", area: sizes.logArea });
		const before = along[index - 1];
		if (!before) continue;
		const distance = (place.at - before.at) * sizes.spacing;
		branches.push(run(`run ${index}`, nameOf(before), nameOf(place), sizes.logArea, distance));
	}
}

/** Hangs pockets, runners and ports on a node. */
function hang(
	{ nodes, branches }: Network,
	place: Place,
	pockets: Pockets,
	on: string,
	leg: Leg | undefined,
	sizes: Sizes,
) {
	for (const ports of place.pockets) {
		const name = ports.join("-");
		if (pockets !== "open") {
			nodes.push({ id: `pocket ${name}`, kind: "plenum" });
			branches.push(window(name, on, leg, sizes.windowArea * ports.length));
		}
		for (const cylinder of ports) {
			nodes.push({ id: `port ${cylinder}`, kind: "port", cylinder });
			branches.push(
				pockets === "open"
					? runner(cylinder, on, leg, sizes)
					: runner(cylinder, `pocket ${name}`, undefined, sizes),
			);
		}
	}
}

/** A place is called by the cylinders that it feeds. */
function nameOf({ pockets }: Place): string {
	const fed = pockets.flat().sort((one, other) => Number(one) - Number(other));
	return fed.length === 0 ? "log middle" : `log ${fed.join("-")}`;
}

function placesOf(banks: readonly BankRow[], pockets: Pockets): Place[] {
	const places = new Map<number, string[][]>();
	for (const { cylinders } of banks) {
		let before = 0;
		for (const ports of grouped(cylinders, pockets)) {
			const at = before + ports.length / 2;
			before += ports.length;
			places.set(at, [...(places.get(at) ?? []), [...ports]]);
		}
	}
	return [...places]
		.map(([at, there]) => ({ at, pockets: there }))
		.sort((one, other) => one.at - other.at);
}

/** A bank in pairs of neighbours; the odd one out stands as near to the middle as it can. */
function grouped(cylinders: readonly string[], pockets: Pockets): (readonly string[])[] {
	if (pockets !== "perPair") return cylinders.map((each) => [each]);
	const alone = cylinders.length % 2 === 0 ? -1 : 2 * Math.ceil((cylinders.length - 1) / 4);
	const groups: string[][] = [];
	for (let index = 0; index < cylinders.length; ) {
		const size = index === alone ? 1 : 2;
		groups.push(cylinders.slice(index, index + size));
		index += size;
	}
	return groups;
}
