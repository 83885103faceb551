/**
 * Keys and pointer in a table. A cell is selected or edited, as in a spreadsheet. Selected, the arrows
 * move on and typing takes the place of what was there; edited, by F2, Enter, a double click or a second
 * click, the arrows move the text cursor. Text that is being typed over is left by the arrows.
 */
import { flushSync } from "svelte";
import { on } from "svelte/events";
import { keyOf } from "../network/edit";
import { editor } from "../network/editor.svelte";
import type { Action } from "./actions";
import { act, copy, paste, prepare } from "./editing";
import { findCell } from "./grid";
import { alike, chosen, firstKey, type Move, moved, type Selection, stretched } from "./select";
import { controlAt, type Table } from "./table.svelte";

/** A button opens what is too much for a cell. */
type Control = HTMLInputElement | HTMLSelectElement | HTMLButtonElement;

const MOVES: Readonly<Record<string, Move>> = {
	ArrowUp: "up",
	ArrowDown: "down",
	ArrowLeft: "left",
	ArrowRight: "right",
	Home: "lineStart",
	End: "lineEnd",
	PageUp: "pageUp",
	PageDown: "pageDown",
};

const FAR: Readonly<Record<string, Move>> = {
	ArrowUp: "top",
	ArrowDown: "bottom",
	ArrowLeft: "lineStart",
	ArrowRight: "lineEnd",
	Home: "first",
	End: "last",
};

/** With Alt and Shift: by the key, for Alt writes other letters on some systems. */
const LETTERS: Readonly<Record<string, Action>> = {
	KeyB: "base",
	KeyS: "sweep",
	KeyM: "sweepSecond",
};

/** Makes a grid of a table. */
export function grid(table: Table) {
	return (element: HTMLElement) => {
		const cells = new GridCells(table, element);
		table.element = element;
		const stops = [
			on(element, "focusin", (event) => cells.focusIn(event)),
			on(element, "input", () => cells.type()),
			on(element, "keydown", (event) => cells.key(event)),
			on(element, "mousedown", (event) => cells.press(event)),
			on(element, "mouseover", (event) => cells.drag(event)),
			on(element, "mouseup", (event) => cells.release(event)),
			on(element, "copy", (event) => cells.copy(event, false)),
			on(element, "cut", (event) => cells.copy(event, true)),
			on(element, "paste", (event) => cells.paste(event)),
		];
		$effect(() => cells.mark());
		return () => {
			for (const stop of stops) stop();
			table.element = null;
		};
	};
}

class GridCells {
	private mode: "selected" | "typed" | "edited" = "selected";
	/** Where the pointer went down: a cell, or a row's number. */
	private pressed: { key: string; rows: boolean; had: boolean } | null = null;
	private marked: Element[] = [];

	constructor(
		private readonly table: Table,
		private readonly element: HTMLElement,
	) {}

	focusIn({ target }: FocusEvent) {
		const control = controlOf(target);
		if (!control) return;
		const key = keyAt(control);
		prepare();
		this.table.current = key;
		this.set(control, "selected");
		if (this.table.selection && this.table.selection.anchor !== key) this.table.selection = null;
		if (!this.table.selection) this.markAll([control]);
	}

	/** Text that replaces what was there. */
	type() {
		const control = this.active();
		if (!control || this.mode !== "selected") return;
		this.set(control, "typed");
		this.table.selection = null;
	}

	key(event: KeyboardEvent) {
		const control = controlOf(event.target);
		if (!control || event.isComposing) return;
		const taken =
			this.mode === "selected" ? this.keySelected(event, control) : this.keyText(event, control);
		if (taken) event.preventDefault();
	}

	/** A key while text is typed or edited; whether it has been used. */
	private keyText(event: KeyboardEvent, control: Control): boolean {
		const far = event.ctrlKey || event.metaKey;
		// An undo or redo puts another text into the cell, which is then selected again.
		if (far && /^[zy]$/i.test(event.key)) this.set(control, "selected");
		const action = far ? commanded(event) : undefined;
		if (action && action !== "remove") {
			this.leave(control);
			act(this.table, action);
			return true;
		}
		switch (event.key) {
			case "Escape":
				// The cell has taken back its text by now.
				flushSync();
				this.leave(control);
				return true;
			case "Enter":
				this.go(control, event.shiftKey ? "up" : "down");
				return true;
			case "F2":
				this.set(control, this.mode === "typed" ? "edited" : "typed");
				return true;
		}
		const move = event.key.startsWith("Arrow") ? MOVES[event.key] : undefined;
		if (this.mode === "edited" || !move || modified(event)) return false;
		// Up and down choose from the names that are offered for what has been typed.
		if ((move === "up" || move === "down") && control.hasAttribute("list")) return false;
		this.go(control, move);
		return true;
	}

