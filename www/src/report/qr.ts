/** A link as a QR code (ISO/IEC 18004), for those who have the report on paper. */
import encodeQR from "qr";

/** Blank edge that the standard asks for [modules]. */
const EDGE = 4;
/** Smaller dots than this are not read from paper by every phone [mm]. */
const DOT = 0.42;
/** A code that is easy to read need not be larger [mm]. */
const LEAST = 32;

export interface Code {
	/** The dark modules as one path, a module being a unit. */
	readonly path: string;
	/** Modules on a side, edges included. */
	readonly modules: number;
	/** Its width on paper [mm]. */
	readonly width: number;
}

/** The code of a text; null when no code holds so much. */
export function codeOf(text: string): Code | null {
	let dots: boolean[][];
	try {
		dots = encodeQR(text, "raw", { ecc: "low", border: EDGE });
	} catch {
		return null;
	}
	const modules = dots.length;
	const path = dots.flatMap((row, y) =>
		runs(row).map(([x, length]) => `M${x} ${y}h${length}v1h-${length}z`),
	);
	return { path: path.join(""), modules, width: Math.max(modules * DOT, LEAST) };
}

/** Where dark modules begin in a row, and how many follow each other. */
function runs(row: readonly boolean[]): [number, number][] {
	const found: [number, number][] = [];
	row.forEach((dark, x) => {
		const last = found.at(-1);
		if (!dark) return;
		if (last && row[x - 1]) last[1] += 1;
		else found.push([x, 1]);
	});
	return found;
}
