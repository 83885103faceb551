import { expect, test } from "@playwright/test";
import { open, saved, windowArea } from "./sheet";

/** An address that no browser can reach, so that even a policy with a hole sends nothing out. */
const OUTSIDE = "https://outside.invalid/";

test("using the page asks nothing of any other origin", async ({ page, baseURL }) => {
	const asked: string[] = [];
	page.context().on("request", (request) => asked.push(request.url()));
	await open(page);
	await windowArea(page).fill("1500");
	await page.locator("summary", { hasText: "Examples" }).click();
	await page.getByRole("button", { name: "Inline log" }).click();
	await expect(page.locator(".title-block .large")).toContainText(/inline/i);
	await saved(page);
	const origin = new URL(baseURL ?? "").origin;
	const away = asked.filter((url) => !url.startsWith(`${origin}/`) && !url.startsWith("blob:"));
	expect(asked.length).toBeGreaterThan(4);
	expect(away).toEqual([]);
});

const ATTEMPTS: [string, string][] = [
	["fetches", `fetch("${OUTSIDE}").catch(() => {})`],
	["loads a picture", `new Image().src = "${OUTSIDE}"`],
	["sends a beacon", `navigator.sendBeacon("${OUTSIDE}", "x")`],
	["opens a socket", `try { new WebSocket("wss://outside.invalid/") } catch {}`],
	[
		"adds a style sheet",
		`document.head.append(Object.assign(document.createElement("link"), { rel: "stylesheet", href: "${OUTSIDE}" }))`,
	],
	[
		"adds a frame",
		`document.body.append(Object.assign(document.createElement("iframe"), { src: "${OUTSIDE}" }))`,
	],
	[
		"submits a form",
		`{ const form = Object.assign(document.createElement("form"), { action: "${OUTSIDE}" }); document.body.append(form); form.submit(); }`,
	],
];

for (const [what, code] of ATTEMPTS) {
	test(`a script that ${what} outside is stopped by the policy`, async ({ page }) => {
		// The browser also reports requests that it then refuses to make; only what it lets out gets here.
		const left: string[] = [];
		await page.context().route(/outside\.invalid/, (route) => {
			left.push(route.request().url());
			return route.abort();
		});
		await open(page);
		await page.evaluate(() => {
			const blocked: string[] = [];
			document.addEventListener("securitypolicyviolation", (event) =>
				blocked.push(event.blockedURI),
			);
			Object.assign(window, { blocked });
		});
		await page.evaluate(code);
		await expect
			.poll(() => page.evaluate(() => (window as unknown as { blocked: string[] }).blocked.join()))
			.toContain("outside.invalid");
		expect(left).toEqual([]);
	});
}

test("text cannot become markup or code", async ({ page }) => {
	await open(page);
	const refused = (what: string) =>
		page.evaluate((asked) => {
			const script = document.createElement("script");
			try {
				if (asked === "markup") document.body.insertAdjacentHTML("beforeend", "<b>bold</b>");
				else if (asked === "address") script.src = "x.js";
				else script.textContent = "document.title = 'run'";
				return "taken";
			} catch (error) {
				return (error as Error).name;
			}
		}, what);
	expect(await refused("markup")).toBe("TypeError");
	expect(await refused("address")).toBe("TypeError");
	expect(await refused("code")).toBe("TypeError");
	// Some browsers refuse the handler itself, the others its running.
	await page.evaluate(() => {
		const button = document.createElement("button");
		try {
			button.setAttribute("onclick", "document.title = 'run'");
		} catch (error) {
			if (!(error instanceof TypeError)) throw error;
		}
		document.body.append(button);
		button.click();
	});
	expect(await page.title()).toBe("Evenport");
});
