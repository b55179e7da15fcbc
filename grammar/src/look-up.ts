/** The entry of a word in a table, if it has one of its own: every object inherits `constructor` and the like. */
export function lookUp<T>(table: Readonly<Record<string, T>>, word: string): T | undefined {
  return Object.hasOwn(table, word) ? table[word] : undefined;
}
