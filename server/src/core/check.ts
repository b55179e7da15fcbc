/**
 * Checks one file of a program: language errors, names, and the rules of the trade over all its recipes and jobs.
 *
 * A `Checker` belongs to one program and remembers scopes, runs and totals. Findings stand on lines of the file asked
 * for; the files it uses are read for their meaning, but their own findings are theirs. A part that fails costs its own
 * findings alone and leaves an `internal-error` in their place.
 */

import {
  beyondFile,
  jobTooLarge,
  jobWork,
  MOST_FILE_JOB_ACTIONS,
  MOST_FILE_PLAN_WORK,
  MOST_RECIPE_ACTIONS,
  type TooLarge,
} from "./budget.ts";
import { type Checker, type CheckerParts, type CheckView, jobsOf, recipesOf } from "./checker.ts";
import { earlierJob, fileFindings, jobFacts } from "./file-findings.ts";
import type { Finding } from "./findings.ts";
import {
  datedReleases,
  isSameInRoom,
  type JobInRoom,
  jobAir,
  type OwnAir,
  ownAir,
  timesOf,
} from "./fumes/job-air.ts";
import { type JobRelease, type RoomOfJobs, roomOfJobs } from "./fumes/room-of-jobs.ts";
import { attempt, fileStart } from "./internal-error.ts";
import { type Asking, anew, createMemory, type Memory, type Remembered } from "./memory/memory.ts";
import { checkNames, type NamesIn, namesInDeclaration, repeatsNames } from "./model/check-names.ts";
import { answerWith, jobGraph } from "./model/job-graph.ts";
import type { Job, Recipe, Shop } from "./model/model.ts";
import {
  modelsOf,
  type Program,
  type ProgramDeclaration,
  type ProgramFile,
  reachableFiles,
  type Scope,
  scopeOf,
} from "./model/program.ts";
import { memo } from "./once.ts";
import type { FileId } from "./place.ts";
import { MOST_SUGGESTIONS } from "./resolution/problems.ts";
import { createResolutions, ownerOf, type Resolutions } from "./resolution/resolutions.ts";
import { judging } from "./rules/engine.ts";
import { TRADE_RULES } from "./rules/registry.ts";
import { isBeingPlanned } from "./schedule/being-planned.ts";
import { planWork } from "./schedule/plan.ts";
import { createJobHistory } from "./surface/job-history.ts";
import { outlineOf } from "./surface/outline.ts";
import { createRunner, runAssumed } from "./surface/run.ts";
import { createTotaller, type JobResult } from "./totals/job-totals.ts";

export type { Checker, CheckerParts, CheckView } from "./checker.ts";

/** A memory for one analyst, whose checkers all have the same parts. */
export const createCheckMemory = (): Memory<CheckView> => createMemory(outlineOf);

