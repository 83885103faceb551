/** The passages of charge coolers: the cores in branches that name one, and the coolant's way through them. */
import type { Cooler, Study } from "../solver/types";
import { type Path, put, type Sheet } from "./edit";

/** The ids of the branches that hold passages of a charge cooler. */
export function passages({ network }: Study, cooler: string): string[] {
	return network.branches.flatMap(({ id, losses }) =>
		losses.some((loss) => loss.kind === "core" && loss.cooler === cooler) ? [id] : [],
	);
}

/** The same in the order in which the coolant passes them; a new one comes last. */
export function inOrder(study: Study, { id, series = [] }: Cooler): string[] {
	const own = passages(study, id);
	return [
		...series.filter((each) => own.includes(each)),
		...own.filter((each) => !series.includes(each)),
	];
}

/** Lets the order of the coolant follow passages that have come or gone. */
export function withPassages(sheet: Sheet): Sheet {
	return (sheet.study.coolers ?? []).reduce((left, cooler, index) => {
		if (!cooler.series) return left;
		const order = inOrder(sheet.study, cooler);
		const same =
			order.length === cooler.series.length && order.every((id, at) => id === cooler.series?.[at]);
		return same ? left : putSeries(left, index, order);
	}, sheet);
}

/** Lets the coolant pass the passages one after the other; side by side when there is no order. */
export function putSeries(
	sheet: Sheet,
	index: number,
	order: readonly string[] | undefined,
): Sheet {
	return put(sheet, ["coolers", index, "series"], order?.length ? order : undefined);
}

/** Says in which charge cooler a core exchanges heat; in none when the id is empty. */
export function chooseCooler(sheet: Sheet, core: Path, cooler: string): Sheet {
	return withPassages(put(sheet, [...core, "cooler"], cooler || undefined));
}
