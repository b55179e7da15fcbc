/**
 * Which lines and parts of lines are kept in the words of their writer: those that no word of the notation is near to, so
 * that no slip of the pen hides what a rule or a sum would go by.
 */
import { closestWord, editDistance } from "./closest-word.ts";
import type { LexToken } from "./lexer.ts";
import { lookUp } from "./look-up.ts";
import { RIGHT_LINES } from "./right-lines.ts";
import { fieldSpellings, isNoted, OWN_WORK, VERB_SPELLINGS, VERB_SPELLINGS_WITH } from "./spellings.ts";
import * as Token from "./tokens.ts";
import { type BlockKind, FIELDS, type FieldForm, METHODS, STATEMENTS, TAILS, VERBS } from "./vocabulary.ts";

type FieldBlock = Exclude<BlockKind, "file" | "layer">;

/** Whether a word may be a slip of the pen for one of the others, or the beginning of it. */
export function isNear(word: string, others: readonly string[]): boolean {
  const plain = word.toLowerCase();
  return (
    plain.length < SHORTEST ||
    closestWord(plain, others) !== undefined ||
    others.some((other) => other.startsWith(plain) || (other.length >= SHORTEST && plain.startsWith(other)))
  );
}

/** A word of fewer letters is near to too much. */
const SHORTEST = 3;

/** All words that begin a line of some block. */
const ANYWHERE: ReadonlySet<string> = new Set(
  [...Object.values(FIELDS), ...Object.values(STATEMENTS)].flatMap((words) => Object.keys(words)),
);

/** What is near to a word of a block that people use for something else. */
const NOT_MEANT: Readonly<Record<string, ReadonlySet<string>>> = {
  material: new Set([
    "dated",
    "good",
    "safe",
    "use",
    "uses",
    "for",
    "type",
    "sort",
    "kind",
    "maker",
    "bought",
  ]),
  piece: new Set(["part", "parts", "size"]),
  surface: new Set(["leave", "left"]),
  shop: new Set(["holds", "spray", "helper", "helpers", "people", "who"]),
  job: new Set(["price", "priced", "stack", "labour", "material", "materials", "hours", "spent", "option"]),
};

/**
 * How a line of a block is kept that the notation has no line for: `said` as a note, which the plain form quotes, or as what
 * may be a `fact` by another name and so is left for its writer to decide about.
 */
export type Kept = "said" | "fact";

export function keptAs(kind: Exclude<BlockKind, "file">, tokens: readonly LexToken[]): Kept | undefined {
  const [first, second] = tokens;
  const word = first?.text ?? "";
  if (isNoted(kind, word)) {
    return "said";
  }
  if (kind === "shop" && word === "room" && second?.kind === "word" && second.type !== Token.NumberToken) {
    // `room outdoors`: nothing says how large it is.
    return "fact";
  }
  if (kind === "piece" && word === "built") {
    // `built new`: no year, which is all that rules go by.
    return second?.kind === "word" && !tokens.some(({ type }) => type === Token.NumberToken)
      ? "said"
      : undefined;
  }
  if (second === undefined || second.type === Token.Colon || second.type === Token.Equals) {
    return undefined;
  }
  if (kind === "layer" || kind === "recipe") {
    return word === "if" ? "said" : kind === "recipe" && TOLD_OF_RECIPE.has(word) ? "said" : undefined;
  }
  if (kind === "job" && word === "crew") {
    // Who they are; how many are at work is the shop's.
    return second.kind === "word" ? "said" : "fact";
  }
  if (
    Object.hasOwn(FIELDS[kind], word) ||
    Object.hasOwn(STATEMENTS[kind], word) ||
    fieldSpellings(kind).includes(word)
  ) {
    return undefined;
  }
  if (lookUp(NOT_MEANT, kind)?.has(word) ?? false) {
    return "said";
  }
  if (word === "step") {
    return isOwnVerb(second.text) ? "said" : undefined;
  }
  if (lookUp(RIGHT_LINES, kind)?.[word] !== undefined) {
    return "fact";
  }
  if (ANYWHERE.has(word)) {
    return isField(word) ? "fact" : undefined;
  }
  const isOther = isOwnWord(kind, word) || isProse(kind, tokens);
  return isOther ? (mayBeFact(word, tokens) ? "fact" : "said") : undefined;
}

