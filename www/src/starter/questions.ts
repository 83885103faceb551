/** How the starter's numbers are asked for: its own words, with units and bounds from the catalogue. */
import type { Catalogue, FieldInfo, KindInfo } from "../solver/types";
import type { SizeName } from "./answers";

/** What each number is called. */
export const SIZE_LABELS: Readonly<Record<SizeName, string>> = {
	displacement: "displacement",
	speed: "speed",
	volumetricEfficiency: "volumetric efficiency",
	boost: "boost at the source (gauge)",
	temperature: "temperature at the source",
	runnerArea: "runner section",
	runnerLength: "runner length",
	bendAngle: "runner bend",
	spacing: "cylinder spacing",
	logArea: "log section",
	windowArea: "window per port",
	neckArea: "neck section",
	neckLength: "neck length",
	coreArea: "core open area",
	coreFlow: "core air flow",
	coreDrop: "core drop at that flow",
};

/** One line on each number. */
const HELP: Readonly<Record<SizeName, string>> = {
	displacement: "all cylinders together",
	speed: "crankshaft speed at which the running draw is solved",
	volumetricEfficiency: "air drawn over swept volume, at the density at the ports",
	boost: "stagnation pressure where air enters, above the room's",
	temperature: "stagnation temperature where air enters",
	runnerArea: "the same along the runner; also d 44 or 44 x 60",
	runnerLength: "from the chamber to the port, its bend left out",
	bendAngle: "angle that a runner turns through; 0 for none",
	spacing: "between neighbours of a bank",
	logArea: "the same along the log; also d 70 or 60 x 80",
	windowArea: "of one port; a pocket for two has twice as much",
	neckArea: "of each neck; also d 80",
	neckLength: "from the source to the chamber",
	coreArea: "open section of the whole core",
	coreFlow: "mass flow at which the core's drop was measured",
	coreDrop: "pressure that the core costs at that flow",
};

/** How a number is asked for. `room` is the pressure from which boost counts [Pa]. */
export function sizeInfo(
	name: SizeName,
	catalogue: Catalogue,
	room: number,
	cylinders: number,
): FieldInfo {
	const { minimum, maximum, quantity } = model(name, catalogue);
	const own = { name, label: SIZE_LABELS[name], help: HELP[name], required: true, default: null };
	if (name === "boost") {
		return {
			...own,
			quantity: "pressureDifference",
			minimum: minimum - room,
			maximum: maximum - room,
		};
	}
	const times = name === "displacement" ? cylinders : 1;
	return { ...own, quantity, minimum: minimum * times, maximum: maximum * times };
}

/** The room's pressure that a study takes when it gives none [Pa]. */
export function roomPressure({ bench }: Catalogue): number {
	return field(bench, "ambientPressure").default ?? 0;
}

/** The field of the document that a number ends up in. */
function model(name: SizeName, catalogue: Catalogue): FieldInfo {
	const { cylinder, engine, nodes, losses } = catalogue;
	switch (name) {
		case "displacement":
			return field(cylinder, "sweptVolume");
		case "speed":
		case "volumetricEfficiency":
			return field(engine, name);
		case "boost":
			return of(nodes, "source", "pressure");
		case "temperature":
			return of(nodes, "source", "temperature");
		case "runnerArea":
		case "neckArea":
			return of(losses, "duct", "area");
		case "logArea":
			return of(nodes, "header", "area");
		case "windowArea":
			return of(losses, "opening", "area");
		case "runnerLength":
		case "neckLength":
		case "spacing":
			return of(losses, "duct", "length");
		case "bendAngle":
			return of(losses, "bend", "angle");
		case "coreArea":
			return of(losses, "core", "area");
		case "coreFlow":
			return of(losses, "core", "flow2");
		case "coreDrop":
			return of(losses, "core", "drop2");
	}
}

function of(kinds: readonly KindInfo[], kind: string, name: string): FieldInfo {
	return field(kinds.find((each) => each.kind === kind)?.fields ?? [], name);
}

function field(fields: readonly FieldInfo[], name: string): FieldInfo {
	const found = fields.find((each) => each.name === name);
	if (!found) throw new Error(`the catalogue has no field ${name}`);
	return found;
}
