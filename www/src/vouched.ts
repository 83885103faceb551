/**
 * The policy of the page lets scripts start only from an address that is vouched for. These are the page's
 * own: of its workers, and of its service worker.
 */

/** What the browser offers of the standard on trusted types; some browsers have none. */
interface TrustedTypes {
	createPolicy(
		name: string,
		rules: { createScriptURL: (asked: string) => string },
	): { createScriptURL: (asked: string) => string };
}

const addresses = new Set<string>();

const policy = (globalThis as { trustedTypes?: TrustedTypes }).trustedTypes?.createPolicy(
	"evenport-worker",
	{
		createScriptURL(asked) {
			if (!addresses.has(asked)) throw new TypeError("not a worker's address");
			return asked;
		},
	},
);

/** An address written in this page's own code, in the form that the browser starts scripts from. */
export function vouched(address: string): string {
	addresses.add(address);
	return policy?.createScriptURL(address) ?? address;
}
