/**
 * Closest-name suggestions for misspelt words and names.
 */
import { closestWord } from "../measure/closest-word.ts";

/** The candidate that was probably meant; `undefined` when none is near. The word itself is no suggestion. */
export function closest(word: string, candidates: Iterable<string>): string | undefined {
  return closestWord(
    word,
    [...candidates].filter((candidate) => candidate !== word),
  );
}

/** ` Did you mean \`walnut\`?`, or nothing. */
export function didYouMean(word: string, candidates: Iterable<string>): string {
  const best = closest(word, candidates);
  return best === undefined ? "" : ` Did you mean \`${best}\`?`;
}

/** "a, b or c" */
export function orList(words: readonly string[]): string {
  if (words.length <= 1) return words.join("");
  return `${words.slice(0, -1).join(", ")} or ${words[words.length - 1]}`;
}

/** "a, b and c" */
export function andList(words: readonly string[]): string {
  if (words.length <= 1) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}
