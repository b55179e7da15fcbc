/**
 * Finds the chemicals of the table in what people write, and whether the words say that they are there.
 *
 * A text is cut into words once, and every run of up to six words is looked up: linear in the text, whatever the number of
 * chemicals. Hyphens, spaces and case make no difference ("methylene-chloride", "methylenechloride"); a plural s neither.
 * CAS numbers are one word. What a text denies, compares or guards against is a mention, but not one that counts.
 */

import { CHEMICALS, type ChemicalName, chemical } from "./chemicals.ts";
import { isDenied, REACH, type Reading, type Spot, takesBack } from "./denials.ts";
import { clausesOf, startsWithAny, type Word, wordSet, wordsOf } from "./text-words.ts";

/** How the words around a name mean it. */
export type Stance =
  /** It is there, or is to be used. */
  | "named"
  /** The words say that it is not there, or forbid it: "free of", "no", "never use". */
  | "denied"
  /** The words speak of something else by it: "resists ammonia", "safer than benzene". */
  | "doubtful";

export interface Mention {
  readonly chemical: ChemicalName;
  /** As it is written. */
  readonly words: string;
  readonly stance: Stance;
  /** The place of its first and last word in the clause. */
  readonly from: number;
  readonly to: number;
  /** The clause and the sentence that it stands in, counted from 0. */
  readonly clause: number;
}

/** All chemicals that a text names, in its order. */
export function chemicalsIn(text: string, reading: Reading): readonly Mention[] {
  return clausesOf(text).flatMap((words, clause, clauses) => {
    const names = found(words);
    if (names.length === 0) return [];
    const tone = toneOf(words, reading === "recipe" && takesBack(clauses[clause + 1] ?? []));
    return names.map(({ name, from, to }) => ({
      chemical: name,
      words: words
        .slice(from, to + 1)
        .map(({ text, gap }, at) => (at === 0 ? text : gap + text))
        .join(""),
      stance: stanceOf({ words, from, to, reading, tone }, name),
      from,
      to,
      clause,
    }));
  });
}

// ---------------------------------------------------------------------------------------------------------------
// The index

const LONGEST = 6;
/** Abbreviations are looked up as one word only: "a PC e-mail" holds no PCE. */
const SHORT = 3;

const NAMES: ReadonlyMap<string, ChemicalName> = new Map(
  CHEMICALS.flatMap(({ name, words, cas }) => [
    ...words.map((term) => [joined(wordsOf(term)), name] as const),
    ...cas.map((number) => [number, name] as const),
  ]),
);

function joined(words: readonly Word[]): string {
  return words.map(({ key }) => key).join("");
}

function found(words: readonly Word[]): readonly { name: ChemicalName; from: number; to: number }[] {
  const all: { name: ChemicalName; from: number; to: number }[] = [];
  let from = 0;
  while (from < words.length) {
    const to = longestFrom(words, from);
    if (to === undefined) from += 1;
    else {
      all.push({ name: NAMES.get(joined(words.slice(from, to + 1)))!, from, to });
      from = to + 1;
    }
  }
  return all.filter(({ name, from, to }) => {
    const { notBefore = [], notAfter = [] } = chemical(name);
    const before = words[from - 1]?.key ?? "";
    return !(
      notBefore.includes(words[to + 1]?.key ?? "") ||
      notAfter.includes(before) ||
      notAfter.includes(`${words[from - 2]?.key ?? ""} ${before}`)
    );
  });
}

function longestFrom(words: readonly Word[], from: number): number | undefined {
  let key = "";
  let last: number | undefined;
  for (let to = from; to < Math.min(words.length, from + LONGEST); to += 1) {
    if (to > from && words[to]!.breaks && !isChained(words[to - 1]!, words[to]!)) break;
    key += words[to]!.key;
    if (NAMES.has(key) && (to === from || key.length > SHORT)) last = to;
  }
  return last;
}

