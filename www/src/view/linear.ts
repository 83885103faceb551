/** A linear scale: five lines that spare the reader a colour library and a number formatter. */
export function linear(
	[from, to]: readonly [number, number],
	[start, end]: readonly [number, number],
): (value: number) => number {
	return (value) => start + ((value - from) / (to - from)) * (end - start);
}
