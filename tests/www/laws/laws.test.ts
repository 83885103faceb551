import { existsSync, readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { catalogue } from "../wasm";

const root = new URL("../../../", import.meta.url);
const file = (path: string) => fileURLToPath(new URL(path, root));
const written = file("www/laws.html");
if (!existsSync(written))
	throw new Error("The page of laws is not written: run `cargo task build` first.");
const page = readFileSync(written, "utf8");

/** Each law's part of the page by its anchor. */
const articles = new Map(
	[...page.matchAll(/<article id="([^"]+)"[\s\S]*?<\/article>/g)].map(([text, id]) => [
		id ?? "",
		text,
	]),
);
const anchors = [...page.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);

/** What stands behind a term in a law's list. */
const told = (article: string, term: string) =>
	new RegExp(`<dt>${term}</dt><dd>([\\s\\S]*?)</dd>`).exec(article)?.[1] ?? "";

/** Every file of a law below a folder, as an anchor. */
function laws(folder: string, before = ""): string[] {
	return readdirSync(file(folder), { withFileTypes: true }).flatMap((entry) =>
		entry.isDirectory()
			? laws(`${folder}${entry.name}/`, `${before}${entry.name}-`)
			: entry.name === "mod.rs" || entry.name === "outside.rs"
				? []
				: [before + entry.name.replace(".rs", "").replaceAll("_", "-")],
	);
}

describe("the page of all laws", () => {
	it("has an entry for every law's file, and no other", () => {
		expect([...articles.keys()].sort()).toEqual(laws("crate/solver/src/law/").sort());
	});

	it("has a heading for every kind that computes something", () => {
		const kinds = [...catalogue.losses, ...catalogue.nodes, catalogue.blower, catalogue.cooler];
		const computing = kinds.filter(({ equation, kind }) => equation && kind !== "typedK");
		expect(computing.length).toBeGreaterThan(18);
		for (const { kind } of computing) expect(page).toContain(`<h3 id="${kind}">`);
	});

	it("tells of each law what it says, whence, where it holds, how far off it may be, and where it stops", () => {
		for (const [id, article] of articles) {
			expect(/class="equation">[\s\S]*?<\/span>\S/.test(article), id).toBe(true);
			for (const term of ["Source", "Holds for", "Scatter", "Limits"])
				expect(told(article, term).length, `${id}, ${term}`).toBeGreaterThan(7);
			expect(article, id).toMatch(/<tbody>\s*<tr><td>/);
		}
	});

	it("says the scatter that the program uses, of the author that it uses unless told otherwise", () => {
		const default_ = (kind: string) => {
			const part = page.slice(page.indexOf(`<h3 id="${kind}">`));
			return /<article id="[^"]+"[\s\S]*?<\/article>/.exec(part)?.[0] ?? "";
		};
		// A sudden change's scatter depends on the way of the air, a schedule has a law for each of its parts.
		const several = ["suddenChange", "schedule"];
		const offering = catalogue.losses.filter(
			({ laws, kind }) => laws.length && !several.includes(kind),
		);
		expect(offering.length).toBeGreaterThan(5);
		for (const { kind, laws, scatter } of offering) {
			const article = default_(kind);
			expect(article).toContain(`<p class="when">${laws[0]?.label}, the default</p>`);
			expect(told(article, "Scatter")).toContain(`± ${Math.round(100 * scatter)} %`);
		}
	});

	it("leads nowhere that is not there, and names each place once", () => {
		expect(new Set(anchors).size).toBe(anchors.length);
		const links = [...page.matchAll(/href="#([^"]+)"/g)].map(([, id]) => id);
		expect(links.length).toBeGreaterThan(60);
		expect(links.filter((id) => !anchors.includes(id))).toEqual([]);
	});

	it("shows the values from outside that a law is checked against", () => {
		const bellmouth = articles.get("entry-flared-idelchik") ?? "";
		expect(bellmouth).toContain("Checked against 15 values from outside");
		expect(bellmouth).toContain("SMACNA");
	});
});
