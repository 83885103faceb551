import { describe, expect, test } from "vitest";
import { numberings, placed } from "../../../www/src/engine/numbering";
import {
	asked,
	engineOf,
	firingOf,
	type SizeName,
	sizesOf,
} from "../../../www/src/starter/answers";
import { roomPressure, sizeInfo } from "../../../www/src/starter/questions";
import { sentenceOn, studyOf, usualName } from "../../../www/src/starter/study";
import { chosenUnits } from "../../../www/src/units";
import { catalogue, read } from "../wasm";
import { choose, drafted, ENGINES, FEEDS, made, POCKETS } from "./manifolds";

const V8 = { layout: "v8", inBank: 1 } as const;
const room = roomPressure(catalogue);

describe("firing orders", () => {
	for (const engine of ENGINES) {
		const { banks, cylinders } = engineOf(choose(engine, "above", "open"));
		test(`${engine.layout} ${cylinders}: every usual order fires each cylinder once`, () => {
			for (const numbering of numberings(cylinders, banks)) {
				const order = firingOf({ ...choose(engine, "above", "open"), numbering });
				if (order.length === 0) continue;
				const all = Array.from({ length: cylinders }, (_, index) => String(index + 1));
				expect(order.toSorted((one, other) => Number(one) - Number(other))).toEqual(all);
			}
		});
	}

	// Cylinders whose pistons move together fire a turn of the crank apart.
	test("inline 4 and 6, and each bank of a V12: partners lie half an order apart", () => {
		for (const layout of ["inline4", "inline6", "v12"] as const) {
			const order = firingOf(choose({ layout, inBank: 1 }, "above", "open")).map(Number);
			const bank = layout === "inline4" ? 4 : 6;
			const inBank = (number: number) => ((number - 1) % bank) + 1;
			for (const [place, number] of order.entries()) {
				const partner = order[(place + order.length / 2) % order.length] ?? 0;
				expect(inBank(number) + inBank(partner)).toBe(bank + 1);
			}
		}
	});

	test("where none is widely known it is left out", () => {
		expect(firingOf({ ...choose(V8, "above", "open"), numbering: "evenLeft" })).toEqual([]);
		expect(firingOf(choose({ layout: "singleBank", inBank: 7 }, "above", "open"))).toEqual([]);
		const study = made(choose({ layout: "singleBank", inBank: 7 }, "above", "open"));
		expect(study.engine.firingOrder ?? []).toEqual([]);
	});
});

describe("what is typed ends up in the study", () => {
	const choices = choose(V8, "above", "perPort");
	const typed = {
		displacement: 0.0064,
		speed: 110,
		volumetricEfficiency: 0.9,
		boost: 50_000,
		temperature: 340,
		runnerArea: 0.0016,
		runnerLength: 0.15,
		bendAngle: 0.5,
		windowArea: 0.002,
		neckArea: 0.009,
		neckLength: 0.2,
		coreArea: 0.03,
		coreFlow: 0.5,
		coreDrop: 3000,
	};
	const study = made(choices, typed);
	const losses = (id: string) => study.network.branches.find((each) => each.id === id)?.losses;

	test("of the engine", () => {
		const swept = study.engine.cylinders.map((each) => each.sweptVolume ?? 0);
		expect(swept.reduce((sum, each) => sum + each, 0)).toBeCloseTo(0.0064, 9);
		expect(study.engine).toMatchObject({ speed: 110, volumetricEfficiency: 0.9 });
		expect(study.engine.firingOrder?.join(" ")).toBe("1 8 4 3 6 5 7 2");
	});

	test("of the source, above the room's pressure", () => {
		const source = study.network.nodes.find((each) => each.kind === "source");
		expect(source).toMatchObject({ pressure: room + 50_000, temperature: 340 });
	});

	test("of the manifold", () => {
		expect(losses("neck")).toMatchObject([{ area: 0.009 }, { area: 0.009, length: 0.2 }]);
		expect(losses("core")).toMatchObject([{ area: 0.03, flow2: 0.5, drop2: 3000 }]);
		expect(losses("window 5")).toMatchObject([{ area: 0.002 }]);
		expect(losses("runner 5")).toMatchObject([
			{ area: 0.0016 },
			{ area: 0.0016, length: 0.15 },
			{ area: 0.0016, angle: 0.5 },
		]);
	});

	test("a runner without a bend has none", () => {
		const straight = made(choices, { bendAngle: 0 });
		const runner = straight.network.branches.find(({ id }) => id === "runner 1");
		expect(runner?.losses.map(({ kind }) => kind)).toEqual(["entryRounded", "duct"]);
	});

	test("a neck as wide as the log has no change of section", () => {
		const log = made(choose(V8, "oneEnd", "open"), { neckArea: 0.008, logArea: 0.008 });
		const kinds = log.network.branches.find(({ id }) => id === "neck")?.losses;
		expect(kinds?.map(({ kind }) => kind)).toEqual(["entryRounded", "duct", "duct"]);
	});

	test("sizes that nobody typed are named in the notes, and units come along", () => {
		const units = { length: "in" };
		const draft = studyOf(choices, sizesOf(choices, {}), [], "mine", ["neckArea"], { room, units });
		expect(draft.notes).toContain("neck section");
		expect(draft.notes).not.toContain("runner section");
		expect(read(draft).settings.units).toEqual(units);
		expect(read(draft).name).toBe("mine");
	});
});

