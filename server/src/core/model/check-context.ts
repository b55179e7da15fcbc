/**
 * What the checks of names share: a scope, a list of findings and a list of references (who names what, where), which
 * later serve `unused-name`, hover, go-to-definition and rename.
 */

import type { Argument, Call, Name, RecipeStatement, Span, Value } from "../../../../grammar/src/tree.ts";
import { onceFor } from "../once.ts";
import type { Place } from "../place.ts";
import { COATS, GRIT, type Limits, SHARE_ABOVE_ZERO } from "./lowering.ts";
import type { LocalFinding, Named, Recipe, RecipeParameter } from "./model.ts";
import type { Scope } from "./program.ts";
import { type Bindings, type Bound, type Reporter, readCount, readDuration } from "./read-value.ts";
import { closestName, shortList } from "./suggest.ts";

export type ReferenceKind =
  | "material"
  | "piece"
  | "surface"
  | "shop"
  | "recipe"
  | "job"
  | "parameter"
  | "argument";

export interface Reference {
  readonly kind: ReferenceKind;
  readonly name: string;
  readonly span: Span;
  /** The place of the name it refers to; absent for built-in materials and unknown names. */
  readonly target?: Place;
}

export interface CheckContext {
  readonly file: string;
  readonly declaration: string;
  readonly scope: Scope;
  readonly findings: LocalFinding[];
  readonly references: Reference[];
  readonly suggestions: Suggestions;
}

/** How many names of a file may still be compared with all the others for a suggestion; counts down. */
export interface Suggestions {
  left: number;
}

/** More misspelt names than anybody corrects one by one; with each of them all known names are compared. */
export const MOST_SUGGESTIONS = 100;

export interface CheckResult {
  readonly findings: readonly LocalFinding[];
  readonly references: readonly Reference[];
}

export const reporter =
  (ctx: CheckContext): Reporter =>
  (rule, span, message, related) => {
    ctx.findings.push({
      rule,
      span,
      message,
      ...(related ? { related: [{ span: related, message: "See here" }] } : {}),
    });
  };

/** Looks a name up in one namespace; reports `unknown-name` with the closest known name. */
export function lookUp<T extends Named>(
  ctx: CheckContext,
  kind: "material" | "piece" | "shop" | "recipe" | "job",
  names: ReadonlyMap<string, T>,
  name: Name,
  more: Iterable<string> = [],
): T | undefined {
  const found = names.get(name.text);
  const target = found && found.declaration !== "" ? found.namePlace : undefined;
  ctx.references.push({ kind, name: name.text, span: name.span, ...(target ? { target } : {}) });
  if (!found) reportUnknownName(ctx, kind, name, both(more, names.keys()));
  return found;
}

/** One after the other, without a list of all of them for every name that is looked up. */
function* both(first: Iterable<string>, second: Iterable<string>): Generator<string> {
  yield* first;
  yield* second;
}

export function reportUnknownName(
  ctx: CheckContext,
  what: string,
  name: Name,
  known: Iterable<string>,
): void {
  const near = suggestion(ctx, name.text, known);
  const hint = near
    ? ` Did you mean \`${near}\`?`
    : ` Declare it, or name a file that does with \`use\`.${withoutSuggestion(ctx)}`;
  ctx.findings.push({
    rule: "unknown-name",
    span: name.span,
    message: `There is no ${what} \`${name.text}\` here.${hint}`,
    ...(near ? { fix: { title: `Change to \`${near}\``, span: name.span, text: near } } : {}),
  });
}

/** The name that was probably meant, as long as suggestions are made. */
function suggestion(ctx: CheckContext, name: string, known: Iterable<string>): string | undefined {
  ctx.suggestions.left -= 1;
  return ctx.suggestions.left < 0 ? undefined : closestName(name, known);
}

const withoutSuggestion = ({ suggestions }: CheckContext): string =>
  suggestions.left < 0
    ? ` For the first ${MOST_SUGGESTIONS} unknown names of a file a similar name is looked for, for this one no longer.`
    : "";

/** A material, or a material parameter of the recipe at hand. */
export function checkMaterial(
  ctx: CheckContext,
  name: Name | undefined,
  bindings: Bindings,
  parameters: readonly RecipeParameter[],
): void {
  if (!name) return;
  const bound = bindings.get(name.text);
  if (!bound) {
    lookUp(ctx, "material", ctx.scope.materials, name, bindings.keys());
    return;
  }
  noteParameter(ctx, name, parameters);
  if (bound.type !== "material") {
    reporter(ctx)(
      "wrong-argument",
      name.span,
      `\`${name.text}\` is a ${bound.type}; a material is expected here.`,
    );
  }
}

