import { describe, expect, it } from "vitest";
import type { Sheet } from "../../../www/src/network/edit";
import { blockText, readBlock, readPasted } from "../../../www/src/table/block";
import { type Copied, copy } from "../../../www/src/table/copy";
import type { TableName } from "../../../www/src/table/grid";
import { type Paste, paste, settle } from "../../../www/src/table/paste";
import type { Selection } from "../../../www/src/table/select";
import { all, at, BOOK, SHEET, select } from "./fixture";

interface More {
	sheet?: Sheet;
	table?: TableName;
	copied?: Copied | null;
	decimal?: "comma" | "point";
}

function what(text: string, selection: Selection | null, more: More = {}): Paste {
	const { sheet = SHEET, table = "branches", copied = null, decimal } = more;
	const lines = all(table, sheet);
	return { table, all: lines, selection, block: readBlock(text), copied, decimal };
}

function pasted(text: string, selection: Selection | null, more: More = {}) {
	return paste(more.sheet ?? SHEET, what(text, selection, more), BOOK);
}

function areas(sheet: Sheet): unknown[] {
	return ["0.losses.0", "1.losses.0", "2.losses.1"].map((loss) =>
		at(sheet, `network.branches.${loss}.area`),
	);
}

describe("a block of text", () => {
	it("is read as spreadsheets write it, and written as they read it", () => {
		expect(readBlock("1\t2\r\n3\t\r\n")).toEqual([
			["1", "2"],
			["3", ""],
		]);
		expect(readBlock('"a ""b""\tc"\td\n"e\nf"')).toEqual([['a "b"\tc', "d"], ["e f"]]);
		expect(readBlock('1.5"\t3 1/2"')).toEqual([['1.5"', '3 1/2"']]);
		expect(readBlock('"never closed\t1\n2')).toEqual([['"never closed', "1"], ["2"]]);
		const odd = [
			["a\tb", 'c"d'],
			["", "e"],
		];
		expect(readBlock(blockText(odd))).toEqual(odd);
	});
});

describe("a text that is too large to be a table", () => {
	it.each([
		["characters", '"'.repeat((1 << 18) + 1)],
		["rows", "1\n".repeat(501)],
		["cells", "\t".repeat(20_000)],
	])("by its %s is refused", (word, text) => {
		expect(readPasted(text)).toMatchObject({
			kind: "refused",
			reason: expect.stringContaining(word),
		});
	});
});

describe("copying", () => {
	it("gives cells as bare numbers in the units of their columns", () => {
		const copied = copy(
			SHEET,
			all(),
			select("0.losses.0.area", "2.losses.1.dischargeCoefficient"),
			BOOK,
		);
		expect(copied?.text).toBe("2000\t0.6\n1000\t0.65\n1500\t0.7");
	});

	it("gives a branch with its losses below it, each begun by an empty cell", () => {
		expect(copy(SHEET, all(), select("1.id", "1.id", true), BOOK)?.text).toBe(
			"runner 1\tlid\tport 1\t10\n\topening in a wall\t1000\t0.65\n\tduct friction\t1000\t\t120",
		);
	});

	it("gives unreadable text as it stands", () => {
		const sheet = { ...SHEET, drafts: { "network.branches.0.losses.0.area": "wide" } };
		expect(copy(sheet, all(), select("0.losses.0.area"), BOOK)?.text).toBe("wide");
	});
});

