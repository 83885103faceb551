/** How quick the page is and how much it loads. Prints figures; asserts nothing about them. */
import { gzipSync } from "node:zlib";
import { type Browser, type Locator, type Page, test } from "@playwright/test";
import { large, sixtyBranches } from "./study";

/** What the page's own clock says of one keystroke [ms]. */
interface Keystroke {
	/** From the key to the question to the worker. */
	readonly asked: number;
	/** From the question to the worker's answer in the draw looked at, its solving included. */
	readonly answered: number;
	/** From the answer to its figures in the document. */
	readonly written: number;
	/** From the key to the figures in the document. */
	readonly whole: number;
	/** From the key to the end of the frame that shows them. */
	readonly painted: number;
	/** What the solver itself says that all draws took last time. */
	readonly solver: number;
}

test("first answer after navigation", async ({ browser, baseURL }) => {
	const times: { written: number; painted: number }[] = [];
	for (let round = 0; round < 15; round += 1) {
		const page = await fresh(browser, baseURL);
		await page.addInitScript(watchForFirstAnswer);
		await page.goto("./");
		const time = await page.waitForFunction(
			() => (window as unknown as { first?: { written: number; painted: number } }).first,
		);
		times.push((await time.jsonValue()) as { written: number; painted: number });
		await page.context().close();
	}
	table("First answer after navigation, new profile each time [ms]", {
		"in the document": times.map(({ written }) => written),
		"on the screen": times.map(({ painted }) => painted),
	});
});

for (const [what, text, slower] of [
	["the first example", null, 1],
	["60 branches", sixtyBranches(), 1],
	["60 branches, processor slowed four times", sixtyBranches(), 4],
	["200 branches", large(200), 1],
] as const) {
	test(`keystroke to answer, ${what}`, async ({ browser, baseURL }) => {
		const page = await fresh(browser, baseURL);
		await page.addInitScript(watchWorker);
		await page.goto("./");
		await windowArea(page).waitFor();
		if (text) {
			await page.getByLabel("Study file to open").setInputFiles({
				name: "bench.json",
				mimeType: "application/json",
				buffer: Buffer.from(text),
			});
			const { name } = JSON.parse(text) as { name: string };
			await page.locator(".title-block .large", { hasText: name }).waitFor();
		}
		const session = await page.context().newCDPSession(page);
		await session.send("Emulation.setCPUThrottlingRate", { rate: slower });
		await windowArea(page).scrollIntoViewIfNeeded();
		const rounds: Keystroke[] = [];
		for (let round = 0; round < 60; round += 1) {
			const one = await keystroke(page, round);
			// The first ones meet code that is not compiled yet.
			if (round >= 10) rounds.push(one);
			await page.waitForTimeout(150);
		}
		const part = (name: keyof Keystroke) => rounds.map((each) => each[name]);
		table(`Keystroke to answer, ${what} [ms]`, {
			"key to question": part("asked"),
			"question to answer": part("answered"),
			"answer to document": part("written"),
			"key to document": part("whole"),
			"key to screen": part("painted"),
			"solver, all draws": part("solver"),
		});
		await page.context().close();
	});
}

test("what the page loads", async ({ browser, baseURL }) => {
	const page = await fresh(browser, baseURL);
	const files: [string, number, number][] = [];
	page.context().on("response", async (response) => {
		const body = await response.body();
		const name = new URL(response.url()).pathname.split("/").at(-1) || "index.html";
		files.push([name, body.length, gzipSync(body, { level: 9 }).length]);
	});
	await page.goto("./");
	await windowArea(page).waitFor();
	await page.waitForLoadState("networkidle");
	files.sort((left, right) => right[2] - left[2]);
	files.push([
		"all",
		files.reduce((sum, each) => sum + each[1], 0),
		files.reduce((sum, each) => sum + each[2], 0),
	]);
	const lines = files.map(
		([name, plain, packed]) => `${name.padEnd(40)}${kib(plain)}${kib(packed)}`,
	);
	print(["What the page loads [KiB]", `${" ".repeat(40)}     plain   gzipped`, ...lines]);
});

/** The cell that is typed into: the area of the first window. */
function windowArea(page: Page): Locator {
	return page.locator('[data-path="network.branches.2.losses.0.area"]');
}