export function noteParameter(ctx: CheckContext, name: Name, parameters: readonly RecipeParameter[]): void {
  const parameter = parameterNamed(parameters, name.text);
  if (parameter)
    ctx.references.push({ kind: "parameter", name: name.text, span: name.span, target: parameter.place });
}

/** A parameter by its name, the first of several. */
export const parameterNamed = (
  parameters: readonly RecipeParameter[],
  name: string,
): RecipeParameter | undefined => parametersByName(parameters).get(name);

const parametersByName = onceFor(
  (parameters: readonly RecipeParameter[]): ReadonlyMap<string, RecipeParameter> => {
    const byName = new Map<string, RecipeParameter>();
    for (const parameter of parameters)
      if (!byName.has(parameter.name)) byName.set(parameter.name, parameter);
    return byName;
  },
);

/** Checks the arguments of a call of `recipe` (undefined: a recipe parameter, of which nothing is known). */
export function checkArguments(
  ctx: CheckContext,
  call: Call,
  recipe: Recipe | undefined,
  bindings: Bindings,
  parameters: readonly RecipeParameter[],
): void {
  const given = new Map<string, Argument>();
  // A parameter whose misspelt name was found is not missing as well: one cause, one finding.
  const meant = new Set<string>();
  for (const argument of call.arguments) {
    if (!argument.name && !argument.value) continue; // `c: m, )` is the parser's to report
    const parameter = checkArgumentName(ctx, call, argument, recipe, given, meant);
    if (argument.name) given.set(argument.name.text, argument);
    if (argument.value) checkArgumentValue(ctx, argument, recipe, parameter, bindings, parameters);
  }
  const missing =
    recipe?.parameters.filter((p) => !p.hasDefault && !given.has(p.name) && !meant.has(p.name)) ?? [];
  if (missing.length > 0) {
    const list = shortList(missing, (p) => `\`${p.name}: …\` (a ${p.type})`);
    ctx.findings.push({
      rule: "missing-argument",
      span: call.span,
      message: `\`${call.name.text}\` also needs ${list}. Add it inside the parentheses.`,
    });
  }
}

function checkArgumentName(
  ctx: CheckContext,
  call: Call,
  argument: Argument,
  recipe: Recipe | undefined,
  given: ReadonlyMap<string, Argument>,
  meant: Set<string>,
): RecipeParameter | undefined {
  const report = reporter(ctx);
  if (!argument.name) {
    const first = recipe?.parameters[0]?.name ?? "clear";
    report(
      "wrong-argument",
      argument.span,
      `Arguments are named, such as \`${first}: …\`. Say which parameter this is for.`,
    );
    return undefined;
  }
  const name = argument.name.text;
  if (given.has(name)) {
    report(
      "wrong-argument",
      argument.name.span,
      `\`${name}\` is given twice in this call. Keep one of the two.`,
    );
  }
  if (!recipe) return undefined;
  const parameter = parameterNamed(recipe.parameters, name);
  ctx.references.push({
    kind: "argument",
    name,
    span: argument.name.span,
    ...(parameter ? { target: parameter.place } : {}),
  });
  if (parameter) return parameter;
  const near = suggestion(ctx, name, parametersByName(recipe.parameters).keys());
  if (near) meant.add(near);
  const rest = near
    ? `Did you mean \`${near}\`?`
    : recipe.parameters.length > 0
      ? `${recipe.parameters.length === 1 ? "Its only parameter is" : "Its parameters are"} ${shortList(recipe.parameters, (p) => `\`${p.name}\``)}.`
      : "It has no parameters.";
  ctx.findings.push({
    rule: "wrong-argument",
    span: argument.name.span,
    message: `\`${call.name.text}\` has no parameter \`${name}\`. ${rest}`,
    ...(near ? { fix: { title: `Change to \`${near}\``, span: argument.name.span, text: near } } : {}),
  });
  return undefined;
}

