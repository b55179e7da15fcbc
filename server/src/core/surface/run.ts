/**
 * Runs: every recipe by itself on an assumed surface, and every job surface by surface. A `Runner` belongs to one
 * program and remembers what it has run, because jobs start from what earlier jobs left.
 */
import type { Target } from "../../../../grammar/src/tree.ts";
import type { Job, Piece, Recipe, Shop, Surface } from "../model/model.ts";
import type { Scope } from "../model/program.ts";
import type { Place } from "../place.ts";
import { minimumOvernightHours } from "../schedule/calendar.ts";
import type { Action, Cycle } from "./actions.ts";
import { bindArguments, defaultsOf, expand, readArguments } from "./expand.ts";
import { followedRecipes, type Parts, partRecipes } from "./followed.ts";
import { ASSUMED_STATE, describedState, leftState } from "./initial-state.ts";
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

export function createRunner(scopeOf: (file: string) => Scope): Runner {
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
  const runner: Runner = {
    assumed: (recipe) =>
      runAssumed(recipe, scopeOf, {
        followed: followedIn(recipe.file).has(recipe),
        continued: partsIn(recipe.file).continued.has(recipe),
        preceded: partsIn(recipe.file).preceded.has(recipe),
      }),
    job: (job) => {
      const known = jobs.get(job);
      if (known) return known;
      // A job that comes after itself starts from nothing; the names check reports it.
      if (running.has(job)) return [];
      running.add(job);
      const runs = runJob(job, scopeOf, runner);
      running.delete(job);
      jobs.set(job, runs);
      return runs;
    },
  };
  return runner;
}

function runAssumed(
  recipe: Recipe,
  scopeOf: (file: string) => Scope,
  { followed, continued, preceded }: Record<"followed" | "continued" | "preceded", boolean>,
): SurfaceRun {
  const defaults = defaultsOf(recipe, recipe.parameterSyntax, scopeOf(recipe.file));
  const { actions, cycles } = expand(recipe, bindArguments(recipe, defaults, new Map()), [], scopeOf);
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
}

export interface JobSurface {
  readonly label: string;
  readonly piece: Piece;
  readonly pieces: number;
  readonly surface: Surface;
}

/** Every surface of the job's pieces, with the label that the job uses for it. */
export function jobSurfaces(job: Job, scope: Scope): readonly JobSurface[] {
  const several = job.pieces.length > 1;
  return job.pieces.flatMap(({ piece: name, count }) => {
    const piece = scope.pieces.get(name);
    return (piece?.surfaces ?? []).map((surface) => ({
      label: several ? `${name}.${surface.name}` : surface.name,
      piece: piece!,
      pieces: count,
      surface,
    }));
  });
}

/** Whether a target of an `apply` line means this surface. */
export function targets(target: Target, candidate: JobSurface, all: readonly JobSurface[]): boolean {
  const name = target.surface?.text;
  if (name === undefined) return false;
  if (!target.piece && name === "all" && !all.some((s) => s.surface.name === "all")) return true;
  if (candidate.surface.name !== name) return false;
  if (target.piece) return candidate.piece.name === target.piece.text;
  return all.filter((s) => s.surface.name === name).length === 1;
}

function runJob(job: Job, scopeOf: (file: string) => Scope, runner: Runner): readonly SurfaceRun[] {
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
    const initial = initialState(job, surface, scope, runner);
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
        ...(isContinued(job, surface, scope) ? { continued: true as const } : {}),
      },
    ];
  });
}

/** Where a surface was before a job came to it: what an earlier job left of it, and the line that says so. */
interface LeftBy {
  readonly job: Job;
  readonly piece: string;
  readonly surface: string;
  readonly place: Place;
  /** Long ago, where the piece only tells of it. */
  readonly longAgo: boolean;
}

