/** The page without network: a service worker keeps all of it. A newer version waits until it is asked in. */
import { keeper } from "../share/keeper.svelte";
import { vouched } from "../vouched";

const ADDRESS = "./service.js";

/** How seldom a page that stays open asks whether there is a newer version [ms]. */
const SELDOM = 3_600_000;

/** Neither a page on disk nor one that is being developed has a version. */
const version = document.querySelector<HTMLMetaElement>("meta[name=version]")?.content;

let isNewer = $state(false);
let isFirst = false;
let registration: ServiceWorkerRegistration | undefined;
let asked = 0;

export const offline = {
	/** Whether a newer version is laid in, beside the one that is open. */
	get isNewer() {
		return isNewer;
	},

	/** Has the parts kept that this version loads later, for as long as it is open, and minds newer versions. */
	hold() {
		if (!version) return;
		const container = navigator.serviceWorker;
		// The first one to come takes nothing over: this page is of its version.
		isFirst = !container?.controller;
		container?.addEventListener("controllerchange", () => {
			// Another tab has let the newer one in.
			if (!isFirst) isNewer = true;
			isFirst = false;
		});
		navigator.locks?.request(
			`evenport-page ${version}`,
			{ mode: "shared" },
			() => new Promise(() => {}),
		);
	},

	/** Lets the browser lay in the page. Without it, everything works that the network brings. */
	async begin() {
		if (!version || !("serviceWorker" in navigator)) return;
		try {
			await register(navigator.serviceWorker);
		} catch {
			// The browser or its settings refuse, or there is no network: the next visit asks again.
		}
	},

	/** Loads the page again in its newer version; what was typed is written first. */
	takeOver() {
		keeper.now();
		const { serviceWorker } = navigator;
		if (!registration?.waiting) return location.reload();
		serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
		registration.waiting.postMessage("take over");
	},
};

async function register(container: ServiceWorkerContainer) {
	registration = await container.register(vouched(ADDRESS), { updateViaCache: "none" });
	asked = Date.now();
	const look = () => {
		if (!isFirst && registration?.waiting) isNewer = true;
	};
	look();
	registration.addEventListener("updatefound", () => {
		registration?.installing?.addEventListener("statechange", look);
	});
	document.addEventListener("visibilitychange", () => {
		if (document.hidden || Date.now() - asked < SELDOM) return;
		asked = Date.now();
		registration?.update().catch(() => {});
	});
}