/** What is told of a recipe as a whole, and of no line of it. */
const TOLD_OF_RECIPE: ReadonlySet<string> = new Set(
  "takes,time,tools,tool,costs,cost,temperature,air,uses,needs,by,who,repeat,remark,title,name,colour".split(
    ",",
  ),
);

/** Whether a word is a field of some block. */
const isField = (word: string): boolean =>
  Object.values(FIELDS).some((fields) => Object.hasOwn(fields, word));

/** `from the shelf`, `not finished yet`: three words and more without a figure, of which the first is no slip of one letter. */
function isProse(kind: FieldBlock, tokens: readonly LexToken[]): boolean {
  const word = tokens[0]!.text;
  return (
    tokens.length > 2 &&
    tokens.every((token) => token.kind === "word") &&
    ![...Object.keys(FIELDS[kind]), ...Object.keys(STATEMENTS[kind])].some(
      (known) => editDistance(word.toLowerCase(), known, 1) <= 1,
    )
  );
}

/**
 * Whether the value of a field is told in words alone, without a figure, of which the first is near to none that may stand
 * there: `on_hand half a can`, `air as outside`.
 */
export function isValueInWords(form: FieldForm, tokens: readonly LexToken[]): boolean {
  const [, first, ...more] = tokens;
  return (
    IN_FIGURES.has(form) &&
    first?.kind === "word" &&
    (more.length > 0 || first.text.length >= SHORTEST) &&
    [first, ...more].every(({ kind, type }) => kind === "word" || type === Token.Comma) &&
    !(form === "hours" && [first, ...more].some(({ text }) => DAY.test(text))) &&
    !VALUE_WORDS.some((word) => first.text === word || editDistance(first.text.toLowerCase(), word, 1) <= 1)
  );
}

const IN_FIGURES: ReadonlySet<FieldForm> = new Set<FieldForm>([
  "quantity",
  "range",
  "air",
  "money",
  "room",
  "number",
  "dates",
  "hours",
]);

const DAY = /^(?:mon|tue|wed|thu|fri|sat|sun|weekdays?|daily)/iu;

/** What a value in figures may begin with, or has a message of its own for. */
const VALUE_WORDS: readonly string[] = "to,up,from,min,overnight,over,outdoors,outside,sand,wet".split(",");

/** Whether a word begins work that no verb of the notation is near to. */
export const isOwnVerb = (verb: string): boolean =>
  Object.hasOwn(OWN_WORK, verb) || (/^\p{L}/u.test(verb) && !isNear(verb, KNOWN_VERBS));

function isOwnWord(kind: FieldBlock, word: string): boolean {
  const known = [
    ...Object.keys(FIELDS[kind]),
    ...Object.keys(STATEMENTS[kind]),
    ...Object.keys(RIGHT_LINES[kind] ?? {}),
    ...fieldSpellings(kind),
  ];
  return !ANYWHERE.has(word) && !isNear(word, known);
}

/** A date, or a figure behind a word of labels, of rooms or of sizes, may be a fact by another name. */
function mayBeFact(word: string, tokens: readonly LexToken[]): boolean {
  return (
    tokens.some(({ type }) => type === Token.DateToken) ||
    (FACT.test(word) && tokens.some(({ type }) => type === Token.NumberToken))
  );
}

const FACT =
  /dry|dri|tack|hard|cure|coat|sand|pot|thin|dilut|cover|spread|rate|yield|solid|sheen|gloss|flash|mix|ratio|part|price|cost|pack|size|density|stock|air|temp|degree|humid|rh|room|film|volume|area|length|width|breadth|thick|voc|limit|date|start|ready|budget/iu;

