/**
 * Checks the statements of one recipe for what is wrong whatever its arguments: words, names, units, numbers and
 * calls. Collects references on the way.
 */

import type {
  LayerStatement,
  Parameter,
  RecipeDeclaration,
  RecipeStatement,
  SafetyStatement,
  StepStatement,
  Tail,
  Value,
  WaitStatement,
} from "../../../../grammar/src/tree.ts";
import { DUTIES, METHODS, TAILS, VERBS, WAIT_STAGES } from "../../../../grammar/src/vocabulary.ts";
import { onceFor } from "../once.ts";
import {
  type CheckContext,
  type CheckResult,
  checkArguments,
  checkHandedOn,
  checkMaterial,
  lookUp,
  noteParameter,
  numberLimits,
  reporter,
  type Suggestions,
} from "./check-context.ts";
import { COATS, DURATION, GRIT, POSITIVE, SHARE_ABOVE_ZERO } from "./lowering.ts";
import type { Recipe, RecipeParameter } from "./model.ts";
import type { Scope } from "./program.ts";
import { type Bindings, type Bound, readCount, readDuration, readMeasure } from "./read-value.ts";
import { closest, orList } from "./suggest.ts";

export function checkRecipe(
  recipe: Recipe,
  syntax: RecipeDeclaration,
  scope: Scope,
  suggestions: Suggestions,
): CheckResult {
  const ctx: CheckContext = {
    file: recipe.file,
    declaration: recipe.declaration,
    scope,
    findings: [],
    references: [],
    suggestions,
  };
  const bindings = openBindings(recipe.parameters);
  for (const parameter of syntax.parameters) checkDefault(ctx, parameter, recipe);
  for (const statement of recipe.statements) checkStatement(ctx, statement, recipe, bindings);
  const used = new Set(ctx.references.flatMap(({ kind, name }) => (kind === "parameter" ? [name] : [])));
  for (const parameter of recipe.parameters) {
    if (!used.has(parameter.name)) {
      ctx.findings.push({
        rule: "unused-name",
        span: parameter.place.span,
        message: `Nothing in this recipe uses the parameter \`${parameter.name}\`. Use it or take it out.`,
      });
    }
  }
  return { findings: ctx.findings, references: ctx.references };
}

/** The parameters of a recipe, their values not known. */
export function openBindings(parameters: readonly RecipeParameter[]): Bindings {
  return new Map(parameters.map((p): [string, Bound] => [p.name, { type: p.type }]));
}

/** The parameter whose name stands there. */
const declaredAt = ({ parameters }: Recipe, start: number): RecipeParameter | undefined =>
  byPlace(parameters).get(start);

const byPlace = onceFor(
  (parameters: readonly RecipeParameter[]): ReadonlyMap<number, RecipeParameter> =>
    new Map(parameters.map((parameter) => [parameter.place.span.start, parameter])),
);

function checkDefault(ctx: CheckContext, parameter: Parameter, recipe: Recipe): void {
  const declared = declaredAt(recipe, parameter.name.span.start);
  const value = parameter.default;
  if (!declared || !value) return;
  const report = reporter(ctx);
  const none: Bindings = new Map();
  if (declared.type === "number")
    readCount(value, none, numberLimits(recipe, declared.name), "a number", report);
  else if (declared.type === "duration") readDuration(value, none, report);
  else if (value.kind !== "name") {
    report(
      "wrong-argument",
      value.span,
      `\`${declared.name}\` is a ${declared.type}; its default is the name of one.`,
    );
  } else if (declared.type === "material") lookUp(ctx, "material", ctx.scope.materials, value);
  else {
    const handedOn = lookUp(ctx, "recipe", ctx.scope.recipes, value);
    if (handedOn) checkHandedOn(ctx, value, handedOn, recipe, declared.name);
  }
}

function checkStatement(
  ctx: CheckContext,
  statement: RecipeStatement,
  recipe: Recipe,
  bindings: Bindings,
): void {
  noteValueNames(ctx, statement, recipe, bindings);
  switch (statement.kind) {
    case "step":
      checkStep(ctx, statement, recipe, bindings);
      break;
    case "layer":
      checkLayer(ctx, statement, recipe, bindings);
      break;
    case "wait":
      checkWait(ctx, statement, bindings);
      break;
    case "safety":
      checkSafety(ctx, statement);
      break;
    case "follow":
      checkFollow(ctx, statement, recipe, bindings);
      break;
    default:
      break;
  }
}

function unknownWord(
  ctx: CheckContext,
  word: { text: string; span: { start: number; end: number } },
  known: readonly string[],
  what: string,
): void {
  if (known.includes(word.text)) return;
  const near = closest(word.text, known);
  ctx.findings.push({
    rule: "unknown-word",
    span: word.span,
    message: `Unknown ${what} \`${word.text}\`.${near ? ` Did you mean \`${near}\`?` : ` It may be ${orList(known)}.`}`,
    ...(near ? { fix: { title: `Change to \`${near}\``, span: word.span, text: near } } : {}),
  });
}

function checkStep(ctx: CheckContext, step: StepStatement, recipe: Recipe, bindings: Bindings): void {
  if (step.verb) unknownWord(ctx, step.verb, Object.keys(VERBS), "verb");
  checkMaterial(ctx, step.material, bindings, recipe.parameters);
  for (const value of step.grits) readCount(value, bindings, GRIT, "a grit such as `120`", reporter(ctx));
  checkTails(ctx, step, recipe, bindings);
}

