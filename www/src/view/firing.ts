/** The firing order as text in one cell. */

/** Cylinder names with spaces between them. */
export function firingText(order: readonly string[] | undefined): string {
	return (order ?? []).join(" ");
}

/**
 * Reads names with commas or spaces between them. Hyphens separate too, unless a cylinder has one in
 * its name.
 */
export function readFiring(text: string, cylinders: readonly { readonly id: string }[]): string[] {
	const hyphened = cylinders.some(({ id }) => /[-–]/.test(id));
	return text.split(hyphened ? /[\s,;]+/ : /[\s,;–-]+/).filter((name) => name !== "");
}
