/** Whether two values of a document mean the same: fields in any order, all else alike. */
export function same(one: unknown, other: unknown): boolean {
	if (one === other) return true;
	if (!isObject(one) || !isObject(other) || Array.isArray(one) !== Array.isArray(other))
		return false;
	const keys = Object.keys(one);
	return (
		keys.length === Object.keys(other).length &&
		keys.every((key) => key in other && same(one[key], other[key]))
	);
}

export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
	return typeof value === "object" && value !== null;
}
