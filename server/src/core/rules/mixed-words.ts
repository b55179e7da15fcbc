/**
 * Words that put two chemicals together: "pour bleach and ammonia into one bucket". Two names in one clause are not yet a
 * mixture; they count where they stand side by side or the clause speaks of mixing, and not where a rinse or a wait stands
 * between them.
 */

import type { Hazard } from "../knowledge/chemical-schema.ts";
import { chemicalsIn, type Mention } from "../knowledge/chemical-words.ts";
import { chemical } from "../knowledge/chemicals.ts";
import type { Reading } from "../knowledge/denials.ts";
import { type Incompatible, incompatible } from "../knowledge/incompatible.ts";
import { clausesOf, startsWithAny } from "../knowledge/text-words.ts";

export interface Mixture {
  readonly one: Mention;
  readonly other: Mention;
  readonly pair: Incompatible;
}

const MIXING = [
  "mix",
  "together",
  "combin",
  "blend",
  "bucket",
  "pour",
  "add",
  "dash",
  "splash",
  "stir",
  "cocktail",
  "capful",
  "spoon",
];
const SIDE_BY_SIDE = new Set(["and", "with", "plus", "in", "into", "a", "some", "of", "the", "little"]);
const PARTED = ["rins", "dry", "dried", "then", "later", "after", "before", "wash", "next"];
/** Kept, not mixed. */
const APART = ["separate", "apart", "store", "shelf", "shelve", "keep", "kept"];
/** Bleaches of other kinds than chlorine. */
const OTHER_BLEACH = new Set([
  "wood",
  "oxalic",
  "acid",
  "peroxide",
  "part",
  "oxygen",
  "colour",
  "color",
  "sun",
  "ab",
]);

/** "Bleach the top" is something to do, no liquid. */
const OBJECTS = new Set(["the", "it", "this", "them", "until", "again"]);

/** Names further apart than this are a list and no mixture. */
const NEIGHBOURS = 4;

/** The first two chemicals that a text puts together and that must not meet. */
export function mixedIn(text: string, reading: Reading): Mixture | undefined {
  const mentions = chemicalsIn(text, reading).filter(({ stance }) => stance === "named");
  if (mentions.length < 2) return undefined;
  const clauses = clausesOf(text).map(toneOf);
  for (const [at, one] of mentions.entries())
    for (const other of mentions.slice(at + 1, at + 1 + NEIGHBOURS)) {
      if (one.clause !== other.clause) break;
      const tone = clauses[one.clause]!;
      const pair = incompatible(hazardsOf(one, tone.keys), hazardsOf(other, tone.keys));
      if (pair && isPutTogether(tone, one, other, reading)) return { one, other, pair };
    }
  return undefined;
}

/** What a clause says of all its names, found once. */
interface Tone {
  readonly keys: readonly string[];
  readonly isApart: boolean;
  readonly isTogether: boolean;
  readonly isMixing: boolean;
}

function toneOf(words: Clause): Tone {
  const keys = words.map(({ key }) => key);
  return {
    keys,
    isApart: keys.some((key) => startsWithAny(key, APART)),
    isTogether: keys.includes("together"),
    isMixing: keys.some((key) => startsWithAny(key, MIXING)),
  };
}

type Clause = ReturnType<typeof clausesOf>[number];

function hazardsOf({ chemical: name, from }: Mention, words: readonly string[]): readonly Hazard[] {
  const { hazards } = chemical(name);
  if (!hazards.includes("bleach of any kind")) return hazards;
  const isVerb = OBJECTS.has(words[from + 1] ?? "");
  return isVerb || OTHER_BLEACH.has(words[from - 1] ?? "") ? [] : ["chlorine bleach"];
}

function isPutTogether(tone: Tone, one: Mention, other: Mention, reading: Reading): boolean {
  if (tone.isApart) return false;
  const between = tone.keys.slice(one.to + 1, other.from);
  if (between.some((key) => startsWithAny(key, PARTED))) return tone.isTogether;
  if (between.every((key) => SIDE_BY_SIDE.has(key))) return true;
  return reading === "recipe" && tone.isMixing;
}

/**
 * The lye or strong acid that a text tells to pour water onto. It boils at once; the other way round is the right one.
 */
export function drownedIn(text: string): Mention | undefined {
  const clauses = clausesOf(text);
  return chemicalsIn(text, "recipe").find(({ chemical: name, stance, clause, from }) => {
    if (
      stance !== "named" ||
      !chemical(name).hazards.some((it) => it === "strong base" || it === "strong acid")
    )
      return false;
    if (isPouredOnIt(clauses[clause]!.slice(from).map(({ key }) => key))) return true;
    const before = clauses[clause]!.slice(Math.max(0, from - 8), from).map(({ key }) => key);
    const poured = before.findLastIndex((key) => POURING.has(key));
    const water = before.findIndex((key, at) => at > poured && key === "water");
    const onto = before.findIndex((key, at) => at > water && ONTO.has(key));
    return poured >= 0 && water >= 0 && onto >= 0 && onto - water <= 2;
  });
}

/** "Lye into the pail first, and pour water on it." */
function isPouredOnIt(keys: readonly string[]): boolean {
  const poured = keys.findIndex((key) => POURING.has(key));
  const water = keys.findIndex((key, at) => at > poured && key === "water");
  const rest = keys.slice(water + 1, water + 4);
  return (
    poured >= 0 &&
    water >= 0 &&
    water - poured <= 4 &&
    rest.includes("it") &&
    rest.some((key) => ONTO.has(key))
  );
}

const POURING = new Set(["pour", "add", "tip", "run", "put"]);
const ONTO = new Set(["on", "onto", "into", "over", "to", "in"]);
