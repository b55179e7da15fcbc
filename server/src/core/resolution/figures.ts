/**
 * Reads the quantities of recipe lines and arguments, where a parameter may stand for one, and says what is wrong with
 * them. Each is read once; what a parameter stands for is put in for every call.
 */

import { gist, inside, type SuchAs, type Told, toldBy } from "../../../../grammar/src/gist.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Name, Quantity, Value } from "../../../../grammar/src/tree.ts";
import { describeDimension, nounOf, readQuantity } from "../measure/read-quantity.ts";
import type { Dimension } from "../measure/units.ts";
import { DURATION, type Limits, within } from "../model/lowering.ts";
import type { RecipeParameter } from "../model/model.ts";
import { didYouMean } from "../model/suggest.ts";
import { sentence } from "../sentence.ts";
import type { Figure } from "./lines.ts";
import { meaningOf, type Resolving, report } from "./resolving.ts";

/** What should stand where a figure is expected, and what to write where a word stands there. */
export interface Wanted {
  readonly words: Told;
  readonly instead?: (word: string) => string;
  /** Another type of parameter that may stand there. */
  readonly also?: RecipeParameter["type"];
}

export const NUMBER_WANTED: Wanted = { words: "a number" };
export const COATS_WANTED: Wanted = {
  words: "a number of coats",
  instead: () => t`Write the number, such as \`x 3\`, or \`x 2 to 3\`.`,
};
export const GRIT_WANTED: Wanted = {
  also: "grits",
  words: (suchAs) => t`a grit${suchAs("120", "")}`,
  instead: (word) =>
    t`Write the grit, and how it is done in quotes behind it, such as \`step sand 320 "${word}"\`.`,
};
const measureWanted = (dimension: Dimension): Wanted => ({
  words: (suchAs) => describeDimension(dimension, suchAs),
  ...(dimension === "time"
    ? { instead: () => t`Write a time, \`overnight\`, or what to wait for, such as \`until recoat\`.` }
    : {}),
});

/** A plain number, or a number parameter. `undefined`: missing or wrong. */
export function countOf(
  ctx: Resolving,
  value: Value | undefined,
  limits: Limits,
  wanted: Wanted,
): Figure | undefined {
  if (!value) return undefined;
  if (value.kind === "name") return parameterOf(ctx, value, "number", wanted);
  const number = plainNumber(value);
  if (number === undefined) {
    report(
      ctx,
      "wrong-unit",
      value.span,
      gist(
        (suchAs) =>
          t`Expected ${toldBy(wanted.words, suchAs)}, which has no unit.\nWrite the number alone, such as \`2\`; more words go behind a comma.`,
      ),
    );
    return undefined;
  }
  if (!within(number, limits)) {
    report(
      ctx,
      "bad-number",
      value.span,
      gist((suchAs) => sentence(t`${toldBy(wanted.words, suchAs)} must be ${translated(limits.words)}.`)),
    );
    return undefined;
  }
  return { value: number };
}

/** The number of a quantity that has no unit. */
export function plainNumber({ parts }: Quantity): number | undefined {
  const only = parts.length === 1 ? parts[0]! : undefined;
  return only && !only.unit ? only.number.value : undefined;
}

/** A time in hours, or a duration parameter; undefined beyond what a duration may be. */
export function durationOf(ctx: Resolving, value: Value | undefined): Figure | undefined {
  const read = measureOf(ctx, value, ["time"], DURATION)?.figure;
  return read && "value" in read && !within(read.value, DURATION) ? undefined : read;
}

/**
 * A quantity of one of the dimensions; durations and shares may be parameters (`duration`, `number` as percent). A
 * figure out of its limits is reported and stands all the same.
 */
export function measureOf<D extends Dimension>(
  ctx: Resolving,
  value: Value | undefined,
  expected: readonly D[],
  limits: Limits,
): { readonly dimension: D; readonly figure: Figure } | undefined {
  if (!value) return undefined;
  if (value.kind === "name") return parameterMeasure(ctx, value, expected);
  const read = readQuantity(value, expected);
  if (!read.ok) {
    report(ctx, read.rule, read.span, read.message);
    return undefined;
  }
  const { dimension, value: figure } = read.amount;
  if (!within(figure, limits)) {
    report(
      ctx,
      "bad-number",
      value.span,
      sentence(t`${nounOf(expected[0]!)} here must be ${translated(limits.words)}.`),
    );
  }
  return Number.isFinite(figure) ? { dimension, figure: { value: figure } } : undefined;
}

function parameterMeasure<D extends Dimension>(
  ctx: Resolving,
  name: Name,
  expected: readonly D[],
): { readonly dimension: D; readonly figure: Figure } | undefined {
  const [first] = expected;
  const mayBe = (dimension: Dimension): boolean => (expected as readonly Dimension[]).includes(dimension);
  if (mayBe("time") || mayBe("share")) {
    const figure = parameterOf(ctx, name, mayBe("time") ? "duration" : "number", measureWanted(first!));
    return figure && { dimension: mayBe("time") ? ("time" as D) : first!, figure };
  }
  const meant = meaningOf(ctx, name);
  const type = meant?.kind === "parameter" ? meant.parameter?.type : undefined;
  if (!type) parameterOf(ctx, name, "number", measureWanted(first!));
  else
    report(
      ctx,
      "wrong-argument",
      name.span,
      gist((suchAs) => t`\`${name.text}\` is a ${type}; expected ${describeDimension(first!, suchAs)}.`),
    );
  return undefined;
}

/** A parameter of a type that stands where a quantity is expected. */
function parameterOf(
  ctx: Resolving,
  name: Name,
  type: RecipeParameter["type"],
  { words, instead, also }: Wanted,
): Figure | undefined {
  const meant = meaningOf(ctx, name);
  if (meant?.kind !== "parameter") {
    const told = (suchAs: SuchAs): string => t`Expected ${toldBy(words, suchAs)}, found \`${name.text}\``;
    const line = didYouMean(name.text, ctx.parameters.keys()) || (instead?.(name.text) ?? "");
    report(ctx, "unknown-name", name.span, line === "" ? gist(told) : `${told(inside)}\n${line}`);
    return undefined;
  }
  const { parameter } = meant;
  if (parameter && parameter.type !== type && parameter.type !== also) {
    report(
      ctx,
      "wrong-argument",
      name.span,
      t`\`${name.text}\` is a ${parameter.type}; a ${type} is expected here\nGive it that type in the brackets: \`${name.text}: ${type}\`.`,
    );
    return undefined;
  }
  return { parameter: name.text };
}
