import { expect, test } from "vitest";
import type { Entry } from "../../../www/src/share/records";
import { copyName, settle } from "../../../www/src/share/settle";

/** A record of the study `s`, unless another is given. */
function record(key: string, rest: Partial<Entry>): Entry {
	return {
		key,
		study: "s",
		turn: 0,
		revision: 1,
		name: "Lid",
		saved: 0,
		text: "{}",
		drafts: {},
		...rest,
	};
}

function keys(entries: readonly Entry[]): string[] {
	return entries.map(({ key }) => key);
}

test("studies come newest first", () => {
	const found = settle([
		record("a", { study: "1", saved: 5 }),
		record("b", { study: "2", saved: 9 }),
		record("c", { study: "3", saved: 7 }),
	]);
	expect(keys(found.studies)).toEqual(["b", "c", "a"]);
	expect(found.strays).toEqual([]);
	expect(found.stale).toEqual([]);
});

test("a record that was taken over as it stands is contained in the later one", () => {
	const old = record("old", { revision: 4, saved: 4 });
	const now = record("now", { turn: 1, saved: 5, replaces: { key: "old", revision: 4 } });
	const found = settle([old, now]);
	expect(keys(found.studies)).toEqual(["now"]);
	expect(keys(found.stale)).toEqual(["old"]);
	expect(found.strays).toEqual([]);
});

test("what was written after it was taken over is a stray, even if it is the newer one", () => {
	const old = record("old", { revision: 5, saved: 9 });
	const now = record("now", { turn: 1, saved: 5, replaces: { key: "old", revision: 4 } });
	const found = settle([old, now]);
	expect(keys(found.studies)).toEqual(["now"]);
	expect(keys(found.strays)).toEqual(["old"]);
	expect(found.stale).toEqual([]);
});

test("a chain leaves its end, also when a middle one is gone", () => {
	const one = record("one", { revision: 2 });
	const two = record("two", { turn: 1, replaces: { key: "one", revision: 2 } });
	const three = record("three", { turn: 2, replaces: { key: "two", revision: 1 } });
	expect(keys(settle([one, two, three]).studies)).toEqual(["three"]);
	expect(keys(settle([one, two, three]).stale).sort()).toEqual(["one", "two"]);
	const late = settle([record("one", { revision: 3, saved: 99 }), three]);
	expect(keys(late.studies)).toEqual(["three"]);
	expect(keys(late.strays)).toEqual(["one"]);
});

test("of two that took over the same record the newer one counts and the other is a stray", () => {
	const replaces = { key: "old", revision: 1 };
	const found = settle([
		record("old", {}),
		record("left", { turn: 1, saved: 3, replaces }),
		record("right", { turn: 1, saved: 4, replaces }),
	]);
	expect(keys(found.studies)).toEqual(["right"]);
	expect(keys(found.strays)).toEqual(["left"]);
	expect(keys(found.stale)).toEqual(["old"]);
});

test("a copy says when it was made, once", () => {
	const first = new Date(2026, 2, 4, 9, 5).getTime();
	const later = new Date(2026, 2, 5, 17, 30).getTime();
	expect(copyName("Lid", first)).toBe("Lid (copy 2026-03-04 09:05)");
	expect(copyName(copyName("Lid", first), later)).toBe("Lid (copy 2026-03-05 17:30)");
});
