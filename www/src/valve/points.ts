/**
 * A valve's discharge coefficient over lift, as points of a small grid, and the edits that concern it. A cell
 * whose text is no value keeps that text beside the value underneath, as every cell of the sheet does.
 */
import { keyOf, type Path, put, type Sheet, valueAt } from "../network/edit";
import type { CurveInfo, Node, Valve } from "../solver/types";

export interface PointCell {
	readonly value: number;
	/** Text that cannot be read as a value. */
	readonly text?: string;
}

/** Lift over seat diameter, and the discharge coefficient there. */
export type Point = readonly [PointCell, PointCell];

/** A step in lift over diameter behind the only point. */
const STEP = 0.05;

/** The valve of the node at a place of the study. */
export function valvePath(node: number): Path {
	return ["network", "nodes", node, "valve"];
}

/** The points of the table at a path, with the text kept of their cells. */
export function readPoints({ study, drafts }: Sheet, table: Path): Point[] {
	const list = (valueAt(study, table) ?? []) as readonly (readonly [number, number])[];
	const start = keyOf(table);
	return list.map((pair, row) => {
		const cell = (column: 0 | 1): PointCell => {
			const text = drafts[`${start}.${row}.${column}`];
			return text === undefined ? { value: pair[column] } : { value: pair[column], text };
		};
		return [cell(0), cell(1)];
	});
}

/** Gives a valve these points, which take the place of a single coefficient; without points, the usual curve. */
export function putPoints(sheet: Sheet, valve: Path, points: readonly Point[]): Sheet {
	const table: Path = [...valve, "dischargeTable"];
	const list = points.map((point) => point.map(({ value }) => value));
	const bare = put(sheet, [...valve, "dischargeCoefficient"], undefined);
	const after = put(bare, table, list.length > 0 ? list : undefined);
	const kept = { ...after.drafts };
	for (const [row, point] of points.entries()) {
		for (const [column, { text }] of point.entries()) {
			if (text !== undefined) kept[keyOf([...table, row, column])] = text;
		}
	}
	return { ...after, drafts: kept };
}

/** The usual curve, to be changed into one's own. */
export function usualPoints({ usual }: CurveInfo): Point[] {
	return usual.map(([ratio, coefficient]) => [{ value: ratio }, { value: coefficient }]);
}

/** The points that the valve follows: its own, or those of the usual curve; none where one number is given. */
export function followed(valve: Valve, { usual }: CurveInfo): readonly (readonly number[])[] {
	if (valve.dischargeTable?.length) return valve.dischargeTable;
	return valve.dischargeCoefficient == null ? usual : [];
}

/** A point more behind one: halfway to the next, or a step on like the one before. */
export function withPoint(points: readonly Point[], behind: number): Point[] {
	const here = points[behind];
	if (!here) return [...points];
	const next = points[behind + 1];
	const before = points[behind - 1];
	const step = before ? here[0].value - before[0].value : STEP;
	const mean = (column: 0 | 1) => (here[column].value + (next?.[column].value ?? 0)) / 2;
	const made: Point = next
		? [{ value: tidy(mean(0)) }, { value: tidy(mean(1)) }]
		: [{ value: tidy(here[0].value + (step > 0 ? step : STEP)) }, { value: here[1].value }];
	return points.toSpliced(behind + 1, 0, made);
}

/** Gives the discharge of one port's valve, in whichever way it is given, to the valves of all ports. */
export function toAllValves(sheet: Sheet, from: number): Sheet {
	const { nodes } = sheet.study.network;
	const given = valveOf(nodes[from]);
	if (!given) return sheet;
	const points = readPoints(sheet, [...valvePath(from), "dischargeTable"]);
	return nodes.reduce((now, node, index) => {
		const valve = valveOf(node);
		if (index === from || !valve) return now;
		const path = valvePath(index);
		const filled = putPoints(now, path, points);
		const single = [...path, "dischargeCoefficient"];
		return put(filled, single, points.length > 0 ? undefined : given.dischargeCoefficient);
	}, sheet);
}

/** How many ports have a valve. */
export function countValves(nodes: readonly Node[]): number {
	return nodes.filter((node) => valveOf(node)).length;
}

function valveOf(node: Node | undefined): Valve | undefined {
	return node?.kind === "port" ? (node.valve ?? undefined) : undefined;
}

/** Without the dust of the last bits, so that files stay clean. */
function tidy(value: number): number {
	return Number(value.toPrecision(12));
}
