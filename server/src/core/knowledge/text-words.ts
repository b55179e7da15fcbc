/**
 * Text cut into clauses and words, as the readers of chemicals, labels and notes look at it.
 */
import { forRecentTexts } from "../once.ts";

export interface Word {
  /** Lower case, without a plural s. */
  readonly key: string;
  readonly text: string;
  /** What stands between it and the word before. */
  readonly gap: string;
  /** Something other than a space or hyphen stands there. */
  readonly breaks: boolean;
}

/** The words of the clauses of a text. Most lines and materials have none, and all are asked about by many rules. */
export const clausesOf = (text: string): readonly (readonly Word[])[] =>
  text === "" ? NOTHING_SAID : clausesOfText(text);

const clausesOfText = forRecentTexts((text) => text.normalize("NFKC").split(CLAUSE_END).map(wordsOf));

const NOTHING_SAID: readonly (readonly Word[])[] = [[]];

/** A colon ends a clause, unless a list of what is denied follows it: "free of: lye, ammonia". */
const CLAUSE_END =
  /[;!?\n]|\.(?=\s|$)|(?<!\b(?:of|from|these|following|no|without)\s?):(?!\s*(?:none|nil|not)\b)/iu;

const WORD = /(?<![\d-])\d{2,7}-\d{2}-\d(?![\d-])|[\p{L}\p{N}]+(?:['’]\p{L}+)?/gu;

export function wordsOf(clause: string): readonly Word[] {
  const text = clause.replace(/[\u2010-\u2015\u2212]/gu, "-");
  let end = 0;
  return [...text.matchAll(WORD)].map((match) => {
    const gap = text.slice(end, match.index);
    end = match.index + match[0].length;
    return { key: keyOf(match[0]), text: match[0], gap, breaks: /[^\s_-]/u.test(gap) };
  });
}

function keyOf(word: string): string {
  const lower = word.toLowerCase().replace("’", "'");
  if (lower.endsWith("n't")) return lower;
  const own = lower.replace(/'s?$/u, "");
  return own.length > 3 && own.endsWith("s") && !own.endsWith("ss") ? own.slice(0, -1) : own;
}

/** Whether a word begins with one of these stems. */
export const startsWithAny = (key: string, stems: readonly string[]): boolean =>
  stems.some((stem) => key.startsWith(stem));

export const wordSet = (words: string): ReadonlySet<string> => new Set(words.split(" "));
