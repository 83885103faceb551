/** Studies of the sizes that the page must stay quick with. Invented, like the examples. */
import { readFileSync } from "node:fs";

interface Study {
	name: string;
	network: {
		nodes: { id: string; kind: string }[];
		branches: { id: string; from: string; to: string; losses: object[] }[];
	};
}

/**
 * The V8 lid with each pocket cut in two: the air enters the rear half, the runner leaves the front one,
 * and both halves have row windows; the core is cut into passages.
 */
export function sixtyBranches(): string {
	const study = lid();
	const { nodes, branches } = study.network;
	const opening = openingIn(study);
	for (let cylinder = 1; cylinder <= 8; cylinder += 1) {
		nodes.push({ id: `rear ${cylinder}`, kind: "plenum" });
		opening(`rear window ${cylinder}`, "lid", `rear ${cylinder}`, 0.0009 + 0.00002 * cylinder);
		opening(`half window ${cylinder}`, `rear ${cylinder}`, `pocket ${cylinder}`, 0.0012);
	}
	for (let cylinder = 1; cylinder <= 6; cylinder += 1) {
		opening(
			`rear row ${cylinder}-${cylinder + 2}`,
			`rear ${cylinder}`,
			`rear ${cylinder + 2}`,
			0.0005,
		);
	}
	for (const cylinder of [1, 3, 5, 7]) {
		opening(
			`rear cross ${cylinder}-${cylinder + 1}`,
			`rear ${cylinder}`,
			`rear ${cylinder + 1}`,
			0.0004,
		);
	}
	const core = branches.find(({ id }) => id === "core");
	if (!core) throw new Error("the example has no core");
	const passages = 61 - branches.length;
	core.losses = core.losses.map((loss) => ({
		...loss,
		area: 0.032 / passages,
		fraction: 1 / passages,
	}));
	for (let passage = 2; passage <= passages; passage += 1) {
		branches.push({ ...structuredClone(core), id: `core ${passage}` });
	}
	study.name = `V8 lid, ${branches.length} branches`;
	return JSON.stringify(study);
}

/** The V8 lid with further chambers behind its pockets, up to so many branches. */
export function large(count: number): string {
	const study = lid();
	const { nodes, branches } = study.network;
	const opening = openingIn(study);
	for (let at = 0; branches.length < count; at += 1) {
		const id = `cell ${at}`;
		nodes.push({ id, kind: "plenum" });
		opening(`window to ${id}`, at < 8 ? `pocket ${at + 1}` : `cell ${at - 8}`, id, 0.0009);
		opening(`leak to ${id}`, "lid", id, 0.0002);
	}
	study.name = "Large";
	return JSON.stringify(study);
}

function lid(): Study {
	const file = new URL("../../examples/v8_lid/network.json", import.meta.url);
	return JSON.parse(readFileSync(file, "utf8")) as Study;
}

/** Adds openings to a study, each a branch of its own. */
function openingIn({ network }: Study) {
	return (id: string, from: string, to: string, area: number) =>
		network.branches.push({
			id,
			from,
			to,
			losses: [{ kind: "opening", area, dischargeCoefficient: 0.65 }],
		});
}
