/** A `shape` line: how many, the shape with its sizes, their units, and what it may say besides. */

import { lookUp } from "../../../../grammar/src/look-up.ts";
import { translated } from "../../../../grammar/src/translate.ts";
import type { Token } from "../../../../grammar/src/tree.ts";
import { SHAPES } from "../../../../grammar/src/vocabulary.ts";
import { afterLastComma, type CompletionContext, hole, isComma, type Offer, phraseOffers } from "./offer.ts";
import { unitOffers } from "./units.ts";

export function shapeOffers(ctx: CompletionContext, tokens: readonly Token[]): readonly Offer[] {
  const { afterNumber } = ctx.cursor;
  const of = tokens[1]?.text === "of" ? 2 : 0;
  const name = tokens[of]?.text;
  if (name === undefined) return of > 0 || tokens.length === 0 ? allShapes(ctx) : [];
  // A number at the beginning counts shapes.
  if (of === 0 && tokens[0]!.kind === "number") {
    return afterNumber && tokens.length === 1 ? [{ label: "of", kind: "keyword", insert: "of " }] : [];
  }
  const shape = lookUp(SHAPES, name);
  if (!shape) return [];
  const inSizes = !tokens.some((token) => isComma(token));
  const part = afterLastComma(tokens);
  if (!inSizes) return optionOffers(ctx, shape.options, tokens, part);
  if (afterNumber) return unitOffers(name === "area" ? "area" : "length");
  return tokens.at(-1)!.kind === "unit" ? betweenSizes(shape.sizes, tokens.slice(of + 1)) : [];
}

/** Shapes as snippets with their sizes. */
function allShapes(ctx: CompletionContext): readonly Offer[] {
  const hasSizes = /^\s*\d/u.test(ctx.cursor.rest);
  return Object.entries(SHAPES).map(([label, { sizes, doc, example }]) => ({
    label,
    kind: "word" as const,
    detail: example.replace(/^shape /u, ""),
    documentation: translated(doc),
    ...(hasSizes ? {} : { snippet: `${label} ${sizes.map(sizeSnippet).join(" x ")}$0` }),
  }));
}

const sizeSnippet = (size: string, index: number): string =>
  size === "area" ? `${hole(index + 1, "1.2")} m2` : `${hole(index + 1, size.replace(/[?~]$/u, ""))} mm`;

/** `x` while sizes are missing, `to` where the size may taper. */
function betweenSizes(sizes: readonly string[], given: readonly Token[]): readonly Offer[] {
  const count = given.filter(({ text }) => text === "x").length;
  const since = given.slice(given.findLastIndex(({ text }) => text === "x") + 1);
  const mayTaper = sizes[count]?.endsWith("~") && !since.some(({ text }) => text === "to");
  return [
    ...(count < sizes.length - 1 ? [{ label: "x", kind: "keyword" as const, insert: "x " }] : []),
    ...(mayTaper ? [{ label: "to", kind: "keyword" as const, insert: "to " }] : []),
  ];
}

function optionOffers(
  ctx: CompletionContext,
  options: readonly string[],
  tokens: readonly Token[],
  part: readonly Token[],
): readonly Offer[] {
  if (part[0]?.text === "plus") return ctx.cursor.afterNumber ? unitOffers("share") : [];
  const said = tokens.map(({ text }) => text).join(" ");
  const offers = phraseOffers(
    part,
    options.filter((option) => !said.includes(`, ${option}`)).map((label) => ({ label })),
  );
  const plus: Offer = { label: "plus", kind: "keyword", insert: "plus ", detail: "plus 10 %" };
  return part.length === 0 && !said.includes(", plus") ? [...offers, plus] : offers;
}
