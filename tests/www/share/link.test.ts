/** Links: what goes in comes out, and nothing else opens. */
import { deflateSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { linked, linkTo } from "../../../www/src/share/link";
import type { Study, Variant } from "../../../www/src/solver/types";
import { example, read } from "../wasm";

const base = example("v8_lid");

function variant(name: string, row: RegExp, times: number): Variant {
	const branches = base.network.branches
		.filter(({ id }) => row.test(id))
		.map((branch) => ({
			...branch,
			losses: branch.losses.map((loss) =>
				"area" in loss ? { ...loss, area: Number((loss.area * times).toPrecision(4)) } : loss,
			),
		}));
	return { name, notes: "", nodes: [], branches, removed: [] };
}

const study: Study = {
	...base,
	notes: "Größe ≥ 3 “quoted” </script> 漢",
	variants: [
		variant("Wide windows", /^window/, 1.1),
		variant("Narrow runners", /^runner/, 0.95),
		variant("Wide last window", /^window 7/, 2),
	],
};

function packed(text: string | Uint8Array): string {
	return deflateSync(text).toString("base64url");
}

describe("a link", () => {
	it("gives back the very study, and the V8 with three variants takes at most 2,000 characters", async () => {
		const link = await linkTo(study);
		const found = await linked(link);
		expect(found.kind).toBe("text");
		if (found.kind !== "text") return;
		expect(JSON.parse(found.text)).toEqual(study);
		expect(read(JSON.parse(found.text))).toEqual(study);
		expect(link.length).toBeLessThanOrEqual(2000);
		expect(link).toMatch(/^#study=1\.[A-Za-z0-9_-]+$/);
	});

	it("that is none is none", async () => {
		for (const hash of ["", "#", "#errors", "#Study=1.abc"])
			expect(await linked(hash)).toEqual({ kind: "none" });
	});

	it("that was cut short anywhere, or altered, says so", async () => {
		const link = await linkTo(study);
		for (let length = 8; length < link.length; length += 61) {
			const found = await linked(link.slice(0, length));
			expect(found, `${length} characters`).toMatchObject({
				kind: "fault",
				message: expect.stringContaining("cut short or altered"),
			});
		}
		for (let at = 9; at < link.length; at += 97) {
			const other = link[at] === "A" ? "B" : "A";
			const found = await linked(link.slice(0, at) + other + link.slice(at + 1));
			// What differs in bits that stand for nothing is the same link.
			if (found.kind === "text") expect(JSON.parse(found.text)).toEqual(study);
			else expect(found.kind).toBe("fault");
		}
	});

	it("of a newer page says that", async () => {
		expect(await linked("#study=2.abcd")).toMatchObject({
			kind: "fault",
			message: expect.stringContaining("newer version"),
		});
	});

	it("that would explode when unpacked is given up early", async () => {
		const bomb = packed(new Uint8Array(40 << 20));
		expect(bomb.length).toBeLessThan(1 << 16);
		const found = await linked(`#study=1.${bomb}`);
		expect(found).toMatchObject({
			kind: "fault",
			message: expect.stringContaining("unpack to more"),
		});
		expect(await linked(`#study=1.${"A".repeat((1 << 16) + 1)}`)).toMatchObject({ kind: "fault" });
	});

	it("that holds no text is not whole", async () => {
		for (const text of [packed(new Uint8Array([0xff, 0xfe, 0xc0])), "", "!"])
			expect(await linked(`#study=1.${text}`), text).toMatchObject({ kind: "fault" });
	});
});
