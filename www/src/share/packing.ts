/**
 * Bytes through the browser's own compression, or back. Not by way of a Blob, which WebKit cannot read on a page
 * that was opened from disk.
 */
export function through(
	bytes: Uint8Array<ArrayBuffer>,
	stream: CompressionStream | DecompressionStream,
): ReadableStream<Uint8Array> {
	return (new Response(bytes).body as ReadableStream<Uint8Array<ArrayBuffer>>).pipeThrough(stream);
}
