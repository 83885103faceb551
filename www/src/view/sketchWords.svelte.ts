/** What is said of the sketch: its name, what it shows, and how to read it. */
import { baseBeside } from "../compare/base.svelte";
import { editor } from "../network/editor.svelte";
import { scaleOf } from "../sketch/flowing";
import { figure } from "../units";
import { choice } from "./choice.svelte";
import { sketch } from "./sketch.svelte";

/** The words of the sketch of the draw looked at. */
export function sketchWords() {
	const study = editor.sheet?.study;
	const version = editor.versionOf(study ?? null);
	const title = `${sketch.kind === "engine" ? "Engine from above" : "Network in layers"}${version ? `, ${version}` : ""}`;
	const label = study
		? `${title}: ${study.engine.cylinders.length} cylinders, ${study.network.nodes.length} nodes, ${study.network.branches.length} branches. The tables of shares, branches and nodes have the figures.`
		: title;
	const signs = `Hollow arrowhead: against the branch's own direction. Bars: deviation, up for more air.${baseBeside(choice.draw?.draw) ? " Wedge beside a bar: the base." : ""}`;
	return { title, label, key: key(), signs };
}

function key(): string {
	if (!choice.solved) return "There is no flow to draw: this draw is not solved.";
	const { massFlow, pressureDifference } = editor.units;
	const { flow, fall } = scaleOf(choice.branches.values());
	return `Width: flow, widest ${figure(flow, massFlow)} ${massFlow.label}. Darkness: pressure lost, darkest ${figure(fall, pressureDifference)} ${pressureDifference.label}.`;
}
