/**
 * What every reader of a declaration shares: a place-maker, a list of local findings, and readers for the common
 * forms of values. A `Lowering` lives while one declaration is read and is thrown away after it; what comes out is
 * immutable.
 */

import { gist } from "../../../../grammar/src/gist.ts";
import { lookUp } from "../../../../grammar/src/look-up.ts";
import { RIGHT_LINES } from "../../../../grammar/src/right-lines.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
import type {
  BrokenStatement,
  FieldStatement,
  FieldValue,
  KeptLine,
  Name,
  NumberLiteral,
  Range,
  Span,
  Title,
  Value,
  Words,
} from "../../../../grammar/src/tree.ts";
import { FIELDS, STATEMENTS } from "../../../../grammar/src/vocabulary.ts";
import { ELSEWHERE } from "../knowledge/choices.ts";
import { isDate } from "../measure/iso-dates.ts";
import { describeDimension, readQuantity } from "../measure/read-quantity.ts";
import type { Dimension } from "../measure/units.ts";
import type { FileId, Place } from "../place.ts";
import type { Fact, LocalFinding } from "./model.ts";
import { closest, orList } from "./suggest.ts";

export type FieldBlock = keyof typeof FIELDS;

export interface Lowering {
  readonly file: FileId;
  readonly declaration: string;
  readonly findings: LocalFinding[];
}

export const placeOf = (ctx: Lowering, span: Span): Place => ({
  file: ctx.file,
  declaration: ctx.declaration,
  span,
});

export function report(
  ctx: Lowering,
  rule: string,
  span: Span,
  message: string,
  fix?: LocalFinding["fix"],
): void {
  ctx.findings.push({ rule, span, message, ...(fix ? { fix } : {}) });
}

/**
 * Sorts the fields of a block by keyword and reports unknown, repeated and missing ones. The first line of a
 * repeated field counts.
 */
export function fieldsByWord(
  ctx: Lowering,
  block: FieldBlock,
  statements: readonly (
    | FieldStatement
    | BrokenStatement
    | { readonly kind: "surface" | "apply" | "done"; readonly keyword: Name }
  )[],
  head: Span,
): ReadonlyMap<string, readonly FieldStatement[]> {
  const known = FIELDS[block];
  const byWord = new Map<string, FieldStatement[]>();
  // A field whose misspelt word was found is not missing as well: one cause, one finding.
  const meant = new Set<string>();
  reportKept(
    ctx,
    block,
    statements.filter((statement) => statement.kind === "field"),
  );
  for (const statement of statements) {
    if (statement.kind !== "field") continue;
    const word = statement.keyword.text;
    reportUncounted(ctx, statement);
    const field = lookUp(known, word);
    if (!field) {
      const near = reportUnknownField(ctx, block, statement.keyword);
      if (near) meant.add(near);
      continue;
    }
    const before = byWord.get(word);
    if (before && !field.repeatable) {
      ctx.findings.push({
        rule: "repeated-field",
        span: statement.keyword.span,
        message: t`\`${word}\` is stated twice in this ${translated(block)}; only the first counts\n${onOneLine(word, before[0]!, statement)}`,
        related: [{ span: before[0]!.span, message: t`\`${word}\` is first stated here` }],
      });
    } else if (before) before.push(statement);
    else byWord.set(word, [statement]);
  }
  const isLeft = block === "surface" && isLeftAlone(byWord.get("note"));
  for (const [word, field] of Object.entries(known)) {
    if (!field.required || byWord.has(word) || meant.has(word) || isLeft) continue;
    if (statements.some((each) => each.kind === "field" && each.kept?.word === word)) continue;
    if (block === "surface" && word === "shape") {
      report(
        ctx,
        "size-not-stated",
        head,
        byWord.has("wood")
          ? t`Nothing says how big this surface is\nLitres, cost and time are left out for it.\nAdd a line such as \`shape panel 1800 mm x 900 mm x 30 mm\`, or what you measured, such as \`shape area 1.2 m2\`.`
          : t`Nothing says how big this surface is, nor what it is made of\nLitres, cost and time are left out for it, and it counts as the worst wood that it may be.\nAdd lines such as \`shape panel 1800 mm x 900 mm x 30 mm\` and \`wood red oak\`.`,
      );
    } else if (block === "surface" && word === "wood" && !byWord.has("shape")) {
      // Told with the size.
    } else if (block === "surface" && word === "wood") {
      report(
        ctx,
        "wood-not-stated",
        head,
        t`Nothing says what this surface is made of\nIt counts as the worst that it may be.\nAdd a line such as \`wood red oak, veneer 0.6 mm\`, \`wood MDF\`, \`wood metal\` or \`wood unknown\`.`,
      );
    } else if (block === "material" && word === "family") {
      report(
        ctx,
        "material-not-known",
        head,
        t`Nothing says what kind of material this is\n${translated(NOT_KNOWN)}\nAdd a line such as \`${field.example}\`.`,
      );
    } else {
      report(
        ctx,
        "missing-field",
        head,
        t`This ${translated(block)} has no \`${word}\`\nAdd a line such as \`${field.example}\`.`,
      );
    }
  }
  return byWord;
}

