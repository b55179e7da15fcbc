/**
 * A search as people type it, in one line: `oak flat clear`, `wear:hard under 8 h`, `material:"hall clear"`.
 *
 * A word that the notation knows asks for what it is: a wood, a sheen, a family, a user. `KEY:WORD` says so where a word may
 * be several things; all other words are looked for in what is written. What was understood is told, so that a word that was
 * taken for something else is seen at once.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { FamilyAsked, FindQuery, FoundKind } from "./model.ts";
import { FOUND_KINDS } from "./model.ts";
import {
  familyAsked,
  familyKnown,
  meantForAsked,
  type ReadWord,
  sheenAsked,
  wearAsked,
  woodAsked,
  woodKnown,
} from "./words.ts";

export type SaidQuery =
  | {
      readonly query: FindQuery;
      /** `wood oak`, in the order in which it was said. */
      readonly understood: readonly string[];
    }
  | { readonly refusal: string };

/** The words before a colon. */
const SAID_KEYS = [
  "wood",
  "sheen",
  "family",
  "material",
  "wear",
  "shop",
  "for",
  "text",
  "hours",
  "days",
  "cost",
  "kind",
] as const;
type SaidKey = (typeof SAID_KEYS)[number];

/** A longer text is no search. */
const LONGEST = 500;
/** Words of a name. */
const MOST_WORDS = 3;

export function readSaid(said: string): SaidQuery {
  if (said.length > LONGEST)
    return { refusal: t`A search has at most ${LONGEST} letters. Ask in fewer words.` };
  const asked: Asked[] = [];
  const parts = partsOf(said);
  for (let at = 0; at < parts.length; ) {
    const { taken, found } = nextOf(parts, at, asked);
    if (found !== undefined && "refusal" in found) return found;
    if (found) asked.push(found);
    at += taken;
  }
  return { query: queryOf(asked), understood: asked.map(({ told }) => told) };
}

interface Part {
  readonly key?: string;
  readonly text: string;
  readonly isQuoted: boolean;
}

/** Words are parted by blanks and commas; what stands in quotes is one, also where they are still open. */
function partsOf(said: string): readonly Part[] {
  const parts: Part[] = [];
  let at = 0;
  const upTo = (isEnd: (sign: string) => boolean): string => {
    const from = at;
    while (at < said.length && !isEnd(said[at]!)) at += 1;
    return said.slice(from, at);
  };
  for (;;) {
    upTo((sign) => !PARTING.test(sign));
    if (at >= said.length) return parts;
    const plain = upTo((sign) => sign === '"' || PARTING.test(sign));
    const key = KEY.exec(plain)?.[1]?.toLowerCase();
    const rest = key === undefined ? plain : plain.slice(key.length + 1);
    if (said[at] !== '"' || rest !== "") {
      parts.push({
        ...(key === undefined || rest === "" ? {} : { key }),
        text: key && rest === "" ? plain : rest,
        isQuoted: false,
      });
      continue;
    }
    at += 1;
    parts.push({
      ...(key === undefined ? {} : { key }),
      text: upTo((sign) => sign === '"').trim(),
      isQuoted: true,
    });
    at += 1;
  }
}

const PARTING = /[\s,]/u;
const KEY = /^([a-z]+):/iu;

type Value = string | number | FamilyAsked;

interface Asked {
  readonly by: SaidKey;
  readonly value: Value;
  readonly told: string;
}

type Refused = { readonly refusal: string };

interface Taken {
  /** How many parts that was. */
  readonly taken: number;
  /** Absent for what asks for nothing, such as `with a`. */
  readonly found?: Asked | Refused;
}

function nextOf(parts: readonly Part[], at: number, asked: readonly Asked[]): Taken {
  const { key, text, isQuoted } = parts[at]!;
  if (key !== undefined) return { taken: 1, found: keyedAs(key, text) };
  if (text === "") return { taken: 1 };
  if (isQuoted) return { taken: 1, found: written(text) };
  // A key whose word is still to come.
  if (text.endsWith(":")) return { taken: 1 };
  const limit = limitAt(parts, at);
  if (limit) return limit;
  const plain = plainWords(parts, at);
  for (let count = plain.length; count > 0; count -= 1) {
    const found = knownAs(plain.slice(0, count).join(" "), asked);
    if (found) return { taken: count, found };
  }
  return FILLERS.has(text.toLowerCase()) ? { taken: 1 } : { taken: 1, found: written(text) };
}

