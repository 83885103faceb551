/** Renaming an element, so that whatever refers to it follows. */
import type { Branch, Node, Study } from "../solver/types";
import { type Path, put, type Sheet } from "./edit";

/** Gives a node another id; branches, boosts read there, the engine's reference and the variants follow. */
export function renameNode(sheet: Sheet, index: number, id: string): Sheet {
	const { study } = sheet;
	const old = study.network.nodes[index]?.id;
	const own = putId(sheet, ["network", "nodes", index], id);
	if (!follows(old, study.network.nodes)) return own;
	const name = (each: string) => (each === old ? id : each);
	const read = <T extends { boostNode?: string }>(from: T): T =>
		from.boostNode === old ? { ...from, boostNode: id } : from;
	const source = (node: Node): Node => (node.kind === "source" ? read(node) : node);
	const ends = (branch: Branch): Branch => {
		const blower = branch.blower && read(branch.blower);
		const blown = blower === branch.blower ? branch : { ...branch, blower };
		return branch.from === old || branch.to === old
			? { ...blown, from: name(branch.from), to: name(branch.to) }
			: blown;
	};
	const { reference } = study.engine;
	const renamed: Study = {
		...own.study,
		network: {
			nodes: own.study.network.nodes.map(source),
			branches: study.network.branches.map(ends),
		},
		engine:
			reference.at === "node"
				? { ...study.engine, reference: { at: "node", node: name(reference.node) } }
				: study.engine,
	};
	if (study.variants) {
		renamed.variants = study.variants.map((variant) => ({
			...variant,
			nodes: variant.nodes.map((node) => ({ ...source(node), id: name(node.id) })),
			branches: variant.branches.map(ends),
			removed: variant.removed.map(name),
		}));
	}
	return { study: renamed, drafts: own.drafts };
}

/** Gives a branch another id; the coolant's way through it and the variants follow. */
export function renameBranch(sheet: Sheet, index: number, id: string): Sheet {
	const { study } = sheet;
	const old = study.network.branches[index]?.id;
	const own = putId(sheet, ["network", "branches", index], id);
	if (!follows(old, study.network.branches)) return own;
	const name = (each: string) => (each === old ? id : each);
	const renamed: Study = { ...own.study };
	if (study.coolers) {
		renamed.coolers = study.coolers.map((cooler) =>
			cooler.series ? { ...cooler, series: cooler.series.map(name) } : cooler,
		);
	}
	if (study.variants) {
		renamed.variants = study.variants.map((variant) => ({
			...variant,
			branches: variant.branches.map((branch) => ({ ...branch, id: name(branch.id) })),
			removed: variant.removed.map(name),
		}));
	}
	return { study: renamed, drafts: own.drafts };
}

/** Gives a cylinder another id; its ports and the firing order follow. */
export function renameCylinder(sheet: Sheet, index: number, id: string): Sheet {
	const { study } = sheet;
	const old = study.engine.cylinders[index]?.id;
	const own = putId(sheet, ["engine", "cylinders", index], id);
	if (!follows(old, study.engine.cylinders)) return own;
	const port = (node: Node): Node =>
		node.kind === "port" && node.cylinder === old ? { ...node, cylinder: id } : node;
	const engine = { ...own.study.engine };
	if (engine.firingOrder) {
		engine.firingOrder = engine.firingOrder.map((each) => (each === old ? id : each));
	}
	const network = { ...study.network, nodes: study.network.nodes.map(port) };
	return { study: { ...own.study, engine, network }, drafts: own.drafts };
}

function putId(sheet: Sheet, element: Path, id: string): Sheet {
	return put(sheet, [...element, "id"], id);
}

/** Where two elements share an id nobody can tell whose references they are, so they stay. */
function follows(old: string | undefined, elements: readonly { id: string }[]): boolean {
	return old !== undefined && old !== "" && elements.filter((each) => each.id === old).length === 1;
}
