/** A sheet while a block is being pasted into it, and what has to be said of it afterwards. */
import { keyOf, type Sheet } from "../network/edit";
import type { Decimal } from "../number/separators";
import { readSchedule } from "../schedule/whole";
import { readNumber, unitsOf } from "../units";
import { write } from "./cellText";
import { type Book, type Cell, type Line, lineAt } from "./grid";

/** A cell whose text can be read in two ways. */
export interface Asked {
	readonly key: string;
	readonly text: string;
}

export class Pasting {
	readonly asked: Asked[] = [];
	/** Texts for which there was no cell. */
	readonly unplaced: string[] = [];

	constructor(
		public sheet: Sheet,
		readonly book: Book,
		/** What the block tells of its commas. */
		readonly decimal: Decimal | undefined,
	) {}

	/** Gives a cell its text. A name or kind is never emptied: it is what the row is. */
	write(line: Line, cell: Cell, text: string) {
		const blank = text.trim() === "";
		if (blank && (cell.holds === "name" || cell.column === "kind")) return;
		if (cell.holds === "schedule" && !blank && !readSchedule(text, this.book.units)) {
			this.refuse([text]);
			return;
		}
		this.sheet = write(this.sheet, line, cell, text, this.book, this.decimal);
		if (cell.holds !== "number") return;
		const { info, path } = cell;
		const units = unitsOf(info, this.book.units);
		const reading = readNumber(text, info.quantity, units, this.decimal);
		if (reading.kind === "unreadable" && reading.readings) {
			this.asked.push({ key: keyOf(path), text });
		}
	}

	/** Gives cells their texts in turn. */
	writeAll(line: Line, cells: readonly Cell[], texts: readonly string[]) {
		for (const [place, cell] of cells.entries()) this.write(line, cell, texts[place] ?? "");
		this.refuse(texts.slice(cells.length));
	}

	/** Keeps texts that have no cell, to be said. */
	refuse(texts: readonly (string | undefined)[]) {
		for (const text of texts) if (text?.trim()) this.unplaced.push(text.trim());
	}

	/** A line as it is by now. */
	again(line: Line): Line {
		return lineAt(line, this.sheet.study, this.book.catalogue);
	}
}