	/** A key on a selected cell; whether it has been used. */
	private keySelected(event: KeyboardEvent, control: Control): boolean {
		const far = event.ctrlKey || event.metaKey;
		const move = (far ? FAR : MOVES)[event.key];
		if (event.altKey) {
			const action = event.shiftKey && !far ? LETTERS[event.code] : undefined;
			if (action) {
				act(this.table, action);
				return true;
			}
			const up = event.key === "ArrowUp";
			if (!event.shiftKey || far || !(up || event.key === "ArrowDown")) return false;
			act(this.table, up ? "up" : "down");
			return true;
		}
		if (move) {
			if (event.shiftKey) this.stretch(control, move);
			else this.go(control, move);
			return true;
		}
		const action = far ? commanded(event) : undefined;
		if (action) {
			act(this.table, action);
			return true;
		}
		if (far) return this.selectAll(event, control);
		switch (event.key) {
			case "Enter":
				if (event.shiftKey) this.go(control, "up");
				else this.edit(control);
				return true;
			case "F2":
				this.edit(control);
				return true;
			case "Delete":
			case "Backspace":
				// One text alone is deleted as if it were typed over, so that Escape brings it back.
				if (!this.table.selection && control instanceof HTMLInputElement) break;
				act(this.table, "clear");
				return true;
			case "Escape":
				if (!this.table.selection) return false;
				this.table.selection = null;
				return true;
			case " ":
				if (!event.shiftKey) break;
				this.selectRow(keyAt(control));
				return true;
		}
		// What is typed replaces the whole, also after an undo has written another text into the cell.
		const collapsed =
			control instanceof HTMLInputElement && control.selectionStart === control.selectionEnd;
		if (collapsed && !far && /^(?:.|Delete|Backspace)$/u.test(event.key)) control.select();
		return false;
	}

	private selectAll(event: KeyboardEvent, control: Control): boolean {
		const all = this.table.lines()?.all;
		if (event.key.toLowerCase() !== "a" || !all) return false;
		const heads = all.filter(({ what }) => what !== "loss");
		const [first, last] = [firstKey(heads[0]), firstKey(heads.at(-1))];
		if (!first || !last) return false;
		this.table.selection = { anchor: first, head: last, rows: true };
		if (keyAt(control) !== first) this.focus(first);
		return true;
	}

	private stretch(control: Control, move: Move) {
		const all = this.table.lines()?.all ?? [];
		const key = keyAt(control);
		const from: Selection = this.table.selection ?? { anchor: key, head: key, rows: false };
		const to = stretched(all, from, move);
		this.table.selection = to;
		controlAt(this.element, to.head)?.scrollIntoView({ block: "nearest" });
	}

	private selectRow(key: string, anchor?: string) {
		const all = this.table.lines()?.all ?? [];
		const line = findCell(all, key)?.line;
		const head = firstKey(line);
		const start = anchor === undefined ? undefined : findCell(all, anchor)?.line;
		if (!line || !head) return;
		const from = start?.what === line.what ? firstKey(start) : null;
		this.table.selection = { anchor: from ?? head, head, rows: true };
		if (document.activeElement !== controlAt(this.element, from ?? head)) this.focus(from ?? head);
	}

	/** Moves on from a cell; at an edge its text is left all the same. */
	private go(control: Control, move: Move) {
		this.table.selection = null;
		const to = moved(this.table.lines()?.all ?? [], keyAt(control), move);
		if (!to || !this.focus(to)) {
			editor.close();
			this.leave(control);
		}
	}

	private focus(key: string): boolean {
		const control = controlAt(this.element, key);
		control?.focus();
		if (control instanceof HTMLInputElement) control.select();
		return control !== null;
	}

	private edit(control: Control, caret?: number) {
		this.table.selection = null;
		if (control instanceof HTMLButtonElement) {
			control.click();
			return;
		}
		if (control instanceof HTMLSelectElement) {
			// Where a browser cannot open the list for a script, its own keys still do.
			control.showPicker?.();
			return;
		}
		this.set(control, "edited");
		const at = caret ?? control.value.length;
		control.setSelectionRange(at, at);
	}

	private leave(control: Control) {
		this.set(control, "selected");
		if (control instanceof HTMLInputElement) control.select();
		this.markAll([control]);
	}

	private set(control: Control, mode: typeof this.mode) {
		this.mode = mode;
		control.dataset.mode = mode;
	}

