/**
 * Whether words deny, forbid or take back what they name: "free of silicone", "no lead was found", "never use a torch".
 * All readers of free text ask here; what else each of them heeds (places kept away from, work that is put off) is its own.
 */
import { startsWithAny, type Word, wordSet } from "./text-words.ts";

/** A label says what a tin holds; the words of a recipe say what somebody does. */
export type Reading = "label" | "recipe";

/** A name in a clause: its first and last word, counted from 0. */
export interface Spot {
  readonly words: readonly Word[];
  readonly from: number;
  readonly to: number;
  readonly reading: Reading;
}

/** Whether the words around a name deny it, or forbid it. */
export const isDenied = (spot: Spot): boolean => isDeniedBefore(spot) || isDeniedAfter(spot);

/** Whether a text holds a plain denial of anything: for readers that look at all that stands before a name. */
export const negates = (text: string): boolean => NEGATION.test(text);

const NEGATION =
  /\b(?:no|not|none|never|nor|neither|without|cannot|instead\s+of|rather\s+than|free\s+(?:of|from))\b|n['’]t\b/iu;

/** These deny what follows within `REACH` words, up to a word that asserts. */
const DENIES = wordSet(
  "no not none never nor neither without zero nothing cannot instead lieu exclude lack avoid omit forbid " +
    "don't doesn't isn't aren't mustn't won't can't shouldn't hasn't haven't",
);
export const REACH = 7;
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

function isDeniedBefore({ words, from, reading }: Spot): boolean {
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

function isDeniedAfter({ words, to, reading }: Spot): boolean {
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
