/**
 * Sums and products typed into a cell: `3*12.5`, `12+3/4`, `1 3/4`. They are worked out exactly, as
 * fractions of whole numbers, so that 0.3-0.1 is 0.2. The value is kept and the text is not.
 */
import { type Decimal, LONGEST, readDigits } from "./separators";

/** What stands at the beginning of a text, and what is left behind it: a unit, or nothing. */
export type Sum =
	| {
			readonly kind: "value";
			readonly value: number;
			readonly rest: string;
			/** Whether a comma in it can be decimals or thousands; the value then has it as decimals. */
			readonly either: boolean;
	  }
	| { readonly kind: "wrong"; readonly message: string };

/** Powers of ten beyond which a number is no measure of anything. */
const LARGEST = 300;

/** What every reader reads alike; beyond so many digits it is worked out like a sum. */
const PLAIN = /^\d{1,15}(?:\.\d{1,15})?$/;

interface Fraction {
	readonly over: bigint;
	readonly under: bigint;
}

/** What is wrong with a text; no error of the program, so no trace of it is kept. */
class Wrong {
	constructor(readonly message: string) {}
}

/** Works out the sum at the beginning of a text. */
export function readSum(text: string, decimal?: Decimal): Sum {
	if (text.length > LONGEST) return { kind: "wrong", message: "Too long for a number." };
	// Most cells hold a plain number, and pasted blocks thousands of them.
	if (decimal !== "comma" && PLAIN.test(text)) {
		return { kind: "value", value: Number(text), rest: "", either: false };
	}
	try {
		const reader = new Reader(text, decimal);
		const value = toNumber(reader.sum());
		if (!Number.isFinite(value)) throw new Wrong("Too large for a number.");
		return { kind: "value", value, rest: reader.rest, either: reader.either };
	} catch (reason) {
		if (reason instanceof Wrong) return { kind: "wrong", message: reason.message };
		throw reason;
	}
}

class Reader {
	either = false;
	private at = 0;
	private readonly text: string;
	private readonly decimal: Decimal | undefined;

	constructor(text: string, decimal?: Decimal) {
		this.text = text.replaceAll("−", "-").replaceAll("×", "*");
		this.decimal = decimal;
	}

	get rest(): string {
		return this.text.slice(this.at).trim();
	}

	sum(): Fraction {
		let left = this.product();
		for (let sign = this.take(/^[+-]/); sign; sign = this.take(/^[+-]/)) {
			const right = this.product();
			const added = sign === "+" ? right.over : -right.over;
			left = {
				over: left.over * right.under + added * left.under,
				under: left.under * right.under,
			};
		}
		return left;
	}

	private product(): Fraction {
		let left = this.factor();
		for (let sign = this.take(/^[*/]/); sign; sign = this.take(/^[*/]/)) {
			const right = this.factor();
			left = sign === "*" ? times(left, right) : divided(left, right);
		}
		return left;
	}

	private factor(): Fraction {
		const sign = this.take(/^[+-]/);
		if (sign) {
			const { over, under } = this.factor();
			return { over: sign === "-" ? -over : over, under };
		}
		if (this.take(/^\(/)) {
			const inner = this.sum();
			if (!this.take(/^\)/)) throw new Wrong("A bracket is open: “)” is missing.");
			return inner;
		}
		return this.mixed() ?? this.number();
	}

	/** A whole number and a fraction, as inches are written: `1 3/4`. */
	private mixed(): Fraction | null {
		const found = this.take(/^\d+ +\d+ *\/ *\d+(?![\d.,])/);
		if (!found) return null;
		const [whole = "", over = "", under = ""] = found.split(/[ /]+/);
		const part = divided(wholeNumber(over), wholeNumber(under));
		return { over: BigInt(whole) * part.under + part.over, under: part.under };
	}

	private number(): Fraction {
		const typed = this.take(/^[.,]?\d(?:\d|[.,]|[\u00a0\u202f'’](?=\d{3}(?!\d)))*/);
		if (!typed) throw new Wrong(this.rest === "" ? "A number is missing." : "Not a number.");
		let digits = readDigits(typed, this.decimal);
		if (digits.kind === "either") {
			this.either = true;
			digits = readDigits(typed, "comma");
		}
		if (digits.kind !== "plain") {
			throw new Wrong(`“${typed}” has separators that do not fit together.`);
		}
		const power = Number(this.take(/^[eE][+-]?\d+/, false)?.slice(1) ?? 0);
		if (Math.abs(power) > LARGEST) throw new Wrong("Too large for a number.");
		const [whole = "", decimals = ""] = digits.digits.split(".");
		const value = BigInt(`${whole}${decimals}` || "0");
		const places = power - decimals.length;
		return places < 0
			? { over: value, under: 10n ** BigInt(-places) }
			: { over: value * 10n ** BigInt(places), under: 1n };
	}

	private take(what: RegExp, spaced = true): string | null {
		const blank = spaced ? (/^\s*/.exec(this.text.slice(this.at))?.[0].length ?? 0) : 0;
		const found = what.exec(this.text.slice(this.at + blank))?.[0];
		if (found === undefined) return null;
		this.at += blank + found.length;
		return found;
	}
}

function wholeNumber(digits: string): Fraction {
	return { over: BigInt(digits), under: 1n };
}

function times(left: Fraction, right: Fraction): Fraction {
	return { over: left.over * right.over, under: left.under * right.under };
}

function divided(left: Fraction, right: Fraction): Fraction {
	if (right.over === 0n) throw new Wrong("Nothing can be divided by zero.");
	return times(left, { over: right.under, under: right.over });
}

/** The nearest number to a fraction: 25 of its digits, which the language then rounds once. */
function toNumber({ over, under }: Fraction): number {
	if (over === 0n) return 0;
	const length = (value: bigint) => String(value < 0n ? -value : value).length;
	const places = 25 - length(over) + length(under);
	const digits =
		places < 0 ? over / (under * 10n ** BigInt(-places)) : (over * 10n ** BigInt(places)) / under;
	return Number(`${digits}e${-places}`);
}
