/**
 * Which recipes are done inside others. Safety duties reach into a `follow`, so a recipe that others follow is judged
 * where it is followed: by itself it need not state again what they state.
 */
import type { Argument, Call, RecipeStatement } from "../../../../grammar/src/tree.ts";
import { jobGraph } from "../model/job-graph.ts";
import type { Job, JobApply, Piece, Recipe } from "../model/model.ts";
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

/** The recipes that jobs of the scope apply, and the pieces that they work on. */
export function namedByJobs(scope: Scope, scopeOf: (file: string) => Scope): ReadonlySet<Recipe | Piece> {
  const found = new Set<Recipe | Piece>();
  for (const job of scope.jobs.values()) {
    const own = scopeOf(job.file);
    const recipes = job.applies.map(({ syntax }) => syntax.call && own.recipes.get(syntax.call.name.text));
    const pieces = job.pieces.map(({ piece }) => own.pieces.get(piece));
    for (const named of [...recipes, ...pieces]) if (named) found.add(named);
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
  const { next, previous } = neighbours(scope);
  const isContinued = search(next);
  const isPreceded = search(previous);
  const continued = new Set(followed);
  const preceded = new Set(followed);
  for (const job of scope.jobs.values()) {
    const note = (applies: readonly JobApply[], goesOn: (apply: JobApply) => boolean, found: Set<Recipe>) => {
      const gone = new Targets(job.pieces);
      for (const apply of applies) {
        const { call } = apply.syntax;
        const recipe = call && scopeOf(job.file).recipes.get(call.name.text);
        if (recipe && !found.has(recipe) && (gone.meet(apply) || goesOn(apply))) found.add(recipe);
        gone.add(apply);
      }
    };
    note(job.applies.toReversed(), (apply) => isContinued(job, apply), continued);
    note(job.applies, (apply) => isPreceded(job, apply), preceded);
  }
  return { continued, preceded };
}

/** The jobs next to each job in one direction. */
type Neighbours = ReadonlyMap<Job, readonly Job[]>;

/** In both directions: the jobs that start from what a job leaves, after it or on pieces "as left by" it. */
function neighbours(scope: Scope): { readonly next: Neighbours; readonly previous: Neighbours } {
  const graph = jobGraph(scope);
  const next = new Map<Job, Job[]>();
  const previous = new Map<Job, readonly Job[]>();
  for (const job of scope.jobs.values()) {
    const earlier = graph.earlier(job).flatMap((name) => scope.jobs.get(name) ?? []);
    previous.set(job, earlier);
    for (const other of earlier) {
      const known = next.get(other);
      if (known) known.push(job);
      else next.set(other, [job]);
    }
  }
  return { next, previous };
}

/**
 * So many jobs are looked at for one scope in each direction, which is enough for every job of a chain of four hundred to
 * look at all others. Beyond that what is not known to be alone is taken for a part, which asks less of it by itself.
 */
const MOST_LOOKS = 100_000;

/** Whether a job that is reached from another, directly or over others, means a surface that an `apply` line means. */
function search(ways: Neighbours): (job: Job, apply: JobApply) => boolean {
  let looks = 0;
  const targetsOf = new Map<Job, Targets>();
  const meets = (job: Job, apply: JobApply): boolean => {
    const known = targetsOf.get(job) ?? new Targets(job.pieces, job.applies);
    targetsOf.set(job, known);
    return known.meet(apply);
  };
  return (job, apply) => {
    const seen = new Set<Job>([job]);
    for (const reached of seen) {
      if (reached !== job && meets(reached, apply)) return true;
      const others = ways.get(reached) ?? [];
      looks += others.length;
      if (looks > MOST_LOOKS) return true;
      for (const other of others) seen.add(other);
    }
    return false;
  };
}

/** What `apply` lines mean, by the names of surfaces, so that a line need not be compared with each of them. */
class Targets {
  readonly #byName = new Map<string | undefined, Set<string | undefined>>();
  /** Pieces of which all is meant, and those of which something is, `undefined` where that is not said. */
  readonly #whole = new Set<string>();
  readonly #touched = new Set<string | undefined>();
  readonly #pieces: ReadonlySet<string>;

  constructor(pieces: Job["pieces"], applies: readonly JobApply[] = []) {
    this.#pieces = new Set(pieces.map(({ piece }) => piece));
    for (const apply of applies) this.add(apply);
  }

  add({ syntax }: JobApply): void {
    if (syntax.targets.length === 0) this.#byName.set("all", new Set([undefined]));
    for (const { surface, piece } of syntax.targets) {
      if (!piece && this.#mayBePiece(surface?.text)) this.#whole.add(surface!.text);
      this.#touched.add(piece?.text);
      const pieces = this.#byName.get(surface?.text) ?? new Set();
      this.#byName.set(surface?.text, pieces.add(piece?.text));
    }
  }

  /** Whether a name alone may stand for all of a piece. */
  #mayBePiece(name: string | undefined): boolean {
    return name !== undefined && this.#pieces.has(name);
  }

  /** Whether one of these lines and this one may mean a surface in common. */
  meet({ syntax }: JobApply): boolean {
    if (syntax.targets.length === 0) return this.#byName.size > 0;
    return syntax.targets.some(({ surface, piece }) => {
      const name = surface?.text;
      if (name === "all") return this.#byName.size > 0;
      if (this.#byName.has("all")) return true;
      if (!piece && this.#mayBePiece(name)) {
        return this.#touched.has(undefined) || this.#touched.has(name);
      }
      if (piece ? this.#whole.has(piece.text) : this.#whole.size > 0) return true;
      const pieces = this.#byName.get(name);
      return pieces !== undefined && (!piece || pieces.has(undefined) || pieces.has(piece.text));
    });
  }
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