async function fresh(browser: Browser, baseURL: string | undefined): Promise<Page> {
	const context = await browser.newContext({ baseURL, viewport: { width: 1360, height: 900 } });
	return context.newPage();
}

/** Types one digit and waits for the figures that belong to it. */
async function keystroke(page: Page, round: number): Promise<Keystroke> {
	await windowArea(page).evaluate((cell: HTMLInputElement) => {
		cell.focus();
		cell.setSelectionRange(1, 2);
	});
	await page.evaluate(() => (window as unknown as Watched).watch());
	await page.keyboard.press(String((round % 8) + 2));
	const found = await page.waitForFunction(() => (window as unknown as Watched).keystroke, null, {
		polling: 50,
	});
	return (await found.jsonValue()) as Keystroke;
}

interface Watched {
	keystroke: Keystroke | null;
	watch: () => void;
}

/** Runs in the page before its own scripts: notes when the first verdict stands in the document. */
function watchForFirstAnswer() {
	const observer = new MutationObserver(() => {
		if (!document.querySelector(".sentence")?.textContent?.includes("Cylinder")) return;
		observer.disconnect();
		const written = performance.now();
		requestAnimationFrame(() => {
			const channel = new MessageChannel();
			channel.port1.onmessage = () => {
				Object.assign(window, { first: { written, painted: performance.now() } });
			};
			channel.port2.postMessage(null);
		});
	});
	observer.observe(document, { subtree: true, childList: true, characterData: true });
}

/**
 * Runs in the page before its own scripts: notes when the worker is first asked and when it first answers
 * after a key. The draw looked at is asked for first.
 */
function watchWorker() {
	let key = 0;
	let question = 0;
	let reply = 0;
	window.Worker = class extends Worker {
		constructor(...args: ConstructorParameters<typeof Worker>) {
			super(...args);
			// Before the page's own listener, which writes the answer into the document.
			this.addEventListener("message", () => {
				reply ||= performance.now();
			});
		}
		override postMessage(...args: [unknown]) {
			question ||= performance.now();
			super.postMessage(...args);
		}
	};
	const figures = () =>
		[...document.querySelectorAll("table.shares td.figure")].map((each) => each.textContent).join();
	const watch = () => {
		const before = figures();
		Object.assign(window, { keystroke: null });
		document.addEventListener(
			"keydown",
			(event) => {
				key = event.timeStamp;
				question = 0;
				reply = 0;
			},
			{ once: true, capture: true },
		);
		const observer = new MutationObserver(() => {
			if (figures() === before) return;
			observer.disconnect();
			const written = performance.now();
			requestAnimationFrame(() => {
				const channel = new MessageChannel();
				channel.port1.onmessage = () => {
					const painted = performance.now();
					const solver = Number(document.querySelector(".elapsed")?.textContent);
					Object.assign(window, {
						keystroke: {
							asked: question - key,
							answered: reply - question,
							written: written - reply,
							whole: written - key,
							painted: painted - key,
							solver,
						},
					});
				};
				channel.port2.postMessage(null);
			});
		});
		const shares = document.querySelector(".answer");
		if (shares) observer.observe(shares, { subtree: true, childList: true, characterData: true });
	};
	Object.assign(window, { watch });
}

function table(title: string, rows: Record<string, number[]>) {
	const head = `${" ".repeat(26)}${["median", "p95", "least", "most"].map((each) => each.padStart(9)).join("")}`;
	const lines = Object.entries(rows).map(([name, values]) => {
		const sorted = values.toSorted((left, right) => left - right);
		const at = (part: number) => sorted[Math.ceil(part * sorted.length) - 1] ?? Number.NaN;
		const figures = [at(0.5), at(0.95), at(1 / sorted.length), at(1)];
		return `${name.padEnd(26)}${figures.map((each) => each.toFixed(1).padStart(9)).join("")}`;
	});
	print([title, head, ...lines]);
}

function kib(bytes: number): string {
	return (bytes / 1024).toFixed(1).padStart(10);
}

function print(lines: string[]) {
	process.stdout.write(`\n${lines.join("\n")}\n`);
}
