/** Writes the grammar of the peer's language as JSON, where that has not been done. */
export function keepGrammar(): Promise<void>;
