/** The values of fields, by the form that each has. */
import { lookUp } from "../../../../grammar/src/look-up.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Token } from "../../../../grammar/src/tree.ts";
import { FIELDS, type FieldForm, WEEKDAYS } from "../../../../grammar/src/vocabulary.ts";
import { countryCodes, countryName } from "../../core/knowledge/countries.ts";
import { VOCABULARY_OF_FIELD, type VocabularyName, vocabulary } from "../../core/knowledge/vocabularies.ts";
import type { Dimension } from "../../core/measure/units.ts";
import { jobOffers, materialOffers, pieceOffers, shopOffers } from "./names.ts";
import {
  afterLastComma,
  type CompletionContext,
  hole,
  isComma,
  type Offer,
  type Phrase,
  phraseOffers,
} from "./offer.ts";
import { shapeOffers } from "./shapes.ts";
import { unitOffers } from "./units.ts";

export type FieldBlock = keyof typeof FIELDS;

/** After a field's word; `tokens` are those behind it. */
export function fieldOffers(
  ctx: CompletionContext,
  block: FieldBlock,
  word: string,
  tokens: readonly Token[],
): readonly Offer[] {
  const field = lookUp(FIELDS[block], word);
  if (!field) return [];
  const part = afterLastComma(tokens);
  const { afterNumber } = ctx.cursor;
  if (field.form === "words") return wordOffers(word, tokens, part);
  if (field.form === "shape") return shapeOffers(ctx, tokens);
  if (field.form === "wood") return woodOffers(afterNumber, tokens, part);
  if (field.form === "existing") return existingOffers(ctx, part);
  if (field.form === "lead") return leadOffers(tokens);
  if (field.form === "thin") return thinOffers(afterNumber, tokens, part);
  if (field.form === "name") return part.length > 0 ? [] : word === "in" ? shopOffers(ctx) : jobOffers(ctx);
  if (field.form === "pieces") return piecesOffers(ctx, tokens);
  if (field.form === "mix") return mixOffers(ctx, tokens);
  if (field.form === "hours" || field.form === "dates") return calendarOffers(field.form, part);
  if (afterNumber) return unitsFor(field.form, word, tokens, part);
  return tokens.length === 0 ? [exampleOffer(word, field.example)] : betweenOffers(field.form, word, part);
}

/** The example of a field's value, to be written over. */
function exampleOffer(word: string, example: string): Offer {
  const value = example.slice(word.length).trim();
  return { label: value, kind: "word", detail: t`an example`, snippet: `${hole(1, value)}$0` };
}

const keyword = (label: string, detail?: string): Offer => ({
  label,
  kind: "keyword",
  insert: `${label} `,
  ...(detail ? { detail } : {}),
});

// ---------------------------------------------------------------------------------------------------------------
// Words

const phrases = (name: VocabularyName): readonly Phrase[] =>
  vocabulary(name).map(({ word, doc }) => ({ label: word, documentation: translated(doc) }));

function wordOffers(word: string, tokens: readonly Token[], part: readonly Token[]): readonly Offer[] {
  if (word === "country") return tokens.length === 0 ? countryOffers() : [];
  const name = lookUp(VOCABULARY_OF_FIELD, word);
  if (!name) return [];
  // Only `for` takes several words with commas.
  if (word !== "for" && tokens.some((token) => isComma(token))) return [];
  const said = new Set(tokens.map(({ text }) => text));
  return phraseOffers(part, phrases(name)).filter(({ label }) => word !== "for" || !said.has(label));
}

const countryOffers = (): readonly Offer[] =>
  countryCodes().map((code) => ({ label: code, kind: "word" as const, detail: countryName(code) }));

function woodOffers(
  afterNumber: boolean,
  tokens: readonly Token[],
  part: readonly Token[],
): readonly Offer[] {
  if (!tokens.some((token) => isComma(token))) return phraseOffers(part, phrases("wood"));
  if (part[0]?.text === "veneer") return afterNumber ? unitOffers("length") : [];
  return part.length === 0 ? [keyword("veneer", "veneer 0.6 mm")] : [];
}

function existingOffers(ctx: CompletionContext, part: readonly Token[]): readonly Offer[] {
  if (ctx.cursor.afterNumber) return [{ label: "coats", kind: "word", detail: t`of the layer before` }];
  if (part[0]?.text === "as") {
    const next = ["left", "by"][part.length - 1];
    if (next) return [keyword(next)];
    return part.length === 3 ? jobOffers(ctx) : [];
  }
  const leftBy: Offer = {
    label: "as left by",
    kind: "keyword",
    insert: "as left by ",
    detail: t`the coats that an earlier job left`,
  };
  return [...phraseOffers(part, phrases("existing")), ...(part.length === 0 ? [leftBy] : [])];
}

/** A result is offered word by word, and never whole: it is for the person to say what the test found. */
function leadOffers(tokens: readonly Token[]): readonly Offer[] {
  if (tokens.length === 0) return phraseOffers([], phrases("lead"));
  if (tokens.length === 1) return [keyword("by", t`the method of the test`)];
  return tokens.length === 2 && tokens[1]!.text === "by" ? phraseOffers([], phrases("lead_method")) : [];
}

