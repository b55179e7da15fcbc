/**
 * Sentences told by their words, whatever their order and what stands between: a rule gives patterns of word classes, and
 * this finds the clause that has one and does not forbid it.
 *
 * A pattern is a line of elements:
 *
 *     POUR .. STUFF .. DRAIN      classes in this order, at most four other words between two
 *     rag|cloth ... bin           words, with alternatives; three dots reach nine words
 *     burn* the stove             a star ends a stem; without dots only articles and the like stand between
 *     CHILD & WORKROOM            both in the clause, in any order
 *     … !cured                    and the clause has no such word
 *
 * Names in capitals are looked up in the classes that come with the patterns. Words of several parts are joined by `_`.
 * Cost: patterns times words of the text, whatever the text says.
 */

import { onceFor, onFirstUse } from "../once.ts";
import { isForbidden, isNegation, takesBack } from "./denials.ts";
import { clausesOf, type Word, wordsOf } from "./text-words.ts";

/** Word classes by name: words with `|` between, as in a pattern. */
export type WordClasses = Readonly<Record<string, string>>;

export interface Phrases {
  /** The words of the first clause that says so, without its denials; undefined where none does. */
  readonly find: (clauses: readonly (readonly Word[])[]) => string | undefined;
}

/** How many other words may stand at `..` and at `...`. */
const GAPS: Readonly<Record<string, number>> = { "..": 4, "...": 9 };

/** These may stand between two elements without being mentioned. */
const FILLERS = new Set(
  wordsOf(
    "the a an your my his her our their its this that these those some any old own very bit of little same whole just ever",
  ).map(({ key }) => key),
);
const MOST_FILLERS = 3;

interface Element {
  readonly words: ReadonlySet<string>;
  /** Words that stand with an apostrophe and s. */
  readonly owners: ReadonlySet<string>;
  readonly stems: readonly string[];
  /** Alternatives of several words. */
  readonly chains: readonly (readonly string[])[];
  /** How many other words may stand before it; undefined for fillers only. */
  readonly gap?: number;
}

interface Pattern {
  /** Each part is a chain of elements; all have to be in the clause. */
  readonly parts: readonly (readonly Element[])[];
  readonly absent: readonly Element[];
}

/** What the patterns find; classes are looked up by their names. They are read when they are first asked for. */
export function phrases(classes: WordClasses, patterns: readonly string[]): Phrases {
  const read = onFirstUse(() => patternsOf(patterns, classes));
  const find: Phrases["find"] = (clauses) => {
    for (const [at, words] of clauses.entries()) {
      if (words.length === 0 || takesBack(clauses[at + 1] ?? [])) continue;
      for (const pattern of read())
        if (isSaid(words, pattern))
          return words
            .map(({ gap, text }) => gap + text)
            .join("")
            .trim();
    }
    return undefined;
  };
  return {
    find: (clauses) => {
      const known = foundIn(clauses);
      if (known.has(find)) return known.get(find);
      const found = find(clauses);
      known.set(find, found);
      return found;
    },
  };
}

/** What was found in the clauses of a text, by whose patterns; the clauses of recent texts are kept. */
const foundIn = onceFor((_: readonly (readonly Word[])[]) => new Map<Phrases["find"], string | undefined>());

function patternsOf(patterns: readonly string[], classes: WordClasses): readonly Pattern[] {
  const known = new Map<string, Element>();
  return patterns.map((pattern) => patternOf(pattern, classes, known));
}

/** The same for a text by itself. */
export const saidIn = ({ find }: Phrases, text: string): string | undefined => find(clausesOf(text));

function patternOf(text: string, classes: WordClasses, known: Map<string, Element>): Pattern {
  const absent: Element[] = [];
  const parts = text.split(" & ").map((part) => {
    const chain: Element[] = [];
    let gap: number | undefined;
    for (const token of part.split(" ").filter((each) => each !== "")) {
      if (token in GAPS) gap = GAPS[token];
      else if (token.startsWith("!")) absent.push(elementOf(token.slice(1), classes, known));
      else {
        const element = elementOf(token, classes, known);
        chain.push(gap === undefined ? element : { ...element, gap });
        gap = undefined;
      }
    }
    return chain;
  });
  return { parts, absent };
}

