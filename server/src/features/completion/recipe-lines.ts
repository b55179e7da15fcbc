/** The lines of recipes: steps with their verbs, layers with their tails, waits and duties. */
import { lookUp } from "../../../../grammar/src/look-up.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Token } from "../../../../grammar/src/tree.ts";
import { METHODS, TAILS, VERBS, WAIT_STAGES } from "../../../../grammar/src/vocabulary.ts";
import { P_GRADES } from "../../core/knowledge/abrasives.ts";
import type { Role } from "../../core/knowledge/family-schema.ts";
import { vocabulary } from "../../core/knowledge/vocabularies.ts";
import { SHEENS } from "../../core/knowledge/words.ts";
import { otherWordCard } from "../hover/word-cards.ts";
import { materialOffers, parameterOffers } from "./names.ts";
import { afterLastComma, type CompletionContext, hole, isComma, type Offer } from "./offer.ts";
import { filmUnitOffers, unitOffers } from "./units.ts";

/** After `step`. */
export function stepOffers(ctx: CompletionContext, tokens: readonly Token[]): readonly Offer[] {
  const [first, second] = tokens;
  if (!first) return verbOffers();
  const verb = lookUp(VERBS, first.text);
  const last = tokens.at(-1)!;
  if (isComma(last)) {
    const grits = verb?.form === "grits" && !tokens.some(({ text }) => text === "takes");
    return [...(grits ? gritOffers(ctx, tokens) : []), ...tailOffers("step", tokens, canUse(tokens))];
  }
  if (tokens.some((token) => isComma(token)) && afterLastComma(tokens)[0]?.kind !== "number") {
    return tailPartOffers(ctx, afterLastComma(tokens));
  }
  if (ctx.cursor.afterNumber || !verb) return [];
  if (verb.form === "what-with" && last.kind === "string") {
    return [{ label: "with", kind: "keyword", insert: "with " }];
  }
  if (verb.form === "what-with" && last.text === "with")
    return materialOffers(ctx, lookUp(ROLES_OF_VERB, first.text) ?? []);
  if (verb.form === "material" || verb.form === "optional-material") {
    if (!second) return [{ label: "with", kind: "keyword", insert: "with " }];
    return second.text === "with" && tokens.length === 2
      ? materialOffers(ctx, lookUp(ROLES_OF_VERB, first.text) ?? [])
      : [];
  }
  if (verb.form === "grits") {
    if (!second) {
      const wet: Offer = { label: "wet", kind: "word", detail: t`with water, which takes the dust` };
      return [...gritOffers(ctx, tokens), ...(first.text === "sand" ? [wet] : [])];
    }
    return second.text === "wet" && tokens.length === 2 ? gritOffers(ctx, tokens) : [];
  }
  return (verb.form === "what" || verb.form === "what-with") && !second
    ? [{ label: '"what"', kind: "word", detail: t`what it is done to`, snippet: `"${hole(1, "what")}"$0` }]
    : [];
}

const canUse = (tokens: readonly Token[]): boolean => tokens.some(({ text }) => text === "with");

/** What a verb is usually done with. */
const ROLES_OF_VERB: Readonly<Record<string, readonly Role[]>> = {
  clean: ["cleaner"],
  dewax: ["solvent"],
  strip: ["stripper"],
  fill: ["filler"],
  bleach: ["bleach"],
  buff: ["wax"],
  glue: ["glue"],
};

function verbOffers(): readonly Offer[] {
  return Object.entries(VERBS).map(([label, { form, doc, example }]) => ({
    label,
    kind: "verb" as const,
    detail: example,
    documentation: translated(doc),
    ...(form === "material" || label === "clean" ? { insert: `${label} with ` } : {}),
    ...(form === "grits" ? { insert: `${label} ` } : {}),
    ...(form === "what" || form === "what-with" ? { snippet: `${label} "${hole(1, "what")}"$0` } : {}),
  }));
}

/** Grits that one can buy, finer than the one before. */
function gritOffers(ctx: CompletionContext, tokens: readonly Token[]): readonly Offer[] {
  const before = Number(tokens.findLast(({ kind }) => kind === "number")?.text ?? 0);
  return [
    ...P_GRADES.filter(({ grit }) => grit >= 40 && grit <= 1200 && grit > before).map(({ grit }) => ({
      label: String(grit),
      kind: "word" as const,
      detail: t`grit`,
    })),
    ...parameterOffers(ctx, "number"),
  ];
}

/** After `layer`. */
export function layerOffers(ctx: CompletionContext, tokens: readonly Token[]): readonly Offer[] {
  const last = tokens.at(-1);
  if (!last)
    return materialOffers(ctx, [], ({ family }) => family === undefined || family.group !== "auxiliary");
  if (isComma(last)) return tailOffers("layer", tokens, false);
  if (tokens.some((token) => isComma(token))) return tailPartOffers(ctx, afterLastComma(tokens));
  if (tokens.length === 1) {
    return [{ label: "x", kind: "keyword", detail: t`so many coats`, snippet: `x ${hole(1, "2")}$0` }];
  }
  return tokens.length === 2 && last.text === "x" ? parameterOffers(ctx, "number") : [];
}

