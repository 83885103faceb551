/** What is hard to use on a page, by the rules that can be checked. */
import AxeBuilder from "@axe-core/playwright";
import type { Page } from "@playwright/test";

const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** The violations in these parts of the page, or in the whole of it. */
export async function violations(page: Page, ...parts: string[]): Promise<string[]> {
	const axe = new AxeBuilder({ page }).withTags(TAGS);
	for (const part of parts) axe.include(part);
	const found = await axe.analyze();
	return found.violations.map(
		({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`,
	);
}
