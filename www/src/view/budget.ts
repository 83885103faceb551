/** What a pressure budget comes to. */
import type { BudgetItem } from "../solver/types";

/** The losses' sum, and that of what a blower or a header adds, as a negative fall [Pa]. */
export function sums(items: readonly BudgetItem[]): { lost: number; gained: number } {
	const sum = (wanted: (fall: number) => boolean) =>
		items.reduce((all, { fall }) => (wanted(fall) ? all + fall : all), 0);
	return { lost: sum((fall) => fall > 0), gained: sum((fall) => fall < 0) };
}
