/** Moves between the cells of a table with the arrow keys and Enter, as far as the text cursor allows. */

type Direction = "up" | "down" | "left" | "right";

/** Attaches the movement to a table. */
export function cellKeys(table: HTMLElement) {
	const listener = (event: KeyboardEvent) => {
		const from = event.target;
		if (!(from instanceof HTMLInputElement) || event.ctrlKey || event.metaKey || event.altKey)
			return;
		const direction = directionOf(event, from);
		if (!direction) return;
		const to = neighbour(table, from, direction);
		if (!to) return;
		event.preventDefault();
		to.focus();
		to.select();
	};
	table.addEventListener("keydown", listener);
	return () => table.removeEventListener("keydown", listener);
}

function directionOf(event: KeyboardEvent, input: HTMLInputElement): Direction | null {
	const { selectionStart: start, selectionEnd: end, value } = input;
	const all = start === 0 && end === value.length;
	switch (event.key) {
		case "Enter":
			return event.shiftKey ? "up" : "down";
		case "ArrowUp":
			return "up";
		case "ArrowDown":
			return "down";
		case "ArrowLeft":
			return !event.shiftKey && (all || (start === 0 && end === 0)) ? "left" : null;
		case "ArrowRight":
			return !event.shiftKey && (all || (start === value.length && end === start)) ? "right" : null;
		default:
			return null;
	}
}

/** The cell that lies next by its place on the screen, so that losses on a second line count too. */
function neighbour(
	table: HTMLElement,
	from: HTMLInputElement,
	direction: Direction,
): HTMLInputElement | null {
	const inputs = [...table.querySelectorAll<HTMLInputElement>("input:not([type=checkbox])")];
	if (direction === "left" || direction === "right") {
		return inputs[inputs.indexOf(from) + (direction === "left" ? -1 : 1)] ?? null;
	}
	const here = centre(from);
	const sign = direction === "down" ? 1 : -1;
	let best: { input: HTMLInputElement; line: number; aside: number } | null = null;
	for (const input of inputs) {
		const there = centre(input);
		const line = sign * (there.y - here.y);
		if (line < 8) continue;
		const aside = Math.abs(there.x - here.x);
		const nearer = !best || line < best.line - 8 || (line < best.line + 8 && aside < best.aside);
		if (nearer) best = { input, line, aside };
	}
	return best?.input ?? null;
}

function centre(input: HTMLElement): { x: number; y: number } {
	const box = input.getBoundingClientRect();
	return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}
