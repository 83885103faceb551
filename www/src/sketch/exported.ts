/** A drawing on the page as an SVG file that stands alone: no style sheet, no script, plain colours. */

const NAMESPACE = "http://www.w3.org/2000/svg";

/** What the style sheet says of an element and the file has to say itself, unless it is the usual. */
const STYLED: Readonly<Record<string, string>> = {
	fill: "#000000",
	stroke: "none",
	"stroke-width": "1px",
	"stroke-opacity": "1",
	"stroke-dasharray": "none",
	"stroke-linejoin": "miter",
	"font-size": "",
	"font-weight": "400",
	"text-anchor": "start",
	"paint-order": "normal",
};

/** What belongs to the page and means nothing in a file. */
const OF_THE_PAGE = /^(class|style|role|tabindex|id|aria-.*|data-.*)$/;

/** A line of notes, and about the width of a letter in it, in pixels. */
const LINE = 14;
const LETTER = 5.6;

/** Names at the edge of a drawing reach a little beyond it, in pixels. */
const MARGIN = 8;

/**
 * The text of the file. It always has the colours of light paper, whatever the page looks like; `paper` is
 * the paper's own, if it is to have another.
 */
export function exportedSvg(
	drawing: SVGSVGElement,
	title: string,
	description: string,
	notes: readonly string[],
	paper?: string,
): string {
	const copy = drawing.cloneNode(true) as SVGSVGElement;
	const sheet = surrounded(copy, drawing.parentElement);
	sheet.className = "light unseen";
	if (paper) sheet.style.setProperty("--paper", paper);
	document.body.append(sheet);
	try {
		annotate(copy, notes);
		resolve(copy);
		const ground = document.createElementNS(NAMESPACE, "rect");
		ground.setAttribute("x", String(-MARGIN));
		ground.setAttribute("y", String(-MARGIN));
		ground.setAttribute("width", "100%");
		ground.setAttribute("height", "100%");
		ground.setAttribute("fill", plainColour(getComputedStyle(sheet).backgroundColor));
		copy.prepend(worded("title", title), worded("desc", description), ground);
	} finally {
		sheet.remove();
	}
	copy.setAttribute("xmlns", NAMESPACE);
	copy.setAttribute("font-family", "sans-serif");
	return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(copy)}\n`;
}

/** A drawing within what the style sheet looks for around it. */
function surrounded(inner: Element, around: Element | null): HTMLElement {
	const outer = document.createElement("div");
	outer.append(inner);
	if (!around || around.matches("body, .sheet")) return outer;
	outer.className = around.className;
	return surrounded(outer, around.parentElement);
}

/** Writes below the drawing what the page says beside it. */
function annotate(copy: SVGSVGElement, notes: readonly string[]) {
	const width = Number(copy.getAttribute("width"));
	const height = Number(copy.getAttribute("height"));
	notes.forEach((note, index) => {
		const text = worded("text", note);
		text.setAttribute("class", "note");
		text.setAttribute("x", "6");
		text.setAttribute("y", String(height + LINE * (index + 1)));
		copy.append(text);
	});
	const letters = Math.max(0, ...notes.map(({ length }) => length));
	const wide = Math.max(width, letters * LETTER + 12);
	const tall = height + LINE * notes.length + 8;
	copy.setAttribute("width", String(wide + 2 * MARGIN));
	copy.setAttribute("height", String(tall + 2 * MARGIN));
	copy.setAttribute("viewBox", `${-MARGIN} ${-MARGIN} ${wide + 2 * MARGIN} ${tall + 2 * MARGIN}`);
}

/** Writes styles into attributes, and leaves out what is there only to be clicked. */
function resolve(copy: SVGSVGElement) {
	for (const each of copy.querySelectorAll(".hit")) each.remove();
	const drawn = [...copy.querySelectorAll<SVGElement>("*")];
	// All styles are read before anything is written, so that the browser works them out once.
	const styles = drawn.map((each) => {
		const style = getComputedStyle(each);
		const hidden = style.display === "none";
		const values = Object.keys(STYLED).map(
			(name) => [name, plainColour(style.getPropertyValue(name))] as const,
		);
		return { hidden, values };
	});
	drawn.forEach((each, index) => {
		const style = styles[index];
		if (style?.hidden) each.remove();
		for (const { name } of [...each.attributes])
			if (OF_THE_PAGE.test(name)) each.removeAttribute(name);
		if (each.localName === "g" || each.localName === "title") return;
		const isText = each.localName === "text" || each.localName === "tspan";
		for (const [name, value] of style?.values ?? []) {
			if (value === STYLED[name] || (/^(font|text)-/.test(name) && !isText)) {
				each.removeAttribute(name);
			} else {
				each.setAttribute(name, value);
			}
		}
	});
	for (const { name } of [...copy.attributes])
		if (OF_THE_PAGE.test(name)) copy.removeAttribute(name);
	const comments = document.createTreeWalker(copy, NodeFilter.SHOW_COMMENT);
	const found: Node[] = [];
	while (comments.nextNode()) found.push(comments.currentNode);
	for (const comment of found) comment.parentNode?.removeChild(comment);
}

/** `rgb(1, 2, 3)` as `#010203`, which every reader of SVG knows. */
export function plainColour(value: string): string {
	const parts = /^rgb\((\d+), (\d+), (\d+)\)$/.exec(value)?.slice(1);
	if (!parts) return value === "rgba(0, 0, 0, 0)" ? "none" : value;
	return `#${parts.map((part) => Number(part).toString(16).padStart(2, "0")).join("")}`;
}

function worded(name: "title" | "desc" | "text", text: string): SVGElement {
	const element = document.createElementNS(NAMESPACE, name);
	element.textContent = text;
	return element;
}
