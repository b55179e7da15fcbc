/**
 * Closest-name suggestions for misspelt words and names.
 */

import { closestWord } from "../../../../grammar/src/closest-word.ts";
import { t } from "../../../../grammar/src/translate.ts";

/**
 * Candidates that are compared at most, the first ones: a file of many names and many mistakes would take the product of
 * both. The words of the notation are far fewer.
 */
const MOST_COMPARED = 400;

/** The candidate that was probably meant; `undefined` when none is near. The word itself is no suggestion. */
export function closest(word: string, candidates: Iterable<string>): string | undefined {
  return closestWord(word, others(word, candidates));
}

/**
 * The same for names that people give: where nothing is near, the only one whose last part is the word, as
 * `paint_stripper` for `stripper`. The words of the notation are not guessed so: `mask` may be more than one of them.
 */
export function closestName(word: string, candidates: Iterable<string>): string | undefined {
  // Not a list of all of them for every name that is looked up.
  const names = [...others(word, candidates)];
  const near = closestWord(word, names);
  if (near !== undefined || word.length < SHORTEST_PART) return near;
  const ended = names.filter((name) => name.endsWith(`_${word}`));
  return ended.length === 1 ? ended[0] : undefined;
}

const SHORTEST_PART = 4;

function* others(word: string, candidates: Iterable<string>): Generator<string> {
  let left = MOST_COMPARED;
  for (const candidate of candidates) {
    if (left === 0) return;
    left -= 1;
    if (candidate !== word) yield candidate;
  }
}

/** "Did you mean `walnut`?", or nothing. */
export function didYouMean(word: string, candidates: Iterable<string>): string {
  const best = closest(word, candidates);
  return best === undefined ? "" : t`Did you mean \`${best}\`?`;
}

/** So many names are listed in a message at most. */
const MOST_LISTED = 12;

/** "a, b, c"; of a long list the first ones, and how many more there are. `say` words one of them. */
export function shortList<T>(items: readonly T[], say: (item: T) => string): string {
  const rest = items.length - MOST_LISTED;
  const listed = rest > 1 ? items.slice(0, MOST_LISTED) : items;
  return `${listed.map(say).join(", ")}${rest > 1 ? t` and ${rest} more` : ""}`;
}

/** "a, b or c" */
export function orList(words: readonly string[]): string {
  if (words.length <= 1) return words.join("");
  return t`${words.slice(0, -1).join(", ")} or ${words.at(-1)!}`;
}

/** "a, b and c" */
export function andList(words: readonly string[]): string {
  if (words.length <= 1) return words.join("");
  return t`${words.slice(0, -1).join(", ")} and ${words.at(-1)!}`;
}