/** Without a memory among the parts everything is worked out anew. */
export function createChecker(program: Program, given: Partial<CheckerParts> = {}): Checker {
  const parts: CheckerParts = { ...USUAL_PARTS, ...given };
  const scopes = memo((file: FileId) => remembered.scopeOf(file, () => scopeOf(program, file)));
  const histories = memo((file: FileId) => createJobHistory(scopes(file)));
  const resolutions = createResolutions(program, parts.memory !== undefined);
  const view: CheckView = {
    scopeOf: scopes,
    nearest: (file, visited) => histories(file).nearest(visited),
    toldOf: (file, visited) => histories(file).toldOf(visited),
    isContinued: (file, surface) => runner.isContinued(file, surface),
    runs: (job) => runner.job(job),
    earlier: (file, job) => jobGraph(scopes(file)).earlier(job),
    comesAfterItself: (file, job) => jobGraph(scopes(file)).comesAfterItself(job),
    leadsBack: (file, job, piece) => jobGraph(scopes(file)).leadsBack(job, piece),
    hasSurface: (file, job, surface) => jobGraph(scopes(file)).hasSurface(job, surface),
  };
  const jobsIn = memo((shop: Shop) => jobsInShop(program, scopes, shop, remembered));
  const remembered = parts.memory?.open(program, view) ?? anew(view);
  const runner = createRunner({
    scopeOf: scopes,
    modelsOf: (file) => {
      const found = program.files.get(file);
      return found ? modelsOf(found) : [];
    },
    filesSeenFrom: (file) => reachableFiles(program, file),
    remembered,
    resolutions,
    history: histories,
    assumed: parts.assumed,
  });
  const totaller = createTotaller({
    runner,
    scopeOf: scopes,
    remembered,
    plan: parts.plan,
    ...(parts.today === undefined ? {} : { today: parts.today }),
    ...(parts.kept === undefined ? {} : { kept: parts.kept }),
    jobsIn: (shop) => jobsIn(shop).filter((job) => refused(job.file).get(job) === undefined),
  });
  const runOf = memo(runner.assumed);
  const sizes: Sizes = {
    recipe: (recipe) => runOf(recipe).moments.length * (1 + (runner.meantFor(recipe)?.length ?? 0)),
    job: (job) => jobWork(runner.job(job)),
  };
  const refusals = new Map<FileId, ReadonlyMap<Recipe | Job, TooLarge>>();
  /** In steps; what has been sized once is known. */
  function* sized(file: FileId): Generator<void, ReadonlyMap<Recipe | Job, TooLarge>> {
    const found = refusals.get(file) ?? (yield* beyondBudget(program, file, sizes));
    refusals.set(file, found);
    return found;
  }
  const refused = (file: FileId): ReadonlyMap<Recipe | Job, TooLarge> => {
    const sizing = sized(file);
    for (;;) {
      const { done, value } = sizing.next();
      if (done) return value;
    }
  };
  const assumed = outcomes((recipe: Recipe) => {
    admit(refused(recipe.file).get(recipe));
    return runOf(recipe);
  });
  const paired = outcomes((recipe: Recipe) => {
    admit(refused(recipe.file).get(recipe));
    return runner.paired(recipe);
  });
  const totals = outcomes((job: Job) => {
    admit(refused(job.file).get(job));
    return totaller.result(job);
  });
  const room = memo((shop: Shop): RoomOfJobs | undefined => {
    const results = jobsIn(shop).flatMap((job) => soundIn(totals(job)) ?? []);
    if (results.some(({ schedule }) => isBeingPlanned(schedule))) return undefined;
    const releases = results.map((result) => releasesIn(result, remembered));
    return remembered.recall("room", shop, [shop, ...releases], () => roomOfJobs(shop, releases));
  });
  /** The rooms that were asked for when all jobs in them were to be worked out. */
  const rooms = new Map<Shop, RoomOfJobs | undefined>();
  const roomOf = (shop: Shop): RoomOfJobs | undefined => {
    const found = room(shop);
    rooms.set(shop, found);
    return found;
  };
  /** These jobs, and those that share their shops. */
  const inSameShops = (own: readonly Job[]): ReadonlySet<Job> => {
    const shops = new Set(
      own.flatMap(({ file, shop, start }) => (shop && start && scopes(file).shops.get(shop.name)) ?? []),
    );
    return new Set([...own, ...[...shops].flatMap(jobsIn)]);
  };
  const known = new Set<Job>();
  const countOfUnknown = countUnknown(program, known);
  const jobs = outcomes((job: Job) => {
    const result = withAir(valueIn(totals(job)), roomOf, remembered);
    known.add(job);
    return result;
  });
  const assumedAtHand = outcomes(runner.assumed);
  /** By itself: neither its file's bounds nor the air of others in its room are looked at, where they are not known. */
  const atHand = outcomes((job: Job) => {
    admit(jobTooLarge(sizes.job(job)));
    return withAir(totaller.atHand(job), (shop) => rooms.get(shop), remembered);
  });
  const namesOfEach = memo((file: ProgramFile) => namesIn(file, resolutions, remembered));
  const factsOf = memo((result: JobResult) => jobFacts(checker, remembered, result));
  const names = memo((file: FileId) => {
    const found = program.files.get(file);
    return found ? namesOf(program, found, namesOfEach(found), remembered) : [];
  });
  /** In the order in which `fileFindings` needs them; what fails here fails there again, and is named there. */
  function* steps(file: FileId): Generator<void> {
    const found = program.files.get(file);
    if (!found || program.absent.has(file)) return;
    const namesOfDeclaration = namesOfEach(found);
    const unsaid = { part: "", place: fileStart(file) };
    for (const declaration of found.declarations) {
      attempt([], unsaid, () => namesOfDeclaration(declaration, MOST_SUGGESTIONS), undefined);
      yield;
    }
    yield* sized(file);
    const judged = judging(parts.rules);
    for (const recipe of recipesOf(program, file)) {
      const run = soundIn(assumed(recipe));
      if (run) judged.run(run);
      yield;
      for (const each of soundIn(paired(recipe)) ?? []) {
        judged.run(each);
        yield;
      }
    }
    const own = jobsOf(program, file);
    for (const job of inSameShops(own)) {
      attempt([], { part: "", place: job.namePlace }, () => totaller.prepare(job), undefined);
      yield;
    }
    for (const job of own) {
      totals(job);
      yield;
    }
    for (const job of own) {
      const result = soundIn(jobs(job));
      if (result) judged.job(factsOf(result));
      yield;
    }
  }
  const checker: Checker = {
    program,
    scope: scopes,
    resolution: (file, declaration) => resolutions.of(file, declaration, remembered),
    steps,
    assumedAtHand: (recipe) => soundIn(assumedAtHand(recipe)),
    jobsAtHand: (file, most, wanted) => {
      const all = jobsOf(program, file);
      // Of few jobs the air of their rooms is soon known as well.
      if (countOfUnknown() <= most)
        return { results: all.flatMap((job) => soundIn(jobs(job)) ?? []), left: 0 };
      const rest = all.filter((job) => !known.has(job));
      const taken = new Set([...rest.filter(wanted), ...rest].slice(0, most));
      const results = all.flatMap(
        (job) => soundIn(known.has(job) ? jobs(job) : taken.has(job) ? atHand(job) : NOT_AT_HAND) ?? [],
      );
      return { results, left: rest.length - taken.size };
    },
    awaitsPlans: (file) =>
      jobsOf(program, file).some((job) => {
        const result = soundIn(jobs(job));
        const earlier = result && earlierJob(checker, job);
        return [result, earlier].some((each) => each && (each.awaitsAir || isBeingPlanned(each.schedule)));
      }),
    findings: memo((file: FileId) => fileFindings(checker, { names, factsOf, parts }, file)),
    jobs: memo((file: FileId) => jobsOf(program, file).flatMap((job) => checker.jobIfSound(job) ?? [])),
    job: (job) => valueIn(jobs(job)),
    alone: (job) => {
      admit(refused(job.file).get(job));
      return totaller.alone(job);
    },
    shopPlans: (shop) => totaller.shopPlans(shop),
    jobIfSound: (job) => soundIn(jobs(job)),
    assumed: (recipe) => valueIn(assumed(recipe)),
    assumedIfSound: (recipe) => soundIn(assumed(recipe)),
    meantFor: runner.meantFor,
    paired: (recipe) => valueIn(paired(recipe)),
    pairedIfSound: (recipe) => soundIn(paired(recipe)) ?? [],
  };
  return checker;
}

