/** Invented networks to draw. */
import { readFileSync } from "node:fs";
import type { Structure, Way } from "../../../www/src/sketch/structure";
import { structureOf } from "../../../www/src/sketch/structure";
import type { Study } from "../../../www/src/solver/types";

/** An example that comes with the page. */
export function example(name: string): Study {
	const file = new URL(`../../../examples/${name}/network.json`, import.meta.url);
	return JSON.parse(readFileSync(file, "utf8")) as Study;
}

/** The structure of a study. */
export function structure({ network, engine }: Study): Structure {
	return structureOf(network, engine);
}

type Feed = "plenum" | "log" | "lid" | "pairs";

/** An engine of so many cylinders in one bank or two, fed in one of the usual ways. */
export function engine(cylinders: number, banks: 1 | 2, feed: Feed, portsEach = 1): Structure {
	const points: Structure["points"][number][] = [];
	const ways: Way[] = [];
	const node = (id: string, kind: "source" | "plenum" | "header") =>
		points.push({ id, kind, cylinder: null });
	const way = (id: string, from: string, to: string, run = false) =>
		ways.push({ id, from, to, fromRun: run, toRun: run });
	const names = Array.from({ length: cylinders }, (_, index) => String(index + 1));
	const feeds = (cylinder: string, from: string) => {
		for (let each = 1; each <= portsEach; each += 1) {
			const id = `port ${cylinder}.${each}`;
			points.push({ id, kind: "port", cylinder });
			way(`runner ${cylinder}.${each}`, from, id);
		}
	};
	node("air", "source");
	if (feed === "log") {
		names.forEach((name, index) => {
			node(`log ${name}`, "header");
			feeds(name, `log ${name}`);
			way(`run ${name}`, index === 0 ? "air" : `log ${index}`, `log ${name}`, true);
		});
	} else {
		node("upper", "plenum");
		node("lid", "plenum");
		way("neck", "air", "upper");
		for (let passage = 1; passage <= 3; passage += 1) way(`core ${passage}`, "upper", "lid");
		names.forEach((name, index) => {
			const pair = Math.floor(index / 2) + 1;
			const pocket =
				feed === "plenum" ? "lid" : feed === "pairs" ? `pair ${pair}` : `pocket ${name}`;
			if (!points.some(({ id }) => id === pocket)) {
				node(pocket, "plenum");
				way(`window ${pocket}`, "lid", pocket);
			}
			feeds(name, pocket);
		});
	}
	const bank = (one: number) => names.filter((_, index) => banks === 1 || index % 2 === one);
	const rows = [{ bank: banks === 1 ? "" : "left", cylinders: bank(0) }];
	if (banks === 2) rows.push({ bank: "right", cylinders: bank(1) });
	return { points, ways, banks: rows };
}
