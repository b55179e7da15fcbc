/**
 * Runs: every recipe by itself on an assumed surface, and every job surface by surface. A `Runner` belongs to one
 * program and remembers what it has run, because jobs start from what earlier jobs left.
 */
import type { Job, Piece, Recipe, Shop, Surface } from "../model/model.ts";
import type { Scope } from "../model/program.ts";
import type { Place } from "../place.ts";
import { minimumOvernightHours } from "../schedule/calendar.ts";
import type { Action, Cycle } from "./actions.ts";
import { bindArguments, defaultsOf, expand, type NamesOf, readArguments } from "./expand.ts";
import { followedRecipes, type Parts, partRecipes } from "./followed.ts";
import { ASSUMED_STATE, describedState, leftState } from "./initial-state.ts";
import { createJobHistory, type JobHistory, type LeftBy, type Visited } from "./job-history.ts";
import { type JobSurface, jobSurfaces, surfacesWorkedOn, targets } from "./job-surfaces.ts";
import { finalState, simulate } from "./simulate.ts";
import type { Moment, SurfaceState } from "./state.ts";

/** `wait overnight` without a shop. */
export const OVERNIGHT_WITHOUT_SHOP_H = 16;

export interface SurfaceRun {
  readonly kind: "assumed" | "job";
  /** The declaration whose findings these are: the job, or the recipe run by itself. */
  readonly owner: { readonly file: string; readonly declaration: string };
  /** `top`, or `reading_table.top` in a job of several pieces; empty for an assumed surface. */
  readonly label: string;
  readonly recipe?: Recipe;
  readonly job?: Job;
  readonly piece?: Piece;
  /** How many of the piece. */
  readonly pieces: number;
  readonly surface?: Surface;
  readonly shop?: Shop;
  /** The recipes applied, with their `apply` lines (none for an assumed surface). */
  readonly applied: readonly { readonly recipe: Recipe; readonly apply?: Place }[];
  readonly initial: SurfaceState;
  readonly moments: readonly Moment<Action>[];
  readonly final: SurfaceState;
  readonly cycles: readonly Cycle[];
  /** Assumed runs only: other recipes or jobs do this recipe's steps, so what they state may reach in here. */
  readonly followed?: true;
  /**
   * More is done to the surface later, by whoever follows this recipe, by the same job or by a job after it: what is
   * left at the end of this run is not what the surface is left with.
   */
  readonly continued?: true;
  /** Assumed runs only: others did something to the surface before, so that it need not be bare at the start. */
  readonly preceded?: true;
}

export interface Runner {
  /** The recipe on a surface of which nothing is known; parameters without default are unknown. */
  assumed(recipe: Recipe): SurfaceRun;
  /** One run for every surface that the job applies something to, in the order in which pieces and surfaces stand. */
  job(job: Job): readonly SurfaceRun[];
}

/** `assumed` runs recipes by themselves; pass one that remembers to keep its runs from one program to the next. */
export function createRunner(scopeOf: (file: string) => Scope, assumed: AssumedRunner = runAssumed): Runner {
  const jobs = new Map<Job, readonly SurfaceRun[]>();
  const running = new Set<Job>();
  const followed = new Map<string, ReadonlySet<Recipe>>();
  const followedIn = (file: string): ReadonlySet<Recipe> => {
    const known = followed.get(file) ?? followedRecipes(scopeOf(file), scopeOf);
    followed.set(file, known);
    return known;
  };
  const parts = new Map<string, Parts>();
  const partsIn = (file: string): Parts => {
    const known = parts.get(file) ?? partRecipes(scopeOf(file), scopeOf);
    parts.set(file, known);
    return known;
  };
  const histories = new Map<string, JobHistory>();
  const historyIn = (file: string): JobHistory => {
    const known = histories.get(file) ?? createJobHistory(scopeOf(file));
    histories.set(file, known);
    return known;
  };
  /** Runs the jobs that a job starts from before it, without recursion: a chain may be longer than the stack is deep. */
  const runInOrder = (last: Job): void => {
    const way: { readonly job: Job; readonly before: readonly Job[]; next: number }[] = [];
    const enter = (job: Job): void => {
      if (jobs.has(job) || running.has(job)) return;
      running.add(job);
      way.push({ job, before: jobsBefore(job, scopeOf(job.file), historyIn(job.file)), next: 0 });
    };
    try {
      enter(last);
      for (let visit = way.at(-1); visit !== undefined; visit = way.at(-1)) {
        const before = visit.before[visit.next++];
        if (before) enter(before);
        else {
          jobs.set(visit.job, runJob(visit.job, scopeOf, runner, historyIn(visit.job.file)));
          running.delete(visit.job);
          way.pop();
        }
      }
    } finally {
      for (const { job } of way) running.delete(job);
    }
  };
  const runner: Runner = {
    assumed: (recipe) =>
      assumed(recipe, scopeOf, {
        followed: followedIn(recipe.file).has(recipe),
        continued: partsIn(recipe.file).continued.has(recipe),
        preceded: partsIn(recipe.file).preceded.has(recipe),
      }),
    job: (job) => {
      const known = jobs.get(job);
      if (known) return known;
      // A job that comes after itself starts from nothing; the names check reports it.
      if (!running.has(job)) runInOrder(job);
      return jobs.get(job) ?? [];
    },
  };
  return runner;
}

/** What others of a program do with a recipe: see the fields of these names in `SurfaceRun`. */
export type Surroundings = Readonly<Record<"followed" | "continued" | "preceded", boolean>>;

/** Runs a recipe by itself; a pure function of its arguments and of what the names mean. */
export type AssumedRunner = (recipe: Recipe, namesOf: NamesOf, surroundings: Surroundings) => SurfaceRun;

