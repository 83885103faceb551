/** The options of a list to choose from. A table has hundreds of them, so they are built once and copied. */

export interface Option {
	readonly name: string;
	readonly label: string;
	readonly help?: string;
}

/** A copy of the elements of these options. */
export function optionElements(options: readonly Option[]): DocumentFragment {
	const known = built.get(options) ?? build(options);
	built.set(options, known);
	return known.cloneNode(true) as DocumentFragment;
}

const built = new WeakMap<readonly Option[], DocumentFragment>();

function build(options: readonly Option[]): DocumentFragment {
	const fragment = document.createDocumentFragment();
	fragment.append(...options.map(({ name, label }) => new window.Option(label, name)));
	return fragment;
}
