/**
 * Runs: every recipe by itself on an assumed surface, and every job surface by surface. A `Runner` belongs to one
 * program and remembers what it has run, because jobs start from what earlier jobs left.
 */

import type { DayAndNightAir, ShopAir } from "../air/wait-factor.ts";
import { hoursBetween } from "../measure/iso-dates.ts";
import type { Asking, Owner, ProgramView, Remembered } from "../memory/memory.ts";
import type { Job, ModelDeclaration, Piece, Recipe, Shop, Surface } from "../model/model.ts";
import type { Scope } from "../model/program.ts";
import { MAX_SEEN_FILES, type Sight } from "../model/use-graph.ts";
import { memo, onceFor } from "../once.ts";
import { Noted, type Outcome, soundIn } from "../outcome.ts";
import type { FileId, Place } from "../place.ts";
import { amend, type SurfaceLine, type SurfaceRecord } from "../record/amend.ts";
import type { Resolutions } from "../resolution/resolutions.ts";
import { minimumClosedHours, minimumOvernightHours } from "../schedule/calendar.ts";
import { NIGHT_WITHOUT_SHOP_H } from "../schedule/night.ts";
import type { Action, Cycle } from "./actions.ts";
import { bindArguments, type Expanding, expand, givenTo } from "./expand.ts";
import { followedRecipes, namedByJobs, partRecipes } from "./followed.ts";
import { ASSUMED_STATE, describedState, leftState } from "./initial-state.ts";
import { type JobHistory, type LeftBy, type Nearest, surfaceKey, type Visited } from "./job-history.ts";
import { appliedSurfaces, type JobSurface, recordedSurfaces } from "./job-surfaces.ts";
import { type Pairing, pairUp } from "./pairs.ts";
import { finalState, simulate } from "./simulate.ts";
import type { Moment, SurfaceState } from "./state.ts";

export interface SurfaceRun {
  /**
   * `assumed`: a recipe by itself, on a surface of which nothing is known. `paired`: a recipe that no job applies, on the
   * surface of its file that must be meant (`pairs.ts`).
   */
  readonly kind: "assumed" | "paired" | "job";
  /** The declaration whose findings these are: the job, or the recipe that no job applies. */
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
  /** The recipes applied, with their `apply` lines (none without a job). */
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
  /** Of a job with a record that tells of this surface: the moments are those of what was done and is left. */
  readonly record?: RunRecord;
}

export interface RunRecord extends SurfaceRecord {
  /** The run as the recipe alone has it. */
  readonly planned: SurfaceRun;
}

export interface Runner {
  /** The recipe on a surface of which nothing is known; parameters without default are unknown. */
  assumed(recipe: Recipe): SurfaceRun;
  /**
   * The surfaces that a recipe which no job applies must be meant for, see `pairUp`; undefined where a job applies it, or
   * another recipe follows it, or jobs work on all pieces of its file.
   */
  meantFor(recipe: Recipe): readonly JobSurface[] | undefined;
  /** The recipe on each of them. Nothing is assumed of shop, dates and stock. */
  paired(recipe: Recipe): readonly SurfaceRun[];
  /** One run for every surface that the job applies something to, in the order in which pieces and surfaces stand. */
  job(job: Job): readonly SurfaceRun[];
  /** The runs of these jobs are known. */
  noteAll(jobs: readonly Job[], runs: readonly Outcome<readonly SurfaceRun[]>[]): void;
  /** Beside a recipe itself and what its names mean, all that its assumed run depends on; the same while nothing of it changes. */
  around(file: FileId): object;
  /** The recipes of a file that `meantFor` knows. */
  pairings(file: FileId): Pairing;
}

/** What runs ask of a program, beyond the meaning of names. */
export interface RunView extends ProgramView {
  readonly runs: (job: Job) => readonly SurfaceRun[];
  /** See `JobHistory`. */
  readonly nearest: (file: FileId, visited: Visited) => Nearest;
  readonly toldOf: (file: FileId, visited: Visited) => Visited | undefined;
  /** Whether another job goes on with a surface, see `surfaceKey`. */
  readonly isContinued: (file: FileId, surface: string) => boolean;
}

