/** Rows of a network. */
type Rows = readonly { readonly id: string }[];

const single = new WeakMap<Rows, boolean>();

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

/** Whether rows of the same names stand in the same order. */
export function areBeside(one: Rows, other: Rows): boolean {
	return one.length === other.length && one.every(({ id }, at) => id === other[at]?.id);
}

/** Whether no two rows share a name; worked out once for each list. */
export function haveOwnNames(rows: Rows): boolean {
	const known = single.get(rows) ?? new Set(rows.map(({ id }) => id)).size === rows.length;
	single.set(rows, known);
	return known;
}
