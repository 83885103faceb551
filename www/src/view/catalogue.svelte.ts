/** What a study can hold, as the solver says it; fetched once when the page opens. */
import { laws, version } from "../solver/client";
import type { Catalogue, KindInfo } from "../solver/types";
import type { Option } from "./options";

let program = $state.raw("");
let entries = $state.raw<Catalogue | null>(null);
const losses = $derived(byKind(entries?.losses));
const nodes = $derived(byKind(entries?.nodes));
const lossOptions = $derived(named(entries?.losses));
const nodeOptions = $derived(named(entries?.nodes));

/** The catalogue, and its kinds by their name in the file. */
export const catalogue = {
	get entries() {
		return entries;
	},
	get losses() {
		return losses;
	},
	get nodes() {
		return nodes;
	},
	/** The kinds of losses, to choose from. */
	get lossOptions() {
		return lossOptions;
	},
	/** The kinds of nodes, to choose from. */
	get nodeOptions() {
		return nodeOptions;
	},
	/** The version of the program. */
	get version() {
		return program;
	},
	async load() {
		[entries, program] = await Promise.all([laws(), version()]);
	},
};

function named(kinds: readonly KindInfo[] = []): readonly Option[] {
	return kinds.map(({ kind, label, help }) => ({ name: kind, label, help }));
}

function byKind(kinds: readonly KindInfo[] | undefined): ReadonlyMap<string, KindInfo> {
	return new Map(kinds?.map((info) => [info.kind, info]));
}