test("every number that is asked for changes the study, and has bounds that hold its typical value", () => {
	for (const engine of ENGINES) {
		for (const feed of FEEDS) {
			for (const pockets of POCKETS) {
				const choices = choose(engine, feed, pockets);
				const usual = sizesOf(choices, {});
				const { running, manifold } = asked(choices);
				const plain = JSON.stringify(drafted(choices));
				const names: SizeName[] = ["displacement", ...running, ...manifold];
				for (const name of names) {
					const info = sizeInfo(name, catalogue, room, engineOf(choices).cylinders);
					expect(usual[name]).toBeGreaterThanOrEqual(info.minimum);
					expect(usual[name]).toBeLessThanOrEqual(info.maximum);
					const other = { [name]: usual[name] * 0.9 };
					expect(JSON.stringify(drafted(choices, other)), name).not.toBe(plain);
				}
			}
		}
	}
});

test("typical sizes grow with the displacement until they are typed", () => {
	const choices = choose(V8, "above", "open");
	const small = sizesOf(choices, { displacement: 0.004 });
	const large = sizesOf(choices, { displacement: 0.007 });
	for (const name of ["runnerArea", "spacing", "neckArea", "coreArea", "coreFlow"] as const)
		expect(large[name]).toBeGreaterThan(small[name]);
	expect(sizesOf(choices, { displacement: 0.007, neckArea: 0.001 }).neckArea).toBe(0.001);
});

test("a numbering that does not fit the engine gives way to the usual one", () => {
	expect(engineOf({ ...choose(V8, "above", "open"), numbering: "rearToFront" }).numbering).toBe(
		"oddLeft",
	);
	const study = made({ ...choose(V8, "above", "open"), numbering: "firstHalfLeft" });
	expect(study.engine.cylinders).toEqual(placed(study.engine.cylinders, "firstHalfLeft"));
});

test("one sentence says what will be built, with the counts of the study itself", () => {
	const choices = choose(V8, "above", "perPort");
	const sizes = sizesOf(choices, {});
	const study = studyOf(choices, sizes, [], usualName(choices), [], { room, units: undefined });
	const { nodes, branches } = study.network;
	expect(sentenceOn(choices, sizes, study, chosenUnits(undefined))).toBe(
		`A V8 of 5.68 L, numbered odd left, even right, fed from above, through a core, with a pocket per port; 171.3 kPa abs at the source: a network of ${nodes.length} nodes and ${branches.length} branches.`,
	);
});