/** What it means for a material that nothing is known of it. */
export const NOT_KNOWN =
  "What it gives off, how it dries and what goes over it are not checked: go by its label and its safety data sheet.";

/** One finding for all lines of a block that are kept as notes, and one for those of them that may be facts. */
export function reportKept(
  ctx: Lowering,
  block: FieldBlock,
  statements: readonly { readonly span: Span; readonly kept?: KeptLine }[],
): void {
  for (const as of ["said", "fact"] as const) {
    const [first, ...more] = statements.filter(({ kept }) => kept?.as === as);
    if (!first) continue;
    const { word } = first.kept!;
    const others =
      more.length === 0
        ? ""
        : more.length === 1
          ? t` So is 1 more line of this ${translated(block)}.`
          : t` So are ${more.length} more lines of this ${translated(block)}.`;
    const { example } = first.kept!;
    const half =
      example === undefined
        ? translatedOr(lookUp(WITHOUT_FIGURE, word))
        : t`Write when it opens and closes, such as \`${example}\`.`;
    const right = half ?? translatedOr(lookUp(RIGHT_LINES[block] ?? {}, word)) ?? elsewhereOf(block, word);
    const isField = lookUp(FIELDS[block], word) !== undefined;
    ctx.findings.push({
      rule: as === "said" ? "kept-as-note" : "not-counted",
      span: first.span,
      message:
        as === "said"
          ? t`This line is kept as a note\nNothing is worked out from it.${others}\n${right ?? t`The formatter puts it in quotes; if it is a fact, see what this block may have.`}`
          : `${isField ? t`This \`${word}\` says too little to count` : t`A ${translated(block)} has no field \`${word}\`, so this line does not count`}\n${t`It is kept as a note.`}${others}\n${right ?? mayHave(block, Object.keys(FIELDS[block]))}`,
      related: more.map(({ span }) => ({ span, message: t`Kept as a note as well` })),
    });
  }
}

/** `labour 45.00 per h, helper 22.00 per h`: one more figure than the field has. */
function reportUncounted(ctx: Lowering, { keyword, said, isUncounted }: FieldStatement): void {
  if (!said || !isUncounted) return;
  const word = keyword.text;
  report(
    ctx,
    "not-counted",
    said.span,
    t`\`${said.value}\` does not count\nIt is kept in words; what stands before it is the \`${word}\` by itself.\nWrite one figure for all of it, or put these words in quotes.`,
  );
}

/** What is missing in a line of a field that its block has. */
const WITHOUT_FIGURE: Readonly<Record<string, string>> = {
  recoat: "Write from when to when the next coat holds, such as `recoat 30 min to 2 h`.",
  shape:
    "Write its sizes, such as `shape 4 of post 75 mm x 700 mm`, or what you measured, `shape area 1.2 m2`.",
  room: "Write its volume and how often its air changes, such as `room 45 m3, 2 air changes/h`; work in the open says so in the piece, `outdoors sheltered`.",
  hours: "Write when it opens and closes, such as `hours Sat 09:00 to 17:00`.",
};

const translatedOr = (text: string | undefined): string | undefined =>
  text === undefined ? undefined : translated(text);

const mayHave = (block: FieldBlock, words: readonly string[]): string =>
  t`A ${translated(block)} may have ${orList(words)}.`;

/** Where a field of another block stands. */
function elsewhereOf(block: FieldBlock, word: string): string | undefined {
  const other = (Object.keys(FIELDS) as FieldBlock[]).find(
    (each) => each !== block && lookUp(FIELDS[each], word) !== undefined,
  );
  return (
    other && t`It stands in a ${translated(other)}, such as \`${lookUp(FIELDS[other], word)!.example}\`.`
  );
}

/** `leave as found`: a surface that nothing is done to needs no size. */
const isLeftAlone = (notes: readonly FieldStatement[] | undefined): boolean =>
  readTexts(notes).some((text) => /^(?:leave|left)\b/iu.test(text));

/** Where one line takes several. */
const ON_ONE_LINE: Readonly<Record<string, string>> = {
  hours:
    "Put all on one line with commas, such as `hours Mon to Fri 08:00 to 12:00, Mon to Fri 13:00 to 17:00`.",
  packs: "Put all sizes on one line with commas, such as `packs 946 mL for 28.00, 3785 mL for 84.00`.",
  existing: "Put all layers on one line from the wood up, such as `existing oil varnish, paste wax`.",
};

/** What to write in place of two lines; of opening hours the very line. */
function onOneLine(word: string, first: FieldStatement, second: FieldStatement): string {
  const texts = [first, second].map(({ value }) => (value.form === "hours" ? hoursText(value) : undefined));
  if (texts.every((text) => text !== undefined))
    return t`Put all on one line: \`hours ${texts.join(", ")}\`.`;
  return translatedOr(lookUp(ON_ONE_LINE, word)) ?? t`Keep one of the two lines.`;
}

/** `Mon to Fri 09:00 to 17:00, Sat 09:00 to 13:00`; undefined where a part is missing. */
function hoursText({ spans }: Extract<FieldValue, { form: "hours" }>): string | undefined {
  const texts = spans.map(({ from, to, opens, closes }) =>
    from && opens && closes
      ? `${from.text}${to ? ` to ${to.text}` : ""} ${opens.text} to ${closes.text}`
      : undefined,
  );
  return spans.length > 0 && texts.every((text) => text !== undefined) ? texts.join(", ") : undefined;
}

/** Gives the field that was probably meant, if one is near. */
export function reportUnknownField(ctx: Lowering, block: FieldBlock, keyword: Name): string | undefined {
  const words = [...Object.keys(FIELDS[block]), ...Object.keys(STATEMENTS[block])];
  const right = lookUp(RIGHT_LINES[block] ?? {}, keyword.text);
  if (right !== undefined) {
    report(
      ctx,
      "unknown-field",
      keyword.span,
      t`A ${translated(block)} has no field \`${keyword.text}\`\n${translated(right)}`,
    );
    return undefined;
  }
  const near = closest(keyword.text, words);
  const rest = near ? t`Did you mean \`${near}\`?` : mayHave(block, words);
  report(
    ctx,
    "unknown-field",
    keyword.span,
    t`A ${translated(block)} has no field \`${keyword.text}\`\n${rest}`,
    near ? { title: t`Change to \`${near}\``, span: keyword.span, text: near } : undefined,
  );
  return near;
}

export const stated = <T>(ctx: Lowering, value: T, span: Span): Fact<T> => ({
  value,
  origin: "stated",
  place: placeOf(ctx, span),
});

/** Limits of a number: `min` itself is allowed unless `above` is set. */
export interface Limits {
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
  readonly whole?: boolean;
  /** "greater than zero", for the message. */
  readonly words: string;
}

export const POSITIVE: Limits = { above: 0, words: "greater than zero" };
/** Of green wood the water may weigh twice the wood. */
export const MOISTURE: Limits = { min: 0, max: 250, words: "from 0 to 250 %" };
export const SHARE: Limits = { min: 0, max: 100, words: "from 0 % to 100 %" };
export const SHARE_ABOVE_ZERO: Limits = { above: 0, max: 99.9, words: "above 0 % and below 100 %" };
/** Thinner by volume of the material: flake shellac is let down to a washcoat with several times its own volume. */
export const THINNING: Limits = { above: 0, max: 1000, words: "above 0 % and at most 1000 %" };
export const NOT_NEGATIVE: Limits = { min: 0, words: "zero or more" };
export const COUNT: Limits = { min: 1, whole: true, words: "a whole number of at least 1" };

/** In hours. No label says more, and a plan of the work ends there. */
export const DURATION: Limits = {
  above: 0,
  max: 36_525 * 24,
  words: "greater than zero and at most 100 years",
};

/** A job of more pieces than this is several jobs. */
export const PIECES: Limits = { min: 1, max: 10_000, whole: true, words: "a whole number from 1 to 10000" };

/** More coats than this are a slip of the pen. */
export const COATS: Limits = { min: 1, max: 200, whole: true, words: "a whole number from 1 to 200" };

export const GRIT: Limits = { min: 12, max: 10000, words: "from 12 to 10000" };

export function within(value: number, limits: Limits): boolean {
  return (
    Number.isFinite(value) &&
    (limits.above === undefined || value > limits.above) &&
    (limits.min === undefined || value >= limits.min) &&
    (limits.max === undefined || value <= limits.max) &&
    (!limits.whole || Number.isInteger(value))
  );
}

/**
 * Reads a quantity of one of the expected dimensions in canonical units; reports `wrong-unit` or `bad-number` at the
 * quantity and gives `undefined`.
 */
export function readAmount<D extends Dimension>(
  ctx: Lowering,
  value: Value | undefined,
  expected: readonly D[],
  limits: Limits,
): { readonly dimension: D; readonly value: number; readonly span: Span } | undefined {
  if (!value) return undefined;
  if (value.kind === "name") {
    report(
      ctx,
      "wrong-unit",
      value.span,
      gist(
        (suchAs) => t`Expected ${describeDimension(expected[0]!, suchAs)}, found the word \`${value.text}\`.`,
      ),
    );
    return undefined;
  }
  const read = readQuantity(value, expected);
  if (!read.ok) {
    report(ctx, read.rule, read.span, read.message);
    return undefined;
  }
  if (!within(read.amount.value, limits)) {
    report(ctx, "bad-number", value.span, t`This must be ${translated(limits.words)}.`);
    return undefined;
  }
  return { dimension: read.amount.dimension, value: read.amount.value, span: value.span };
}

/**
 * The same where a range may stand: of its ends the one that is worse for the work counts, which is the `low` or the
 * `high` one in canonical units.
 */
export function readWorse<D extends Dimension>(
  ctx: Lowering,
  value: Value | undefined,
  other: Value | undefined,
  expected: readonly D[],
  limits: Limits,
  worse: "low" | "high",
): { readonly dimension: D; readonly value: number; readonly span: Span } | undefined {
  const read = readAmount(ctx, value, expected, limits);
  if (!other || !read) return read;
  const end = readAmount(ctx, other, expected, limits);
  if (!end) return undefined;
  const span = { start: value!.span.start, end: other.span.end };
  if (end.dimension !== read.dimension) {
    report(
      ctx,
      "wrong-unit",
      span,
      gist((suchAs) => t`Both ends of a range must be of one kind${suchAs("10 m2/L to 12 m2/L")}.`),
    );
    return undefined;
  }
  const pick = (end.dimension === "weight by area") === (worse === "low") ? Math.max : Math.min;
  return { ...read, value: pick(read.value, end.value), span };
}

/** A range of one dimension; the ends must rise. */
export function readRange<D extends Dimension>(
  ctx: Lowering,
  range: Range | undefined,
  expected: D,
  limits: Limits,
): { readonly from: number; readonly to?: number; readonly span: Span } | undefined {
  if (!range) return undefined;
  const from = readAmount(ctx, range.from, [expected], limits);
  const to = range.to ? readAmount(ctx, range.to, [expected], limits) : undefined;
  if (!from || (range.to && !to)) return undefined;
  if (to && to.value < from.value) {
    report(
      ctx,
      "bad-number",
      range.span,
      t`The range runs backwards: its first value is the larger one\nSwap the two.`,
    );
    return undefined;
  }
  return to ? { from: from.value, to: to.value, span: range.span } : { from: from.value, span: range.span };
}

export function readNumber(
  ctx: Lowering,
  number: NumberLiteral | undefined,
  limits: Limits,
): number | undefined {
  if (!number) return undefined;
  if (!within(number.value, limits)) {
    report(ctx, "bad-number", number.span, t`This must be ${translated(limits.words)}.`);
    return undefined;
  }
  return number.value;
}

/** Money: zero or more, with at most two decimals. */
export function readMoney(ctx: Lowering, number: NumberLiteral | undefined): number | undefined {
  const amount = readNumber(ctx, number, NOT_NEGATIVE);
  if (amount !== undefined && number && /\.\d{3,}/.test(number.text)) {
    report(
      ctx,
      "bad-number",
      number.span,
      gist((suchAs) => t`Money has at most two decimals${suchAs("28.00")}.`),
    );
    return undefined;
  }
  return amount;
}

/** The texts of the lines of one word, such as the notes of a piece. */
/** What the lines of a block say in words: its notes, and what is said behind the value of a field. */
export const notesIn = (
  statements: readonly (FieldStatement | { readonly kind: string })[],
): readonly string[] =>
  statements.flatMap((statement) => {
    if (!("value" in statement)) return [];
    const { keyword, value, said } = statement;
    if (keyword.text === "note") return readTexts([statement]);
    return said && value.form !== "text" ? [`${keyword.text.replaceAll("_", " ")}: ${said.value}`] : [];
  });

export const readTexts = (statements: readonly FieldStatement[] | undefined): readonly string[] =>
  (statements ?? []).flatMap(({ value }) => (value.form === "text" && value.text ? [value.text.value] : []));

/** A word of a closed vocabulary; reports `unknown-word` at the words. */
export function readWord<W extends string>(
  ctx: Lowering,
  words: Words | Name | Title | undefined,
  vocabulary: readonly W[],
  what: string,
): W | undefined {
  if (!words) return undefined;
  const text = words.kind === "title" ? `"${words.value}"` : words.text;
  if ((vocabulary as readonly string[]).includes(text)) return text as W;
  const unknown = t`Unknown ${translated(what)} \`${text}\``;
  const elsewhere = lookUp(ELSEWHERE[what] ?? {}, text);
  if (elsewhere !== undefined) {
    report(ctx, "unknown-word", words.span, `${unknown}\n${translated(elsewhere)}`);
    return undefined;
  }
  const near = closest(text, vocabulary);
  const open = near ? undefined : lookUp(OPEN_WORDS, what);
  if (open !== undefined) {
    const counts = vocabulary.find((word) => word === open.counts);
    reportSeveral(ctx, words, { what, word: open.word, choices: vocabulary, ...(counts ? { counts } : {}) });
    return counts;
  }
  const choice = vocabulary.length <= 12 ? t`\nIt may be ${orList(vocabulary)}.` : "";
  report(
    ctx,
    "unknown-word",
    words.span,
    `${unknown}${near ? `\n${t`Did you mean \`${near}\`?`}` : choice}`,
    near ? { title: t`Change to \`${near}\``, span: words.span, text: near } : undefined,
  );
  return undefined;
}

/** Lists of which any word of everyday speech is asked about, and the word that it counts as: where they differ, the graver. */
const OPEN_WORDS: Readonly<Record<string, { readonly word: string; readonly counts?: string }>> = {
  "degree of wear": { word: "wear", counts: "hard" },
  "kind of user": { word: "meant_for", counts: "children" },
  "word for outdoors": { word: "outdoors", counts: "rain" },
  "source of ignition": { word: "ignition", counts: "heater" },
  "kind of rags": { word: "rags", counts: "self-heating" },
  "method of a lead test": { word: "by", counts: "swab" },
  "result of a lead test": { word: "lead", counts: "not_tested" },
  "result of a spot test": { word: "tested" },
  "kind of surface": { word: "for", counts: "any" },
  sheen: { word: "sheen" },
};

/** A word that may be several things of the notation; `counts` is what it is taken for until its writer says which. */
export function reportSeveral(
  ctx: Lowering,
  written: Words | Name | Title,
  {
    what,
    word = what,
    choices,
    counts,
  }: {
    readonly what: string;
    readonly word?: string;
    readonly choices: readonly string[];
    readonly counts?: string;
  },
): void {
  const text = written.kind === "title" ? `"${written.value}"` : written.text;
  const { span } = written;
  const [fix, ...others] = choices.map((text) => ({ title: t`Change to \`${text}\``, span, text }));
  ctx.findings.push({
    rule: "may-be-several",
    span,
    message: [
      t`Unknown ${translated(what)} \`${text}\``,
      counts === undefined
        ? t`Until you say which, it does not count.`
        : t`Until you say which, it counts as ${counts}.`,
      t`Write ${orList(choices.map((each) => `\`${word} ${each}\``))}.`,
    ].join("\n"),
    ...(fix ? { fix } : {}),
    ...(others.length > 0 ? { others } : {}),
  });
}

/** The one item of a `words` field; more than one is a syntax matter that the parser has not excluded. */
export function onlyItem(
  ctx: Lowering,
  items: readonly (Words | Title)[],
  example: string,
): Words | Title | undefined {
  if (items.length > 1) {
    report(
      ctx,
      "syntax",
      items[1]!.span,
      gist((suchAs) => t`Expected one value only${suchAs(example)}.`),
    );
  }
  return items[0];
}

/** A date that exists; reports `bad-number` for one that does not, such as 2027-02-30. */
export function readDate(ctx: Lowering, text: string, span: Span): string | undefined {
  if (!isDate(text)) {
    report(
      ctx,
      "bad-number",
      span,
      t`There is no day ${text}\nA date is year-month-day, such as \`2027-03-08\`.`,
    );
    return undefined;
  }
  return text;
}

/** Minutes after midnight; 24:00 is the end of the day. */
export function readTime(ctx: Lowering, text: string, span: Span): number | undefined {
  const match = /^(\d{1,2}):(\d{2})$/.exec(text);
  const minutes = match ? Number(match[1]) * 60 + Number(match[2]) : Number.NaN;
  if (!match || Number(match[2]) > 59 || minutes > 24 * 60) {
    report(ctx, "bad-number", span, t`There is no time ${text}\nTimes run from 00:00 to 24:00.`);
    return undefined;
  }
  return minutes;
}