/** The job whose work a job goes on with on this surface; a job between the two may have left the surface alone. */
function leftByOf(job: Job, { piece, surface }: JobSurface, scope: Scope): LeftBy | undefined {
  const earlier = job.after && lastToWork(job.after.job, scope, piece.name, surface.name);
  if (job.after && earlier) return { ...earlier, place: job.after.place, longAgo: false };
  const told = surface.asLeftBy;
  const leaving =
    told && told.job !== job.name && lastToWork(told.job, scope, piece.name, surface.name, true);
  return told && leaving ? { ...leaving, place: told.place, longAgo: true } : undefined;
}

/** Goes back from a job over `after` to the last one that did something to the surface. */
function lastToWork(
  from: string,
  scope: Scope,
  piece: string,
  surface: string,
  orOfAnotherPiece = false,
): Pick<LeftBy, "job" | "piece" | "surface"> | undefined {
  const seen = new Set<Job>();
  let job = scope.jobs.get(from);
  while (job && !seen.has(job)) {
    seen.add(job);
    const worked = workedOn(job, scope).filter((it) => it.surface.name === surface);
    const own = worked.find((it) => it.piece.name === piece) ?? (orOfAnotherPiece ? worked[0] : undefined);
    if (own) return { job, piece: own.piece.name, surface };
    job = job.after && scope.jobs.get(job.after.job);
  }
  return undefined;
}

/** The surfaces that a job applies something to. */
function workedOn(job: Job, scope: Scope): readonly JobSurface[] {
  const surfaces = jobSurfaces(job, scope);
  const named = job.applies.flatMap((apply) => apply.syntax.targets);
  return surfaces.filter((surface) => named.some((target) => targets(target, surface, surfaces)));
}

/** Whether another job of the scope goes on with what this one leaves on the surface. */
function isContinued(job: Job, surface: JobSurface, scope: Scope): boolean {
  return [...scope.jobs.values()].some(
    (later) =>
      later !== job &&
      startsFromAnother(later, scope) &&
      workedOn(later, scope).some((other) => {
        const left = leftByOf(later, other, scope);
        return (
          left?.job === job && left.piece === surface.piece.name && left.surface === surface.surface.name
        );
      }),
  );
}

const startsFromAnother = (job: Job, scope: Scope): boolean =>
  job.after !== undefined ||
  job.pieces.some(({ piece }) => scope.pieces.get(piece)?.surfaces.some(({ asLeftBy }) => asLeftBy));

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

function initialState(
  job: Job,
  surface: JobSurface,
  scope: Scope,
  runner: Runner,
  seen: ReadonlySet<Surface> = new Set(),
): SurfaceState {
  const before = leftByOf(job, surface, scope);
  const run =
    before &&
    runner
      .job(before.job)
      .find((it) => it.piece?.name === before.piece && it.surface?.name === before.surface);
  if (!before || !run) return untouchedState(job, surface, scope, runner, seen);
  return leftState(run.final, before.longAgo ? "years" : gapHours(before.job, run, job), before.place);
}

/** A surface that no earlier job worked on is as described; told of by another piece, as that piece describes it. */
function untouchedState(
  job: Job,
  { piece, surface }: JobSurface,
  scope: Scope,
  runner: Runner,
  seen: ReadonlySet<Surface>,
): SurfaceState {
  const told = surface.asLeftBy;
  const leaving = told && scope.jobs.get(told.job);
  // Pieces that tell of each other go round; the names check reports it.
  if (!told || !leaving || leaving === job || seen.has(surface)) return describedState(surface);
  const named = jobSurfaces(leaving, scope).filter((it) => it.surface.name === surface.name);
  const left = named.find((it) => it.piece.name === piece.name) ?? named[0];
  if (!left) return describedState(surface);
  const state = initialState(leaving, left, scope, runner, new Set([...seen, surface]));
  return leftState(state, "years", told.place);
}

/** Hours from the end of the earlier job, as far as its recipe states it, to the start of the later one. */
function gapHours(earlier: Job, run: SurfaceRun, job: Job): number | undefined {
  if (!earlier.start || !job.start) return undefined;
  const at = (start: NonNullable<Job["start"]>) =>
    Date.parse(`${start.date}T${start.time ?? "09:00"}:00Z`) / 3_600_000;
  return Math.max(0, at(job.start) - at(earlier.start) - run.final.clock.hours);
}
