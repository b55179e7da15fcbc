/**
 * Words that put two chemicals together: "pour bleach and ammonia into one bucket". Two names in one clause are not yet a
 * mixture; they count where they stand side by side or the clause speaks of mixing, and not where a rinse or a wait stands
 * between them.
 */

import type { Hazard } from "../knowledge/chemical-schema.ts";
import { chemicalsIn, type Mention } from "../knowledge/chemical-words.ts";
import { chemical } from "../knowledge/chemicals.ts";
import { isForbiddenAfter, type Reading } from "../knowledge/denials.ts";
import { type Incompatible, incompatible } from "../knowledge/incompatible.ts";
import { clausesOf, startsWithAny } from "../knowledge/text-words.ts";
import { phrases } from "./spoken-classes.ts";

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
  "follow",
  "half",
  "equal",
  "bite",
  "boost",
  "strength",
  "stronger",
];
const SIDE_BY_SIDE = new Set([
  "and",
  "with",
  "plus",
  "in",
  "into",
  "a",
  "some",
  "of",
  "the",
  "little",
  "half",
  "part",
  "mixed",
  "on",
  "over",
]);
/** The second comes while the first is still there, whatever stands between them. */
const STILL_THERE = ["wet", "straight", "immediately", "directly", "unrinsed", "top"];
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
  const words = clausesOf(text);
  const clauses = words.map(toneOf);
  for (const [at, one] of mentions.entries())
    for (const other of mentions.slice(at + 1, at + 1 + NEIGHBOURS)) {
      if (one.clause !== other.clause) break;
      const tone = clauses[one.clause]!;
      const pair = incompatible(hazardsOf(one, tone.keys), hazardsOf(other, tone.keys));
      // "Bleach and vinegar never meet here."
      const isKeptApart =
        reading === "recipe" && isForbiddenAfter(words[one.clause]!, Math.max(one.to, other.to));
      if (pair && !isKeptApart && isPutTogether(tone, one, other, reading)) return { one, other, pair };
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
    isTogether: keys.includes("together") || keys.some((key) => STILL_THERE.includes(key)),
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
  if (between.includes("mixed") || between.includes("combined")) return true;
  if (between.some((key) => startsWithAny(key, PARTED))) return tone.isTogether;
  if (tone.isTogether && reading === "recipe") return true;
  if (between.every((key) => SIDE_BY_SIDE.has(key))) return true;
  return reading === "recipe" && tone.isMixing;
}

/**
 * Words that tell to pour water onto lye or strong acid, or to put lye into hot water. It boils at once; little by little
 * into cold water is the right way. Weak acids and oxalic crystals may.
 */
export const drownedIn = (text: string): string | undefined => {
  const clauses = clausesOf(text);
  return DROWNED.find(clauses) === undefined ? undefined : NAMED.exec(text)?.[0];
};

const STRONG =
  "lye|caustic|caustic_soda|sodium_hydroxide|potash|drain_cleaner|drain_opener|quicklime|acid|muriatic|hydrochloric|sulphuric|sulfuric|spirit_of_salt|naoh";
const MILD = "!oxalic !citric !acetic !boric !tartaric !vinegar !never_water";
const NAMED =
  /\b(?:caustic\s+soda|caustic|lye|sodium\s+hydroxide|drain\s+(?:cleaner|opener)|quicklime|potash|(?:\w+ic\s+)?acid|muriatic|spirits?\s+of\s+salts?|NaOH)\b/iu;

const FLAKES = "flakes|pellets|crystals|granules|beads|prills|powder";
const HOT = "kettle|boiling|boiling_water|hot_water";
/** Where something else says that they are lye. */
export const DROWNED_FLAKES = phrases(
  `${FLAKES} ... pour|tip|add|empty|slosh|run|put|splash ... ${HOT}|water ... on|onto|over|top|them|in ${MILD} !cold !rinse !wash`,
  `pour|tip|add|empty|slosh|run|put|splash ... ${HOT} ... on|onto|over|top .. ${FLAKES} ${MILD} !cold !rinse !wash`,
  `stir|drop|tip|pour|put|shake|throw ... ${FLAKES} ... in|into .. ${HOT} ${MILD} !cold !rinse !wash`,
  `${HOT} ... on|onto|over ... ${FLAKES} ${MILD} !cold !rinse !wash`,
);

/** A chemical of these words that goes into a vessel or a liquid which stands there already. */
export function addedTo(
  text: string,
): readonly { readonly words: string; readonly hazards: readonly Hazard[] }[] {
  const clauses = clausesOf(text);
  return chemicalsIn(text, "recipe").flatMap((mention) => {
    const words = clauses[mention.clause]!;
    const { keys, isApart } = toneOf(words);
    if (mention.stance !== "named" || isApart || keys.some((key) => startsWithAny(key, PARTED))) return [];
    return ADDED.find([words]) === undefined
      ? []
      : [{ words: mention.words, hazards: hazardsOf(mention, keys) }];
  });
}
const ADDED = phrases(
  "tip|pour|add|stir|splash|slosh|put|throw|mix|drop|squirt|empty|chuck|dash|glug|shot|capful|cup|spoon ... in|into|to|with .. bucket|pail|wash|bath|solution|bowl|tub|tray|same|mix|mixture|it|liquid !rinse* !clean_bucket !fresh !another !separate !second !empty_bucket",
  "boost|strengthen|sharpen|help|spike .. wash|bucket|mix|mixture|solution|it .. with !rinse* !fresh !another",
);

const DROWNED = phrases(
  `pour|add|tip|run|put|throw|splash|slosh .. water|kettle ... on|onto|into|over|to .. ${STRONG} ${MILD} !rinse !off`,
  `pour|add|tip|run|put .. water ... on|onto|into|over|to .. it & ${STRONG} ${MILD} !rinse !off !add_it`,
  `${STRONG} ... bucket|pail|pan|pot|bowl|tub|bath|vessel|tin|first ... fill|add|top|pour|then|and|boiling|hot ... water ${MILD} !cold !rinse !off !wash`,
  `kettle|boiling|hot water|kettle .. on|onto|over .. ${STRONG} ${MILD} !rinse !off !wash`,
  `kettle|boiling|hot|kettle_water .. on|onto|over .. ${STRONG} ${MILD} !rinse !off !wash`,
  `${STRONG} ... first ... water .. after|then|next|on|last|second ${MILD}`,
  `${STRONG} ... boiling|hot water on|over|onto ${MILD} !rinse !wash !off`,
  `dissolve|mix|stir|add|put|make|sprinkle|melt|tip .. ${STRONG} ... in|into|with|to .. hot|boiling|warm water ${MILD} !rinse !wash !off`,
  `dissolve|mix|stir|add|put|make|sprinkle|tip .. ${STRONG} ... kettle ${MILD}`,
);