	press(event: MouseEvent) {
		this.pressed = null;
		if (event.button !== 0 || !(event.target instanceof Element)) return;
		const number = event.target.closest<HTMLElement>("[data-rows]")?.dataset.rows;
		if (number !== undefined) {
			event.preventDefault();
			this.selectRow(number, event.shiftKey ? this.table.selected()?.anchor : undefined);
			this.pressed = { key: number, rows: true, had: false };
			return;
		}
		const control = controlOf(event.target);
		if (!control) return;
		const key = keyAt(control);
		const had = control === document.activeElement;
		if (event.shiftKey && !had && this.table.current !== null) {
			event.preventDefault();
			const anchor = this.table.selected()?.anchor ?? key;
			this.select({ anchor, head: key, rows: false });
			return;
		}
		if (!(control instanceof HTMLInputElement)) return;
		if (had && this.mode !== "selected") {
			this.set(control, "edited");
			return;
		}
		// The text cursor waits: the pointer may be about to select several cells.
		event.preventDefault();
		this.table.selection = null;
		if (!had) this.focus(key);
		this.pressed = { key, rows: false, had };
	}

	drag(event: MouseEvent) {
		const { pressed } = this;
		if (!pressed || !(event.target instanceof Element)) return;
		if (event.buttons !== 1) {
			this.pressed = null;
			return;
		}
		if (pressed.rows) {
			const row = event.target.closest("[role=row], tr");
			const key = row?.querySelector<HTMLElement>("[data-rows]")?.dataset.rows;
			if (key !== undefined) this.selectRow(key, pressed.key);
			return;
		}
		const control = controlOf(event.target);
		if (!control) return;
		const head = keyAt(control);
		if (head !== pressed.key || this.table.selection) {
			this.select({ anchor: pressed.key, head, rows: false });
		}
	}

	release(event: MouseEvent) {
		const { pressed } = this;
		this.pressed = null;
		const control = controlOf(event.target);
		const same = control && pressed?.had && keyAt(control) === pressed.key;
		if (same && !this.table.selection) this.edit(control, caretAt(control, event));
	}

	/** Selects the cells between two, if they are of one sort. */
	private select(selection: Selection) {
		const all = this.table.lines()?.all ?? [];
		const one = findCell(all, selection.anchor)?.line;
		const other = findCell(all, selection.head)?.line;
		if (!one || !other || !alike(one, other)) return;
		this.table.selection = selection;
		if (this.table.current !== selection.anchor) this.focus(selection.anchor);
	}

	copy(event: ClipboardEvent, cut: boolean) {
		const control = controlOf(event.target);
		const { selection } = this.table;
		// The browser itself copies text out of a cell.
		if (!control || this.mode !== "selected") return;
		if (!selection && control instanceof HTMLInputElement) return;
		copy(this.table, event, cut);
	}

	paste(event: ClipboardEvent) {
		if (controlOf(event.target) && this.mode === "selected") paste(this.table, event);
	}

	/** Marks the selected cells; a single one is marked as the focus reaches it. */
	mark() {
		const { selection } = this.table;
		const active = this.active();
		if (!selection) {
			this.markAll(active ? [active] : []);
			return;
		}
		const cells = chosen(this.table.lines()?.all ?? [], selection).flatMap((each) => each.cells);
		this.markAll(cells.flatMap(({ path }) => controlAt(this.element, keyOf(path)) ?? []));
	}

	private markAll(controls: readonly Element[]) {
		for (const cell of this.marked) cell.removeAttribute("aria-selected");
		this.marked = controls.flatMap(
			(each) => each.closest("[role=gridcell], [role=rowheader], td, th") ?? [],
		);
		for (const cell of this.marked) cell.setAttribute("aria-selected", "true");
	}

	private active(): Control | null {
		const { activeElement } = document;
		return activeElement && this.element.contains(activeElement) ? controlOf(activeElement) : null;
	}
}

function commanded({ key, shiftKey }: KeyboardEvent): Action | undefined {
	switch (key) {
		case "Enter":
			return shiftKey ? "duplicate" : "insert";
		case "Delete":
		case "Backspace":
			return "remove";
		case "d":
			return "fill";
		default:
			return undefined;
	}
}

function modified({ shiftKey, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean {
	return shiftKey || ctrlKey || metaKey || altKey;
}

/** The control of a cell, if the event is about one. A small grid within a row has its own keys. */
function controlOf(target: EventTarget | null): Control | null {
	const one =
		target instanceof HTMLInputElement ||
		target instanceof HTMLSelectElement ||
		target instanceof HTMLButtonElement;
	if (!one) return null;
	return target.dataset.path === undefined || target.closest(".inset") ? null : target;
}

function keyAt(control: Control): string {
	return control.dataset.path ?? "";
}

/** Where in the text the pointer stands, where the browser tells. */
function caretAt(control: Control, { clientX, clientY }: MouseEvent): number | undefined {
	const place = document.caretPositionFromPoint?.(clientX, clientY);
	return place?.offsetNode === control ? place.offset : undefined;
}
