/**
 * All that the findings of a file are made of, worked out in steps: the names in its declarations, its recipes by
 * themselves, its jobs with their plans and air, and what the rules say of them.
 *
 * Each kind of work is a list over the file. Where an edit has changed nothing that a row depends on, the row is kept without
 * being asked about, so that a keystroke costs what it changes and next to nothing for each declaration that it leaves alone.
 */
import {
  beyondFile,
  isCutOff,
  type JobWork,
  jobTooLarge,
  jobWork,
  MOST_FILE_JOB_ACTIONS,
  MOST_FILE_PLAN_WORK,
  MOST_RECIPE_ACTIONS,
  type TooLarge,
} from "./budget.ts";
import { type CheckView, jobsOf, recipesOf } from "./checker.ts";
import type { RoomOfJobs } from "./fumes/room-of-jobs.ts";
import type { UnitSystem } from "./measure/shown-figures.ts";
import { drained } from "./memory/again.ts";
import type { Owner, Remembered } from "./memory/memory.ts";
import type { DeclarationNames, NamesIn } from "./model/check-names.ts";
import type { Job, Recipe, Shop } from "./model/model.ts";
import type { Program, ProgramFile } from "./model/program.ts";
import { memo, onceFor } from "./once.ts";
import { type Outcome, type Outcomes, outcomeOf, soundIn, valueIn } from "./outcome.ts";
import type { FileId } from "./place.ts";
import { MOST_SUGGESTIONS } from "./resolution/problems.ts";
import { ownerOf } from "./resolution/resolutions.ts";
import type { JobFacts, Judge, Judgement } from "./rules/engine.ts";
import { isBeingPlanned } from "./schedule/being-planned.ts";
import type { Runner, SurfaceRun } from "./surface/run.ts";
import type { JobResult, Totaller } from "./totals/job-totals.ts";

/** The recipes and jobs of a file that are worked out. */
export interface SizedFile {
  /** Those that are not: too large, or beyond the bounds of the file. */
  readonly refused: ReadonlyMap<Recipe | Job, TooLarge>;
  readonly recipes: readonly Recipe[];
  /** Of the recipes by themselves. */
  readonly assumed: readonly Outcome<SurfaceRun>[];
  readonly jobs: readonly Job[];
  /** Of the jobs. */
  readonly runs: readonly Outcome<readonly SurfaceRun[]>[];
}

/** What came of the recipes and jobs of a file that are worked out; lists are the same objects while all is as it was. */
export interface WorkedFile extends Omit<SizedFile, "runs"> {
  /** Of the recipes that no job applies, on the surfaces that they must be meant for. */
  readonly paired: readonly Outcome<readonly SurfaceRun[]>[];
  /** Of the jobs. */
  readonly results: readonly Outcome<JobResult>[];
  /** The recipes that no job applies, and of which it is not clear which surfaces they are meant for. */
  readonly lone: readonly Recipe[];
  /** What the rules say of them: of recipes by themselves, of those that are paired, and of jobs. */
  readonly judged: Readonly<Record<"assumed" | "paired" | "jobs", readonly Outcome<Judgement>[]>>;
  /** The runs of which something is to be told beyond what the rules say: they are cut off, or lead back to themselves. */
  readonly odd: readonly SurfaceRun[];
}

/** Work that has steps, and is done once a file: by steps, or at once by who needs it first. */
export interface Staged<T> {
  steps(file: FileId): Generator<void, T>;
  now(file: FileId): T;
  /** Undefined where it is not done yet. */
  known(file: FileId): T | undefined;
}

export function staged<T>(work: (file: FileId) => Generator<void, T>): Staged<T> {
  const known = new Map<FileId, T>();
  function* steps(file: FileId): Generator<void, T> {
    const before = known.get(file);
    if (before !== undefined) return before;
    const found = yield* work(file);
    known.set(file, found);
    return found;
  }
  return {
    steps,
    now: (file) => drained(steps(file)),
    known: (file) => known.get(file),
  };
}

export interface FileWorkParts {
  readonly program: Program;
  readonly remembered: Remembered<CheckView>;
  readonly runner: Runner;
  readonly totaller: Totaller;
  readonly namesIn: (file: ProgramFile) => NamesIn;
  /** By themselves, whatever the bounds of their files. */
  readonly runs: Outcomes<Recipe, SurfaceRun>;
  readonly paired: Outcomes<Recipe, readonly SurfaceRun[]>;
  /** Without their air. */
  readonly totals: Outcomes<Job, JobResult>;
  readonly results: Outcomes<Job, JobResult>;
  /** With their air, and without dates where none can be promised. */
  readonly finished: (result: JobResult) => JobResult;
  /** Whether `promisesOf` may have anything to say of a result; told by the result alone. */
  readonly mayBeVoid: (result: JobResult) => boolean;
  /** Equal for equal reasons to promise no date, or to say what was not looked at for one. */
  readonly promisesOf: (result: JobResult) => string;
  readonly roomOf: (shop: Shop) => RoomOfJobs | undefined;
  readonly factsOf: (result: JobResult) => JobFacts;
  readonly judge: Judge;
  /** What the figures of a file are told in. */
  readonly unitsOf: (file: FileId) => UnitSystem;
  /** The jobs of other files that share the shops of these jobs of a file. */
  readonly inSameShops: (file: FileId, own: readonly Job[]) => readonly Job[];
}