function checkArgumentValue(
  ctx: CheckContext,
  argument: Argument,
  recipe: Recipe | undefined,
  parameter: RecipeParameter | undefined,
  bindings: Bindings,
  parameters: readonly RecipeParameter[],
): void {
  const value = argument.value!;
  const report = reporter(ctx);
  if (value.kind === "name") {
    if (bindings.has(value.text)) {
      noteParameter(ctx, value, parameters);
      const type = bindings.get(value.text)!.type;
      if (parameter && type !== parameter.type) {
        report(
          "wrong-argument",
          value.span,
          `\`${parameter.name}\` is a ${parameter.type}; \`${value.text}\` is a ${type}.`,
        );
      }
      return;
    }
    if (!parameter) return;
    if (parameter.type === "material") lookUp(ctx, "material", ctx.scope.materials, value, bindings.keys());
    else if (parameter.type === "recipe") {
      const handedOn = lookUp(ctx, "recipe", ctx.scope.recipes, value, bindings.keys());
      if (recipe && handedOn) checkHandedOn(ctx, value, handedOn, recipe, parameter.name);
    } else
      report(
        "wrong-argument",
        value.span,
        `\`${parameter.name}\` is a ${parameter.type}, such as \`${exampleOf(parameter.type)}\`; found the name \`${value.text}\`.`,
      );
    return;
  }
  if (!parameter) return;
  if (value.kind === "title" || parameter.type === "material" || parameter.type === "recipe") {
    report(
      "wrong-argument",
      value.span,
      `\`${parameter.name}\` is a ${parameter.type}, such as \`${exampleOf(parameter.type)}\`.`,
    );
  } else if (parameter.type === "number")
    readCount(value, bindings, numberLimits(recipe, parameter.name), "a number", report);
  else readDuration(value, bindings, report);
}

/** A recipe that is handed on must take what the called recipe follows it with. */
export function checkHandedOn(
  ctx: CheckContext,
  value: Name,
  handedOn: Recipe,
  called: Recipe,
  parameter: string,
): void {
  const report = reporter(ctx);
  for (const call of callsOf(called.statements, parameter)) {
    const given = call.arguments.flatMap(({ name }) => (name ? [name.text] : []));
    const extra = given.find((name) => !parameterNamed(handedOn.parameters, name));
    const names = new Set(given);
    const missing = handedOn.parameters.find((p) => !p.hasDefault && !names.has(p.name));
    const line = `\`${called.name}\` follows it as \`${parameter}(${shortList(given, (name) => `${name}: …`)})\``;
    if (extra !== undefined) {
      report(
        "wrong-argument",
        value.span,
        `\`${handedOn.name}\` has no parameter \`${extra}\`, and ${line}. Pass a recipe that has this parameter.`,
      );
    } else if (missing) {
      report(
        "missing-argument",
        value.span,
        `\`${handedOn.name}\` needs \`${missing.name}: …\` (a ${missing.type}), and ${line}. Give the parameter a default, or hand on another recipe.`,
      );
    } else continue;
    return;
  }
}

function callsOf(statements: readonly RecipeStatement[], name: string): readonly Call[] {
  return statements.flatMap((statement) => {
    if (statement.kind === "layer") return callsOf(statement.block ?? [], name);
    return statement.kind === "follow" && statement.call?.name.text === name ? [statement.call] : [];
  });
}

/** The range of a number parameter: that of the place where its recipe uses it first. */
export function numberLimits(recipe: Recipe | undefined, parameter: string): Limits {
  if (!recipe) return ANY_NUMBER;
  return limitsOf(recipe).get(parameter) ?? ANY_NUMBER;
}

const ANY_NUMBER: Limits = { words: "a number" };

const limitsOf = onceFor(
  (recipe: Recipe): ReadonlyMap<string, Limits> => new Map(limitsOfUses(recipe.statements).toReversed()),
);

/** Names that stand where a number is expected, with its range, in the order of the lines. */
function limitsOfUses(statements: readonly RecipeStatement[]): readonly (readonly [string, Limits])[] {
  const named = (value: Value | undefined, limits: Limits): readonly (readonly [string, Limits])[] =>
    value?.kind === "name" ? [[value.text, limits]] : [];
  return statements.flatMap((statement) => {
    if (statement.kind === "step") return statement.grits.flatMap((grit) => named(grit, GRIT));
    if (statement.kind !== "layer") return [];
    return [
      ...named(statement.coats, COATS),
      ...statement.tails.flatMap((tail) =>
        tail.kind === "tinted" ? named(tail.share, SHARE_ABOVE_ZERO) : [],
      ),
      ...limitsOfUses(statement.block ?? []),
    ];
  });
}

const exampleOf = (type: Bound["type"]): string =>
  ({ material: "hall_clear", number: "3", duration: "72 h", recipe: "hard_clear" })[type];