/** Words that join others. */
const FILLERS: ReadonlySet<string> = new Set(
  "a an and at below by did do for i in is less max most of on or put than that the to under use used was we what which with within".split(
    " ",
  ),
);

/** The words from here on that may be one name. */
function plainWords(parts: readonly Part[], at: number): readonly string[] {
  const next = parts.slice(at, at + MOST_WORDS);
  const end = next.findIndex(({ key, isQuoted }) => key !== undefined || isQuoted);
  return (end < 0 ? next : next.slice(0, end)).map(({ text }) => text);
}

const written = (text: string): Asked => ({ by: "text", value: text, told: `“${text}”` });

// ---------------------------------------------------------------------------------------------------------------
// Words with a key

const READERS: Readonly<Record<SaidKey, (text: string) => Asked | Refused>> = {
  wood: (text) => word("wood", "wood", woodAsked(text)),
  sheen: (text) => word("sheen", "sheen", sheenAsked(text)),
  wear: (text) => word("wear", "wear", wearAsked(text)),
  for: (text) => word("for", "for", meantForAsked(text)),
  family: (text) => {
    const read = familyAsked(text);
    return "refusal" in read ? read : { by: "family", value: read.word, told: familyTold(text, read.word) };
  },
  material: (text) => ({ by: "material", value: text, told: t`material “${text}”` }),
  shop: (text) => ({ by: "shop", value: text, told: t`shop “${text}”` }),
  text: written,
  hours: (text) => limit("hours", text),
  days: (text) => limit("days", text),
  cost: (text) => limit("cost", text),
  kind: (text) => {
    const kind = kindOf(text);
    return kind === undefined
      ? { refusal: t`\`${text}\` is not a kind of match. Write ${FOUND_KINDS.join(", ")}.` }
      : { by: "kind", value: kind, told: t`only ${translated(kind)}s` };
  },
};

/** Other words for the keys. */
const KEYS: ReadonlyMap<string, SaidKey> = new Map<string, SaidKey>([
  ...SAID_KEYS.map((key) => [key, key] as const),
  ["room", "shop"],
  ["gloss", "sheen"],
  ["user", "for"],
  ["time", "hours"],
]);

function keyedAs(said: string, text: string): Asked | Refused {
  const key = KEYS.get(said);
  if (key === undefined)
    return {
      refusal: t`\`${said}:\` is not known. Write ${SAID_KEYS.map((each) => `${each}:`).join(", ")}.`,
    };
  return text === ""
    ? { refusal: t`\`${said}:\` needs a word behind it, such as \`${EXAMPLES[key]}\`.` }
    : READERS[key](text);
}

const EXAMPLES: Readonly<Record<SaidKey, string>> = {
  wood: "wood:oak",
  sheen: "sheen:flat",
  family: "family:clear",
  material: 'material:"hall clear"',
  wear: "wear:hard",
  shop: "shop:mill",
  for: "for:children",
  text: "text:hall",
  hours: "hours:8",
  days: "days:10",
  cost: "cost:80",
  kind: "kind:recipe",
};

const word = (by: SaidKey, what: string, read: ReadWord<string>): Asked | Refused =>
  "refusal" in read ? read : { by, value: read.word, told: `${what} ${read.word}` };

function limit(by: "hours" | "days" | "cost", text: string): Asked | Refused {
  if (!NUMBER.test(text))
    return { refusal: t`\`${by}:${text}\` is not a number. Write one, such as \`${EXAMPLES[by]}\`.` };
  return { by, value: Number(text), told: limitTold(by, text) };
}

const NUMBER = /^\d{1,12}(?:\.\d{1,6})?$/u;

const limitTold = (by: "hours" | "days" | "cost", amount: string): string =>
  by === "cost"
    ? t`at most ${amount} in money`
    : by === "hours"
      ? t`at most ${amount} h`
      : t`at most ${amount} days`;

