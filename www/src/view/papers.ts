/** The papers that a report is laid out for. */
const ALL = [
	{ name: "a4", label: "A4, 210 × 297 mm" },
	{ name: "letter", label: "Letter, 8.5 × 11 in" },
] as const;

export type Paper = (typeof ALL)[number]["name"];

/** Where Letter is the usual paper (Unicode CLDR, paper size by territory). */
const LETTER = new Set("BZ CA CL CO CR GT MX NI PA PH PR SV US VE".split(" "));

export const papers = {
	all: ALL,
	/** The paper that is usual where a language is spoken, as far as its name tells where. */
	usual(language: string): Paper {
		return LETTER.has(regionOf(language) ?? "") ? "letter" : "a4";
	},
};

/** A system without a language calls it "C", which is no name of one. */
function regionOf(language: string): string | undefined {
	try {
		return new Intl.Locale(language).maximize().region;
	} catch {
		return undefined;
	}
}
