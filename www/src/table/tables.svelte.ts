/** The tables of the page. */
import { fallOf } from "../sketch/flowing";
import type { Loss, Study } from "../solver/types";
import { catalogue } from "../view/catalogue.svelte";
import { choice } from "../view/choice.svelte";
import { type RowView, Table } from "./table.svelte";

export const tables = {
	branches: new Table("branches", branchViews),
	nodes: new Table("nodes", nodeViews),
	cylinders: new Table("cylinders"),
};

function branchViews({ network }: Study): RowView[] {
	return network.branches.map(({ id, from, to, losses, blower }) => {
		const answer = choice.branches.get(id);
		return {
			text: [id, from, to, ...losses.map(lossText), blower ? BLOWER : ""].join(" "),
			keys: {
				name: id,
				from,
				to,
				flow: answer?.flow,
				mach: answer?.mach,
				falls: answer && fallOf(answer),
			},
		};
	});
}

const BLOWER = "blower";

function lossText(loss: Loss): string {
	const label = catalogue.losses.get(loss.kind)?.label ?? loss.kind;
	return loss.kind === "typedK" ? `${label} ${loss.origin}` : label;
}

function nodeViews({ network }: Study): RowView[] {
	return network.nodes.map((node) => {
		const kind = catalogue.nodes.get(node.kind)?.label ?? node.kind;
		const answer = choice.nodes.get(node.id);
		return {
			text: [node.id, kind, node.kind === "port" ? node.cylinder : ""].join(" "),
			keys: {
				name: node.id,
				kind,
				pressure: answer?.pressure,
				temperature: answer?.temperature,
			},
		};
	});
}
