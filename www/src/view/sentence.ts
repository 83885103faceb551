/** A sentence of the solver's with each number and its unit kept on one line. */
export function joined(sentence: string): string {
	return sentence.replace(/(\d) (?=%|kPa|Pa|K\b|rpm|m\/s)/g, "$1\u00a0");
}

/** Words as they begin a sentence. */
export function begun(words: string): string {
	return words.charAt(0).toUpperCase() + words.slice(1);
}