/** Jobs of all files that are done in this shop, on dates that are known, in the order of the files. */
function jobsInShop(
  program: Program,
  scopes: (file: FileId) => Scope,
  shop: Shop,
  remembered: Remembered<CheckView>,
): readonly Job[] {
  const leading = remembered.leadingTo(shop.file);
  // Most shops are seen by their own file alone, and then the others need not be gone through.
  const seeing = leading?.size === 1 ? [...leading] : [...program.files.keys()];
  return seeing.flatMap((file) =>
    jobsOf(program, file).filter(
      (job) =>
        job.shop?.name === shop.name &&
        job.start !== undefined &&
        leading?.has(file) !== false &&
        scopes(file).shops.get(shop.name) === shop,
    ),
  );
}

const asInRoom = ({ job, draws, schedule }: JobResult): JobInRoom => ({ name: job.name, draws, schedule });

/** A job in a room, and its air. */
interface JobWithAir {
  readonly own: OwnAir;
  readonly result: JobResult;
}

/**
 * Without its plan nothing is known of its air. While others in its room are being planned, what was last found stands as
 * long as the job and its own plan are the same.
 */
function withAir(
  result: JobResult,
  rooms: (shop: Shop) => RoomOfJobs | undefined,
  remembered: Remembered<CheckView>,
): JobResult {
  const { shop, job } = result;
  if (!shop?.room || isBeingPlanned(result.schedule)) return result;
  const isShared = job.start !== undefined;
  const own = remembered.recall("own air", job, [result, isShared], () =>
    ownAir(asInRoom(result), shop, isShared),
  );
  if (!own) return result;
  const room = isShared ? rooms(shop) : undefined;
  if (isShared && !room) {
    const last = remembered.last<JobWithAir>("air", job);
    return last?.own === own
      ? last.result
      : remembered.recall("awaited air", job, [own], () => ({ ...result, awaitsAir: true }));
  }
  return remembered.recall("air in the room", job, [own, room], () => {
    const times = room ? timesOf(own, room) : [];
    const found = (): JobWithAir => ({ own, result: { ...result, air: jobAir(own, times) } });
    return remembered.recall("air", job, [own, ...times], found).result;
  });
}

