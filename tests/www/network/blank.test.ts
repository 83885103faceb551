import { expect, it } from "vitest";
import { unusedName } from "../../../www/src/network/blank";

it("a name that is taken gets the next number, however many digits it ends in", () => {
	expect(unusedName(new Set(["runner 9"]), "runner 9")).toBe("runner 10");
	expect(unusedName(new Set(["lid"]), "lid")).toBe("lid 2");
	// As one number these digits would stay the same when one is added.
	const long = "runner 99999999999999999999";
	const once = unusedName(new Set([long]), long);
	const twice = unusedName(new Set([long, once]), long);
	expect(new Set([long, once, twice]).size).toBe(3);
});
