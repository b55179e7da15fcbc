/**
 * Checks one file of a program: language errors, names, and the rules of the trade over all its recipes and jobs.
 *
 * A `Checker` belongs to one program and remembers scopes, runs and totals. Findings stand on lines of the file asked
 * for; the files it uses are read for their meaning, but their own findings are theirs. A part that fails costs its own
 * findings alone and leaves an `internal-error` in their place.
 */

import { t } from "../../../grammar/src/translate.ts";
import { jobTooLarge, jobWork, type TooLarge } from "./budget.ts";
import { type Checker, type CheckerParts, type CheckView, jobsOf } from "./checker.ts";
import { earlierJob, fileFindings, jobFacts } from "./file-findings.ts";
import { createFileWork } from "./file-work.ts";
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
import { drained } from "./memory/again.ts";
import { type Asking, anew, createMemory, type Memory, type Remembered } from "./memory/memory.ts";
import {
  checkNames,
  type DeclarationNames,
  type NamesIn,
  namesInDeclaration,
  repeatsNames,
} from "./model/check-names.ts";
import { answerWith, jobGraph } from "./model/job-graph.ts";
import type { Job, Recipe, Shop } from "./model/model.ts";
import {
  modelsOf,
  type Program,
  type ProgramDeclaration,
  type ProgramFile,
  type Scope,
  scopeOf,
} from "./model/program.ts";
import { type Sight, useGraph } from "./model/use-graph.ts";
import { firstBefore, isSameList, memo, onceFor } from "./once.ts";
import { type Outcome, outcomeOf, outcomes, soundIn, valueIn } from "./outcome.ts";
import type { FileId, Place } from "./place.ts";
import { MOST_SUGGESTIONS } from "./resolution/problems.ts";
import { createResolutions, ownerOf, type Resolutions } from "./resolution/resolutions.ts";
import { judgeBy } from "./rules/engine.ts";
import { TRADE_RULES } from "./rules/registry.ts";
import { isAllowedAt } from "./rules/suppressions.ts";
import { type DateVoid, dateVoids } from "./rules/voids.ts";
import { isBeingPlanned } from "./schedule/being-planned.ts";
import { planWork } from "./schedule/plan.ts";
import { createJobHistory } from "./surface/job-history.ts";
import { outlineOf } from "./surface/outline.ts";
import { createRunner, runAssumed, type SurfaceRun } from "./surface/run.ts";
import { createTotaller, type JobResult, withoutDates } from "./totals/job-totals.ts";
import { balanceOf, habitBy } from "./units-told.ts";

export type { Checker, CheckerParts, CheckView } from "./checker.ts";

/** A memory for one analyst, whose checkers all have the same parts. */
export const createCheckMemory = (): Memory<CheckView> => createMemory(outlineOf, BY_OUTLINES);

/** See `outlineOf`. */
const BY_OUTLINES: ReadonlySet<keyof CheckView> = new Set([
  "isContinued",
  "earlier",
  "comesAfterItself",
  "leadsBack",
  "hasSurface",
] as const);