export interface RunnerParts {
  readonly scopeOf: (file: FileId) => Scope;
  /** The recipes and pieces of a file. */
  readonly modelsOf: (file: FileId) => readonly ModelDeclaration[];
  /** The files that a scope is made of. */
  readonly sightOf: (file: FileId) => Sight;
  readonly remembered: Remembered<RunView>;
  readonly resolutions: Resolutions;
  readonly history: (file: FileId) => JobHistory;
  readonly assumed?: AssumedRunner;
}

/** Of a job that comes after itself, which the names check reports, and of a recipe that is meant for no surface. */
const NOTHING: readonly SurfaceRun[] = [];

const NO_PAIRING: Pairing = new Map();

export function createRunner(parts: RunnerParts): Runner & Pick<RunView, "isContinued"> {
  const { scopeOf, remembered, resolutions, history, assumed = runAssumed } = parts;
  const jobs = new Noted<Job, readonly SurfaceRun[]>();
  const knownRuns = (job: Job): readonly SurfaceRun[] | undefined => {
    const known = jobs.get(job);
    return known && soundIn(known);
  };
  const running = new Set<Job>();
  const arranged = createArrangements(parts);
  const pairings = memo((file: FileId): Pairing => {
    const { recipes } = arranged(file);
    const isFree = (model: Owner): boolean =>
      !recipes.busy.has(ownerKey(model)) && !recipes.followed.has(ownerKey(model));
    const freePieces = (): readonly Piece[] =>
      parts.modelsOf(file).filter((model) => model.kind === "piece" && isFree(model)) as readonly Piece[];
    // Most files have none, and then not all of their recipes and pieces need be gone through.
    const hasSome = remembered.recall(
      "whether pieces are free",
      { file, declaration: "" },
      [recipes, ...remembered.outlines([file])],
      () => freePieces().length > 0,
    );
    if (!hasSome) return NO_PAIRING;
    const free = parts.modelsOf(file).filter((model) => model.kind === "recipe" && isFree(model));
    return pairUp(free as readonly Recipe[], freePieces());
  });
  const meantFor = (recipe: Recipe): readonly JobSurface[] | undefined => pairings(recipe.file).get(recipe);
  const run = (job: Job): void => {
    const runs = remembered.recall("runs", job, [job], (asking) => runJob(job, asking, resolutions));
    jobs.set(job, { value: runs });
  };
  /** Runs the jobs that a job starts from before it, without recursion: a chain may be longer than the stack is deep. */
  const runInOrder = (last: Job): void => {
    const way: { readonly job: Job; readonly before: readonly Job[]; next: number }[] = [];
    const enter = (job: Job): void => {
      if (knownRuns(job) || running.has(job)) return;
      running.add(job);
      way.push({ job, before: jobsBefore(job, scopeOf(job.file), history), next: 0 });
    };
    try {
      enter(last);
      for (let visit = way.at(-1); visit !== undefined; visit = way.at(-1)) {
        const { job } = visit;
        const before = visit.before[visit.next++];
        if (before) enter(before);
        else {
          run(job);
          running.delete(job);
          way.pop();
        }
      }
    } finally {
      for (const { job } of way) running.delete(job);
    }
  };
  return {
    assumed: (recipe) => {
      const { followed, continued, preceded } = arranged(recipe.file).recipes;
      const key = ownerKey(recipe);
      const around = [followed.has(key), continued.has(key), preceded.has(key)] as const;
      return remembered.recall("assumed run", recipe, [recipe, ...around], (asking) =>
        assumed(recipe, expandingBy(asking, resolutions), {
          followed: around[0],
          continued: around[1],
          preceded: around[2],
        }),
      );
    },
    meantFor,
    noteAll: (of, runs) => {
      jobs.setAll(of, runs);
    },
    around: (file) => arranged(file).recipes,
    pairings,
    paired: (recipe) => {
      const surfaces = meantFor(recipe);
      if (!surfaces || surfaces.length === 0) return NOTHING;
      const given = surfaces.flatMap(({ label, piece, surface }) => [label, piece, surface]);
      return remembered.recall("paired runs", recipe, [recipe, ...given], (asking) =>
        runPaired(recipe, surfaces, expandingBy(asking, resolutions)),
      );
    },
    job: (job) => {
      const known = jobs.atHand(job);
      if (known && "value" in known) return known.value;
      if (!startsFromOthers(job, scopeOf(job.file))) run(job);
      else if (!running.has(job)) runInOrder(job);
      return knownRuns(job) ?? NOTHING;
    },
    isContinued: (file, surface) => arranged(file).continuedSurfaces().has(surface),
  };
}

