/** What a page of a site gives its search, and how the search goes through it. Nothing here knows a browser. */

export interface SearchText {
  readonly path: string;
  readonly title: string;
  readonly kind: string;
  readonly text: string;
}

/** In small letters, without accents. */
const folded = (text: string): string => text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();

/** All texts that have each of these words, as the beginning of one of theirs; those with most of them in the title first. */
export function searched(texts: readonly SearchText[], asked: string): readonly SearchText[] {
  const words = folded(asked).match(/[\p{L}\p{N}]+/gu) ?? [];
  if (words.length === 0) return [];
  const hits = texts.flatMap((each) => {
    const [title, all] = [wordsOf(each.title), wordsOf(`${each.title} ${each.text}`)];
    const has = (own: readonly string[], word: string): boolean => own.some((one) => one.startsWith(word));
    if (!words.every((word) => has(all, word))) return [];
    return [{ each, inTitle: words.filter((word) => has(title, word)).length }];
  });
  return hits.toSorted((a, b) => b.inTitle - a.inTitle).map(({ each }) => each);
}

const wordsOf = (text: string): readonly string[] => folded(text).match(/[\p{L}\p{N}]+/gu) ?? [];
