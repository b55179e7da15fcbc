/** Resolves `apply R(…)` and `follow R(…)`: the recipe, its arguments and what is wrong with them. */

import { gist } from "../../../../grammar/src/gist.ts";
import { t } from "../../../../grammar/src/translate.ts";
import type {
  Argument,
  Call,
  Name,
  Quantity,
  Ratio,
  RecipeStatement,
  Value,
} from "../../../../grammar/src/tree.ts";
import { METHODS } from "../../../../grammar/src/vocabulary.ts";
import { SHEENS, sheenOfGloss, wordList } from "../knowledge/words.ts";
import { readQuantity } from "../measure/read-quantity.ts";
import { COATS, DURATION, GRIT, type Limits, SHARE_ABOVE_ZERO, within } from "../model/lowering.ts";
import type { Recipe, RecipeParameter } from "../model/model.ts";
import { parameterNamed } from "../model/parameters.ts";
import { shortList } from "../model/suggest.ts";
import { onceFor } from "../once.ts";
import { countOf, durationOf, GRIT_WANTED, NUMBER_WANTED, plainNumber } from "./figures.ts";
import type { ArgumentValue, ResolvedArgument, ResolvedCall } from "./lines.ts";
import { materialOf, recipeOf } from "./reference.ts";
import { checkWord, meaningOf, modelNamed, type Resolving, report, reportUnknown } from "./resolving.ts";

export function resolveCall(ctx: Resolving, call: Call): ResolvedCall {
  const meant = modelNamed(ctx, "recipe", call.name);
  if (meant?.kind !== "parameter") {
    const recipe = recipeOf(meant);
    return {
      syntax: call,
      ...(recipe ? { recipe } : {}),
      arguments: resolveArguments(ctx, call, recipe),
    };
  }
  const { parameter } = meant;
  if (parameter && parameter.type !== "recipe") {
    report(
      ctx,
      "wrong-argument",
      call.name.span,
      t`\`${call.name.text}\` is a ${parameter.type}; \`follow\` needs a recipe.`,
    );
  }
  return {
    syntax: call,
    ...(parameter ? { parameter } : {}),
    arguments: resolveArguments(ctx, call, undefined),
  };
}

/** `recipe` is undefined for a recipe parameter, of which nothing is known. */
function resolveArguments(
  ctx: Resolving,
  call: Call,
  recipe: Recipe | undefined,
): readonly ResolvedArgument[] {
  const given = new Set<string>();
  const resolved = call.arguments.flatMap((argument): readonly ResolvedArgument[] => {
    if (!argument.name && !argument.value) return []; // `c: m, )` is the parser's to report
    const parameter = argumentParameter(ctx, call, argument, recipe, given);
    if (argument.name) given.add(argument.name.text);
    if (!argument.value) return [];
    const value = resolveValue(ctx, argument.value, recipe, parameter);
    return argument.name ? [{ name: argument.name.text, value }] : [];
  });
  const missing = recipe?.parameters.filter(({ name, hasDefault }) => !hasDefault && !given.has(name)) ?? [];
  if (missing.length > 0) ctx.problems.push({ unknown: "missing", call, missing });
  return resolved;
}

function argumentParameter(
  ctx: Resolving,
  call: Call,
  { name, span }: Argument,
  recipe: Recipe | undefined,
  given: ReadonlySet<string>,
): RecipeParameter | undefined {
  if (!name) {
    const first = recipe?.parameters[0]?.name ?? "clear";
    report(
      ctx,
      "wrong-argument",
      span,
      t`Arguments are named, such as \`${first}: …\`\nSay which parameter this is for.`,
    );
    return undefined;
  }
  if (given.has(name.text)) {
    report(
      ctx,
      "wrong-argument",
      name.span,
      t`\`${name.text}\` is given twice in this call\nKeep one of the two.`,
    );
  }
  if (!recipe) return undefined;
  const meant = meaningOf(ctx, name);
  if (meant?.kind === "parameter" && meant.parameter) return meant.parameter;
  ctx.problems.push({ unknown: "argument", call, name, parameters: recipe.parameters });
  return undefined;
}

