/**
 * Copying and pasting happen where the focus is. Firefox hands them to the place of the text selection instead,
 * unless a text is being edited: lists that are chosen from and buttons never heard of them.
 */
export function aimClipboard(): void {
	for (const type of ["copy", "cut", "paste"] as const) {
		document.addEventListener(type, aim, { capture: true });
	}
}

function aim(event: ClipboardEvent) {
	const { activeElement: focus } = document;
	const isThere = event.target instanceof Node && focus?.contains(event.target);
	// Whoever has selected a text wants to copy that.
	const isText = event.type !== "paste" && getSelection()?.isCollapsed === false;
	if (!focus || isThere || isText) return;
	event.stopImmediatePropagation();
	// Firefox lets nobody give a new ClipboardEvent the data of another one.
	const again = new Event(event.type, { bubbles: true, cancelable: true });
	Object.defineProperty(again, "clipboardData", { value: event.clipboardData });
	if (!focus.dispatchEvent(again)) event.preventDefault();
}
