/** The state of each table on the page beside the study: what is selected, sorted, filtered, asked. */
import { keyOf, type Path, valueAt } from "../network/edit";
import { editor } from "../network/editor.svelte";
import type { Study } from "../solver/types";
import { catalogue } from "../view/catalogue.svelte";
import { openedKey } from "./also";
import { arranged, type Sorting } from "./arrange";
import { type Book, LISTS, type Line, lines, type TableName } from "./grid";
import type { Selection } from "./select";

/** Something that has to be said of what has just been done, with answers to choose from. */
export interface Notice {
	readonly text: string;
	readonly answers: readonly { readonly label: string; readonly act: () => void }[];
}

/** One row as far as sorting and filtering need it. */
export interface RowView {
	/** What a filter looks in. */
	readonly text: string;
	/** What it can be sorted by. */
	readonly keys: Readonly<Record<string, string | number | undefined>>;
}

export class Table {
	selection = $state.raw<Selection | null>(null);
	notice = $state.raw<Notice | null>(null);
	filter = $state.raw("");
	sorting = $state.raw<Sorting | null>(null);
	/** The places of the shown rows in their order; null for all of them in the study's order. */
	order = $state.raw<readonly number[] | null>(null);
	/** Seldom-used fields that are shown although they hold nothing, by row and field. */
	opened = $state.raw<ReadonlySet<string>>(new Set());
	/** The cell that had the focus last, which the buttons above the table act on. */
	current: string | null = null;
	/** The element that shows it, and the one behind it where the keys go on. */
	element: HTMLElement | null = null;
	afterwards: HTMLElement | null = null;
	readonly list: Path;
	private rows: readonly unknown[] = [];
	private always: ReadonlySet<number> = new Set();

	constructor(
		readonly name: TableName,
		/** What its rows are sorted and filtered by; the places are those in the study. */
		private readonly look: (study: Study) => readonly RowView[] = () => [],
	) {
		this.list = LISTS[name];
	}

	/** The lines as shown; null before the page has a study. */
	lines(): { readonly all: Line[]; readonly book: Book } | null {
		const { sheet, units } = editor;
		const { entries } = catalogue;
		if (!sheet || !entries) return null;
		const all = lines(this.name, sheet, entries, this.order, this.opened);
		return { all, book: { catalogue: entries, units } };
	}

	/** What is selected: several cells or rows, or the one cell that had the focus last. */
	selected(): Selection | null {
		const { selection, current } = this;
		if (selection || current === null) return selection;
		return { anchor: current, head: current, rows: false };
	}

	/** Says something above the table; nothing takes away what was said. */
	say(text: string) {
		this.notice = text ? { text, answers: [] } : null;
	}

	/** Shows these seldom-used fields of a row, or no longer those of them that hold nothing. */
	open(row: string, fields: readonly string[], shown = true) {
		const keys = fields.map((field) => openedKey(row, field));
		if (keys.every((key) => this.opened.has(key) === shown)) return;
		const opened = new Set(this.opened);
		for (const key of keys) {
			if (shown) opened.add(key);
			else opened.delete(key);
		}
		this.opened = opened;
	}

	/** Sorts and filters anew. The order stays as it is while values change. */
	arrange(filter: string, sorting: Sorting | null) {
		this.filter = filter;
		this.sorting = sorting;
		this.always = new Set();
		this.arrangeAgain();
	}

	/** Shows all rows in the study's order. */
	showAll() {
		this.arrange("", null);
	}

	/** Shows the row of this element, if it is hidden; whether it was. */
	reveal(element: string): boolean {
		if (!this.order) return false;
		const place = this.rows.findIndex((row) => (row as { id: string }).id === element);
		return place >= 0 && this.revealRow(place);
	}

	/** Shows the row of the cell with this key, if it is hidden; whether it was. */
	revealKey(key: string): boolean {
		const start = `${keyOf(this.list)}.`;
		if (!this.order || !key.startsWith(start)) return false;
		return this.revealRow(Number(key.slice(start.length).split(".")[0]));
	}

	/** Takes notice of another list of rows; rows that are new in it are shown whatever the filter says. */
	follow(rows: readonly unknown[]) {
		const before = this.rows;
		this.rows = rows;
		if (!this.order || rows === before) return;
		const known = new Map(before.map((row, place) => [row, place]));
		const added = rows.flatMap((row, place) => (known.has(row) ? [] : [place]));
		if (added.length === rows.length && rows.length > 1) this.showAll();
		else if (rows.length !== before.length) {
			const stay = rows.flatMap((row, place) =>
				this.always.has(known.get(row) ?? -1) ? [place] : [],
			);
			this.always = new Set([...stay, ...added]);
			this.arrangeAgain();
		}
	}

	private revealRow(place: number): boolean {
		if (this.order?.includes(place)) return false;
		this.always = new Set([...this.always, place]);
		this.arrangeAgain();
		return true;
	}

	private arrangeAgain() {
		const study = editor.sheet?.study;
		if (!study || (this.filter.trim() === "" && !this.sorting)) {
			this.order = null;
			return;
		}
		this.rows = valueAt(study, this.list) as readonly unknown[];
		const views = this.look(study);
		const { by, falling } = this.sorting ?? { by: "", falling: false };
		const keys = this.sorting ? views.map((view) => view.keys[by]) : null;
		const texts = views.map(({ text }) => text);
		this.order = arranged(texts, this.filter, keys, falling, this.always);
	}
}

/** The element of a cell. */
export function controlAt(table: HTMLElement, key: string): HTMLElement | null {
	return table.querySelector<HTMLElement>(`[data-path="${CSS.escape(key)}"]`);
}