/** Verbs that are asked about, and those of the notation in all their spellings. */
const KNOWN_VERBS: readonly string[] = [
  ...["soap", "wax", "lime", "ebonise", "ebonize", "gild", "stencil", "crackle", "oil", "paint", "varnish"],
  ...["stain", "prime", "coat", "apply", "burn", "heat", "torch", "layer", "wait", "dry"],
  ...Object.keys(VERBS),
  ...[...Object.keys(VERB_SPELLINGS), ...Object.keys(VERB_SPELLINGS_WITH)].filter(
    (words) => !words.includes(" "),
  ),
];

/** Whether words behind a comma of a step or layer say nothing that a figure or a rule goes by. */
export function isSaidTail(text: string, owner: "step" | "layer"): boolean {
  const [first] = text.split(/[ _-]/u);
  return (
    (text.includes(" ") || SAID_ALONE.has(text)) &&
    /^[\p{L}\d][^"\\{}]{0,79}$/u.test(text) &&
    !UNPROTECTED.test(text) &&
    !TIME.test(text) &&
    !(owner === "layer" && /%|\d:\d|\bto \d+\b(?! ?°?[CF]\b)/u.test(text.replace(CLOCK, ""))) &&
    (SAID_ALONE.has(text) || PLAIN_BEGINNINGS.has(first!) || !isSlip(first!))
  );
}

/** Whether a word by itself says how a step is done: near to none of a tail, and no name with `_`. */
export const isOwnTail = (word: string): boolean => /^\p{L}{4,20}$/u.test(word) && !isSlip(word);

/** Whether a word may be a slip of the pen for that of a tail. */
const isSlip = (word: string): boolean =>
  word.length >= 4 &&
  TAIL_WORDS.some((tail) => editDistance(word.toLowerCase(), tail, 2) <= (word.length > 6 ? 2 : 1));

const CLOCK = /\b(?:at|by|from|till|until|before|after) \d{1,2}:\d{2}(?!\d)/giu;

/** Whether a word says by itself where or how. */
export const isSaidAlone = (word: string): boolean => SAID_ALONE.has(word);

/** Words of one place or state, which may stand alone. */
const SAID_ALONE: ReadonlySet<string> = new Set(
  "edges,faces,flush,flat,level,outside,inside,standing,hanging,lying,upright,underside,knots,corners,smooth,diagonally,quickly,wetly,warm,cold,hot,lukewarm,outdoors,again,unthinned,undiluted,neat,rinse,rinsed,dry,dried,scrape,scraped,generously,sparingly,thickly,evenly".split(
    ",",
  ),
);

/** Who goes without protection must say so in quotes. */
const UNPROTECTED =
  /\b(?:no|not|without|never)\b.{0,20}(?:mask|glove|goggle|glasses|respirator|ventilation|extraction|fan|fresh|window|protection)/iu;

/** Hours and days that a plan would have to count. */
const TIME =
  /\d ?(?:s|secs?|seconds?|mins?|minutes?|h|hrs?|hours?|d|days?|nights?|weeks?|wks?|months?)\b|overnight|over night/iu;

const TAIL_WORDS: readonly string[] = [
  ...Object.keys(TAILS),
  ...METHODS,
  "coats",
  "satin",
  "gloss",
  "matte",
].filter((word) => word !== "as" && word !== "by" && word !== "if");
/** What is near to a word of a tail, and begins what is said of a line. */
const PLAIN_BEGINNINGS: ReadonlySet<string> = new Set(
  "then,well,brushed,rolled,padded,sprayed,sheet,sheets,before,full,once,only,wipe,wiping,open,often,rubbed,warmed,heated,second,first,last,final,top,bottom,inside,worked,spread,laid,left,kept,just,until,one,two,three,both,all,each,every".split(
    ",",
  ),
);
