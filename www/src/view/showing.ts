/** Looks at one part of the network everywhere: sketch, table and budget. */
import { choice } from "./choice.svelte";

/** From this width on the table stands beside the answer, so that bringing a row into view hides nothing. */
const BESIDE = "(min-width: 68rem)";

/** Marks a part everywhere, shows the budget of a port, and brings its row in the table into view. */
export function show(element: string, loss: number | null = null) {
	choice.choosePart(element, loss);
	if (choice.solved?.paths.some(({ port }) => port === element)) choice.choosePort(element);
	if (!matchMedia(BESIDE).matches) return;
	const row = document.querySelector(`[data-row="${CSS.escape(element)}"]`);
	const place = loss === null ? null : row?.querySelector(`[data-loss="${loss}"]`);
	(place ?? row)?.scrollIntoView({ block: "nearest", inline: "nearest" });
}

/** Marks the part whose row in the tables has the focus. */
export function followsFocus(tables: HTMLElement) {
	const listener = ({ target }: FocusEvent) => {
		if (!(target instanceof Element)) return;
		const row = target.closest<HTMLElement>("[data-row]");
		const loss = target.closest<HTMLElement>("[data-loss]")?.dataset.loss;
		if (row?.dataset.row) choice.choosePart(row.dataset.row, loss ? Number(loss) : null);
	};
	tables.addEventListener("focusin", listener);
	return () => tables.removeEventListener("focusin", listener);
}
