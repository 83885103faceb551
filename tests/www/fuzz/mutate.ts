/** Inputs made of the corpus: cut, spliced, repeated, and strewn with what makes trouble. */
import fc from "fast-check";

/** Longer inputs are cut: what grows with an input's length shows well before [characters]. */
const LONGEST = 20_000;

/** Separators, signs, units, quotes, spaces that are none, halves of characters, formulas, huge numbers. */
const TROUBLE: readonly string[] = [
	..."\t\n\r\"'.,;:()[]+-*/=%^@#<>{}\\|_&~`0123456789eExX ",
	..."\0\u000b\u0085\u00a0\u00ad\u0301\u200b\u200f\u2028\u202e\u202f\u3000\ufeff\ufffd−×ø⌀Δ²₂³µμ″”’°İıſKß٣",
	"\ud800",
	"\udfff",
	"💥",
	"\r\n",
	'""',
	'"\t"',
	"constructor",
	"__proto__",
	"toString",
	"1e300",
	"1e-300",
	"1e999",
	"9007199254740993",
	"99999999999999999999",
	"1,234",
	"1.234,5",
	"1 3/4",
	"1/0",
	"-0",
	"Infinity",
	"NaN",
	"0x1F",
	"d 44",
	"44 x 60",
	"mm",
	"in",
	"kPa gauge",
	"psi abs",
	"inH2O",
	"degF",
	"°C",
	"cfm",
	"rpm",
	"%",
	"m2",
	"kg/h",
	"stations mm mm²: 0 1; 9 2 bends mm °: 4 45 6",
	"duct friction",
	"typed K",
	"plenum",
	"source",
	"port",
	"run",
];

/** One change of a text: where it begins and ends, as parts of its length, and what it does there. */
const change = fc.record({
	from: fc.double({ min: 0, max: 1, noNaN: true }),
	length: fc.oneof(
		fc.constant(0),
		fc.integer({ min: 0, max: 8 }),
		fc.integer({ min: 0, max: LONGEST }),
	),
	put: fc.oneof(
		{ weight: 4, arbitrary: fc.constantFrom(...TROUBLE) },
		{ weight: 1, arbitrary: fc.constant("") },
		{ weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 6 }) },
		{ weight: 1, arbitrary: fc.double().map(String) },
		// Repeated often enough for what goes through a text again and again to be caught.
		{
			weight: 1,
			arbitrary: fc
				.tuple(fc.constantFrom(...TROUBLE), fc.constantFrom(2, 3, 20, 201, LONGEST))
				.map(([text, times]) => text.repeat(times)),
		},
	),
});

type Change = typeof change extends fc.Arbitrary<infer Made> ? Made : never;

/** Texts near those of the corpus. */
export function near(texts: readonly string[]): fc.Arbitrary<string> {
	const seed = fc.constantFrom(...texts);
	const spliced = fc
		.tuple(seed, seed, fc.double({ min: 0, max: 1, noNaN: true }))
		.map(
			([one, other, part]) => one.slice(0, one.length * part) + other.slice(other.length * part),
		);
	return fc
		.tuple(
			fc.oneof({ weight: 3, arbitrary: seed }, { weight: 1, arbitrary: spliced }),
			fc.array(change, { maxLength: 5 }),
		)
		.map(([text, changes]) => changes.reduce(changed, text).slice(0, LONGEST));
}

function changed(text: string, { from, length, put }: Change): string {
	const at = Math.floor(from * text.length);
	return text.slice(0, at) + put + text.slice(at + length);
}