// ---------------------------------------------------------------------------------------------------------------
// Words without a key

/** Each of these once: a second is looked for in what is written. */
function knownAs(text: string, asked: readonly Asked[]): Asked | undefined {
  const isOpen = (by: SaidKey): boolean => !asked.some((each) => each.by === by);
  const read = (by: "sheen" | "for" | "wear", from: string): Asked | undefined => {
    const found = isOpen(by) ? READERS[by](from) : undefined;
    return found && "refusal" in found ? undefined : found;
  };
  const isNumber = NUMBER.test(text);
  if (isNumber) return undefined;
  const kind = kindOf(text);
  if (kind !== undefined) return { by: "kind", value: kind, told: t`only ${translated(kind)}s` };
  const wear = /^(\S+) wear$/iu.exec(text)?.[1];
  if (wear !== undefined) return read("wear", wear);
  const wood = isOpen("wood") ? woodKnown(text) : undefined;
  if (wood !== undefined) return { by: "wood", value: wood, told: t`wood ${wood}` };
  const simple = read("sheen", text) ?? read("for", text);
  if (simple) return simple;
  // A label's name may begin with its sheen, which is asked for by itself.
  const [first = text] = text.split(" ");
  if (first !== text && read("sheen", first)) return undefined;
  const family = familyKnown(text);
  return family && { by: "family", value: family, told: familyTold(text, family) };
}

const familyTold = (said: string, family: FamilyAsked): string =>
  family.length === 1 ? translated(family[0]!) : t`any ${said.toLowerCase()}`;

const kindOf = (text: string): FoundKind | undefined =>
  FOUND_KINDS.find((kind) => kind === text.toLowerCase() || `${kind}s` === text.toLowerCase());

/** `8 h`, `8h`, `10 days`, `80 EUR`, `€80`. */
function limitAt(parts: readonly Part[], at: number): Taken | undefined {
  const [first, second] = parts.slice(at, at + 2);
  const joined = /^([€$£]?)(\d{1,12}(?:\.\d{1,6})?)([a-z]*)$/iu.exec(first!.text);
  if (joined === null) return undefined;
  const [, sign = "", amount = "", unit = ""] = joined;
  if (sign !== "") return unit === "" ? { taken: 1, found: limit("cost", amount) } : undefined;
  if (unit !== "") return limitIn(amount, unit, 1);
  return second === undefined || second.key !== undefined || second.isQuoted
    ? undefined
    : limitIn(amount, second.text, 2);
}

function limitIn(amount: string, unit: string, taken: number): Taken | undefined {
  const by = /^h(?:ours?|rs?)?$/iu.test(unit)
    ? "hours"
    : /^d(?:ays?)?$/iu.test(unit)
      ? "days"
      : /^(?:[A-Z]{3}|[€$£])$/u.test(unit)
        ? "cost"
        : undefined;
  return by && { taken, found: limit(by, amount) };
}

// ---------------------------------------------------------------------------------------------------------------

/** Of what can be asked for once only, what was said last counts. */
function queryOf(asked: readonly Asked[]): FindQuery {
  const all = <T extends Value>(by: SaidKey): readonly T[] =>
    asked.flatMap((each) => (each.by === by ? [each.value as T] : []));
  const query: { readonly [K in keyof FindQuery]: FindQuery[K] | undefined } = {
    wood: all<string>("wood").at(-1),
    sheen: all<string>("sheen").at(-1),
    families: listed(all<FamilyAsked>("family")),
    materials: listed(all<string>("material")),
    wear: all<string>("wear").at(-1),
    shop: all<string>("shop").at(-1),
    meantFor: all<string>("for").at(-1),
    texts: listed(all<string>("text")),
    hoursAtMost: all<number>("hours").at(-1),
    daysAtMost: all<number>("days").at(-1),
    costAtMost: all<number>("cost").at(-1),
    kinds: listed(all<FoundKind>("kind")),
  };
  return Object.fromEntries(Object.entries(query).filter(([, value]) => value !== undefined));
}

const listed = <T>(values: readonly T[]): readonly T[] | undefined =>
  values.length === 0 ? undefined : values;
