/**
 * What a declaration means in its scope: every name with what it stands for, the lines of a recipe with their quantities,
 * the calls of a job, and what is wrong with all of them.
 *
 * Each declaration is resolved once a scope, and holds while the names that it looked up mean the same declarations.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type { Call, Declaration } from "../../../../grammar/src/tree.ts";
import type { Job, ModelDeclaration, Recipe } from "../model/model.ts";
import { parametersByName } from "../model/parameters.ts";
import type { ProgramDeclaration, Scope } from "../model/program.ts";
import { onceFor } from "../once.ts";
import type { FileId } from "../place.ts";
import type { RecipeLine, ResolvedCall } from "./lines.ts";
import type { Problem } from "./problems.ts";
import type { Reference } from "./reference.ts";
import { leftByOf, type ResolvedApplies, resolveApplies } from "./resolve-job.ts";
import { type ResolvedLines, resolveLines } from "./resolve-recipe.ts";
import { referencesIn } from "./resolve-references.ts";
import { modelNamed, type Resolving, report } from "./resolving.ts";

interface Resolved {
  /** Every name, in the order of the text. */
  readonly references: readonly Reference[];
  readonly problems: readonly Problem[];
}

export interface ResolvedRecipe extends Resolved, ResolvedLines {
  readonly kind: "recipe";
  readonly recipe: Recipe;
}

export interface ResolvedJob extends Resolved, ResolvedApplies {
  readonly kind: "job";
  readonly job: Job;
}

/** A declaration that has nothing but names. */
export interface ResolvedNames extends Resolved {
  readonly kind: "names";
}

export type Resolution = ResolvedRecipe | ResolvedJob | ResolvedNames;

export function resolve(file: FileId, declaration: ProgramDeclaration, scope: Scope): Resolution {
  const references = referencesIn(file, declaration, scope);
  const problems: Problem[] = [];
  const head: Resolving = {
    file,
    declaration: declaration.tree.key,
    scope,
    references: byStart(references),
    parameters: new Map(),
    problems,
  };
  const { model, syntax } = declaration.lowered;
  if (model?.kind === "recipe") {
    const ctx: Resolving = { ...head, parameters: parametersByName(model.parameters) };
    const lines = resolveLines(ctx, head, model);
    reportUnused(ctx, model, references);
    return { kind: "recipe", recipe: model, references, problems, ...lines };
  }
  if (model?.kind === "job" && syntax.kind === "job")
    return { kind: "job", job: model, references, problems, ...resolveApplies(head, model, syntax) };
  checkNamesIn(head, model, syntax);
  return { kind: "names", references, problems };
}

/** The names of pieces and materials: of the job that left a surface as it is, and of a hardener. */
function checkNamesIn(ctx: Resolving, model: ModelDeclaration | undefined, syntax: Declaration): void {
  if (model?.kind === "piece") for (const surface of model.surfaces) leftByOf(ctx, surface);
  if (model?.kind !== "material" || syntax.kind !== "material") return;
  for (const field of syntax.fields) {
    if (field.kind === "field" && field.value.form === "mix" && field.value.hardener)
      modelNamed(ctx, "material", field.value.hardener);
  }
}

/** Parameters that no line names. */
function reportUnused(ctx: Resolving, { parameters }: Recipe, references: readonly Reference[]): void {
  const used = new Set(
    references.flatMap(({ role, referents: [meant] }) =>
      meant?.kind === "parameter" && role !== "parameter" && role !== "argument-name" ? [meant.name] : [],
    ),
  );
  for (const { name, place } of parameters) {
    if (used.has(name)) continue;
    report(
      ctx,
      "unused-name",
      place.span,
      t`Nothing in this recipe uses the parameter \`${name}\`\nUse it or take it out.`,
    );
  }
}

/** The name that begins at an offset of the declaration. */
export const referenceAt = ({ references }: Resolution, start: number): Reference | undefined =>
  byStart(references).get(start);

const byStart = onceFor(
  (references: readonly Reference[]): ReadonlyMap<number, Reference> =>
    new Map(references.map((reference) => [reference.name.span.start, reference])),
);

/** What a call of a declaration comes to. */
export const callMeant = (resolution: Resolution, call: Call): ResolvedCall | undefined =>
  callsBySyntax(resolution).get(call);

/** All calls of a declaration, those of a recipe's blocks among them, in order. */
export const callsOf = (resolution: Resolution): readonly ResolvedCall[] => [
  ...callsBySyntax(resolution).values(),
];

const callsBySyntax = onceFor((resolution: Resolution): ReadonlyMap<Call, ResolvedCall> => {
  if (resolution.kind === "job") return resolution.calls;
  const calls = resolution.kind === "recipe" ? callsIn(resolution.lines) : [];
  return new Map(calls.map((call) => [call.syntax, call]));
});

function callsIn(lines: readonly RecipeLine[]): readonly ResolvedCall[] {
  return lines.flatMap((line) => {
    if (line.kind === "layer") return callsIn(line.block ?? []);
    return line.kind === "follow" && line.call ? [line.call] : [];
  });
}
