/** A host that can be stopped, and whose files can become those of a newer version of the page. */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, resolve } from "node:path";

const TYPES: Readonly<Record<string, string>> = {
	".html": "text/html; charset=utf-8",
	".js": "text/javascript; charset=utf-8",
	".css": "text/css; charset=utf-8",
	".wasm": "application/wasm",
	".svg": "image/svg+xml",
};

export interface Host {
	readonly address: string;
	/** Serves, from now on, a page with another title, and the service worker that belongs to it. */
	renew(title: string): void;
	/** Serves, from now on, that service worker with a page that it does not belong to. */
	mix(title: string): void;
	stop(): Promise<void>;
}

export async function host(): Promise<Host> {
	const dist = resolve("dist");
	const read = (name: string) => readFileSync(resolve(dist, name));
	const changed = new Map<string, Buffer>();
	const server: Server = createServer((request, response) => {
		const path = new URL(request.url ?? "", "http://host").pathname.slice(1) || "index.html";
		try {
			const content = changed.get(path) ?? read(path);
			response.setHeader("Content-Type", TYPES[extname(path)] ?? "application/octet-stream");
			response.setHeader("Cache-Control", "no-cache");
			response.end(content);
		} catch {
			response.writeHead(404).end();
		}
	});
	await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
	const renew = (title: string) => {
		const version = createHash("sha256").update(title).digest("hex").slice(0, 12);
		const page = read("index.html").toString();
		const old = /name="version" content="(\w+)"/.exec(page)?.[1] ?? "";
		const next = page
			.replace(/<title>.*<\/title>/, `<title>${title}</title>`)
			.replace(old, version);
		const hash = (text: string) => createHash("sha256").update(text).digest("base64");
		const service = read("service.js").toString();
		changed.set("index.html", Buffer.from(next));
		changed.set(
			"service.js",
			Buffer.from(service.replace(old, version).replace(hash(page), hash(next))),
		);
	};
	return {
		address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
		renew,
		mix(title) {
			renew(title);
			changed.delete("index.html");
		},
		stop() {
			server.closeAllConnections();
			return new Promise((done) => {
				server.close(() => done());
			});
		},
	};
}