/** The comma of "1,6-hexamethylene", the bracket of "Cr(VI)". */
const isChained = (before: Word, word: Word): boolean =>
  (/^\d+$/u.test(before.key) && /^\d+$/u.test(word.key)) || word.key === "vi";

// ---------------------------------------------------------------------------------------------------------------
// Stance

/** In a recipe these speak of a danger, of what may be found or of where it is taken, and tell nobody to use it. */
const CAUTIONS = [
  "danger",
  "poison",
  "kill",
  "warn",
  "caution",
  "cancer",
  "harmful",
  "toxic",
  "illegal",
  "forbid",
  "banned",
  "prohibit",
  "outlaw",
  "beware",
  "hazard",
  "suspect",
  "unsafe",
  "tested",
  "testing",
  "apart",
  "separate",
  "dispos",
  "discard",
  "waste",
  "recycl",
  "lock",
];
const MAY = wordSet("may might could");
const BE = wordSet("hold contain be have include");

/** Before the name: the words compare, guard against it, or come after it. */
const COMPARES = wordSet("than like unlike against after remove former formerly");
const COMPARING = ["resist", "withstand", "neutrali", "replac", "alternative", "substitut"];
const WITH = wordSet("with using contain hold");
/** "If it contains …", "whether it holds …", "check that it has …". */
const HOLDS = wordSet("contain hold include has have");
const ASKED = wordSet("if whether unless check ask should");
const isAsked = (words: readonly Word[], at: number): boolean =>
  words.slice(Math.max(0, at - REACH), at).some(({ key }) => ASKED.has(key));

/** After the name: "ammonia-resistant". */
const WITHSTANDS = ["resist", "proof"];
/** Lye is spoken of on many labels that hold none, so there a clause counts only where it leaves no doubt. */
const LYE_DOUBTS = wordSet("after against from");

/** What holds for all names of a clause, found once so that a long one costs its length. */
interface Tone {
  readonly isCaution: boolean;
  readonly isTakenBack: boolean;
  readonly isDoubtOfLye: boolean;
}

const toneOf = (words: readonly Word[], isTakenBack: boolean): Tone => ({
  isTakenBack,
  isCaution: isCaution(words),
  isDoubtOfLye: words.some(({ key }) => LYE_DOUBTS.has(key) || key.startsWith("neutrali")),
});

interface Name extends Spot {
  readonly tone: Tone;
}

function stanceOf(name: Name, chemicalName: ChemicalName): Stance {
  if (isDenied(name) || name.tone.isTakenBack) return "denied";
  if (name.reading === "recipe" && name.tone.isCaution) return "denied";
  return isDoubtful(name, chemicalName) ? "doubtful" : "named";
}

const isCaution = (words: readonly Word[]): boolean =>
  words.some(
    ({ key }, at) => startsWithAny(key, CAUTIONS) || (MAY.has(key) && BE.has(words[at + 1]?.key ?? "")),
  );

function isDoubtful({ words, from, to, reading, tone }: Name, chemicalName: ChemicalName): boolean {
  if (startsWithAny(words[to + 1]?.key ?? "", WITHSTANDS)) return true;
  if (reading === "label" && chemicalName === "lye" && tone.isDoubtOfLye) return true;
  const reach = reading === "label" ? REACH : 4;
  for (let at = from - 1; at >= Math.max(0, from - reach); at -= 1) {
    const { key } = words[at]!;
    // "No more than 5 %" is an amount.
    if (key === "smell" && ["of", "like"].includes(words[at + 1]?.key ?? "")) return true;
    if (reading === "recipe" && HOLDS.has(key) && isAsked(words, at)) return true;
    if (key === "than" && ["more", "less"].includes(words[at - 1]?.key ?? "")) return false;
    if (COMPARES.has(key) || startsWithAny(key, COMPARING)) return true;
    if (WITH.has(key)) return false;
  }
  return false;
}