/** Tails of a line that it does not have yet. */
function tailOffers(
  on: "step" | "layer",
  tokens: readonly Token[],
  canUseMaterial: boolean,
): readonly Offer[] {
  const said = new Set(tokens.flatMap((token, i) => (isComma(tokens[i - 1]) ? [token.text] : [])));
  return Object.entries(TAILS)
    .filter(([word, tail]) => (tail.on === on || tail.on === "both") && !said.has(word))
    .filter(([word]) => word !== "uses" || canUseMaterial)
    .map(([label, { example, doc }]) => ({
      label,
      kind: "keyword" as const,
      detail: example,
      documentation: translated(doc),
      ...(WHOLE_TAILS.has(label) ? {} : { insert: SAID_WHOLE.has(label) ? example : `${label} ` }),
    }));
}

/** Tails with one thing that may follow. */
const SAID_WHOLE: ReadonlySet<string> = new Set(["as", "buffed", "if", "wiped"]);

/** Tails that say something as they stand. */
const WHOLE_TAILS: ReadonlySet<string> = new Set(["thin", "mist", "full", "flooded", "together", "apart"]);

/** Inside a tail; `tokens` are those since its comma. */
function tailPartOffers(ctx: CompletionContext, tokens: readonly Token[]): readonly Offer[] {
  const word = tokens[0]?.text;
  const last = tokens.at(-1)!;
  const { afterNumber } = ctx.cursor;
  const alone = tokens.length === 1;
  switch (word) {
    case "between":
      return stepOffers(ctx, tokens.slice(1));
    case "by":
      return alone
        ? [
            ...parameterOffers(ctx, "method"),
            ...METHODS.map((label) => ({ label, kind: "word" as const, detail: t`method` })),
          ]
        : [];
    case "wiped":
      if (afterNumber) return unitOffers("time");
      if (alone) return [{ label: "off", kind: "keyword" }];
      if (last.text === "off") return [{ label: "after", kind: "keyword", insert: "after " }];
      return last.text === "after" ? parameterOffers(ctx, "duration") : [];
    case "thinned":
      if (last.text === "with") return materialOffers(ctx, ["solvent"]);
      return tokens.length === 4 ? [{ label: "with", kind: "keyword", insert: "with " }] : [];
    case "tinted":
      if (afterNumber) return unitOffers("share");
      if (last.text === "with") return materialOffers(ctx, ["stain"]);
      return last.text === "%" ? [{ label: "with", kind: "keyword", insert: "with " }] : [];
    case "flash":
      return afterNumber ? unitOffers("time") : [];
    case "sheen":
      return alone
        ? [
            ...parameterOffers(ctx, "sheen"),
            ...SHEENS.map(({ word: label, doc }) => ({
              label,
              kind: "word" as const,
              detail: translated(doc),
            })),
          ]
        : [];
    case "only":
      return afterNumber ? unitOffers("share", "area") : [];
    case "if":
      return alone ? [{ label: "needed", kind: "word" }] : [];
    case "as":
      return alone ? [{ label: "toner", kind: "word" }] : [];
    case "wet":
      return afterNumber ? filmUnitOffers() : [];
    case "takes":
      if (afterNumber) return unitOffers("time", "time by area");
      return alone ? parameterOffers(ctx, "duration") : [];
    case "uses":
      return afterNumber ? unitOffers("volume", "mass") : [];
    default:
      return [];
  }
}

/** After `wait`. */
export function waitOffers(ctx: CompletionContext, tokens: readonly Token[]): readonly Offer[] {
  if (ctx.cursor.afterNumber) return unitOffers("time");
  if (tokens.length === 0) {
    return [
      { label: "until", kind: "keyword", insert: "until ", detail: t`touch, recoat or cured` },
      { label: "overnight", kind: "word", detail: t`to the next morning, 12 h at least` },
      ...parameterOffers(ctx, "duration"),
      { label: "72 h", kind: "word", detail: t`an example`, snippet: `${hole(1, "72 h")}$0` },
    ];
  }
  if (tokens.length !== 1 || tokens[0]!.text !== "until") return [];
  return WAIT_STAGES.map((label) => ({
    label,
    kind: "word" as const,
    ...(otherWordCard(label) ? { documentation: otherWordCard(label)! } : {}),
  }));
}

/** After `safety`. */
export function safetyOffers(ctx: CompletionContext, tokens: readonly Token[]): readonly Offer[] {
  const last = tokens.at(-1);
  if (ctx.cursor.afterNumber) {
    return tokens.at(-2)?.text === "ventilate" ? unitOffers("air change") : [];
  }
  if (last && !isComma(last)) return [];
  const said = new Set(tokens.map(({ text }) => text));
  return vocabulary("duty")
    .filter(({ word }) => !said.has(word))
    .map(({ word, doc }) => ({ label: word, kind: "word" as const, documentation: translated(doc) }));
}
