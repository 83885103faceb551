/** The engines that the starter knows, each with what is usual for it: common practice, without a source. */
import type { Numbering } from "../engine/numbering";

export type LayoutName =
	| "inline3"
	| "inline4"
	| "inline5"
	| "inline6"
	| "flat4"
	| "flat6"
	| "v6"
	| "v8"
	| "v10"
	| "v12"
	| "singleBank";

export interface Layout {
	readonly label: string;
	readonly banks: 1 | 2;
	/** Null where the number is asked for. */
	readonly cylinders: number | null;
	readonly numbering: Numbering;
	/** Of one cylinder [m3]. */
	readonly sweptVolume: number;
	/** From the chamber to the port [m]. */
	readonly runnerLength: number;
	/** That the runner turns through [rad]. */
	readonly bendAngle: number;
}

/** The most cylinders that a single bank is offered with. */
export const MOST_IN_A_BANK = 16;

const DEGREE = Math.PI / 180;

const inline = (cylinders: number | null, label: string, litres: number): Layout => ({
	label,
	banks: 1,
	cylinders,
	numbering: "frontToRear",
	sweptVolume: litres / 1000,
	runnerLength: 0.2,
	bendAngle: 60 * DEGREE,
});

const vee = (cylinders: number, litres: number): Layout => ({
	label: `V${cylinders}`,
	banks: 2,
	cylinders,
	numbering: cylinders === 12 ? "firstHalfRight" : "oddLeft",
	sweptVolume: litres / 1000,
	runnerLength: 0.12,
	bendAngle: 35 * DEGREE,
});

const flat = (cylinders: number, numbering: Numbering, litres: number): Layout => ({
	label: `flat ${cylinders}`,
	banks: 2,
	cylinders,
	numbering,
	sweptVolume: litres / 1000,
	runnerLength: 0.28,
	bendAngle: 75 * DEGREE,
});

/** All layouts, in the order in which they are offered. */
export const LAYOUTS: Readonly<Record<LayoutName, Layout>> = {
	inline3: inline(3, "inline 3", 0.4),
	inline4: inline(4, "inline 4", 0.5),
	inline5: inline(5, "inline 5", 0.5),
	inline6: inline(6, "inline 6", 0.5),
	flat4: flat(4, "evenLeft", 0.5),
	flat6: flat(6, "firstHalfLeft", 0.6),
	v6: vee(6, 0.6),
	v8: vee(8, 0.71),
	v10: vee(10, 0.8),
	v12: vee(12, 0.5),
	singleBank: inline(null, "single bank of any number", 0.5),
};
