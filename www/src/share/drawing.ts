/** A drawing on the page as a file: lines that scale, or a picture of them for programs that take only those. */
import { mount, unmount } from "svelte";
import { exportedSvg } from "../sketch/exported";
import BarsDrawing from "../view/BarsDrawing.svelte";
import type { Bars } from "./bars";
import { download, fileName } from "./file";

/** What the page says of a drawing, and what the file is called. */
export interface Told {
	readonly name: string;
	readonly title: string;
	readonly description: string;
	readonly notes: readonly string[];
}

export type Form = "SVG" | "PNG";

/** Dots of a picture for each pixel of the drawing, and the most that browsers draw on one side. */
const DOTS = 2;
const MOST = 8192;

/** Pictures go into letters and slides, whose paper is white. */
const WHITE = "#ffffff";

/** Hands a drawing to the browser as a download. Bars in a table become a drawing first. */
export async function saveDrawing(form: Form, of: SVGSVGElement | Bars, told: Told) {
	const paper = form === "PNG" ? WHITE : undefined;
	const text = of instanceof SVGSVGElement ? written(of, told, paper) : drawn(of, told, paper);
	const name = `${fileName(told.name)}.${form.toLowerCase()}`;
	if (form === "SVG") download(text, "image/svg+xml", name);
	else download(await picture(text), "image/png", name);
}

function written(svg: SVGSVGElement, told: Told, paper: string | undefined): string {
	return exportedSvg(svg, told.title, told.description, told.notes, paper);
}

function drawn(bars: Bars, told: Told, paper: string | undefined): string {
	const target = document.createElement("div");
	const drawing = mount(BarsDrawing, { target, props: { bars } });
	try {
		const svg = target.querySelector("svg");
		if (!svg) throw new Error("there is nothing to draw");
		return written(svg, told, paper);
	} finally {
		unmount(drawing);
	}
}

/** The drawing in dots. */
async function picture(text: string): Promise<Blob> {
	const address = URL.createObjectURL(new Blob([text], { type: "image/svg+xml" }));
	try {
		const image = new Image();
		image.src = address;
		await image.decode();
		const dots = Math.min(DOTS, MOST / Math.max(image.width, image.height));
		const canvas = document.createElement("canvas");
		canvas.width = Math.round(image.width * dots);
		canvas.height = Math.round(image.height * dots);
		const pen = canvas.getContext("2d");
		if (!pen) throw new Error("the browser draws no pictures");
		pen.drawImage(image, 0, 0, canvas.width, canvas.height);
		const made = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/png"));
		if (!made) throw new Error("the browser made no picture of it");
		return made;
	} finally {
		URL.revokeObjectURL(address);
	}
}
