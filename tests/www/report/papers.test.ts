import { expect, test } from "vitest";
import { papers } from "../../../www/src/view/papers";

test("the paper is the usual one where a language is spoken, and A4 where nobody can tell", () => {
	const usual = ["en-US", "en", "es-MX", "en-GB", "de", "C", ""].map(papers.usual);
	expect(usual).toEqual(["letter", "letter", "letter", "a4", "a4", "a4", "a4"]);
});
