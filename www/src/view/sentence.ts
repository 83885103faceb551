/** A sentence of the solver's with each number and its unit kept on one line. */
export function joined(sentence: string): string {
	return sentence.replace(/(\d) (?=%|kPa|Pa|K\b|rpm|m\/s)/g, "$1\u00a0");
}
