import { describe, expect, test } from "vitest";
import {
	bankRows,
	LEFT,
	type Numbering,
	numberingOf,
	numberings,
	placed,
	RIGHT,
} from "../../../www/src/engine/numbering";

const plain = (count: number) =>
	Array.from({ length: count }, (_, index) => ({ id: String(index + 1), sweptVolume: index }));

const rows = (count: number, numbering: Numbering) =>
	Object.fromEntries(
		bankRows(placed(plain(count), numbering)).map(({ bank, cylinders }) => [
			bank,
			cylinders.join(" "),
		]),
	);

describe("placing by a way of numbering", () => {
	test("two banks", () => {
		expect(rows(8, "oddLeft")).toEqual({ [LEFT]: "1 3 5 7", [RIGHT]: "2 4 6 8" });
		expect(rows(8, "evenLeft")).toEqual({ [LEFT]: "2 4 6 8", [RIGHT]: "1 3 5 7" });
		expect(rows(6, "firstHalfLeft")).toEqual({ [LEFT]: "1 2 3", [RIGHT]: "4 5 6" });
		expect(rows(6, "firstHalfRight")).toEqual({ [LEFT]: "4 5 6", [RIGHT]: "1 2 3" });
	});

	test("one bank", () => {
		expect(rows(4, "frontToRear")).toEqual({ "": "1 2 3 4" });
		expect(rows(4, "rearToFront")).toEqual({ "": "4 3 2 1" });
	});

	test("a cylinder keeps what else is known of it, under its number", () => {
		const swept = placed(plain(4), "rearToFront").map(({ sweptVolume }) => sweptVolume);
		expect(swept).toEqual([3, 2, 1, 0]);
		expect(placed(placed(plain(4), "oddLeft"), "frontToRear")).toEqual(plain(4));
	});

	test("cylinders without numbers are left alone", () => {
		const named = [{ id: "front" }, { id: "rear" }];
		expect(placed(named, "rearToFront")).toBe(named);
		expect(numberingOf(named)).toBeNull();
	});
});

describe("telling which way a list is numbered", () => {
	for (const [count, banks] of [
		[1, 1],
		[3, 1],
		[5, 2],
		[6, 1],
		[8, 2],
		[12, 2],
	] as const) {
		test(`${count} cylinders in ${banks} banks: each offered way is told from the others`, () => {
			const offered = numberings(count, banks);
			expect(offered.length).toBeGreaterThan(0);
			const found = offered.map((each) => numberingOf(placed(plain(count), each)));
			// A single cylinder stands the same way round whichever end is counted from.
			expect(found).toEqual(count === 1 ? ["frontToRear", "frontToRear"] : offered);
		});
	}

	test("the order between banks does not matter, the order within one does", () => {
		const bank = (id: string) => (Number(id) % 2 ? "Left" : "right");
		const list = (order: string) => order.split(" ").map((id) => ({ id, bank: bank(id) }));
		expect(numberingOf(list("2 4 1 3"))).toBe("oddLeft");
		expect(numberingOf(list("1 2 3 4"))).toBe("oddLeft");
		expect(numberingOf(list("3 1 2 4"))).toBeNull();
	});

	test("other banks, gaps and no cylinders follow none", () => {
		expect(
			numberingOf([
				{ id: "1", bank: "a" },
				{ id: "2", bank: "b" },
			]),
		).toBeNull();
		expect(numberingOf([{ id: "1" }, { id: "3" }])).toBeNull();
		expect(numberingOf([])).toBeNull();
		expect(numberings(9, 3)).toEqual([]);
		expect(numberings(5, 2)).toEqual(["oddLeft", "evenLeft"]);
	});

	test("a single bank is told whatever it is called", () => {
		expect(
			numberingOf([
				{ id: "2", bank: "only" },
				{ id: "1", bank: "only" },
			]),
		).toBe("rearToFront");
	});
});