/** How recipes and jobs of a scope are arranged around each other, by the keys of their declarations. */
interface Arrangement {
  readonly recipes: Readonly<Record<"followed" | "continued" | "preceded" | "busy", ReadonlySet<string>>>;
  continuedSurfaces(): ReadonlySet<string>;
}

const ownerKey = onceFor(({ file, declaration }: Owner): string => `${file}\u0000${declaration}`);

/** Kept from one program to the next as long as no outline changes, since nothing else of a declaration counts in it. */
function createArrangements(parts: RunnerParts): (file: FileId) => Arrangement {
  const { scopeOf, sightOf, remembered, history } = parts;
  const keysOf = (models: ReadonlySet<Owner>): ReadonlySet<string> => new Set([...models].map(ownerKey));
  const arrange = memo(({ owner: file, files }: Sight): Arrangement => {
    const owner = { file, declaration: "" };
    // Beyond that, files are seen that are not named here.
    const outlines = files.length < MAX_SEEN_FILES ? remembered.outlines(files) : [{}];
    const recipes = remembered.recall("arrangement", owner, outlines, () => {
      const { continued, preceded } = partRecipes(scopeOf(file), scopeOf);
      return {
        followed: keysOf(followedRecipes(scopeOf(file), scopeOf)),
        continued: keysOf(continued),
        preceded: keysOf(preceded),
        busy: keysOf(namedByJobs(scopeOf(file), scopeOf)),
      };
    });
    return {
      recipes,
      continuedSurfaces: () =>
        remembered.recall("continued surfaces", owner, outlines, () => history(file).continuedSurfaces()),
    };
  });
  return (file) => arrange(sightOf(file));
}

/** What others of a program do with a recipe: see the fields of these names in `SurfaceRun`. */
export type Surroundings = Readonly<Record<"followed" | "continued" | "preceded", boolean>>;

/** Runs a recipe by itself; a pure function of its arguments and of what the names mean. */
export type AssumedRunner = (recipe: Recipe, asked: Expanding, surroundings: Surroundings) => SurfaceRun;

/** Each recipe is asked for once, however often it is followed. */
const expandingBy = (asking: Asking<RunView>, resolutions: Resolutions): Expanding => ({
  resolved: memo((recipe: Recipe) => resolutions.recipe(recipe, asking)),
  materialsOf: (file) => asking.scopeOf(file).materials,
});

