/**
 * Finds the chemicals of the table in what people write, and whether the words say that they are there.
 *
 * A text is cut into words once, and every run of up to six words is looked up: linear in the text, whatever the number of
 * chemicals. Hyphens, spaces and case make no difference ("methylene-chloride", "methylenechloride"); a plural s neither.
 * CAS numbers are one word. What a text denies, compares or guards against is a mention, but not one that counts.
 */
import { CHEMICALS, type ChemicalName, chemical } from "./chemicals.ts";

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

/** A label says what a tin holds; the words of a recipe say what somebody does. */
export type Reading = "label" | "recipe";

interface Word {
  /** Lower case, without a plural s. */
  readonly key: string;
  readonly text: string;
  /** What stands between it and the word before. */
  readonly gap: string;
  /** Something other than a space or hyphen stands there. */
  readonly breaks: boolean;
}

/** All chemicals that a text names, in its order. */
export function chemicalsIn(text: string, reading: Reading): readonly Mention[] {
  return clausesOf(text).flatMap((words, clause) => {
    const names = found(words);
    if (names.length === 0) return [];
    const tone = toneOf(words);
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

/** The words of the clauses of a text. */
export const clausesOf = (text: string): readonly (readonly Word[])[] =>
  text.normalize("NFKC").split(CLAUSE_END).map(wordsOf);

/** A colon ends a clause, unless a list of what is denied follows it: "free of: lye, ammonia". */
const CLAUSE_END =
  /[;!?\n]|\.(?=\s|$)|(?<!\b(?:of|from|these|following|no|without)\s?):(?!\s*(?:none|nil|not)\b)/iu;

const WORD = /(?<![\d-])\d{2,7}-\d{2}-\d(?![\d-])|[\p{L}\p{N}]+(?:['’]\p{L}+)?/gu;

function wordsOf(clause: string): readonly Word[] {
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

const wordSet = (words: string): ReadonlySet<string> => new Set(words.split(" "));

/** These deny what follows within `REACH` words, up to a word that asserts. */
const DENIES = wordSet(
  "no not none never nor neither without zero nothing cannot instead lieu exclude lack avoid omit forbid " +
    "don't doesn't isn't aren't mustn't won't can't shouldn't hasn't haven't",
);
const REACH = 7;
/** On a label these begin to say what is inside; a denial just before them takes them along. */
const ASSERTS = wordSet("contain hold include has with mostly mainly chiefly but yet except");
/** In a recipe these begin to say what to do, where they follow a comma. */
const GOES_ON = wordSet(
  "just only but then so use add pour mix apply brush wipe wash clean strip thin dip soak",
);

/** "methylene chloride is not in it", "lye must never be used". */
const AUXILIARY = wordSet("is are was were be must may should can will shall has have doe do");
const NEGATIVE = wordSet("not never no nowhere");
const CONTRACTED = wordSet("isn't aren't wasn't mustn't shouldn't doesn't hasn't cannot can't won't");
const OF_USE = wordSet(
  "used use contained present included in part needed allowed permitted added place any here",
);
const FORBIDDEN = wordSet("forbidden banned prohibited illegal outlawed");

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
  readonly isDoubtOfLye: boolean;
}

const toneOf = (words: readonly Word[]): Tone => ({
  isCaution: isCaution(words),
  isDoubtOfLye: words.some(({ key }) => LYE_DOUBTS.has(key) || key.startsWith("neutrali")),
});

interface Name {
  readonly tone: Tone;
  readonly words: readonly Word[];
  readonly from: number;
  readonly to: number;
  readonly reading: Reading;
}

function stanceOf(name: Name, chemicalName: ChemicalName): Stance {
  if (isDeniedBefore(name) || isDeniedAfter(name)) return "denied";
  if (name.reading === "recipe" && name.tone.isCaution) return "denied";
  return isDoubtful(name, chemicalName) ? "doubtful" : "named";
}

function isDeniedBefore({ words, from, reading }: Name): boolean {
  const key = (at: number): string => words[at]?.key ?? "";
  if (key(from - 1) === "non") return true;
  for (let at = from - 1; at >= Math.max(0, from - REACH); at -= 1) {
    const word = key(at);
    if (word === "only" && key(at - 1) === "not") return false;
    if (word === "more" && key(at - 1) === "no") return false;
    if (word === "free" && ["of", "from"].includes(key(at + 1))) return true;
    if (word === "rather" && key(at + 1) === "than") return true;
    if (word === "place" && key(at - 1) === "in" && key(at + 1) === "of") return true;
    if (DENIES.has(word)) return true;
    if (reading === "label" && ASSERTS.has(word)) return deniesWithin(words, at, reachBefore(words, at));
    if (reading === "recipe" && words[at]!.breaks && GOES_ON.has(word)) return false;
  }
  return false;
}

/** "Never mix it with …", "not to be used together with …": the denial is of the verb, some words further up. */
const TOGETHER = ["mix", "combin", "use", "add", "store", "bring", "brought", "let", "come", "pour"];

const reachBefore = (words: readonly Word[], at: number): number => {
  const reach = 4;
  if (words[at]!.key !== "with" || words[at]!.breaks) return 2;
  for (let verb = at - 1; verb >= Math.max(0, at - reach); verb -= 1) {
    const isVerb = startsWithAny(words[verb]!.key, TOGETHER);
    // A denial before a comma is of something else.
    if (words[verb]!.breaks) return isVerb ? at - verb : 2;
    if (isVerb) return at - verb + 3;
  }
  return 2;
};

const deniesWithin = (words: readonly Word[], at: number, reach: number): boolean =>
  words.slice(Math.max(0, at - reach), at).some(({ key }) => DENIES.has(key));

function isDeniedAfter({ words, to, reading }: Name): boolean {
  const next = words[to + 1]?.key ?? "";
  if (next === "free" || (next === "none" && !words[to + 2])) return true;
  for (let at = to + 1; at <= Math.min(words.length - 1, to + REACH); at += 1) {
    const { key } = words[at]!;
    const after = words.slice(at + 1, at + 4).map((word) => word.key);
    if (reading === "recipe" && at <= to + 4 && FORBIDDEN.has(key)) return true;
    if (CONTRACTED.has(key) && after.some((word) => OF_USE.has(word))) return true;
    if (!AUXILIARY.has(key) || !NEGATIVE.has(after[0] ?? "")) continue;
    if (after.slice(1).some((word) => OF_USE.has(word))) return true;
  }
  return false;
}

/** Whether a word begins with one of these stems. */
export const startsWithAny = (key: string, stems: readonly string[]): boolean =>
  stems.some((stem) => key.startsWith(stem));

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