/** The same object as long as the job gives off the same. */
const releasesIn = (result: JobResult, remembered: Remembered<CheckView>): readonly JobRelease[] =>
  remembered.recall("releases", result.job, [result], () => datedReleases(asInRoom(result)), isSameInRoom);

/** What the names of a file come to. */
function namesOf(
  program: Program,
  file: ProgramFile,
  namesOfDeclaration: NamesIn,
  remembered: Remembered<CheckView>,
): readonly Finding[] {
  const seen = reachableFiles(program, file.id);
  const owner = { file: file.id, declaration: "" };
  const mayRepeat = remembered.recall("repeated names", owner, remembered.outlines(seen), () =>
    repeatsNames(program, seen),
  );
  return checkNames(program, file, namesOfDeclaration, mayRepeat);
}

/** Every declaration is asked twice, by the steps and by the findings. */
const namesIn = (file: ProgramFile, resolutions: Resolutions, remembered: Remembered<CheckView>): NamesIn => {
  const withAll = memo((declaration: ProgramDeclaration) => find(declaration, MOST_SUGGESTIONS));
  const find: NamesIn = (declaration, suggestions) => {
    const query = suggestions === 0 ? "names without suggestions" : "names";
    const owner = ownerOf(file.id, declaration);
    return remembered.recall(query, owner, [declaration.lowered, suggestions], (asking) => {
      const resolution = resolutions.of(file.id, declaration, asking);
      return namesInDeclaration(file.id, declaration, resolution, askingScope(asking, file.id), suggestions);
    });
  };
  return (declaration, suggestions) =>
    suggestions === MOST_SUGGESTIONS ? withAll(declaration) : find(declaration, suggestions);
};