const THINNERS: readonly Phrase[] = [
  { label: "water" },
  { label: "mineral spirits" },
  { label: "alcohol" },
  { label: "acetone" },
  { label: "lacquer thinner" },
];

function thinOffers(
  afterNumber: boolean,
  tokens: readonly Token[],
  part: readonly Token[],
): readonly Offer[] {
  if (afterNumber) return unitOffers("share");
  if (!tokens.some((token) => isComma(token))) return phraseOffers(part, THINNERS);
  if (part.length === 0) return [{ label: "up to", kind: "keyword", insert: "up to " }];
  return part.length === 1 && part[0]!.text === "up" ? [keyword("to")] : [];
}

// ---------------------------------------------------------------------------------------------------------------
// Names, and days

function piecesOffers(ctx: CompletionContext, tokens: readonly Token[]): readonly Offer[] {
  if (tokens.length === 0) return pieceOffers(ctx);
  return tokens.length === 1
    ? [{ label: "x", kind: "keyword", detail: t`so many of them`, snippet: `x ${hole(1, "2")}$0` }]
    : [];
}

function mixOffers(ctx: CompletionContext, tokens: readonly Token[]): readonly Offer[] {
  const last = tokens.at(-1);
  if (!last) return [exampleOffer("mix", FIELDS.material.mix!.example)];
  if (last.text === "with") return materialOffers(ctx);
  return tokens.length === 3 ? [keyword("with")] : [];
}

export const FULL_DAYS = [
  "Monday",
  "Tuesday",
  "Wednesday",
  "Thursday",
  "Friday",
  "Saturday",
  "Sunday",
] as const;

function calendarOffers(form: "hours" | "dates", part: readonly Token[]): readonly Offer[] {
  const last = part.at(-1);
  if (form === "dates") return part.length === 1 && last!.kind === "date" ? [keyword("to")] : [];
  const days = (from: number): readonly Offer[] =>
    WEEKDAYS.flatMap((label, i) =>
      i >= from ? [{ label, kind: "word" as const, detail: translated(FULL_DAYS[i]!) }] : [],
    );
  const dayOf = (token: Token | undefined): number =>
    (WEEKDAYS as readonly (string | undefined)[]).indexOf(token?.text);
  if (!last) return days(0);
  if (dayOf(last) >= 0) return part.length === 1 ? [keyword("to"), openingOffer()] : [openingOffer()];
  if (last.text === "to") return dayOf(part.at(-2)) >= 0 ? days(dayOf(part.at(-2)) + 1) : [];
  return last.kind === "time" && part.at(-2)?.text !== "to" ? [keyword("to")] : [];
}

const openingOffer = (): Offer => ({
  label: "09:00 to 17:00",
  kind: "word",
  detail: t`an example`,
  snippet: `${hole(1, "09:00")} to ${hole(2, "17:00")}$0`,
});

// ---------------------------------------------------------------------------------------------------------------
// Quantities

const DIMENSIONS_OF: Readonly<Record<string, readonly Dimension[]>> = {
  covers: ["spreading rate", "weight by area"],
  solids: ["share"],
  touch: ["time"],
  recoat: ["time"],
  stackable: ["time"],
  sandable: ["time"],
  cure: ["time"],
  voc: ["density"],
  on_hand: ["volume", "mass"],
  flash: ["temperature"],
  pot_life: ["time"],
  density: ["density"],
  spare: ["share"],
  moisture: ["share"],
};

/** Units of the number at the cursor. */
function unitsFor(
  form: FieldForm,
  word: string,
  tokens: readonly Token[],
  part: readonly Token[],
): readonly Offer[] {
  const inFirstPart = !tokens.some((token) => isComma(token));
  switch (form) {
    case "quantity":
    case "range":
      return unitOffers(...(lookUp(DIMENSIONS_OF, word) ?? []));
    case "air":
      return inFirstPart ? unitOffers("temperature") : unitOffers("share");
    case "packs":
      return part.length === 1 ? unitOffers("volume", "mass") : [];
    case "room":
      return inFirstPart ? roomUnits() : unitOffers("air change");
    case "money":
      return word === "labour" ? [{ label: "per h", kind: "word" }] : [];
    default:
      return [];
  }
}

const roomUnits = (): readonly Offer[] =>
  unitOffers("volume").filter(({ label }) => /^(?:m3|ft3)$/u.test(label));

/** Words between the quantities of a field. */
function betweenOffers(form: FieldForm, word: string, part: readonly Token[]): readonly Offer[] {
  const last = part.at(-1);
  if (last?.kind !== "unit") return [];
  const hasTo = part.some(({ text }) => text === "to");
  if (form === "range" || (form === "air" && word === "limits" && last.text !== "%")) {
    return hasTo ? [] : [keyword("to")];
  }
  if (form === "air" && last.text === "%")
    return [{ label: "RH", kind: "word", detail: t`relative humidity` }];
  return form === "packs" && !part.some(({ text }) => text === "for") ? [keyword("for", t`its price`)] : [];
}