export const runAssumed: AssumedRunner = (recipe, namesOf, { followed, continued, preceded }) => {
  const defaults = defaultsOf(recipe, recipe.parameterSyntax, namesOf(recipe.file));
  const { actions, cycles } = expand(recipe, bindArguments(recipe, defaults, new Map()), [], namesOf);
  const moments = simulate({
    initial: ASSUMED_STATE,
    actions,
    overnightHours: () => OVERNIGHT_WITHOUT_SHOP_H,
  });
  return {
    kind: "assumed",
    owner: { file: recipe.file, declaration: recipe.declaration },
    label: "",
    recipe,
    pieces: 1,
    applied: [{ recipe }],
    initial: ASSUMED_STATE,
    moments,
    final: finalState(ASSUMED_STATE, moments),
    cycles,
    ...(followed ? { followed } : {}),
    ...(continued ? { continued } : {}),
    ...(preceded ? { preceded } : {}),
  };
};

function runJob(
  job: Job,
  scopeOf: (file: string) => Scope,
  runner: Runner,
  history: JobHistory,
): readonly SurfaceRun[] {
  const scope = scopeOf(job.file);
  const surfaces = jobSurfaces(job, scope);
  const shop = job.shop && scope.shops.get(job.shop.name);
  return surfaces.flatMap((surface): readonly SurfaceRun[] => {
    const applies = job.applies.filter((apply) =>
      apply.syntax.targets.some((t) => targets(t, surface, surfaces)),
    );
    if (applies.length === 0) return [];
    const parts = applies.flatMap((apply) => {
      const call = apply.syntax.call;
      const recipe = call && scope.recipes.get(call.name.text);
      if (!call || !recipe) return [];
      const defaults = defaultsOf(recipe, recipe.parameterSyntax, scopeOf(recipe.file));
      const bindings = bindArguments(recipe, defaults, readArguments(recipe, call, new Map(), scope));
      return [{ recipe, apply: apply.place, ...expand(recipe, bindings, [apply.place], scopeOf) }];
    });
    const actions = parts.flatMap((part) => part.actions).map((action, index) => ({ ...action, index }));
    const initial = initialState(job, surface, { scope, history, runner });
    const moments = simulate({
      initial,
      actions,
      overnightHours: overnightHours(shop),
      areaM2: surface.surface.areaM2,
      ...(shop?.air ? { air: shop.air.value } : {}),
    });
    return [
      {
        kind: "job",
        owner: { file: job.file, declaration: job.declaration },
        label: surface.label,
        job,
        piece: surface.piece,
        pieces: surface.pieces,
        surface: surface.surface,
        ...(shop ? { shop } : {}),
        applied: parts.map(({ recipe, apply }) => ({ recipe, apply })),
        initial,
        moments,
        final: finalState(initial, moments),
        cycles: parts.flatMap((part) => part.cycles),
        ...(history.isContinued(job, surface) ? { continued: true as const } : {}),
      },
    ];
  });
}

/** The least that `wait overnight` brings in this shop, whenever in its hours the task before ends. */
function overnightHours(shop: Shop | undefined): (waited: number | undefined) => number {
  if (!shop) return () => OVERNIGHT_WITHOUT_SHOP_H;
  const known = new Map<number | undefined, number>();
  return (waited) => {
    const least = known.get(waited) ?? minimumOvernightHours(shop.hours, waited);
    known.set(waited, least);
    return least;
  };
}

interface Sources {
  readonly scope: Scope;
  readonly history: JobHistory;
  readonly runner: Runner;
}

function initialState(job: Job, surface: JobSurface, { history, runner }: Sources): SurfaceState {
  const runLeft = ({ job: earlier, piece, surface: name }: LeftBy): SurfaceRun | undefined =>
    runner.job(earlier).find((it) => it.piece?.name === piece && it.surface?.name === name);
  let here: Visited = { job, surface };
  let told: Place | undefined;
  const seen = new Set<Surface>();
  for (;;) {
    const { at, before } = history.nearest(here);
    const tells = here.surface.surface.asLeftBy?.place;
    if (at.surface.surface !== here.surface.surface) told ??= tells;
    const run = before && runLeft(before);
    const final = run && leftState(run.final, gapBefore(before, run, at.job), before.place);
    // A job that comes after itself has no run to start from; the names check reports it.
    const next = final || !before || seen.has(at.surface.surface) ? undefined : history.toldOf(at);
    if (!next) {
      const state = final ?? describedState(at.surface.surface);
      return told ? leftState(state, "years", told) : state;
    }
    told ??= at.surface.surface.asLeftBy?.place;
    seen.add(at.surface.surface);
    here = next;
  }
}

const gapBefore = (before: LeftBy, run: SurfaceRun, job: Job): number | "years" | undefined =>
  before.longAgo ? "years" : gapHours(before.job, run, job);

/** The jobs whose runs the initial states of a job depend on. */
const jobsBefore = (job: Job, scope: Scope, history: JobHistory): readonly Job[] =>
  surfacesWorkedOn(job, scope).flatMap((surface) => history.nearest({ job, surface }).before?.job ?? []);

/** Hours from the end of the earlier job, as far as its recipe states it, to the start of the later one. */
function gapHours(earlier: Job, run: SurfaceRun, job: Job): number | undefined {
  if (!earlier.start || !job.start) return undefined;
  const at = (start: NonNullable<Job["start"]>) =>
    Date.parse(`${start.date}T${start.time ?? "09:00"}:00Z`) / 3_600_000;
  return Math.max(0, at(job.start) - at(earlier.start) - run.final.clock.hours);
}
