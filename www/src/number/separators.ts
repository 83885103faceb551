/**
 * Decimal and thousands separators. "1,234" is 1.234 to one reader and 1234 to another: which of them a
 * block of numbers means is told by its other numbers, or it is not told at all.
 */

/** The character that a text uses before its decimals. */
export type Decimal = "point" | "comma";

/** No honest cell holds a longer number, sum or unit; longer text is not worked out [characters]. */
export const LONGEST = 200;

/** Digits with separators in them, read as far as they can be. */
export type Digits =
	/** Digits with at most a decimal point. */
	| { readonly kind: "plain"; readonly digits: string }
	/** A comma before three digits, with nothing that tells which kind it is. */
	| { readonly kind: "either" }
	| { readonly kind: "wrong" };

/** Spaces that do not break and apostrophes stand between thousands only, so they tell nothing else. */
const SPACED = /^\d{1,3}(?:[\u00a0\u202f'’]\d{3})+(?=[.,]\d*$|$)/;

/** Reads digits with points and commas in them; `decimal` says what their surroundings have told. */
export function readDigits(typed: string, decimal?: Decimal): Digits {
	const spaced = SPACED.exec(typed)?.[0];
	const text = spaced ? spaced.replace(/\D/g, "") + typed.slice(spaced.length) : typed;
	if (/^(?:\d+\.?\d*|\.\d+)$/.test(text)) {
		const grouped = decimal === "comma" && !spaced && isThousand(text, ".");
		return { kind: "plain", digits: grouped ? text.replace(".", "") : text };
	}
	if (/^(?:\d+,\d*|,\d+)$/.test(text)) {
		if (spaced || !isThousand(text, ",") || decimal === "comma") {
			return { kind: "plain", digits: text.replace(",", ".") };
		}
		return decimal === "point"
			? { kind: "plain", digits: text.replace(",", "") }
			: { kind: "either" };
	}
	if (/^\d{1,3}(?:,\d{3})+(?:\.\d*)?$/.test(text)) {
		return { kind: "plain", digits: text.replaceAll(",", "") };
	}
	if (/^\d{1,3}(?:\.\d{3})+(?:,\d*)?$/.test(text)) {
		return { kind: "plain", digits: text.replaceAll(".", "").replace(",", ".") };
	}
	return { kind: "wrong" };
}

/**
 * What the numbers of a block tell of its separators; undefined when they tell nothing, or contradict
 * each other. Two separators in one number tell, and decimals that cannot be a group of thousands.
 */
export function evidence(texts: readonly string[]): Decimal | undefined {
	const told = new Set<Decimal>();
	for (const text of texts.filter((each) => each.length <= LONGEST && NUMBERS.test(each))) {
		for (const [number] of text.matchAll(/\d*(?:[.,]\d+)+/g)) {
			const tells = one(number);
			if (tells) told.add(tells);
		}
	}
	return told.size === 1 ? [...told][0] : undefined;
}

/** Text that begins as a number or a section does; a name such as v1.2 tells nothing. */
const NUMBERS = /^\s*(?:d\s*|ø\s*|⌀\s*)?[-+−(]*[\d.,]/i;

function one(number: string): Decimal | undefined {
	const last = Math.max(number.lastIndexOf("."), number.lastIndexOf(","));
	const mark = number.charAt(last);
	const itself: Decimal = mark === "." ? "point" : "comma";
	const other: Decimal = mark === "." ? "comma" : "point";
	const marks = new Set(number.replace(/\d/g, ""));
	if (marks.size === 2) return itself;
	if (number.indexOf(mark) !== last) return other;
	return isThousand(number, mark) ? undefined : itself;
}

/** Whether a number with one separator could be thousands: one to three digits, then exactly three. */
function isThousand(text: string, mark: string): boolean {
	const [before = "", after = ""] = text.split(mark);
	return /^[1-9]\d{0,2}$/.test(before) && /^\d{3}$/.test(after);
}
