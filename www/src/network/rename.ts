/** Renaming an element, so that whatever refers to it follows, in every version. */
import type { Branch, Network, Node } from "../solver/types";
import { type Path, put, type Sheet, valueAt } from "./edit";
import { everywhere } from "./versions";

/** Gives a node another id; branches, boosts read there and the engine's reference follow. */
export function renameNode(sheet: Sheet, index: number, id: string): Sheet {
	const { study } = sheet;
	const old = study.network.nodes[index]?.id;
	if (old === id || !follows(old, study.network.nodes))
		return putId(sheet, ["network", "nodes", index], id);
	const name = (each: string) => (each === old ? id : each);
	const read = <T extends { boostNode?: string }>(from: T): T =>
		from.boostNode === old ? { ...from, boostNode: id } : from;
	const node = (each: Node): Node => {
		const source = each.kind === "source" ? read(each) : each;
		return source.id === old ? { ...source, id } : source;
	};
	const ends = (branch: Branch): Branch => {
		const blower = branch.blower && read(branch.blower);
		const blown = blower === branch.blower ? branch : { ...branch, blower };
		return branch.from === old || branch.to === old
			? { ...blown, from: name(branch.from), to: name(branch.to) }
			: blown;
	};
	const renamed = everywhere(sheet, (network: Network) =>
		follows(old, network.nodes)
			? { nodes: network.nodes.map(node), branches: network.branches.map(ends) }
			: network,
	);
	const { reference } = study.engine;
	const refers = reference.at === "node" && reference.node === old;
	const now = refers ? put(renamed, ["engine", "reference", "node"], id) : renamed;
	return putId(now, ["network", "nodes", index], id);
}

/** Gives a branch another id; the coolant's way through it follows. */
export function renameBranch(sheet: Sheet, index: number, id: string): Sheet {
	const { study } = sheet;
	const old = study.network.branches[index]?.id;
	if (old === id || !follows(old, study.network.branches))
		return putId(sheet, ["network", "branches", index], id);
	const renamed = everywhere(sheet, (network) =>
		follows(old, network.branches)
			? {
					...network,
					branches: network.branches.map((each) => (each.id === old ? { ...each, id } : each)),
				}
			: network,
	);
	const now = (study.coolers ?? []).reduce(
		(left, { series }, at) =>
			series?.includes(old)
				? put(
						left,
						["coolers", at, "series"],
						series.map((each) => (each === old ? id : each)),
					)
				: left,
		renamed,
	);
	return putId(now, ["network", "branches", index], id);
}

/** Gives a cylinder another id; its ports and the firing order follow. */
export function renameCylinder(sheet: Sheet, index: number, id: string): Sheet {
	const { cylinders, firingOrder } = sheet.study.engine;
	const old = cylinders[index]?.id;
	const own = putId(sheet, ["engine", "cylinders", index], id);
	if (!follows(old, cylinders)) return own;
	const port = (node: Node): Node =>
		node.kind === "port" && node.cylinder === old ? { ...node, cylinder: id } : node;
	const ported = everywhere(own, (network) => ({ ...network, nodes: network.nodes.map(port) }));
	if (!firingOrder) return ported;
	const order = firingOrder.map((each) => (each === old ? id : each));
	return put(ported, ["engine", "firingOrder"], order);
}

/** The name itself may be unreadable text in its cell, which the new one replaces. */
function putId(sheet: Sheet, element: Path, id: string): Sheet {
	const path = [...element, "id"];
	const isOpen = path.join(".") in sheet.drafts || valueAt(sheet.study, path) !== id;
	return isOpen ? put(sheet, path, id) : sheet;
}

/** Where two elements share an id nobody can tell whose references they are, so they stay. */
function follows(old: string | undefined, elements: readonly { id: string }[]): old is string {
	return old !== undefined && old !== "" && elements.filter((each) => each.id === old).length === 1;
}
