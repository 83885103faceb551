/** What a browser prints, as people get it: pages with their text, and pictures of them. */
import { PDFiumLibrary } from "@hyzyla/pdfium";
import type { Page } from "@playwright/test";
import jsQR from "jsqr";

/** Dots of the pictures to a point: enough to see ink, and about 300 to an inch, as an office printer makes. */
const COARSE = 1.5;
const FINE = 4;

export interface Sheet {
	/** [pt] */
	readonly width: number;
	readonly height: number;
	readonly text: string;
	/** Dots to a point, in a row and in a column, and whether there is ink on each. */
	readonly scale: number;
	readonly across: number;
	readonly down: number;
	readonly ink: (x: number, y: number) => boolean;
	/** What the QR code on it says, if there is one that can be read. */
	readonly code: string | undefined;
}

/** Prints what the page shows, on the paper that it asks for. A code is looked for below a heading. */
export async function printed(page: Page, heading: string): Promise<Sheet[]> {
	const file = await page.pdf({ preferCSSPageSize: true, printBackground: true });
	const library = await PDFiumLibrary.init();
	const document = await library.loadDocument(file);
	const sheets: Sheet[] = [];
	// Once it has drawn a page, this reader fails to find the text of any.
	const texts = [...document.pages()].map((sheet) => sheet.getText().replace(/\s+/g, " "));
	for (const sheet of document.pages()) {
		const { originalWidth, originalHeight } = sheet.getOriginalSize();
		const text = texts[sheets.length] ?? "";
		const scale = text.includes(heading) ? FINE : COARSE;
		const { data, width, height } = await sheet.render({ scale });
		// Blue, green and red change places, which dark and light do not mind.
		const code = scale === FINE ? jsQR(new Uint8ClampedArray(data), width, height) : null;
		sheets.push({
			width: originalWidth,
			height: originalHeight,
			text,
			scale,
			across: width,
			down: height,
			ink: (x, y) => (data[4 * (y * width + x)] ?? 255) < 200,
			code: code?.data,
		});
	}
	document.destroy();
	library.destroy();
	return sheets;
}

/** How near to the edges of a sheet there is ink [pt]. */
export function margins({ scale, across, down, ink }: Sheet) {
	let [left, right, top, bottom] = [across, 0, down, 0];
	for (let y = 0; y < down; y += 1) {
		for (let x = 0; x < across; x += 1) {
			if (!ink(x, y)) continue;
			left = Math.min(left, x);
			right = Math.max(right, x);
			top = Math.min(top, y);
			bottom = Math.max(bottom, y);
		}
	}
	return {
		left: left / scale,
		right: (across - 1 - right) / scale,
		top: top / scale,
		bottom: (down - 1 - bottom) / scale,
	};
}

/** Pairs of words on the page that lie on each other, as they are printed. */
export function overlapping(page: Page, within: string): Promise<string[]> {
	return page.evaluate((within) => {
		const words: { text: string; box: DOMRect; of: Node }[] = [];
		const root = document.querySelector(within);
		if (!root) return [`there is no ${within}`];
		const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
		while (walker.nextNode()) {
			const of = walker.currentNode;
			const text = of.textContent?.trim() ?? "";
			if (text === "" || of.parentElement?.closest(".unseen, title, desc")) continue;
			const range = document.createRange();
			range.selectNodeContents(of);
			for (const box of range.getClientRects()) {
				if (box.width > 0 && box.height > 0) words.push({ text, box, of });
			}
		}
		const found: string[] = [];
		words.sort((one, other) => one.box.top - other.box.top);
		words.forEach((one, place) => {
			for (const other of words.slice(place + 1)) {
				if (other.box.top > one.box.bottom) break;
				if (other.of === one.of) continue;
				const wide =
					Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
				const high =
					Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
				// Boxes of letters are higher than the letters.
				if (wide > 1.5 && high > 0.45 * Math.min(one.box.height, other.box.height))
					found.push(`“${one.text}” and “${other.text}”`);
			}
		});
		return found;
	}, within);
}