export interface FileWork {
  readonly names: Staged<readonly Outcome<DeclarationNames>[]>;
  readonly sized: Staged<SizedFile>;
  readonly worked: Staged<WorkedFile>;
}

/** Something that is never the same as before. */
const never = (): object => ({});

export function createFileWork(parts: FileWorkParts): FileWork {
  const { program, remembered, runner, totaller, judge } = parts;
  const whole = memo((file: FileId): Owner => ({ file, declaration: "" }));
  const names = staged(function* (file: FileId) {
    const found = program.files.get(file);
    if (!found) return [];
    const { declarations } = found;
    const namesOf = parts.namesIn(found);
    return yield* remembered.each(file, {
      query: "names",
      ownerOf: (row) => ownerOf(file, declarations[row]!),
      columns: [declarations.map(({ lowered }) => lowered)],
      ask: (row) => namesOf(declarations[row]!, MOST_SUGGESTIONS),
    });
  });

  /** Once a bound is passed, what is left is not even run. */
  const sized = staged(function* (file: FileId): Generator<void, SizedFile> {
    const refused = new Map<Recipe | Job, TooLarge>();
    const recipes = recipesOf(program, file);
    const pairings = runner.pairings(file);
    const pairs = recipes.map((recipe) => pairings.get(recipe)?.length ?? 0);
    const assumed = yield* remembered.each(file, {
      query: "assumed run",
      ownerOf: (row) => recipes[row]!,
      columns: [recipes, pairs],
      shared: [runner.around(file)],
      ask: (row) => valueIn(parts.runs(recipes[row]!)),
      bounds: [
        {
          most: MOST_RECIPE_ACTIONS,
          // What cannot be run is named where it is worked out.
          weigh: (outcome, row) => (soundIn(outcome)?.moments.length ?? 0) * (1 + pairs[row]!),
        },
      ],
    });
    parts.runs.noteAll(recipes, assumed);
    for (const recipe of recipes.slice(assumed.length)) refused.set(recipe, beyondFile());
    const jobs = jobsOf(program, file);
    const runs = yield* remembered.each(file, {
      query: "runs",
      ownerOf: (row) => jobs[row]!,
      columns: [jobs],
      ask: (row) => runner.job(jobs[row]!),
      onCarried: (carried) => runner.noteAll(jobs, carried),
      bounds: [
        { most: MOST_FILE_JOB_ACTIONS, weigh: (outcome) => workIn(outcome).actions },
        {
          most: MOST_FILE_PLAN_WORK,
          weigh: (outcome) => (tooLargeIn(outcome) ? 0 : workIn(outcome).planWork),
        },
      ],
    });
    const tooLarge = yield* remembered.rows("too large", whole(file), [runs], (row) =>
      tooLargeIn(runs[row]!),
    );
    for (let row = 0; row < runs.length; row += 1) {
      const found = soundIn(tooLarge[row]!);
      if (found) refused.set(jobs[row]!, found);
    }
    for (let row = runs.length; row < jobs.length; row += 1) {
      // What passes the bound may be too large by itself, and then that is said.
      const own = row === runs.length && tooLargeIn(outcomeOf(() => runner.job(jobs[row]!)));
      refused.set(jobs[row]!, own || beyondFile());
    }
    if (refused.size === 0) return { refused, recipes, assumed, jobs, runs };
    const isAdmitted = (of: readonly (Recipe | Job)[]) => (_: unknown, row: number) => !refused.has(of[row]!);
    return {
      refused,
      recipes: recipes.filter(isAdmitted(recipes)),
      assumed: assumed.filter(isAdmitted(recipes)),
      jobs: jobs.filter(isAdmitted(jobs)),
      runs: runs.filter(isAdmitted(jobs)),
    };
  });

  function* pairedIn(
    file: FileId,
  ): Generator<void, Pick<WorkedFile, "paired"> & { said: Outcome<Judgement>[] }> {
    const { refused } = sized.now(file);
    const paired: Outcome<readonly SurfaceRun[]>[] = [];
    const said: Outcome<Judgement>[] = [];
    for (const [recipe, surfaces] of runner.pairings(file)) {
      if (surfaces.length === 0 || refused.has(recipe)) continue;
      const outcome = parts.paired(recipe);
      paired.push(outcome);
      yield;
      for (const run of soundIn(outcome) ?? []) {
        said.push(outcomeOf(() => judge.run(run)));
        yield;
      }
    }
    return { paired, said };
  }

  const judged = <T>(list: string, file: FileId, column: readonly Outcome<T>[], look: (it: T) => Judgement) =>
    // A list for each system of units, as their texts differ.
    remembered.rows(`${list}, ${parts.unitsOf(file)}`, whole(file), [column], (row) =>
      look(valueIn(column[row]!)),
    );

  const oddOf = <T>(
    list: string,
    file: FileId,
    column: readonly Outcome<T>[],
    runsOf: (it: T) => readonly SurfaceRun[],
  ) =>
    remembered.rows(list, whole(file), [column], (row): readonly SurfaceRun[] => {
      const odd = runsOf(valueIn(column[row]!)).filter(isOdd);
      return odd.length === 0 ? NONE : odd;
    });

  /** What the air of each result depends on beside it: nothing, or what is given off in its room. */
  function* roomsOf(all: readonly Outcome<JobResult>[]): Generator<void, readonly unknown[]> {
    const known = new Map<Shop, unknown>();
    const rooms: unknown[] = [];
    for (let row = 0; row < all.length; row += 1) {
      const result = soundIn(all[row]!);
      const shop = result?.shop;
      if (!shop?.room || isBeingPlanned(result!.schedule) || result!.job.start === undefined) {
        rooms.push(undefined);
        continue;
      }
      if (!known.has(shop)) {
        known.set(shop, parts.roomOf(shop));
        yield;
      }
      rooms.push(known.get(shop) ?? never());
    }
    return rooms;
  }

  /** For each result the same text for the same reasons to promise no date; of most there are none. */
  function* voidsOf(file: FileId, all: readonly Outcome<JobResult>[]): Generator<void, readonly string[]> {
    const mayBeVoid = yield* remembered.rows(
      `may be void, ${parts.unitsOf(file)}`,
      whole(file),
      [all],
      (row) => parts.mayBeVoid(valueIn(all[row]!)),
    );
    const voids: string[] = [];
    for (let row = 0; row < all.length; row += 1) {
      // A comment elsewhere in the text may allow what keeps a date from being promised.
      const result = soundIn(mayBeVoid[row]!) === false ? undefined : soundIn(all[row]!);
      voids.push(result ? parts.promisesOf(result) : "");
      if (result) yield;
    }
    return voids;
  }

  const worked = staged(function* (file: FileId): Generator<void, WorkedFile> {
    const { refused, recipes, assumed, jobs, runs } = yield* sized.steps(file);
    const ofRecipes = yield* judged("judged recipes", file, assumed, judge.run);
    const { paired, said } = yield* pairedIn(file);
    const unplanned = yield* totaller.prepareAll(file, jobs, runs);
    for (const job of parts.inSameShops(file, jobs)) {
      // What fails here fails again where it is needed.
      totaller.prepareIfSound(job);
      yield;
    }
    const totals = yield* totaller.resultsOf(file, unplanned);
    parts.totals.noteAll(jobs, totals);
    const results = yield* remembered.rows(
      "results",
      whole(file),
      [totals, yield* roomsOf(totals), yield* voidsOf(file, totals)],
      (row) => parts.finished(valueIn(totals[row]!)),
      ({ awaitsAir }) => awaitsAir !== true,
    );
    parts.results.noteAll(jobs, results);
    const facts = yield* remembered.rows(
      "facts",
      whole(file),
      [results],
      (row) => parts.factsOf(valueIn(results[row]!)),
      // What is told of a job that comes after another depends on that as well.
      ({ job }) => job.after === undefined,
    );
    const ofJobs = yield* judged("judged jobs", file, facts, judge.job);
    const odd = [
      ...allIn(yield* oddOf("odd recipes", file, assumed, (run) => [run])),
      ...allIn(paired),
      ...allIn(yield* oddOf("odd jobs", file, results, ({ runs: all }) => all)),
    ];
    return {
      refused,
      recipes,
      assumed,
      paired,
      jobs,
      results,
      lone: [...runner.pairings(file)].flatMap(([recipe, surfaces]) =>
        surfaces.length === 0 ? [recipe] : [],
      ),
      judged: { assumed: ofRecipes, paired: said, jobs: ofJobs },
      odd,
    };
  });

  return { names, sized, worked };
}

const NONE: readonly SurfaceRun[] = [];

/** Gathered once a list, which most edits leave as it is. */
const allIn = onceFor((all: readonly Outcome<readonly SurfaceRun[]>[]): readonly SurfaceRun[] =>
  all.flatMap((outcome) => soundIn(outcome) ?? NONE),
);

const isOdd = (run: SurfaceRun): boolean => run.cycles.length > 0 || isCutOff(run);

const NO_WORK = { actions: 0, planned: 0, planWork: 0 };

const workIn = (runs: Outcome<readonly SurfaceRun[]>): JobWork =>
  "value" in runs ? jobWork(runs.value) : NO_WORK;

const tooLargeIn = (runs: Outcome<readonly SurfaceRun[]>): TooLarge | undefined => jobTooLarge(workIn(runs));