/** The scope of a file whose graph of jobs writes down what it is asked. */
function askingScope({ scopeOf, ask }: Asking<CheckView>, file: FileId): Scope {
  // Of its own, since without a memory the scope that is asked is the one that answers.
  const scope: Scope = { ...scopeOf(file) };
  answerWith(
    {
      earlier: (job) => ask("earlier", [file, job]),
      comesAfterItself: (job) => ask("comesAfterItself", [file, job]),
      leadsBack: (job, piece) => ask("leadsBack", [file, job, piece]),
      hasSurface: (job, surface) => ask("hasSurface", [file, job, surface]),
    },
    scope,
  );
  return scope;
}

const USUAL_PARTS: CheckerParts = {
  plan: planWork,
  assumed: runAssumed,
  rules: TRADE_RULES,
  onFault: () => {},
};

/** What recipes and jobs take; may throw where they cannot be run. */
interface Sizes {
  readonly recipe: (recipe: Recipe) => number;
  readonly job: (job: Job) => ReturnType<typeof jobWork>;
}

function admit(refusal: TooLarge | undefined): void {
  if (refusal) throw refusal;
}

/**
 * The recipes and jobs of a file that are not worked out: those that are too large, and those beyond the file's bounds. It
 * takes a step for each that it runs.
 */
function* beyondBudget(
  program: Program,
  file: FileId,
  sizes: Sizes,
): Generator<void, ReadonlyMap<Recipe | Job, TooLarge>> {
  const refused = new Map<Recipe | Job, TooLarge>();
  const sizeOf = <T>(work: () => T, none: T): T => {
    try {
      return work();
    } catch {
      // It is named where it is worked out.
      return none;
    }
  };
  let actions = 0;
  for (const recipe of recipesOf(program, file)) {
    // Once the bound is passed, what is left is not even run.
    if (actions <= MOST_RECIPE_ACTIONS) actions += sizeOf(() => sizes.recipe(recipe), 0);
    if (actions > MOST_RECIPE_ACTIONS) refused.set(recipe, beyondFile());
    yield;
  }
  let [jobActions, planWork] = [0, 0];
  const isFull = (): boolean => jobActions > MOST_FILE_JOB_ACTIONS || planWork > MOST_FILE_PLAN_WORK;
  for (const job of jobsOf(program, file)) {
    if (!isFull()) {
      const work = sizeOf(() => sizes.job(job), NO_WORK);
      const tooLarge = jobTooLarge(work);
      jobActions += work.actions;
      if (tooLarge) refused.set(job, tooLarge);
      else planWork += work.planWork;
    }
    if (isFull() && !refused.has(job)) refused.set(job, beyondFile());
    yield;
  }
  return refused;
}

const NO_WORK = { actions: 0, planned: 0, planWork: 0 };

/** What came of a piece of work: its value, or what it threw. */
type Outcome<T> = { readonly value: T } | { readonly error: unknown };

/** What failed once fails again, and is not tried twice. */
const outcomes = <K, T>(compute: (key: K) => T): ((key: K) => Outcome<T>) =>
  memo((key: K): Outcome<T> => {
    try {
      return { value: compute(key) };
    } catch (error) {
      return { error };
    }
  });

/**
 * Counts the jobs of all files that are not known yet. What is known stays so: only those left at the last count are
 * looked at, and only when more have become known, since this is asked for each of many files.
 */
function countUnknown(program: Program, known: ReadonlySet<Job>): () => number {
  let left: readonly Job[] | undefined;
  let counted = -1;
  return () => {
    if (!left || known.size !== counted) {
      left = (left ?? [...program.files.keys()].flatMap((file) => jobsOf(program, file))).filter(
        (job) => !known.has(job),
      );
      counted = known.size;
    }
    return left.length;
  };
}

const NOT_AT_HAND: Outcome<never> = { error: undefined };

function valueIn<T>(outcome: Outcome<T>): T {
  if ("error" in outcome) throw outcome.error;
  return outcome.value;
}

const soundIn = <T>(outcome: Outcome<T>): T | undefined => ("error" in outcome ? undefined : outcome.value);