function checkLayer(ctx: CheckContext, layer: LayerStatement, recipe: Recipe, bindings: Bindings): void {
  checkMaterial(ctx, layer.material, bindings, recipe.parameters);
  readCount(layer.coats, bindings, COATS, "a number of coats", reporter(ctx));
  checkTails(ctx, layer, recipe, bindings);
  for (const statement of layer.block ?? []) checkStatement(ctx, statement, recipe, bindings);
}

function checkTails(
  ctx: CheckContext,
  line: StepStatement | LayerStatement,
  recipe: Recipe,
  bindings: Bindings,
): void {
  const report = reporter(ctx);
  const seen = new Map<string, Tail>();
  for (const tail of line.tails) {
    const { on } = TAILS[tail.kind]!;
    if (on !== "both" && on !== line.kind) continue; // a tail of the other kind of line is the parser's to report
    const first = seen.get(tail.kind);
    if (first)
      report(
        "repeated-field",
        tail.span,
        `\`${tail.keyword.text}\` stands twice on this line. Keep one of the two.`,
        first.span,
      );
    else seen.set(tail.kind, tail);
    switch (tail.kind) {
      case "by":
        if (tail.method) unknownWord(ctx, tail.method, METHODS, "application method");
        break;
      case "wiped":
        readDuration(tail.after, bindings, report);
        break;
      case "thinned":
        checkMaterial(ctx, tail.thinner, bindings, recipe.parameters);
        for (const part of tail.ratio ? [tail.ratio.a, tail.ratio.b] : []) {
          if (part.value <= 0)
            report("bad-number", part.span, "Parts of a mix must be greater than zero, such as `4:1`.");
        }
        break;
      case "tinted":
        readMeasure(tail.share, ["share"], SHARE_ABOVE_ZERO, bindings, report);
        checkMaterial(ctx, tail.tint, bindings, recipe.parameters);
        break;
      case "as":
        if (tail.role) unknownWord(ctx, tail.role, ["toner"], "layer role");
        break;
      case "wet":
        readMeasure(tail.thickness, ["length"], POSITIVE, bindings, report);
        break;
      case "takes":
        readMeasure(tail.time, ["time", "time by area"] as const, DURATION, bindings, report);
        break;
      case "uses":
        checkUses(ctx, line, tail, bindings);
        break;
    }
  }
}

/** `uses 50 g` needs the material's density. Of a parameter nobody knows yet. */
function checkUses(
  ctx: CheckContext,
  line: StepStatement | LayerStatement,
  tail: Extract<Tail, { kind: "uses" }>,
  bindings: Bindings,
): void {
  const report = reporter(ctx);
  const amount = readMeasure(tail.amount, ["volume", "mass"] as const, POSITIVE, bindings, report);
  if (amount?.dimension !== "mass" || !line.material || bindings.has(line.material.text)) return;
  const material = ctx.scope.materials.get(line.material.text);
  if (material && !material.density)
    report(
      "wrong-unit",
      tail.amount!.span,
      `An amount by weight needs the \`density\` of \`${material.name}\`, such as \`density 1.03 kg/L\`.`,
    );
}

function checkWait(ctx: CheckContext, wait: WaitStatement, bindings: Bindings): void {
  if (wait.until) unknownWord(ctx, wait.until, WAIT_STAGES, "stage of a wait");
  readDuration(wait.time, bindings, reporter(ctx));
}

function checkSafety(ctx: CheckContext, safety: SafetyStatement): void {
  for (const duty of safety.duties) {
    unknownWord(ctx, duty.name, DUTIES, "safety duty");
    if (!duty.airChanges) continue;
    if (duty.name.text !== "ventilate" && (DUTIES as readonly string[]).includes(duty.name.text))
      reporter(ctx)(
        "syntax",
        duty.airChanges.span,
        "Only `ventilate` says how much air, such as `ventilate 10 air changes/h`.",
      );
    else readMeasure(duty.airChanges, ["air change"], POSITIVE, new Map(), reporter(ctx));
  }
}

function checkFollow(
  ctx: CheckContext,
  follow: Extract<RecipeStatement, { kind: "follow" }>,
  recipe: Recipe,
  bindings: Bindings,
): void {
  const call = follow.call;
  if (!call) return;
  const bound = bindings.get(call.name.text);
  if (!bound) {
    const target = lookUp(ctx, "recipe", ctx.scope.recipes, call.name, bindings.keys());
    if (target) checkArguments(ctx, call, target, bindings, recipe.parameters);
    else checkArguments(ctx, call, undefined, bindings, recipe.parameters);
    return;
  }
  noteParameter(ctx, call.name, recipe.parameters);
  if (bound.type !== "recipe") {
    reporter(ctx)(
      "wrong-argument",
      call.name.span,
      `\`${call.name.text}\` is a ${bound.type}; \`follow\` needs a recipe.`,
    );
  }
  checkArguments(ctx, call, undefined, bindings, recipe.parameters);
}

/** Notes every parameter that stands for a quantity on this line. */
function noteValueNames(
  ctx: CheckContext,
  statement: RecipeStatement,
  recipe: Recipe,
  bindings: Bindings,
): void {
  const note = (value: Value | undefined) => {
    if (value?.kind === "name" && bindings.has(value.text)) noteParameter(ctx, value, recipe.parameters);
  };
  if (statement.kind === "step") for (const grit of statement.grits) note(grit);
  if (statement.kind === "layer") note(statement.coats);
  if (statement.kind === "wait") note(statement.time);
  if (statement.kind !== "step" && statement.kind !== "layer") return;
  for (const tail of statement.tails) {
    if (tail.kind === "wiped") note(tail.after);
    if (tail.kind === "tinted") note(tail.share);
    if (tail.kind === "wet") note(tail.thickness);
    if (tail.kind === "takes") note(tail.time);
    if (tail.kind === "uses") note(tail.amount);
  }
}
