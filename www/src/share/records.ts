/**
 * The browser's database of studies. A record is only ever written by the page that made it, so that two
 * pages cannot overwrite each other; whose record counts is worked out when they are read (`settle.ts`).
 */
import type { Kept } from "../network/restore";

/** One study as one page has kept it. */
export interface Entry extends Kept {
	/** Its own among all records. */
	readonly key: string;
	/** The study that it is of; the same for all who take it over from each other. */
	readonly study: string;
	/** How often the study had been taken over when this record was begun. */
	readonly turn: number;
	/** Counts the writings of this record. */
	readonly revision: number;
	/** The record that was taken over, as far as it was known then. */
	readonly replaces?: Version;
	readonly name: string;
	/** When it was written [ms since 1970]. */
	readonly saved: number;
	/** Whether it is an example that nobody has edited. */
	readonly untouched?: boolean;
}

/** A record at one moment. */
export type Version = Pick<Entry, "key" | "revision">;

const DATABASE = "evenport";
const STORE = "studies";

/** A browser that has not opened its database by then is taken for one that has none [ms]. */
const PATIENCE = 4000;

let connection: Promise<IDBDatabase> | null = null;
/** A write must leave the page within the call that asks for it, so the open database is at hand. */
let database: IDBDatabase | null = null;

/** All records, or those of one study. */
export async function entries(study?: string): Promise<Entry[]> {
	const store = (await open()).transaction(STORE).objectStore(STORE);
	return reply(study === undefined ? store.getAll() : store.index("study").getAll(study));
}

/** The study that was written last; null when there is none. */
export async function newestStudy(): Promise<string | null> {
	const store = (await open()).transaction(STORE).objectStore(STORE);
	const cursor = await reply(store.index("saved").openCursor(null, "prev"));
	return (cursor?.value as Entry | undefined)?.study ?? null;
}

/**
 * Writes a record. With the database open, all of it is handed to the browser before the call returns:
 * a page that dies the next moment has lost nothing.
 */
export async function put(entry: Entry): Promise<void> {
	if (database) {
		try {
			return await write(database, entry);
		} catch (reason) {
			if (!(reason instanceof DOMException && reason.name === "InvalidStateError")) throw reason;
			// The browser has closed it without saying so.
			forget(database);
		}
	}
	await write(await open(), entry);
}

/** Takes records away that are still as they were read; if all of them were, others are written. */
export async function exchange(gone: readonly Version[], come: readonly Entry[] = []) {
	const transaction = (await open()).transaction(STORE, "readwrite");
	const store = transaction.objectStore(STORE);
	const ended = ending(transaction);
	ended.catch(() => {});
	const there = await Promise.all(gone.map(({ key }) => reply<Entry>(store.get(key))));
	const unchanged = gone.filter(({ revision }, at) => there[at]?.revision === revision);
	for (const { key } of unchanged) store.delete(key);
	if (unchanged.length === gone.length) for (const entry of come) store.put(entry);
	await ended;
}

function write(opened: IDBDatabase, entry: Entry): Promise<void> {
	try {
		const transaction = opened.transaction(STORE, "readwrite");
		const ended = ending(transaction);
		transaction.objectStore(STORE).put(entry);
		transaction.commit();
		return ended;
	} catch (reason) {
		return Promise.reject(reason);
	}
}

function open(): Promise<IDBDatabase> {
	connection ??= Promise.race([connect(), late()]).catch((reason: unknown) => {
		connection = null;
		throw reason;
	});
	return connection;
}

async function connect(): Promise<IDBDatabase> {
	const request = indexedDB.open(DATABASE, 1);
	request.onupgradeneeded = () => {
		const store = request.result.createObjectStore(STORE, { keyPath: "key" });
		store.createIndex("study", "study");
		store.createIndex("saved", "saved");
	};
	const opened = await reply(request);
	// The browser closes it when somebody clears its data; the next use opens a new one.
	opened.onclose = () => forget(opened);
	opened.onversionchange = () => forget(opened);
	database = opened;
	return opened;
}

function forget(opened: IDBDatabase) {
	opened.close();
	if (database === opened) database = connection = null;
}

function late(): Promise<never> {
	return new Promise((_, reject) => {
		setTimeout(() => reject(new Error("the browser did not answer")), PATIENCE);
	});
}

function reply<Result>(request: IDBRequest<Result>): Promise<Result> {
	return new Promise((resolve, reject) => {
		request.onsuccess = () => resolve(request.result);
		request.onerror = () => reject(request.error);
	});
}

function ending(transaction: IDBTransaction): Promise<void> {
	return new Promise((resolve, reject) => {
		transaction.oncomplete = () => resolve();
		transaction.onabort = () => reject(transaction.error);
	});
}