function elementOf(token: string, classes: WordClasses, known: Map<string, Element>): Element {
  const had = known.get(token);
  if (had) return had;
  const words = new Set<string>();
  const owners = new Set<string>();
  const stems: string[] = [];
  const chains: (readonly string[])[] = [];
  for (const each of alternativesOf(token, classes)) {
    const keys = each.endsWith("*") ? [] : wordsOf(each.replaceAll("_", " ")).map(({ key }) => key);
    if (keys.length > 1) chains.push(keys);
    else if (keys.length === 1) (OWNED.test(each) ? owners : words).add(keys[0]!);
    else stems.push(each.slice(0, -1));
  }
  const element = { words, owners, stems, chains };
  known.set(token, element);
  return element;
}

/** A class may name others. */
const alternativesOf = (token: string, classes: WordClasses): readonly string[] =>
  token
    .split("|")
    .flatMap((each) =>
      /^[A-Z]+$/u.test(each) ? alternativesOf(classes[each] ?? missing(each), classes) : [each],
    );

function missing(name: string): never {
  throw new Error(`no such class of words: ${name}`);
}

interface Span {
  readonly from: number;
  readonly to: number;
  /** The words that elements stand on. */
  readonly taken: readonly number[];
}

function isSaid(words: readonly Word[], { parts, absent }: Pattern): boolean {
  const spans = parts.map((chain) => spanOf(words, chain));
  if (spans.some((span) => span === undefined)) return false;
  return !absent.some((element) => words.some((_, at) => lengthAt(words, at, element) > 0));
}

/** The first place of a chain that is not forbidden. */
function spanOf(words: readonly Word[], chain: readonly Element[]): Span | undefined {
  for (let from = 0; from < words.length; from += 1) {
    const span = chainFrom(words, from, chain);
    if (span && !isForbidden(words, span)) return span;
  }
  return undefined;
}

function chainFrom(words: readonly Word[], from: number, chain: readonly Element[]): Span | undefined {
  let length = lengthAt(words, from, chain[0]!);
  if (length === 0) return undefined;
  const taken = range(from, length);
  let next = from + length;
  for (const element of chain.slice(1)) {
    const found = nextOf(words, next, element);
    if (found === undefined) return undefined;
    length = lengthAt(words, found, element);
    taken.push(...range(found, length));
    next = found + length;
  }
  return { from, to: next - 1, taken };
}

const range = (from: number, length: number): number[] => Array.from({ length }, (_, at) => from + at);

/** Where an element stands next, at or after a place. */
function nextOf(words: readonly Word[], from: number, element: Element): number | undefined {
  const most = Math.min(words.length - 1, from + (element.gap ?? MOST_FILLERS));
  // What a negation denies does not stand behind a comma.
  const isDenial = from > 0 && isNegation(words, from - 1);
  for (let at = from; at <= most; at += 1) {
    if (isDenial && words[at]!.breaks) return undefined;
    if (lengthAt(words, at, element) > 0) return at;
    if (element.gap === undefined && !FILLERS.has(words[at]!.key)) return undefined;
  }
  return undefined;
}

/** How many words of an element stand at a place; 0 for none. */
function lengthAt(
  words: readonly Word[],
  at: number,
  { words: set, owners, stems, chains }: Element,
): number {
  const word = words[at];
  if (word === undefined) return 0;
  const { key } = word;
  const chain = chains.find((keys) =>
    keys.every((each, on) => words[at + on]?.key === each && !(on > 0 && words[at + on]!.breaks)),
  );
  if (chain) return chain.length;
  if (OWNED.test(word.text) && !CONTRACTED.has(key)) return owners.has(key) ? 1 : 0;
  return set.has(key) || stems.some((stem) => key.startsWith(stem)) ? 1 : 0;
}

/** "The children's table" is no child; "it's" is it. */
const OWNED = /['’]s$/u;
const CONTRACTED = new Set(["it", "that", "what", "there", "here", "he", "she", "who", "let"]);