describe("pasting into cells", () => {
	it("goes down the losses of one kind", () => {
		const { sheet, selection } = pasted("100\n200\n3 cm2", select("0.losses.0.area"));
		expect(areas(sheet)).toEqual([0.0001, 0.0002, 0.0003]);
		expect(selection).toEqual(select("0.losses.0.area", "2.losses.1.area"));
		expect(at(sheet, "network.branches.1.losses.1.area")).toBe(0.001);
	});

	it("fills a selection that the block fits into, again and again", () => {
		const range = select("0.losses.0.area", "2.losses.1.dischargeCoefficient");
		const { sheet } = pasted("100", range);
		expect(areas(sheet)).toEqual([0.0001, 0.0001, 0.0001]);
		expect(at(sheet, "network.branches.2.losses.1.dischargeCoefficient")).toBe(100);
	});

	it("keeps what cannot be read as text, and hands back what has no cell", () => {
		const { sheet, unplaced } = pasted("big\t0.5\t7\n1\n2\n3", select("0.losses.0.area"));
		expect(sheet.drafts).toEqual({ "network.branches.0.losses.0.area": "big" });
		expect(at(sheet, "network.branches.0.losses.0.dischargeCoefficient")).toBe(0.5);
		expect(areas(sheet).slice(1)).toEqual([1e-6, 2e-6]);
		expect(unplaced).toEqual(["7", "3"]);
	});

	it("changes a kind first, then fills the fields of the new kind", () => {
		const { sheet } = pasted("duct friction\t1500\t\t300", select("0.losses.0.kind"));
		expect(at(sheet, "network.branches.0.losses.0")).toMatchObject({
			kind: "duct",
			area: 0.0015,
			length: 0.3,
		});
	});

	it("keeps a kind that is not known as text in its cell", () => {
		const { sheet } = pasted("mystery", select("0.losses.0.kind"));
		expect(sheet.drafts).toEqual({ "network.branches.0.losses.0.kind": "mystery" });
	});

	it("makes new branches below the last one", () => {
		const { sheet, unplaced } = pasted("x\tlid\ty\na\tlid\tb", select("2.id"));
		expect(sheet.study.network.branches.map(({ id }) => id)).toEqual([
			"neck",
			"runner 1",
			"x",
			"a",
		]);
		expect(at(sheet, "network.branches.3")).toMatchObject({ id: "a", from: "lid", to: "b" });
		expect(unplaced).toEqual([]);
	});

	it("renames a node and takes its branches along", () => {
		const { sheet } = pasted("plenum A", select("1.id", "1.id", false, "network.nodes"), {
			table: "nodes",
		});
		expect(at(sheet, "network.branches.1.from")).toBe("plenum A");
	});
});

