/**
 * The right to edit a study: one page has it at a time. The browser frees it by itself as soon as that
 * page is gone, however it ended.
 */

/** Held until it is let go, or taken away by force. */
export interface Hold {
	release(): void;
}

const NAME = "evenport ";

/** Takes a study if no other page has it; null when one does. */
export function takeFree(study: string, lost: () => void): Promise<Hold | null> {
	return request(study, { ifAvailable: true }, lost);
}

/** Takes a study, also from another page. */
export function takeAway(study: string, lost: () => void): Promise<Hold | null> {
	return request(study, { steal: true }, lost);
}

/** Takes a study as soon as the other page is gone; null when it is no longer waited for. */
export function takeLater(
	study: string,
	signal: AbortSignal,
	lost: () => void,
): Promise<Hold | null> {
	return request(study, { signal }, lost);
}

/** The studies that some page holds. */
export async function heldStudies(): Promise<ReadonlySet<string>> {
	const { held = [] } = (await navigator.locks?.query()) ?? {};
	const names = held.map(({ name = "" }) => name).filter((name) => name.startsWith(NAME));
	return new Set(names.map((name) => name.slice(NAME.length)));
}

function request(study: string, options: LockOptions, lost: () => void): Promise<Hold | null> {
	// Without a secure origin browsers have no locks; records never overwrite each other even so.
	if (!navigator.locks) return Promise.resolve({ release() {} });
	return new Promise((resolve) => {
		let holding = false;
		navigator.locks
			.request(NAME + study, options, (lock) => {
				if (!lock) return resolve(null);
				holding = true;
				return new Promise<void>((end) => {
					resolve({
						release() {
							holding = false;
							end();
						},
					});
				});
			})
			.catch(() => {
				if (holding) lost();
				else resolve(null);
			});
	});
}
