/** Links near those of the corpus, links of texts near those of the gate's corpus, and links that explode. */
import { constants, deflateSync } from "node:zlib";
import fc from "fast-check";
import { corpus, texts } from "./corpus";
import { near } from "./mutate";

const LEVEL = fc.constantFrom(
	constants.Z_NO_COMPRESSION,
	constants.Z_BEST_SPEED,
	constants.Z_BEST_COMPRESSION,
);

/** Whatever may stand behind the number sign. */
export function links(): fc.Arbitrary<string> {
	const hash = near(corpus("link").map(({ text }) => text));
	const study = fc
		.tuple(near(texts("gate")), LEVEL)
		.map(([text, level]) => packed(deflateSync(text, { level })));
	const bytes = fc
		.tuple(study, fc.array(fc.tuple(fc.nat(), fc.nat(255)), { minLength: 1, maxLength: 4 }))
		.map(([link, changes]) => {
			const whole = Buffer.from(link.slice(PREFIX.length), "base64url");
			for (const [at, byte] of changes) whole[at % whole.length] = byte;
			return packed(whole);
		});
	const bomb = fc
		.tuple(fc.string({ minLength: 1, maxLength: 4 }), fc.integer({ min: 1 << 17, max: 3 << 20 }))
		.map(([text, length]) => packed(deflateSync(text.repeat(length / text.length))));
	return fc.oneof(
		{ weight: 40, arbitrary: hash },
		{ weight: 40, arbitrary: study },
		{ weight: 20, arbitrary: bytes },
		{ weight: 1, arbitrary: bomb },
	);
}

const PREFIX = "#study=1.";

function packed(bytes: Buffer): string {
	return PREFIX + bytes.toString("base64url");
}
