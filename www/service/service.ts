/**
 * The service worker: once the page has been visited it is served from here, all of it of one version. A
 * newer version is laid in beside it and waits; it takes over when no page is open, or when the reader says.
 */

/** Every file of this version by its path, with what the browser checks it against. The build puts them before. */
declare const FILES: readonly (readonly [path: string, integrity: string])[];
declare const VERSION: string;
declare const self: ServiceWorkerGlobalScope;

const START = "evenport-page ";
const OWN = START + VERSION;
const MATCH = { ignoreSearch: true, ignoreVary: true };

self.addEventListener("install", (event) => event.waitUntil(layIn()));
self.addEventListener("activate", (event) => event.waitUntil(begin()));
self.addEventListener("message", ({ data }) => {
	if (data === "take over") self.skipWaiting();
});
self.addEventListener("fetch", (event) => {
	const { request } = event;
	const isOwn = request.url.startsWith(self.registration.scope);
	if (request.method === "GET" && isOwn) event.respondWith(answer(event));
});

/** All or nothing: a file that is not of this version, or missing, leaves the version before in its place. */
async function layIn() {
	const cache = await caches.open(OWN);
	try {
		await Promise.all(FILES.map((file) => lay(cache, ...file)));
	} catch (reason) {
		await caches.delete(OWN);
		throw reason;
	}
}

async function lay(cache: Cache, path: string, integrity: string) {
	// A name with a hash in it means the same file in every version.
	const isNamed = path.startsWith("assets/");
	const before = isNamed ? await caches.match(path, MATCH) : undefined;
	await cache.put(path, before ?? (await load(path, integrity, isNamed ? "default" : "no-cache")));
}

async function load(path: string, integrity: string, cache: RequestCache): Promise<Response> {
	const response = await fetch(path, { integrity, cache });
	if (!response.redirected) return response;
	// Browsers refuse to open a page by an answer that came by another address.
	return new Response(response.body, { headers: response.headers });
}

async function begin() {
	await self.clients.claim();
	await tidy();
}

async function answer(event: FetchEvent): Promise<Response> {
	const { request } = event;
	if (request.mode === "navigate") event.waitUntil(tidy());
	const isIndex = /^[^?#]*\/index\.html([?#]|$)/.test(request.url);
	const asked = isIndex ? self.registration.scope : request;
	const own = await (await caches.open(OWN)).match(asked, MATCH);
	// A page of another version that is still open finds the parts that it has not loaded yet.
	return own ?? (await caches.match(asked, MATCH)) ?? fetch(request);
}

/** Takes away the versions that no page uses: each open page holds a lock that names its version. */
async function tidy() {
	const [names, { held = [], pending = [] }] = await Promise.all([
		caches.keys(),
		self.navigator.locks.query(),
	]);
	const used = new Set([...held, ...pending].map(({ name }) => name));
	const waiting = self.registration.waiting ?? self.registration.installing;
	const old = names.filter((name) => name.startsWith(START) && name !== OWN && !used.has(name));
	// What waits is not old, and its name is not known here.
	if (!waiting) await Promise.all(old.map((name) => caches.delete(name)));
}