export const runAssumed: AssumedRunner = (recipe, asked, { followed, continued, preceded }) => {
  const { defaults } = asked.resolved(recipe);
  const { actions, cycles } = expand(recipe, bindArguments(recipe, defaults, new Map()), [], asked);
  const moments = simulate({
    initial: ASSUMED_STATE,
    actions,
    overnightHours: () => NIGHT_WITHOUT_SHOP_H,
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

/** A pure function of its arguments and of what the names mean. */
function runPaired(recipe: Recipe, surfaces: readonly JobSurface[], asked: Expanding): readonly SurfaceRun[] {
  const { defaults } = asked.resolved(recipe);
  const { actions } = expand(recipe, bindArguments(recipe, defaults, new Map()), [], asked);
  return surfaces.map(({ surface, ...of }): SurfaceRun => {
    const initial = describedState(surface);
    const moments = simulate({
      initial,
      actions,
      overnightHours: () => NIGHT_WITHOUT_SHOP_H,
      surface,
    });
    return {
      kind: "paired",
      owner: { file: recipe.file, declaration: recipe.declaration },
      ...of,
      surface,
      recipe,
      applied: [{ recipe }],
      initial,
      moments,
      final: finalState(initial, moments),
      // Told of the recipe by itself.
      cycles: [],
    };
  });
}

function runJob(job: Job, asking: Asking<RunView>, resolutions: Resolutions): readonly SurfaceRun[] {
  const { shop, calls } = resolutions.job(job, asking);
  const asked = expandingBy(asking, resolutions);
  const recorded = recordLines(job, asking.scopeOf(job.file));
  return [...appliedSurfaces(job, asking.scopeOf(job.file))].map(([surface, applies]): SurfaceRun => {
    const parts = applies.flatMap((apply) => {
      const call = apply.syntax.call && calls.get(apply.syntax.call);
      const recipe = call?.recipe;
      if (!call || !recipe) return [];
      const { defaults } = asked.resolved(recipe);
      const bindings = bindArguments(recipe, defaults, givenTo(recipe, call, new Map()));
      return [{ recipe, apply: apply.place, ...expand(recipe, bindings, [apply.place], asked) }];
    });
    const actions = parts
      .flatMap((part) => part.actions)
      .map((action, index) => (action.index === index ? action : { ...action, index }));
    const initial = initialState(job, surface, asking);
    const key = surfaceKey(job, surface);
    const isContinued = asking.ask("isContinued", [job.file, key]);
    const runOf = (of: readonly Action[]): SurfaceRun => {
      const moments = simulate({
        initial,
        actions: of,
        overnightHours: overnightHours(shop),
        surface: surface.surface,
        ...(shop?.hours ? { closedHours: closedHours(shop.hours) } : {}),
        ...(shop?.air ? { air: airOf(shop, shop.air.value) } : {}),
      });
      return {
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
        ...(isContinued ? { continued: true as const } : {}),
      };
    };
    const planned = runOf(actions);
    const lines = recorded.get(surface);
    const amended = lines && amend(actions, surface.pieces, lines);
    return amended ? { ...runOf(amended.actions), record: { ...amended.record, planned } } : planned;
  });
}

/** The lines of the record, by the surfaces that they tell of. */
function recordLines(job: Job, scope: Scope): ReadonlyMap<JobSurface, readonly SurfaceLine[]> {
  const lines = new Map<JobSurface, SurfaceLine[]>();
  for (const record of job.records) {
    const surfaces = recordedSurfaces(record, job, scope);
    const pieces = ({ pieces: all }: JobSurface): number =>
      record.facts.pieces?.filter((piece) => piece <= all).length ?? all;
    const hasAreas = [...surfaces].every(({ surface }) => surface.areaM2 > 0 && !surface.areaGap);
    const weight = ({ surface }: JobSurface): number => (hasAreas ? surface.areaM2 : 1);
    const whole = [...surfaces].reduce((sum, surface) => sum + weight(surface) * pieces(surface), 0);
    const { material: named } = record.syntax;
    const material = named && scope.materials.get(named.text);
    for (const surface of surfaces) {
      const line = { record, share: weight(surface) / whole, ...(material ? { material } : {}) };
      const ofSurface = lines.get(surface);
      if (ofSurface) ofSurface.push(line);
      else lines.set(surface, [line]);
    }
  }
  return lines;
}

/** The least that `wait overnight` brings in this shop, whenever in its hours the task before ends. */
function overnightHours(shop: Shop | undefined): (waited: number | undefined) => number {
  if (!shop) return () => NIGHT_WITHOUT_SHOP_H;
  const known = new Map<number | undefined, number>();
  return (waited) => {
    const least = known.get(waited) ?? minimumOvernightHours(shop.hours, waited);
    known.set(waited, least);
    return least;
  };
}

/** For how long the shop is surely still closed, so many hours after a task. */
function closedHours(hours: Shop["hours"]): (waited: number) => number {
  const known = new Map<number, number>();
  return (waited) => {
    const least = known.get(waited) ?? minimumClosedHours(hours, waited);
    known.set(waited, least);
    return least;
  };
}

/** The same for all runs in a shop, as drying times are kept by it. */
function airOf(shop: Shop, day: ShopAir): DayAndNightAir {
  const known = AIRS.get(shop) ?? withNight(shop, day);
  AIRS.set(shop, known);
  return known;
}

const AIRS = new WeakMap<Shop, DayAndNightAir>();

const withNight = ({ nightAir, hours }: Shop, day: ShopAir): DayAndNightAir =>
  nightAir ? { ...day, night: { ...nightAir.value, ...(hours ? { hours } : {}) } } : day;

function initialState(job: Job, surface: JobSurface, asking: Asking<RunView>): SurfaceState {
  const runLeft = ({ job: earlier, piece, surface: name }: LeftBy): SurfaceRun | undefined =>
    asking.ask("runs", [earlier]).find((it) => it.piece?.name === piece && it.surface?.name === name);
  const history = historyOf(job.file, asking);
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

/** The history of a file, with what is asked of it written down. A surface without one has none to be asked for. */
function historyOf(file: FileId, asking: Asking<RunView>): Pick<JobHistory, "nearest" | "toldOf"> {
  return {
    nearest: (visited) =>
      hasHistory(visited)
        ? asking.ask("nearest", [file, visited], isSameNearest)
        : { at: visited, before: undefined },
    toldOf: (visited) => asking.ask("toldOf", [file, visited], isSameVisit),
  };
}

const hasHistory = ({ job, surface }: Visited): boolean =>
  job.after !== undefined || surface.surface.asLeftBy !== undefined;

const isSameNearest = (a: Nearest, b: Nearest): boolean =>
  isSameVisit(a.at, b.at) && isSameLeft(a.before, b.before);

const isSameVisit = (a: Visited | undefined, b: Visited | undefined): boolean =>
  a?.job === b?.job && a?.surface.surface === b?.surface.surface && a?.surface.piece === b?.surface.piece;

const isSameLeft = (a: LeftBy | undefined, b: LeftBy | undefined): boolean =>
  a?.job === b?.job && a?.piece === b?.piece && a?.surface === b?.surface && a?.place === b?.place;

/** Whether a job may start from what others left. */
export const startsFromOthers = (job: Job, scope: Scope): boolean =>
  job.after !== undefined ||
  job.pieces.some(({ piece }) =>
    scope.pieces.get(piece)?.surfaces.some(({ asLeftBy }) => asLeftBy !== undefined),
  );

/** The jobs whose runs the initial states of a job depend on. */
function jobsBefore(job: Job, scope: Scope, history: (file: FileId) => JobHistory): readonly Job[] {
  if (!startsFromOthers(job, scope)) return [];
  return [...appliedSurfaces(job, scope).keys()].flatMap(
    (surface) => history(job.file).nearest({ job, surface }).before?.job ?? [],
  );
}

/** Hours from the end of the earlier job, as far as its recipe states it, to the start of the later one. */
function gapHours(earlier: Job, run: SurfaceRun, job: Job): number | undefined {
  if (!earlier.start || !job.start) return undefined;
  const at = (start: NonNullable<Job["start"]>) => `${start.date}T${start.time ?? "09:00"}:00`;
  return Math.max(0, hoursBetween(at(earlier.start), at(job.start)) - run.final.clock.hours);
}