/** Without a memory among the parts everything is worked out anew. */
export function createChecker(program: Program, given: Partial<CheckerParts> = {}): Checker {
  const parts: CheckerParts = { ...USUAL_PARTS, ...given };
  const mayRepeat = memo((sight: Sight) => repeatsNamesIn(program, sight, remembered));
  const sights = memo((file: FileId): Sight => {
    const { sight, ownSight } = useGraph(program);
    const seen = sight(file);
    return mayRepeat(seen) ? ownSight(file) : seen;
  });
  const scopes = memo((file: FileId) => {
    const { owner, files } = sights(file);
    return remembered.scopeOf(owner, () => scopeOf(program, files));
  });
  const historyIn = memo(createJobHistory);
  const histories = (file: FileId) => historyIn(scopes(file));
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
  const filesOf = memo((shop: Shop) => filesWithJobsIn(program, shop, remembered));
  const jobsIn = (shop: Shop, file: FileId): readonly Job[] => jobsInShop(program, scopes, shop, file);
  const remembered = parts.memory?.open(program, view) ?? anew(view);
  const runner = createRunner({
    scopeOf: scopes,
    modelsOf: (file) => {
      const found = program.files.get(file);
      return found ? modelsOf(found) : [];
    },
    sightOf: sights,
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
    filesOf,
    jobsIn: (shop, file) => jobsIn(shop, file).filter((job) => refused(file).get(job) === undefined),
  });
  const runOf = outcomes(runner.assumed);
  const refused = (file: FileId): ReadonlyMap<Recipe | Job, TooLarge> => work.sized.now(file).refused;
  const assumed = outcomes((recipe: Recipe) => {
    admit(refused(recipe.file).get(recipe));
    return valueIn(runOf(recipe));
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
    const inRoom = filesOf(shop).flatMap((file) => jobsIn(shop, file));
    const results = inRoom.flatMap((job) => soundIn(totals(job)) ?? []);
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
  /** The jobs of other files that share the shops of these jobs of a file. */
  const inSameShops = (file: FileId, own: readonly Job[]): readonly Job[] => {
    const shopOf = (row: number): string | undefined => own[row]!.start && own[row]!.shop?.name;
    const owner = { file, declaration: "" };
    const named = drained(remembered.rows("shops of jobs", owner, [own], shopOf));
    return distinct(named).flatMap((name) => {
      const shop = scopes(file).shops.get(name);
      const others = shop ? filesOf(shop).filter((other) => other !== file) : [];
      return others.flatMap((other) => jobsIn(shop!, other));
    });
  };
  const jobs = outcomes((job: Job) => promised(withAir(valueIn(totals(job)), roomOf, remembered)));
  const isKnown = (job: Job): boolean => {
    const outcome = jobs.known().get(job);
    return outcome !== undefined && "value" in outcome;
  };
  const countOfUnknown = countUnknown(program, isKnown, () => jobs.known().size);
  const assumedAtHand = outcomes(runner.assumed);
  /** By itself: neither its file's bounds nor the air of others in its room are looked at, where they are not known. */
  const atHand = outcomes((job: Job) => {
    admit(jobTooLarge(jobWork(runner.job(job))));
    return promised(withAir(totaller.atHand(job), (shop) => rooms.get(shop), remembered));
  });
  // Asked for every run and job on every edit; what people set does not change while a checker is there.
  const unitsOf = memo(
    (file: FileId) => parts.units?.(file) ?? habitBy((each) => unitBalance(each, remembered), program, file),
  );
  const judge = judgeBy(parts.rules, unitsOf);
  const isAllowed = (rule: string, place: Place): boolean => {
    const file = program.files.get(place.file);
    return file !== undefined && isAllowedAt(file, rule, place);
  };
  const isOff = (rule: string, { file }: Place): boolean => parts.isOff?.(file, rule) === true;
  /** What a comment does not allow; a rule that the project has switched off is answered for, too. */
  const openVoids = (runs: readonly SurfaceRun[]): readonly DateVoid[] =>
    dateVoids(runs, judge, (rule, place) => isOff(rule, place) || isAllowed(rule, place));
  const uncheckedOf = ({ runs }: JobResult): readonly DateVoid[] =>
    parts.isOff === undefined
      ? []
      : dateVoids(runs, judge, (rule, place) => !isOff(rule, place) || isAllowed(rule, place));
  const earlierOf = ({ file, after }: Job): Job | undefined => after && scopes(file).jobs.get(after.job);
  const voidBefore = firstBefore(earlierOf, (job: Job) => {
    const [first] = openVoids(soundIn(outcomeOf(() => runner.job(job))) ?? []);
    return first && { job, rule: first.rule };
  });
  /** Its own, or else those of the jobs that it comes after: it begins when they have ended. */
  const voidsOf = ({ job, runs }: JobResult): readonly DateVoid[] => {
    const own = openVoids(runs);
    const before = own.length === 0 ? voidBefore(job) : undefined;
    if (!before) return own;
    const reason = t`job \`${before.job.name}\` before it has no date`;
    return [{ rule: before.rule, reason, brief: t`the job before has no date`, causes: [] }];
  };
  /** Whether a rule has something to say that keeps dates from being promised, whether or not it is allowed. */
  const mayBeVoid = ({ job, runs }: JobResult): boolean =>
    job.after !== undefined || dateVoids(runs, judge, () => false).length > 0;
  /** Why no date can be promised, or else what nobody has looked at for it; `key` is equal for equal reasons. */
  const promisesOf = (result: JobResult) => {
    const voids = voidsOf(result);
    const unchecked = voids.length === 0 ? uncheckedOf(result) : [];
    // Of most jobs nothing is to be said.
    const key = voids.length + unchecked.length === 0 ? "" : JSON.stringify([voids, unchecked]);
    return { voids, unchecked, key };
  };
  /** Without dates where none can be promised, or with what nobody has looked at for them. */
  const promised = (result: JobResult): JobResult => {
    const { voids, unchecked, key } = promisesOf(result);
    if (key === "") return result;
    return remembered.recall("without dates", result.job, [result, key], () =>
      voids.length === 0 ? { ...result, unchecked } : withoutDates(result, voids),
    );
  };
  const namesOfEach = memo((file: ProgramFile) => namesIn(file, resolutions, remembered));
  const factsOf = memo((result: JobResult) => jobFacts(checker, remembered, result));
  const work = createFileWork({
    program,
    remembered,
    runner,
    totaller,
    namesIn: namesOfEach,
    runs: runOf,
    paired,
    totals,
    results: jobs,
    finished: (result) => promised(withAir(result, roomOf, remembered)),
    mayBeVoid,
    promisesOf: (result) => promisesOf(result).key,
    roomOf,
    factsOf,
    judge,
    unitsOf,
    inSameShops,
  });
  const names = memo((file: FileId) => {
    const found = program.files.get(file);
    if (!found) return [];
    return checkNames(program, found, work.names.now(file), namesOfEach(found), mayRepeat(sights(file)));
  });
  /** In the order in which `fileFindings` needs them; what fails here fails there again, and is named there. */
  function* steps(file: FileId): Generator<void> {
    if (!program.files.has(file) || program.absent.has(file)) return;
    yield* work.names.steps(file);
    yield* work.worked.steps(file);
  }
  const checker: Checker = {
    program,
    ...(parts.units === undefined ? {} : { units: parts.units }),
    scope: scopes,
    resolution: (file, declaration) => resolutions.of(file, declaration, remembered),
    steps,
    assumedAtHand: (recipe) => soundIn(assumedAtHand(recipe)),
    jobsAtHand: (file, most, wanted) => {
      const all = jobsOf(program, file);
      // Of few jobs the air of their rooms is soon known as well.
      if (countOfUnknown() <= most)
        return { results: all.flatMap((job) => soundIn(jobs(job)) ?? []), left: 0 };
      const rest = all.filter((job) => !isKnown(job));
      const taken = new Set([...rest.filter(wanted), ...rest].slice(0, most));
      const results = all.flatMap(
        (job) => soundIn(isKnown(job) ? jobs(job) : taken.has(job) ? atHand(job) : NOT_AT_HAND) ?? [],
      );
      return { results, left: rest.length - taken.size };
    },
    awaitsPlans: (file) =>
      (work.worked.known(file)?.results ?? jobsOf(program, file).map(jobs)).some((outcome) => {
        const result = soundIn(outcome);
        if (!result) return false;
        if (awaits(result)) return true;
        const earlier = result.job.after && earlierJob(checker, result.job);
        return earlier !== undefined && awaits(earlier);
      }),
    findings: memo((file: FileId) =>
      fileFindings(checker, { names, worked: work.worked.now, judge, parts }, file),
    ),
    jobs: memo((file: FileId) => jobsOf(program, file).flatMap((job) => checker.jobIfSound(job) ?? [])),
    job: (job) => valueIn(jobs(job)),
    alone: (job) => {
      admit(refused(job.file).get(job));
      return promised(totaller.alone(job));
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

/** The files whose jobs may be done in a shop, in their order. */
function filesWithJobsIn(program: Program, shop: Shop, remembered: Remembered<CheckView>): readonly FileId[] {
  const leading = remembered.leadingTo(shop.file);
  // Most shops are seen by their own file alone, and then the others need not be gone through.
  if (leading?.size === 1) return [...leading];
  return [...program.files.keys()].filter((file) => leading?.has(file) !== false);
}

/** Jobs of a file that are done in this shop, on dates that are known. */
const jobsInShop = (
  program: Program,
  scopes: (file: FileId) => Scope,
  shop: Shop,
  file: FileId,
): readonly Job[] =>
  jobsOf(program, file).filter(
    (job) =>
      job.shop?.name === shop.name && job.start !== undefined && scopes(file).shops.get(shop.name) === shop,
  );

/** The same as for another program where no declaration has changed its units. */
function unitBalance({ id, declarations }: ProgramFile, remembered: Remembered<CheckView>): number {
  const bodies = declarations.map(({ tree }) => tree.body);
  const owner = { file: id, declaration: "" };
  return sumIn(drained(remembered.rows("units", owner, [bodies], (row) => balanceOf(bodies[row]!))));
}

const sumIn = onceFor((all: readonly Outcome<number>[]): number =>
  all.reduce((sum, each) => sum + valueIn(each), 0),
);

const awaits = ({ awaitsAir, schedule }: JobResult): boolean =>
  awaitsAir === true || isBeingPlanned(schedule);

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

/** Whether something of one kind and name is declared twice among these files; only their outlines count. */
const repeatsNamesIn = (
  program: Program,
  { owner, files }: Sight,
  remembered: Remembered<CheckView>,
): boolean =>
  remembered.recall("repeated names", { file: owner, declaration: "" }, remembered.outlines(files), () =>
    repeatsNames(program, files),
  );

/** Each name of a list once, whatever it is of; looked for once a list. */
const distinct = onceFor((all: readonly Outcome<string | undefined>[]): readonly string[] => [
  ...new Set(all.flatMap((outcome) => soundIn(outcome) ?? [])),
]);

/** Every declaration is asked twice, by the steps and by the findings. */
const namesIn = (file: ProgramFile, resolutions: Resolutions, remembered: Remembered<CheckView>): NamesIn => {
  const withAll = memo((declaration: ProgramDeclaration) => find(declaration, MOST_SUGGESTIONS));
  const find: NamesIn = (declaration, suggestions) => {
    const query = suggestions === 0 ? "names without suggestions" : "names";
    const owner = ownerOf(file.id, declaration);
    const work = (asking: Asking<CheckView>): DeclarationNames => {
      const resolution = resolutions.of(file.id, declaration, asking);
      return namesInDeclaration(file.id, declaration, resolution, askingScope(asking, file.id), suggestions);
    };
    return remembered.recall(query, owner, [declaration.lowered, suggestions], work, isAsSound);
  };
  return (declaration, suggestions) =>
    suggestions === MOST_SUGGESTIONS ? withAll(declaration) : find(declaration, suggestions);
};

/** Of most declarations nothing is said, and then an edit leaves the list of them as it was. */
const isAsSound = (before: DeclarationNames, now: DeclarationNames): boolean =>
  before.findings.length + now.findings.length === 0 &&
  before.unknown === now.unknown &&
  isSameList(before.files, now.files);

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

function admit(refusal: TooLarge | undefined): void {
  if (refusal) throw refusal;
}

/**
 * Counts the jobs of all files that are not known yet. What is known stays so: only those left at the last count are
 * looked at, and only when more have become known, since this is asked for each of many files.
 */
function countUnknown(
  program: Program,
  isKnown: (job: Job) => boolean,
  knownSize: () => number,
): () => number {
  let left: readonly Job[] | undefined;
  let counted = -1;
  return () => {
    const size = knownSize();
    if (!left || size !== counted) {
      left = (left ?? [...program.files.keys()].flatMap((file) => jobsOf(program, file))).filter(
        (job) => !isKnown(job),
      );
      counted = size;
    }
    return left.length;
  };
}

const NOT_AT_HAND: Outcome<never> = { error: undefined };
