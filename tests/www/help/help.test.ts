import { describe, expect, test } from "vitest";
import type { FieldInfo, Loss, Node, Study } from "../../../www/src/solver/types";
import { chosenUnits } from "../../../www/src/units";
import { helpOn } from "../../../www/src/view/help";
import { catalogue, read } from "../wasm";

const units = chosenUnits(undefined);
const study = read({
	format: "evenport-study",
	version: 1,
	name: "one port",
	engine: { cylinders: [{ id: "1" }] },
	network: {
		nodes: [
			{ id: "in", kind: "source" },
			{ id: "out", kind: "port", cylinder: "1" },
		],
		branches: [{ id: "way", from: "in", to: "out", losses: [{ kind: "entrySharp", area: 0.001 }] }],
	},
});

const on = (element: string, field: string, of: Study = study) =>
	helpOn({ element, field }, of, catalogue, units);

const withLoss = (kind: string): Study => ({
	...study,
	network: {
		...study.network,
		branches: study.network.branches.map((branch) => ({
			...branch,
			losses: [{ kind } as unknown as Loss],
		})),
	},
});

const withNode = (kind: string): Study => ({
	...study,
	network: { ...study.network, nodes: [{ id: "in", kind } as unknown as Node] },
});

function explains(help: ReturnType<typeof on>, info: FieldInfo) {
	expect(help?.title).toBe(info.label);
	expect(help?.text).toContain(info.help);
	expect(help?.text).toMatch(/between .* and /);
}

describe("every field of the catalogue explains itself, with the law that reads it", () => {
	for (const info of catalogue.losses) {
		test(`loss: ${info.label}`, () => {
			const of = withLoss(info.kind);
			for (const field of info.fields) {
				const help = on("way", `losses[0].${field.name}`, of);
				explains(help, field);
				expect(help?.law).toMatchObject({ equation: info.equation, source: info.source });
			}
			expect(on("way", "losses[0].kind", of)).toMatchObject({ title: info.label, text: info.help });
		});
	}

	test("points of a valve's table, and bench readings", () => {
		for (const field of catalogue.valveCurve.fields) {
			explains(on("out", `valve.dischargeTable[0].${field.name}`), field);
		}
		for (const field of catalogue.reading.fields) {
			const help = on("settings", `bench.readings[0].${field.name}`);
			explains(help, field);
			expect(help?.law).toMatchObject({ equation: catalogue.reading.equation });
		}
	});

	for (const info of catalogue.nodes) {
		test(`node: ${info.label}`, () => {
			const of = withNode(info.kind);
			for (const field of info.fields) explains(on("in", field.name, of), field);
			const help = on("in", "kind", of);
			expect(help?.text).toBe(info.help);
			expect(help?.law !== undefined).toBe(info.equation !== "");
		});
	}

	test("engine, cylinders, valves, conditions, branches", () => {
		for (const field of catalogue.engine) explains(on("engine", field.name), field);
		for (const field of catalogue.cylinder) explains(on("1", field.name), field);
		for (const field of catalogue.valve) explains(on("out", `valve.${field.name}`), field);
		for (const field of catalogue.bench) explains(on("settings", `bench.${field.name}`), field);
		for (const field of catalogue.branch) explains(on("way", field.name), field);
		for (const field of catalogue.running) explains(on("settings", `running.${field.name}`), field);
		for (const field of catalogue.ambient) explains(on("settings", `ambient.${field.name}`), field);
		for (const field of catalogue.fuel) explains(on("engine", `fuel.${field.name}`), field);
	});

	test("blower and charge cooler, with what they compute", () => {
		const { blower, cooler } = catalogue;
		for (const field of blower.fields) {
			const help = on("way", `blower.${field.name}`);
			explains(help, field);
			expect(help?.law).toMatchObject({ equation: blower.equation, range: blower.range });
		}
		const coolers = [
			{ id: "core", mixing: "bothUnmixed", coolantTemperature: 300, effectiveness: 0.7 },
		];
		const of = { ...study, coolers } as Study;
		for (const field of cooler.fields) {
			const help = on("core", field.name, of);
			explains(help, field);
			expect(help?.law).toMatchObject({ equation: cooler.equation, source: cooler.source });
		}
		expect(on("core", "series", of)?.law).toBeDefined();
	});
});

test("what a field takes when it is left empty is said in the page's unit", () => {
	expect(on("engine", "eventAngle")?.text).toContain("240 when left empty");
	expect(on("in", "pressure")?.text).toContain("may be left empty");
	expect(on("way", "losses[0].area")?.text).not.toContain("left empty");
});

test("the author of a tee's losses is explained", () => {
	const of = withNode("tee");
	const node = of.network.nodes[0];
	if (node?.kind === "tee") node.law = "idelchik";
	const author = catalogue.junctionLaws.find(({ name }) => name === "idelchik");
	expect(on("in", "law", of)).toMatchObject({ title: author?.label, text: author?.help });
});

test("names and ends are explained in plain words, unknown cells not at all", () => {
	for (const field of ["id", "from", "to", "fromLeg"])
		expect(on("way", field)?.law).toBeUndefined();
	expect(on("way", "from")?.text).toContain("positive");
	expect(on("way", "no such field")).toBeNull();
});
