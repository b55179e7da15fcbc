/**
 * Closest-name suggestions for misspelt words and names.
 */
import { distance } from "fastest-levenshtein";

/**
 * The candidate nearest to `word` by edit distance, if it is near enough to be meant (at most a third of the
 * word's length, at least one edit); `undefined` when none is. Case differences count as half an edit, so that a
 * word in the wrong case is always found. Ties go to the first candidate.
 */
export function closest(word: string, candidates: Iterable<string>): string | undefined {
  const limit = Math.max(1, Math.floor(word.length / 3));
  let best: string | undefined;
  let bestDistance = limit + 0.75;
  for (const candidate of candidates) {
    if (candidate === word) continue;
    const folded = distance(word.toLowerCase(), candidate.toLowerCase());
    const total = folded + (folded < distance(word, candidate) ? 0.5 : 0);
    if (total < bestDistance) {
      best = candidate;
      bestDistance = total;
    }
  }
  return best;
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
