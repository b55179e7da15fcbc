/**
 * Which recipes are done inside others. Safety duties reach into a `follow`, so a recipe that others follow is judged
 * where it is followed: by itself it need not state again what they state.
 */
import type { Argument, Call, RecipeStatement, Target } from "../../../../grammar/src/tree.ts";
import type { Job, JobApply, Recipe } from "../model/model.ts";
import type { Scope } from "../model/program.ts";

/** The recipes that another recipe of the scope follows, or that one of its recipes or jobs hands on as an argument. */
export function followedRecipes(scope: Scope, scopeOf: (file: string) => Scope): ReadonlySet<Recipe> {
  const found = new Set<Recipe>();
  const note = (name: string | undefined, seenFrom: Scope, by?: Recipe) => {
    const recipe = name === undefined ? undefined : seenFrom.recipes.get(name);
    if (recipe && recipe !== by) found.add(recipe);
  };
  for (const recipe of scope.recipes.values()) {
    const own = scopeOf(recipe.file);
    const isParameter = (name: string) => recipe.parameters.some((parameter) => parameter.name === name);
    for (const call of callsOf(recipe.statements)) {
      if (!isParameter(call.name.text)) note(call.name.text, own, recipe);
      for (const name of argumentNames(call)) if (!isParameter(name)) note(name, own, recipe);
    }
    for (const { default: value } of recipe.parameterSyntax) note(nameOf(value), own, recipe);
  }
  for (const job of scope.jobs.values()) {
    for (const { syntax } of job.applies) {
      for (const name of syntax.call ? argumentNames(syntax.call) : []) note(name, scopeOf(job.file));
    }
  }
  return found;
}

export interface Parts {
  /** More is done to the surface after them: what they leave says nothing about what the surface is left with. */
  readonly continued: ReadonlySet<Recipe>;
  /** Something was done to the surface before them: what they begin with may be anybody's work. */
  readonly preceded: ReadonlySet<Recipe>;
}

/** The recipes that are only a part of the work on their surface: others follow them, or a job does more to it. */
export function partRecipes(scope: Scope, scopeOf: (file: string) => Scope): Parts {
  const followed = followedRecipes(scope, scopeOf);
  const continued = new Set(followed);
  const preceded = new Set(followed);
  const nextOf = nextJobs(scope);
  for (const job of scope.jobs.values()) {
    const recipeOf = ({ syntax }: JobApply): Recipe | undefined =>
      syntax.call && scopeOf(job.file).recipes.get(syntax.call.name.text);
    const later = laterJobs(job, nextOf).flatMap((other) => other.applies);
    job.applies.forEach((apply, index) => {
      const next = [...job.applies.slice(index + 1), ...later].filter((other) => shareSurface(apply, other));
      const recipe = recipeOf(apply);
      if (recipe && next.length > 0) continued.add(recipe);
      for (const other of next) {
        const after = recipeOf(other);
        if (after) preceded.add(after);
      }
    });
  }
  return { continued, preceded };
}

/** The jobs that go on, directly or over others, with what a job leaves: after it, or on pieces "as left by" it. */
function laterJobs(job: Job, next: ReadonlyMap<string, readonly Job[]>): readonly Job[] {
  const found = new Set<Job>([job]);
  for (const earlier of found) for (const other of next.get(earlier.name) ?? []) found.add(other);
  return [...found].slice(1);
}

/** By the name of each job, those that start from what it leaves. */
function nextJobs(scope: Scope): ReadonlyMap<string, readonly Job[]> {
  const next = new Map<string, Job[]>();
  for (const job of scope.jobs.values()) {
    const told = job.pieces.flatMap(({ piece }) =>
      (scope.pieces.get(piece)?.surfaces ?? []).flatMap(({ asLeftBy }) => asLeftBy?.job ?? []),
    );
    for (const earlier of new Set([...(job.after ? [job.after.job] : []), ...told])) {
      const known = next.get(earlier);
      if (known) known.push(job);
      else next.set(earlier, [job]);
    }
  }
  return next;
}

/** Whether two `apply` lines may mean a surface in common. */
function shareSurface(a: JobApply, b: JobApply): boolean {
  return a.syntax.targets.some((x) => b.syntax.targets.some((y) => sameTarget(x, y)));
}

function sameTarget(a: Target, b: Target): boolean {
  if (a.surface?.text === "all" || b.surface?.text === "all") return true;
  return a.surface?.text === b.surface?.text && (!a.piece || !b.piece || a.piece.text === b.piece.text);
}

function callsOf(statements: readonly RecipeStatement[]): readonly Call[] {
  return statements.flatMap((statement) => {
    if (statement.kind === "layer") return callsOf(statement.block ?? []);
    return statement.kind === "follow" && statement.call ? [statement.call] : [];
  });
}

const argumentNames = (call: Call): readonly string[] =>
  call.arguments.flatMap((argument) => nameOf(argument.value) ?? []);

const nameOf = (value: Argument["value"]): string | undefined =>
  value?.kind === "name" ? value.text : undefined;
