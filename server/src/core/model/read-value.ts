/**
 * Reads the values of recipe lines and arguments, where a parameter may stand for a quantity, and says what is wrong
 * with them. Used twice: with `report` to check a declaration, and without it when a recipe is expanded for a job.
 */
import type { Span, Value } from "../../../../grammar/src/tree.ts";
import { describeDimension, readQuantity } from "../measure/read-quantity.ts";
import type { Dimension } from "../measure/units.ts";
import { sentence } from "../sentence.ts";
import { DURATION, type Limits, within } from "./lowering.ts";
import type { Material, Recipe } from "./model.ts";
import { didYouMean } from "./suggest.ts";

/** What a parameter stands for in one call. Undefined content: not known (a parameter without argument or default). */
export type Bound =
  | { readonly type: "material"; readonly material?: Material }
  | { readonly type: "number"; readonly value?: number }
  | { readonly type: "duration"; readonly hours?: number }
  | { readonly type: "recipe"; readonly recipe?: Recipe };

export type Bindings = ReadonlyMap<string, Bound>;

export type Reporter = (rule: string, span: Span, message: string, related?: Span) => void;
export const silent: Reporter = () => {};

/** A plain number, or a number parameter. `undefined`: wrong or not known. */
export function readCount(
  value: Value | undefined,
  bindings: Bindings,
  limits: Limits,
  what: string,
  report: Reporter,
): number | undefined {
  if (!value) return undefined;
  if (value.kind === "name") return readParameter(value.text, value.span, "number", bindings, report)?.value;
  const only = value.parts.length === 1 ? value.parts[0]! : undefined;
  if (!only || only.unit) {
    report("wrong-unit", value.span, `Expected ${what}, which has no unit.`);
    return undefined;
  }
  if (!within(only.number.value, limits)) {
    report("bad-number", value.span, `${sentence(what)} must be ${limits.words}.`);
    return undefined;
  }
  return only.number.value;
}

/** A time in hours, or a duration parameter. */
export function readDuration(
  value: Value | undefined,
  bindings: Bindings,
  report: Reporter,
): number | undefined {
  if (!value) return undefined;
  if (value.kind === "name")
    return readParameter(value.text, value.span, "duration", bindings, report)?.hours;
  return readMeasure(value, ["time"], DURATION, bindings, report)?.value;
}

/** A quantity of one of the dimensions; durations and shares may be parameters (`duration`, `number` as percent). */
export function readMeasure<D extends Dimension>(
  value: Value | undefined,
  expected: readonly D[],
  limits: Limits,
  bindings: Bindings,
  report: Reporter,
): { readonly dimension: D; readonly value: number } | undefined {
  if (!value) return undefined;
  if (value.kind === "name") {
    if ((expected as readonly Dimension[]).includes("time")) {
      const hours = readParameter(value.text, value.span, "duration", bindings, report)?.hours;
      return hours === undefined ? undefined : { dimension: "time" as D, value: hours };
    }
    if (!(expected as readonly Dimension[]).includes("share")) {
      const what = describeDimension(expected[0]!);
      const type = bindings.get(value.text)?.type;
      if (type) report("wrong-argument", value.span, `\`${value.text}\` is a ${type}; expected ${what}.`);
      else readParameter(value.text, value.span, "number", bindings, report);
      return undefined;
    }
    const bound = readParameter(value.text, value.span, "number", bindings, report);
    return bound?.value === undefined ? undefined : { dimension: expected[0]!, value: bound.value };
  }
  const read = readQuantity(value, expected);
  if (!read.ok) {
    report(read.rule, read.span, read.message);
    return undefined;
  }
  if (!within(read.amount.value, limits)) {
    report(
      "bad-number",
      value.span,
      sentence(`${describeDimension(expected[0]!).replace(/ such as.*/, "")} here must be ${limits.words}.`),
    );
    return undefined;
  }
  return { dimension: read.amount.dimension, value: read.amount.value };
}

function readParameter<T extends Bound["type"]>(
  name: string,
  span: Span,
  type: T,
  bindings: Bindings,
  report: Reporter,
): Extract<Bound, { type: T }> | undefined {
  const bound = bindings.get(name);
  if (!bound && report === silent) return undefined;
  if (!bound) {
    report(
      "unknown-name",
      span,
      `There is no parameter \`${name}\` in this recipe.${didYouMean(name, bindings.keys())}`,
    );
    return undefined;
  }
  if (bound.type !== type) {
    report("wrong-argument", span, `\`${name}\` is a ${bound.type}; a ${type} is expected here.`);
    return undefined;
  }
  return bound as Extract<Bound, { type: T }>;
}
