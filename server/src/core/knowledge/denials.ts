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

/**
 * Whether a text holds a plain denial of anything: for readers that look at all that stands before a name, or at a whole
 * clause. The one list of such words; what each reader takes as a denial beside them ("stainless", "instead") is its own.
 */
export const negates = (text: string): boolean => NEGATION.test(text);

const NEGATION =
  /\b(?:no|not|none|never|nor|neither|nobody|nothing|without|cannot|instead\s+of|rather\s+than|free\s+(?:of|from))\b|n['’]t\b/iu;

/** Whether the text before a name ends in a denial of it, with at most one word between: "non-", "not highly ". */
export const isNegatedJustBefore = (before: string): boolean => NEGATION_AT_END.test(before);

const NEGATION_AT_END =
  /(?:\b(?:no|not|non|never|neither|nor|hardly|isn['’]t|aren['’]t)\b)[\s-]*(?:\w+\s+)?$/iu;

/**
 * A text without what it orders not to do and without its conditions: "Never leave rags in a heap, they heat up" denies no
 * heat, and "rags ignite if they are not laid flat" neither.
 */
export const withoutOrders = (text: string): string => text.replaceAll(ORDER, " ").replace(CONDITION, "");

const ORDER =
  /\b(?:never|do\s+not|don['’]t|must\s+not|may\s+not|cannot)\s+(?:be\s+)?(?:leave|left|pile[ds]?|heap(?:ed)?|throw|thrown|store[ds]?|keep|kept|put|place[ds]?|dispose[ds]?|bin(?:ned)?|crumpled?|fold(?:ed)?|let|stuff(?:ed)?)\b[^,;]*/giu;
const CONDITION = /\b(?:if|unless|when|where|until)\b[\s\S]*/iu;

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

// ---------------------------------------------------------------------------------------------------------------
// What somebody tells to do, and what is forbidden

/** The words of a sentence that tell to do something; `taken` are those that say it, a negation among them included. */
export interface Telling {
  readonly from: number;
  readonly to: number;
  readonly taken: readonly number[];
}

/** Whether a clause forbids or denies what some of its words tell to do, keeps it away, or speaks of the past. */
export const isForbidden = (words: readonly Word[], telling: Telling): boolean =>
  isForbiddenBefore(words, telling.from) ||
  isForbiddenWithin(words, telling) ||
  isForbiddenAfter(words, telling.to) ||
  isPast(words) ||
  isWarnedOf(words);

const FORBIDS = wordSet(
  "nobody avoid forbid forbidden prohibit prohibited beware neither stop refuse instead than unsafe dangerou hardly",
);
/** "Never mind", "no matter", "does no harm", "in no time", "not far from": these forbid nothing. */
const IDLE = wordSet(
  "mind matter harm problem trouble danger bad worry worse hurry time only far bother long big doubt sweat fus fuss",
);
/** Words with which another thought begins. */
const TURNS = wordSet("but so just because then therefore otherwise since else or");
const SCOPE = 10;

function isForbiddenBefore(words: readonly Word[], from: number): boolean {
  for (let at = from - 1; at >= Math.max(0, from - SCOPE); at -= 1) {
    // A comma ends what a negation forbids, but for a list of what is forbidden.
    if (words[at + 1]!.breaks && !isListed(words, at + 1)) return false;
    const { key } = words[at]!;
    if (TURNS.has(key) && key !== "or") return false;
    if (isNegation(words, at)) return true;
    if (
      ["away", "far", "clear", "out"].includes(key) &&
      ["from", "of"].includes(words[at + 1]!.key) &&
      from - at <= 5
    )
      return true;
  }
  return false;
}

const isForbiddenWithin = (words: readonly Word[], { from, to, taken }: Telling): boolean => {
  for (let at = from + 1; at < to; at += 1) {
    if (taken.includes(at)) continue;
    // "Shut the door so that no dust gets in" forbids nothing.
    if (TURNS.has(words[at]!.key)) return false;
    if (isNegation(words, at)) return true;
  }
  return false;
};

/** Whether a word denies or forbids; "never mind" and "does no harm" do not. */
export function isNegation(words: readonly Word[], at: number): boolean {
  const { key } = words[at]!;
  if (!DENIES.has(key) && !FORBIDS.has(key) && !key.endsWith("n't")) return false;
  if (key === "than") return ["rather", "other"].includes(words[at - 1]?.key ?? "");
  return ![1, 2].some((on) => IDLE.has(words[at + on]?.key ?? ""));
}

/** "Never smoke, eat or drink": the part behind the comma goes on with a list. */
function isListed(words: readonly Word[], from: number): boolean {
  for (let at = from; at < words.length && at <= from + 6; at += 1) {
    if (at > from && words[at]!.breaks) return isListed(words, at);
    if (["or", "nor"].includes(words[at]!.key)) return true;
  }
  return false;
}

const RULED_OUT = wordSet("forbidden prohibited banned dangerou useless illegal outlawed unsafe");
const PUT_OUT = wordSet("off out away elsewhere cold disconnected");

/** "… is forbidden", "… are no protection", "… stays off", "… is put out first". */
export function isForbiddenAfter(words: readonly Word[], to: number): boolean {
  for (let at = to + 1; at <= Math.min(words.length - 1, to + 6); at += 1) {
    const word = words[at]!;
    if (word.breaks || TURNS.has(word.key) || CASES.has(word.key)) return false;
    if (RULED_OUT.has(word.key)) return true;
    const before = words[at - 1]!.key;
    if (at === to + 1 && isDeniedNext(words, at)) return true;
    if (GOING.has(before) && AWAY.has(word.key)) return true;
    if (AUXILIARY.has(before) || STAYING.has(before)) {
      if ((NEGATIVE.has(word.key) && isNegation(words, at)) || PUT_OUT.has(word.key)) return true;
      if (["put", "shut", "switched", "turned", "kept"].includes(word.key)) {
        const next = words[at + 1]?.key ?? "";
        if (PUT_OUT.has(next) || next === "down") return true;
      }
    }
  }
  return false;
}
const CASES = wordSet("if when while where unless");
const STAYING = wordSet("stay keep remain");
const GOING = wordSet("goe go move");
const AWAY = wordSet("out outside outdoor elsewhere");
const NOTHING = wordSet("no not nothing none never little hardly");

/** "Stops no vapour", "helps too little", "is not enough". */
const isDeniedNext = (words: readonly Word[], at: number): boolean => {
  const key = words[at]!.key;
  return (
    (NOTHING.has(key) && !IDLE.has(words[at + 1]?.key ?? "")) ||
    (key === "too" && words[at + 1]?.key === "little")
  );
};

/**
 * Whether a clause takes back the one before it: "… We don't do that here.", "I was told … It can.", "That's nonsense."
 */
export function takesBack(words: readonly Word[]): boolean {
  const keys = words.map(({ key }) => key);
  if (keys.length === 0 || keys.length > LONGEST_TAKING_BACK) return false;
  if (keys.length <= SHORTEST_REPLY && PRONOUN.has(keys[0]!) && AUXILIARY.has(keys.at(-1)!)) return true;
  if (PRONOUN.has(keys[0]!) && keys.some((key) => NONSENSE.has(key))) return true;
  const at = words.findIndex((_, on) => isNegation(words, on));
  if (at < 0 || keys.some((key) => ON_CONDITION.has(key))) return false;
  const after = keys.slice(at + 1, at + 4);
  return after.some((key) => DONE.has(key)) && after.some((key) => PRONOUN.has(key));
}
const LONGEST_TAKING_BACK = 10;
const SHORTEST_REPLY = 3;
const PRONOUN = wordSet("that this it they so such");
const NONSENSE = wordSet("nonsense wrong untrue myth rubbish false");
const DONE = wordSet("do use have want allow need");
/** "Don't do that without gloves" forbids only to do it without them. */
const ON_CONDITION = wordSet("without unless until before alone more after if too");

const WAS = wordSet("was were been");
const KEPT = wordSet("kept stored left dried standing placed done");

/** "Is used to it", "get used to it": no past. */
const WONT = wordSet("get got is are be am been soon");

/** Whether a clause tells of former days: "we used to …", "… no longer", "it stood there for years". */
export function isPast(words: readonly Word[]): boolean {
  return words.some(({ key }, at) => {
    const next = words[at + 1]?.key;
    return (
      (key === "used" && next === "to" && !WONT.has(words[at - 1]?.key ?? "")) ||
      (key === "no" && next === "longer") ||
      (key === "for" && (next === "year" || next === "decade")) ||
      (key === "year" && next === "ago") ||
      key === "formerly" ||
      key === "stood" ||
      (WAS.has(key) && KEPT.has(next ?? ""))
    );
  });
}

/** What comes of it, told as a warning: "a month of rash for those who skip the gloves". */
const CONSEQUENCE = wordSet(
  "rash dermatiti eczema blister hospital blindness blinded deafness funeral graveyard coffin regret repent sorry explode explosion deadly lethal fatal scar",
);
const SOMEONE = wordSet(
  "those anyone anybody whoever everyone everybody people fool somebody someone he she",
);
const NEGLECTS = wordSet("skip skipped forget forgot forget neglect omit ignore leave left");

/** Whether a clause warns of what it names by what comes of it; "no rash in thirty years" does not. */
const isWarnedOf = (words: readonly Word[]): boolean =>
  words.some(
    ({ key }, at) =>
      (CONSEQUENCE.has(key) && !words.some((_, on) => on !== at && isNegation(words, on))) ||
      (key === "who" &&
        SOMEONE.has(words[at - 1]?.key ?? "") &&
        NEGLECTS.has(words[at + 1]?.key ?? "") &&
        at > 1),
  );