describe("pasting rows", () => {
	const rows =
		"runner 3\tlid\tport 3\t5\n\tduct friction\t900\t\t1.5 in\n\topening in a wall\t800\t0.6";

	it("makes branches with their losses, at the end or behind selected rows", () => {
		const end = pasted(rows, null);
		expect(at(end.sheet, "network.branches.3")).toMatchObject({
			id: "runner 3",
			from: "lid",
			to: "port 3",
			jetFraction: 0.05,
			losses: [
				{ kind: "duct", area: 0.0009, length: 0.0381 },
				{ kind: "opening", area: 0.0008, dischargeCoefficient: 0.6 },
			],
		});
		const behind = pasted(rows, select("0.id", "0.id", true));
		expect(behind.sheet.study.network.branches.map(({ id }) => id)).toEqual([
			"neck",
			"runner 3",
			"runner 1",
			"runner 2",
		]);
		expect(behind.selection).toEqual(select("1.id", "1.id", true));
	});

	it("takes losses from the branch's own row as well", () => {
		const { sheet } = pasted(
			"r\tlid\tport 3\tduct friction\t900\t\t40\topening in a wall\t800\t0.6",
			null,
		);
		expect(at(sheet, "network.branches.3.losses")).toMatchObject([
			{ kind: "duct", area: 0.0009, length: 0.04 },
			{ kind: "opening", area: 0.0008 },
		]);
	});

	it("leaves a needed field that was not given open", () => {
		const { sheet } = pasted("r\tlid\tport 3\n\tduct friction\t900", null);
		expect(sheet.drafts).toEqual({ "network.branches.3.losses.0.length": "" });
	});

	it("keeps the whole text of a loss whose kind is not known, at no cost", () => {
		const { sheet } = pasted("r\tlid\tport 3\n\tmystery bend\t12\t3", null);
		expect(at(sheet, "network.branches.3.losses.0")).toMatchObject({
			kind: "typedK",
			k: 0,
			origin: "mystery bend 12 3",
		});
		expect(sheet.drafts["network.branches.3.losses.0.kind"]).toBe("mystery bend");
	});

	it("puts losses alone at the end of a selected branch", () => {
		for (const text of ["opening in a wall\t50\t0.6", "\topening in a wall\t50\t0.6"]) {
			const { sheet } = pasted(text, select("0.id", "0.id", true));
			expect(sheet.study.network.branches).toHaveLength(3);
			expect(at(sheet, "network.branches.0.losses.1")).toMatchObject({ area: 5e-5 });
		}
	});

	it("makes losses behind selected losses, nodes and cylinders", () => {
		const losses = pasted("opening in a wall\t50\t0.6", select("1.losses.0.kind", undefined, true));
		expect(at(losses.sheet, "network.branches.1.losses.1")).toMatchObject({ area: 5e-5 });
		const nodes = pasted("t\ttee\t100\t50\tBassett 2001\np\tport\t2\t900\t30\t2\nq\twhat", null, {
			table: "nodes",
		});
		expect(nodes.sheet.study.network.nodes.slice(4)).toEqual([
			{ id: "t", kind: "tee", area: 0.0001, sideArea: 5e-5, law: "bassett2001" },
			{
				id: "p",
				kind: "port",
				cylinder: "2",
				cadSection: 0.0009,
				valve: { diameter: 0.03, count: 2 },
			},
			{ id: "q", kind: "joint" },
		]);
		expect(nodes.sheet.drafts).toEqual({ "network.nodes.6.kind": "what" });
		const cylinders = pasted("3\t500\tright", null, { table: "cylinders" });
		expect(at(cylinders.sheet, "engine.cylinders.2")).toEqual({
			id: "3",
			sweptVolume: 0.0005,
			bank: "right",
		});
	});

	it("that were copied here brings every bit along, under free names", () => {
		const before = { ...SHEET, drafts: { "network.branches.1.losses.1.length": "long" } };
		const copied = copy(before, all(), select("1.id", "2.id", true), BOOK);
		const { sheet } = pasted(copied?.text ?? "", select("2.id", "2.id", true), {
			sheet: before,
			copied,
		});
		expect(sheet.study.network.branches.map(({ id }) => id).slice(3)).toEqual([
			"runner 3",
			"runner 4",
		]);
		expect(at(sheet, "network.branches.4.losses")).toEqual(at(sheet, "network.branches.2.losses"));
		expect(sheet.drafts["network.branches.3.losses.1.length"]).toBe("long");
	});
});

describe("a comma in a pasted block", () => {
	it("is read as the block's other numbers tell", () => {
		expect(areas(pasted("1,234\n2,5\n7", select("0.losses.0.area")).sheet)).toEqual([
			1.234e-6, 2.5e-6, 7e-6,
		]);
		expect(areas(pasted("1,234\n2.5\n7", select("0.losses.0.area")).sheet)[0]).toBe(0.001234);
		expect(areas(pasted("1.234\n2,5\n7", select("0.losses.0.area")).sheet)[0]).toBe(0.001234);
	});

	it("is asked about where they do not tell, and nothing is lost meanwhile", () => {
		const asked = pasted("1,234\n1,500\n7", select("0.losses.0.area"));
		expect(asked.asked).toEqual([
			{ key: "network.branches.0.losses.0.area", text: "1,234" },
			{ key: "network.branches.1.losses.0.area", text: "1,500" },
		]);
		expect(Object.values(asked.sheet.drafts)).toEqual(["1,234", "1,500"]);
		expect(areas(asked.sheet)).toEqual([0.002, 0.001, 7e-6]);
		const more = { sheet: asked.sheet, decimal: "point" } as const;
		const answer = what("1,234\n1,500\n7", select("0.losses.0.area"), more);
		expect(areas(settle(asked.sheet, asked.asked, answer, BOOK))).toEqual([0.001234, 0.0015, 7e-6]);
		// A cell that has been given another text meanwhile keeps that.
		const typed = { ...asked.sheet, drafts: { "network.branches.1.losses.0.area": "1,500" } };
		expect(areas(settle(typed, asked.asked, answer, BOOK))).toEqual([0.002, 0.0015, 7e-6]);
	});
});