function resolveValue(
  ctx: Resolving,
  value: NonNullable<Argument["value"]>,
  recipe: Recipe | undefined,
  parameter: RecipeParameter | undefined,
): ArgumentValue {
  const type = parameter?.type;
  const isParameter = value.kind === "name" && meaningOf(ctx, value)?.kind === "parameter";
  if (
    parameter &&
    (type === "method" || type === "ratio" || type === "grits" || type === "sheen") &&
    !isParameter
  )
    return ownValue(ctx, parameter.name, type, value);
  if (value.kind === "ratio" || value.kind === "grits") {
    if (!parameter) return value.kind === "grits" ? { kind: "grits", grits: value.grits } : partsOf(value);
    report(
      ctx,
      "wrong-argument",
      value.span,
      gist((suchAs) => t`\`${parameter.name}\` is a ${parameter.type}${suchAs(EXAMPLES[parameter.type])}.`),
    );
    return { kind: "text" };
  }
  if (value.kind === "name") return resolveName(ctx, value, recipe, parameter);
  if (value.kind === "title" || parameter?.type === "material" || parameter?.type === "recipe") {
    if (parameter) {
      report(
        ctx,
        "wrong-argument",
        value.span,
        gist((suchAs) => t`\`${parameter.name}\` is a ${parameter.type}${suchAs(EXAMPLES[parameter.type])}.`),
      );
    }
    return { kind: "text" };
  }
  if (parameter?.type === "number") countOf(ctx, value, numberLimits(recipe, parameter.name), NUMBER_WANTED);
  else if (parameter) durationOf(ctx, value);
  return figureValue(value);
}

const partsOf = ({ a, b }: Ratio): ArgumentValue => ({ kind: "ratio", ratio: { a: a.value, b: b.value } });

/** A sheen by its plain word; gloss units count as the sheen that they are. */
export function sheenWord(ctx: Resolving, name: Name): string {
  const units = Number(name.text);
  if (units >= 0 && units <= 100) return sheenOfGloss(units);
  return checkWord(ctx, name, wordList(SHEENS), "sheen");
}

/** What is given to a parameter of a kind of its own: a method, a ratio, grits or a sheen. */
export function ownValue(
  ctx: Resolving,
  name: string,
  type: "method" | "ratio" | "grits" | "sheen",
  value: NonNullable<Argument["value"]>,
): ArgumentValue {
  if (type === "method" && value.kind === "name")
    return { kind: "name", text: checkWord(ctx, value, METHODS, "application method", t`The method`) };
  if (type === "sheen") {
    const units = value.kind === "quantity" ? plainNumber(value) : undefined;
    if (units !== undefined && units >= 0 && units <= 100) return { kind: "name", text: sheenOfGloss(units) };
    if (value.kind === "name") return { kind: "name", text: sheenWord(ctx, value) };
  }
  if (type === "ratio" && value.kind === "ratio" && value.a.value > 0 && value.b.value > 0)
    return partsOf(value);
  if (type === "grits" && value.kind === "grits") return { kind: "grits", grits: value.grits };
  if (type === "grits" && value.kind === "quantity") {
    countOf(ctx, value, GRIT, GRIT_WANTED);
    return figureValue(value);
  }
  report(
    ctx,
    "wrong-argument",
    value.span,
    gist((suchAs) => {
      const example = suchAs(`${name}: ${EXAMPLES[type]}`);
      return type === "grits"
        ? t`\`${name}\` is a list of grits${example}.`
        : t`\`${name}\` is a ${type}${example}.`;
    }),
  );
  return { kind: "text" };
}

/** What a quantity is to a number and to a duration, whichever its parameter is. */
export function figureValue(value: Quantity): ArgumentValue {
  const number = plainNumber(value);
  const time = readQuantity(value, ["time"]);
  const hours = time.ok && within(time.amount.value, DURATION) ? time.amount.value : undefined;
  return {
    kind: "figure",
    ...(number !== undefined && Number.isFinite(number) ? { number } : {}),
    ...(hours !== undefined ? { hours } : {}),
  };
}

