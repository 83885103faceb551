/** How large a box is, told after each layout. Asking for it at any other time would force a layout of the page. */

/** Tells how wide a box is inside its borders [px], now and whenever that changes. */
export function wide(tell: (pixels: number) => void) {
	return observed((box) => tell(box.clientWidth));
}

/** Tells how high a box is with its borders [px], now and whenever that changes. */
export function high(tell: (pixels: number) => void) {
	return observed((box) => tell(box.offsetHeight));
}

function observed(tell: (box: HTMLElement) => void) {
	return (box: HTMLElement) => {
		const observer = new ResizeObserver(() => tell(box));
		observer.observe(box);
		return () => observer.disconnect();
	};
}
