/** Filling down: the first selected row's values into the same fields of the rows below. */
import { draft, keyOf, put, type Sheet, valueAt } from "../network/edit";
import { withPassages } from "../network/passages";
import { fillSchedule } from "../schedule/whole";
import { textOf, write } from "./cellText";
import { type Book, type Cell, findCell, type Line, lineAt } from "./grid";
import { alike, type Chosen, chosen, has, type Selection } from "./select";

/** What a row is and where it stands, which whole rows keep when they are filled. */
const OWN: ReadonlySet<string> = new Set([
	"id",
	"kind",
	"way",
	"from",
	"to",
	"fromLeg",
	"toLeg",
	"cylinder",
]);

/**
 * Fills the selected cells from the first selected line, the losses of a branch over the losses of like
 * kind. One cell alone is filled from the nearest line above that has such a cell.
 */
export function fillDown(
	sheet: Sheet,
	all: readonly Line[],
	selection: Selection,
	book: Book,
): Sheet {
	const selected = chosen(all, selection);
	const first = selected[0];
	if (!first) return sheet;
	if (selection.rows && first.line.what === "branch") return fillBranches(sheet, selected, book);
	const [source, targets] =
		selected.length > 1 ? [first.line, selected.slice(1)] : [above(all, first), [first]];
	if (!source) return sheet;
	return targets.reduce((left, { line, cells }) => {
		if (!alike(line, source) || (selection.rows && line.kind !== source.kind)) return left;
		const filled = selection.rows ? cells.filter(({ column }) => !OWN.has(column)) : cells;
		return fillLine(left, source, line, filled, book);
	}, sheet);
}

/** Fields of the branches, and their losses in turn over the losses of the same kind. */
function fillBranches(sheet: Sheet, selected: readonly Chosen[], book: Book): Sheet {
	// The first branch may have a field that is not in sight in the others.
	const whole = (line: Line) =>
		line.what === "branch" ? lineAt(line, sheet.study, book.catalogue) : line;
	const [source, ...targets] = split(selected.map(({ line }) => whole(line)));
	let now = sheet;
	for (const target of source ? targets : []) {
		const seen = new Map<string, number>();
		for (const line of target) {
			const nth = seen.get(line.kind) ?? 0;
			seen.set(line.kind, nth + 1);
			const from = source?.filter((each) => alike(each, line))[nth];
			const cells = line.cells.filter(({ column }) => !OWN.has(column));
			if (from) now = fillLine(now, from, line, cells, book);
		}
	}
	return now;
}

function split(all: readonly Line[]): Line[][] {
	const branches: Line[][] = [];
	for (const line of all) {
		if (line.what === "branch") branches.push([line]);
		else branches.at(-1)?.push(line);
	}
	return branches;
}

function fillLine(
	sheet: Sheet,
	source: Line,
	target: Line,
	cells: readonly Cell[],
	book: Book,
): Sheet {
	return cells.reduce((left, cell) => {
		const from = source.cells.find(({ column }) => column === cell.column);
		if (!from || cell.holds === "name") return left;
		if (cell.holds === "schedule") {
			return fillSchedule(left, from.path.slice(0, -1), cell.path.slice(0, -1));
		}
		const text = left.drafts[keyOf(from.path)];
		if (text !== undefined) return draft(left, cell.path, text);
		const value = valueAt(left.study, from.path);
		// Another kind, or another way to give a pressure, brings other fields along.
		if (cell.column === "kind" || cell.column === "way") {
			return write(left, target, cell, textOf(left, from, book), book);
		}
		return withPassages(put(left, cell.path, value));
	}, sheet);
}

function above(all: readonly Line[], { line, cells }: Chosen): Line | undefined {
	const column = cells[0]?.column ?? "";
	const at = findCell(all, keyOf(cells[0]?.path ?? []))?.at ?? 0;
	return all
		.slice(0, at)
		.reverse()
		.find((each) => alike(each, line) && has(each, column));
}
