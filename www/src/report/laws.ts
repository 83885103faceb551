/** Which laws a study's answer rests on: what a report says of them, each with its source. */
import type { Catalogue, ChoiceInfo, KindInfo, Study } from "../solver/types";

/** A law that a study makes use of. */
export interface Used {
	readonly law: Pick<KindInfo, "kind" | "label" | "equation" | "source" | "range" | "scatter">;
	/** Whose formulas are followed, where there are several. */
	readonly authors: readonly ChoiceInfo[];
	/** How many losses, nodes or machines follow it. */
	readonly times: number;
}

/** The laws that a study makes use of, in the catalogue's order. */
export function lawsUsed({ network, settings, coolers }: Study, catalogue: Catalogue): Used[] {
	const found = new Map<string, { times: number; names: Set<string> }>();
	const count = (kind: string, by = "") => {
		const there = found.get(kind) ?? { times: 0, names: new Set() };
		found.set(kind, { times: there.times + 1, names: there.names.add(by) });
	};
	for (const { losses, blower } of network.branches) {
		for (const loss of losses) count(loss.kind, "law" in loss ? loss.law : undefined);
		if (blower) count(catalogue.blower.kind);
	}
	for (const node of network.nodes) count(node.kind, "law" in node ? node.law : undefined);
	for (const _ of coolers ?? []) count(catalogue.cooler.kind);
	for (const _ of settings.bench.readings ?? []) count(catalogue.reading.kind);
	const { losses, nodes, blower, cooler, reading } = catalogue;
	return [...losses, ...nodes, blower, cooler, reading].flatMap((law) => {
		const use = found.get(law.kind);
		if (!use || law.equation === "") return [];
		const laws = law.kind === "tee" || law.kind === "wye" ? catalogue.junctionLaws : law.laws;
		// Where nothing is said, the first author holds.
		const names = [...use.names].map((name) => name || laws[0]?.name);
		const authors = laws.filter(({ name }) => names.includes(name));
		return [{ law, authors, times: use.times }];
	});
}
