/** Edits of charge coolers, whose passages are the cores in branches that name them. */
import type { Branch, KindInfo, Loss } from "../solver/types";
import { unusedName } from "./blank";
import { insert, type Path, put, remove, type Sheet } from "./edit";
import { everywhere } from "./versions";

const COOLERS: Path = ["coolers"];

/** What the face fractions of a core may add up to. */
const WHOLE = 1.001;

/** Adds a charge cooler; cores that exchange no heat yet become its passages, if they are one core. */
export function addCooler(sheet: Sheet, info: KindInfo): Sheet {
	const { study } = sheet;
	const taken = new Set((study.coolers ?? []).map(({ id }) => id));
	const id = unusedName(taken, "cooler");
	const cooler: Record<string, unknown> = { id, mixing: "bothUnmixed" };
	for (const { name, required, default: usual } of info.fields) if (required) cooler[name] = usual;
	const added = insert(sheet, COOLERS, taken.size, cooler);
	const free = study.network.branches.flatMap(({ losses }) =>
		losses.flatMap((loss) => (loss.kind === "core" && loss.cooler === undefined ? [loss] : [])),
	);
	if (free.length === 0 || free.reduce((sum, { fraction }) => sum + fraction, 0) > WHOLE)
		return added;
	return recored(added, (loss) => (loss.cooler === undefined ? { ...loss, cooler: id } : loss));
}

/** Takes a charge cooler out; its cores exchange no heat from then on. */
export function removeCooler(sheet: Sheet, index: number): Sheet {
	const id = sheet.study.coolers?.[index]?.id;
	const left = remove(sheet, COOLERS, index);
	const others = left.study.coolers ?? [];
	const now = others.length > 0 ? left : put(left, COOLERS, undefined);
	if (others.some((each) => each.id === id)) return now;
	return recored(now, (loss) => {
		if (loss.cooler !== id) return loss;
		const { cooler: _, ...core } = loss;
		return core;
	});
}

/** Gives a charge cooler another id; its cores follow. */
export function renameCooler(sheet: Sheet, index: number, id: string): Sheet {
	const old = sheet.study.coolers?.[index]?.id;
	const own = put(sheet, [...COOLERS, index, "id"], id);
	// Where two share an id nobody can tell whose cores they are.
	if (!old || sheet.study.coolers?.filter((each) => each.id === old).length !== 1) return own;
	return recored(own, (loss) => (loss.cooler === old ? { ...loss, cooler: id } : loss));
}

type Core = Extract<Loss, { kind: "core" }>;

/** Changes cores wherever they stand, in every version. */
function recored(sheet: Sheet, change: (core: Core) => Core): Sheet {
	const branch = (each: Branch): Branch => {
		const losses = each.losses.map((loss) => (loss.kind === "core" ? change(loss) : loss));
		return losses.every((loss, at) => loss === each.losses[at]) ? each : { ...each, losses };
	};
	return everywhere(sheet, (network) => ({
		...network,
		branches: network.branches.map(branch),
	}));
}
