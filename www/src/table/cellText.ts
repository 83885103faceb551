/** The text that a cell shows, and what becomes of text that is given to it. */
import { changeLoss, changeNode } from "../network/blank";
import { draft, keyOf, put, type Sheet, valueAt } from "../network/edit";
import { withPassages } from "../network/passages";
import { renameBranch, renameCylinder, renameNode } from "../network/rename";
import { changeSource, type Source, type SourceWay, sourceWay } from "../network/source";
import type { Decimal } from "../number/separators";
import { putSchedule, readSchedule, scheduleText } from "../schedule/whole";
import type { Study } from "../solver/types";
import { cellText, readNumber, unitsOf } from "../units";
import { LEG_WORDS, SOURCE_WORDS } from "../view/words";
import type { Book, Cell, ChoiceOf, Line } from "./grid";

/** The whole text of a cell, every digit of it. */
export function textOf(sheet: Sheet, cell: Cell, book: Book): string {
	const kept = sheet.drafts[keyOf(cell.path)];
	if (kept !== undefined) return kept;
	if (cell.holds === "schedule") {
		return scheduleText(sheet, cell.path.slice(0, -1), book.units);
	}
	const value = held(sheet.study, cell);
	if (value === undefined || value === null) return "";
	if (cell.holds === "number") {
		return cellText(value as number, unitsOf(cell.info, book.units)[cell.info.quantity], true);
	}
	if (cell.holds !== "choice") return String(value);
	return choices(cell.of, sheet.study, book).find(([name]) => name === value)?.[1] ?? String(value);
}

/** What a cell holds. How a source's pressure is given is told by the fields that stand in it. */
function held(study: Study, cell: Cell): unknown {
	if (cell.holds !== "choice" || cell.of !== "sourceWay") return valueAt(study, cell.path);
	return sourceWay(valueAt(study, cell.path.slice(0, -1)) as Source);
}

/**
 * Gives a cell a text, as if it had been typed: what cannot be read is kept in the cell and marked.
 * A section schedule keeps its lists when the text holds none. `decimal` is what the surroundings of the text
 * have told of its commas.
 */
export function write(
	sheet: Sheet,
	line: Line,
	cell: Cell,
	text: string,
	book: Book,
	decimal?: Decimal,
): Sheet {
	if (cell.holds === "name") return rename(sheet, line, text.trim());
	if (cell.holds === "text") return put(sheet, cell.path, text.trim() || cell.bare);
	if (cell.holds === "choice") return choose(sheet, line, cell, text.trim(), book);
	if (cell.holds === "schedule") {
		const lists = readSchedule(text, book.units);
		return lists ? putSchedule(sheet, cell.path.slice(0, -1), lists) : sheet;
	}
	const { info, path } = cell;
	const reading = readNumber(text, info.quantity, unitsOf(info, book.units), decimal);
	if (reading.kind === "value") return put(sheet, path, reading.value);
	if (reading.kind === "empty" && !info.required) return put(sheet, path, undefined);
	return draft(sheet, path, text);
}

/** Empties a cell; names and kinds are what a row is, so they stay. */
export function clear(sheet: Sheet, cell: Cell): Sheet {
	switch (cell.holds) {
		// Without its stations a section schedule is none.
		case "name":
		case "schedule":
			return sheet;
		case "text":
			return put(sheet, cell.path, cell.bare);
		case "choice":
			if (cell.bare === undefined) return sheet;
			return withPassages(put(sheet, cell.path, cell.bare === "" ? "" : undefined));
		case "number":
			return cell.info.required ? draft(sheet, cell.path, "") : put(sheet, cell.path, undefined);
	}
}

/** Gives a branch, node or cylinder another name, and whatever refers to it follows. */
export function rename(sheet: Sheet, { what, index }: Line, name: string): Sheet {
	if (what === "branch") return renameBranch(sheet, index, name);
	if (what === "node") return renameNode(sheet, index, name);
	return renameCylinder(sheet, index, name);
}

/** The name in the file that a choice's text stands for. */
export function named(of: ChoiceOf, text: string, study: Study, book: Book): string | undefined {
	const asked = text.trim().toLowerCase();
	return choices(of, study, book).find((each) =>
		each.some((known) => known.toLowerCase() === asked),
	)?.[0];
}

function choose(
	sheet: Sheet,
	line: Line,
	cell: Extract<Cell, { holds: "choice" }>,
	text: string,
	book: Book,
): Sheet {
	if (text === "") return clear(sheet, cell);
	const name = named(cell.of, text, sheet.study, book);
	if (name === undefined) return draft(sheet, cell.path, text);
	if (cell.of === "sourceWay") return changeSource(sheet, line.index, name as SourceWay);
	if (cell.of === "cooler") return withPassages(put(sheet, cell.path, name));
	const { losses, nodes } = book.catalogue;
	const kind = { loss: losses, node: nodes }[cell.of as "loss" | "node"]?.find(
		(each) => each.kind === name,
	);
	if (!kind) return put(sheet, cell.path, name);
	if (kind.kind === line.kind) return put(sheet, cell.path, name);
	return cell.of === "loss"
		? changeLoss(sheet, line.list, line.index, kind)
		: changeNode(sheet, line.index, kind);
}

function choices(of: ChoiceOf, study: Study, { catalogue }: Book): (readonly [string, string])[] {
	switch (of) {
		case "loss":
			return catalogue.losses.map(({ kind, label }) => [kind, label]);
		case "node":
			return catalogue.nodes.map(({ kind, label }) => [kind, label]);
		case "junctionLaw":
			return catalogue.junctionLaws.map(({ name, label }) => [name, label]);
		case "leg":
			return Object.entries(LEG_WORDS);
		case "cylinder":
			return study.engine.cylinders.map(({ id }) => [id, id]);
		case "cooler":
			return (study.coolers ?? []).map(({ id }) => [id, id]);
		case "sourceWay":
			return Object.entries(SOURCE_WORDS);
	}
}
