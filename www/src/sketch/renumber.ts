/** Another way of numbering, as one edit of the cylinders. */
import { type Numbering, placed } from "../engine/numbering";
import { move, type Path, put, type Sheet } from "../network/edit";

const LIST: Path = ["engine", "cylinders"];

/**
 * Puts each cylinder where a way of numbering has it. Rows are moved rather than written anew, so that
 * cells with unreadable text keep it.
 */
export function renumbered(sheet: Sheet, numbering: Numbering): Sheet {
	let after = sheet;
	placed(sheet.study.engine.cylinders, numbering).forEach(({ id, bank }, index) => {
		const from = after.study.engine.cylinders.findIndex((each) => each.id === id);
		if (from !== index) after = move(after, LIST, from, index);
		if (after.study.engine.cylinders[index]?.bank !== bank)
			after = put(after, [...LIST, index, "bank"], bank);
	});
	return after;
}