function resolveName(
  ctx: Resolving,
  name: Name,
  recipe: Recipe | undefined,
  parameter: RecipeParameter | undefined,
): ArgumentValue {
  const meant = meaningOf(ctx, name);
  if (meant?.kind === "parameter") {
    const type = meant.parameter?.type;
    if (parameter && type && type !== parameter.type) {
      report(
        ctx,
        "wrong-argument",
        name.span,
        t`\`${parameter.name}\` is a ${parameter.type}; \`${name.text}\` is a ${type}.`,
      );
    }
    return { kind: "parameter", parameter: name.text };
  }
  if (!parameter) {
    const candidates = ctx.references.get(name.span.start)?.through?.candidates ?? (meant ? [meant] : []);
    return namedValue(name, ...candidates.map(materialOf), ...candidates.map(recipeOf));
  }
  if (parameter.type === "material" || parameter.type === "recipe") {
    if (!meant) {
      reportUnknown(ctx, parameter.type, name, {
        kind: `${parameter.type}s`,
        others: [...ctx.parameters.keys()],
      });
    }
    const handedOn = recipeOf(meant);
    if (recipe && handedOn) checkHandedOn(ctx, name, handedOn, recipe, parameter.name);
    return namedValue(name, materialOf(meant), handedOn);
  }
  report(
    ctx,
    "wrong-argument",
    name.span,
    gist(
      (suchAs) =>
        t`\`${parameter.name}\` is a ${parameter.type}${suchAs(EXAMPLES[parameter.type])}; found the name \`${name.text}\`.`,
    ),
  );
  return { kind: "name", text: name.text };
}

function namedValue(
  { text }: Name,
  ...models: readonly (ReturnType<typeof materialOf> | Recipe | undefined)[]
): ArgumentValue {
  const material = models.find((model) => model?.kind === "material");
  const recipe = models.find((model) => model?.kind === "recipe");
  return { kind: "name", text, ...(material ? { material } : {}), ...(recipe ? { recipe } : {}) };
}

/** A recipe that is handed on must take what the called recipe follows it with. */
export function checkHandedOn(
  ctx: Resolving,
  value: Name,
  handedOn: Recipe,
  called: Recipe,
  parameter: string,
): void {
  for (const call of callsOf(called.statements, parameter)) {
    const given = call.arguments.flatMap(({ name }) => (name ? [name.text] : []));
    const extra = given.find((name) => !parameterNamed(handedOn.parameters, name));
    const names = new Set(given);
    const missing = handedOn.parameters.find((p) => !p.hasDefault && !names.has(p.name));
    const line = t`\`${called.name}\` follows it as \`${parameter}(${shortList(given, (name) => `${name}: …`)})\``;
    if (extra !== undefined) {
      report(
        ctx,
        "wrong-argument",
        value.span,
        t`\`${handedOn.name}\` has no parameter \`${extra}\`, and ${line}\nPass a recipe that has this parameter.`,
      );
    } else if (missing) {
      report(
        ctx,
        "missing-argument",
        value.span,
        t`\`${handedOn.name}\` needs \`${missing.name}: …\` (a ${missing.type}), and ${line}\nGive the parameter a default, or pass another recipe.`,
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
export const numberLimits = (recipe: Recipe | undefined, parameter: string): Limits =>
  (recipe && limitsOf(recipe).get(parameter)) ?? ANY_NUMBER;

const ANY_NUMBER: Limits = { words: "a number" };

const limitsOf = onceFor(
  (recipe: Recipe): ReadonlyMap<string, Limits> => new Map(limitsOfUses(recipe.statements).toReversed()),
);

/** Names that stand where a number is expected, with its range, in the order of the lines. */
function limitsOfUses(statements: readonly RecipeStatement[]): readonly (readonly [string, Limits])[] {
  const named = (value: Value | undefined, limits: Limits): readonly (readonly [string, Limits])[] =>
    value?.kind === "name" ? [[value.text, limits]] : [];
  return statements.flatMap((statement) => {
    if (statement.kind === "step")
      return [...statement.grits.flatMap((grit) => named(grit, GRIT)), ...named(statement.times, COATS)];
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

const EXAMPLES: Readonly<Record<RecipeParameter["type"], string>> = {
  material: "hall_clear",
  number: "3",
  duration: "72 h",
  recipe: "hard_clear",
  method: "spray",
  grits: "120/150/180",
  ratio: "4:1",
  sheen: "satin",
};
