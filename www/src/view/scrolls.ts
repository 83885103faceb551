/** Lets the keyboard scroll a box for as long as its table is wider than the box. */
export function scrolls(box: HTMLElement) {
	const observer = new ResizeObserver(() => {
		if (box.scrollWidth > box.clientWidth) box.tabIndex = 0;
		else box.removeAttribute("tabindex");
	});
	observer.observe(box);
	for (const table of box.children) observer.observe(table);
	return () => observer.disconnect();
}
