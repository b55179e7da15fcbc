/**
 * Checks one file of a program: language errors, names, and the rules of the trade over all its recipes and jobs.
 *
 * A `Checker` belongs to one program and remembers scopes, runs and totals. Findings stand on lines of the file asked
 * for; the files it uses are read for their meaning, but their own findings are theirs. A part that fails costs its own
 * findings alone and leaves an `internal-error` in their place.
 */

import type { StrayPiece } from "../../../grammar/src/tree.ts";
import {
  beyondFile,
  cutsOf,
  jobTooLarge,
  jobWork,
  MOST_FILE_JOB_ACTIONS,
  MOST_FILE_PLAN_WORK,
  MOST_RECIPE_ACTIONS,
  notChecked,
  TooLarge,
  withinFindings,
} from "./budget.ts";
import { type Finding, type Fix, joinedText, type Severity, textOf, textOfSentences } from "./findings.ts";
import { datedReleases, isSameInRoom, type JobInRoom, jobAir, ownAir, timesOf } from "./fumes/job-air.ts";
import { type JobRelease, type RoomOfJobs, roomOfJobs } from "./fumes/room-of-jobs.ts";
import { attempt, type Fault, type FaultListener, fileStart, internalErrors } from "./internal-error.ts";
import {
  type Asking,
  anew,
  createMemory,
  type Memory,
  type Owner,
  type Remembered,
} from "./memory/memory.ts";
import {
  checkNames,
  isSettled,
  type NamesIn,
  namesInDeclaration,
  type PlacedFinding,
  placeFinding,
  repeatsNames,
  settledNames,
} from "./model/check-names.ts";
import { answerWith, jobGraph } from "./model/job-graph.ts";
import type { Job, LoweredDeclaration, Piece, Recipe, Shop } from "./model/model.ts";
import {
  modelsOf,
  type Program,
  type ProgramDeclaration,
  type ProgramFile,
  reachableFiles,
  type Scope,
  scopeOf,
} from "./model/program.ts";
import { memo, onceFor } from "./once.ts";
import { type FileId, type Place, placeKey } from "./place.ts";
import { createResolutions } from "./resolution/resolutions.ts";
import { type Resolution, resolve } from "./resolution/resolve.ts";
import { type JobFacts, type RuleFindings, runRules } from "./rules/engine.ts";
import { languageSeverity, TRADE_RULES } from "./rules/registry.ts";
import type { TradeRule } from "./rules/rule.ts";
import { applySuppressions } from "./rules/suppressions.ts";
import type { Planner } from "./schedule/plan-cache.ts";
import { schedule } from "./schedule/schedule.ts";
import { createJobHistory } from "./surface/job-history.ts";
import { outlineOf } from "./surface/outline.ts";
import {
  type AssumedRunner,
  createRunner,
  type RunView,
  runAssumed,
  type SurfaceRun,
} from "./surface/run.ts";
import { createTotaller, type JobResult } from "./totals/job-totals.ts";

export interface Checker {
  readonly program: Program;
  scope(file: FileId): Scope;
  /** What a declaration of a file means in its scope. */
  resolution(file: FileId, declaration: ProgramDeclaration): Resolution;
  /** Never throws. */
  findings(file: FileId): readonly Finding[];
  /** Without those that could not be worked out for a fault in this program; `findings` names them. */
  jobs(file: FileId): readonly JobResult[];
  /** Throws where a fault in this program keeps the job from being worked out. */
  job(job: Job): JobResult;
  /** Undefined where a fault in this program keeps the job from being worked out. */
  jobIfSound(job: Job): JobResult | undefined;
  /** Throws where a fault in this program keeps the recipe from being run. */
  assumed(recipe: Recipe): SurfaceRun;
  /** Undefined where a fault in this program keeps the recipe from being run. */
  assumedIfSound(recipe: Recipe): SurfaceRun | undefined;
}

/** What remembered work asks of a program. */
export interface CheckView extends RunView {
  /** See `JobGraph`. */
  readonly earlier: (file: FileId, job: Job) => readonly string[];
  readonly comesAfterItself: (file: FileId, job: Job) => boolean;
  readonly leadsBack: (file: FileId, job: Job, piece: Piece) => boolean;
  readonly hasSurface: (file: FileId, job: Job, surface: string) => boolean;
}

/** A memory for one analyst, whose checkers all have the same parts. */
export const createCheckMemory = (): Memory<CheckView> => createMemory(outlineOf);

/** What a checker works with. Makers of plans and of runs may remember what they made for an earlier program. */
export interface CheckerParts {
  /** Keeps what was worked out for an earlier program. */
  readonly memory?: Memory<CheckView>;
  readonly plan: Planner;
  readonly assumed: AssumedRunner;
  readonly rules: readonly TradeRule[];
  /** Told of every fault in this program. */
  readonly onFault: FaultListener;
}

/** Without a memory among the parts everything is worked out anew. */
export function createChecker(program: Program, given: Partial<CheckerParts> = {}): Checker {
  const parts: CheckerParts = { ...USUAL_PARTS, ...given };
  const scopes = memo((file: FileId) => remembered.scopeOf(file, () => scopeOf(program, file)));
  const histories = memo((file: FileId) => createJobHistory(scopes(file)));
  const resolutions = createResolutions(program, (file, declaration) =>
    remembered.recall("resolution", ownerOf(file, declaration), [declaration.lowered], (asking) =>
      resolve(file, declaration, asking.scopeOf(file)),
    ),
  );
  const view: CheckView = {
    scopeOf: scopes,
    resolvedRecipe: resolutions.recipe,
    resolvedJob: resolutions.job,
    nearest: (file, visited) => histories(file).nearest(visited),
    toldOf: (file, visited) => histories(file).toldOf(visited),
    isContinued: (file, surface) => runner.isContinued(file, surface),
    runs: (job) => runner.job(job),
    earlier: (file, job) => jobGraph(scopes(file)).earlier(job),
    comesAfterItself: (file, job) => jobGraph(scopes(file)).comesAfterItself(job),
    leadsBack: (file, job, piece) => jobGraph(scopes(file)).leadsBack(job, piece),
    hasSurface: (file, job, surface) => jobGraph(scopes(file)).hasSurface(job, surface),
  };
  const remembered = parts.memory?.open(program, view) ?? anew(view);
  const runner = createRunner({
    scopeOf: scopes,
    filesSeenFrom: (file) => reachableFiles(program, file),
    remembered,
    history: histories,
    assumed: parts.assumed,
  });
  const totaller = createTotaller({ runner, scopeOf: scopes, remembered, plan: parts.plan });
  const sizes: Sizes = {
    recipe: (recipe) => runner.assumed(recipe).moments.length,
    job: (job) => jobWork(runner.job(job)),
  };
  const refused = memo((file: FileId) => beyondBudget(program, file, sizes));
  const assumed = outcomes((recipe: Recipe) => {
    admit(refused(recipe.file).get(recipe));
    return runner.assumed(recipe);
  });
  const totals = outcomes((job: Job) => {
    admit(refused(job.file).get(job));
    return totaller.result(job);
  });
  const rooms = memo((shop: Shop) => {
    const releases = jobsInShop(program, scopes, shop).flatMap((job) => {
      const result = soundIn(totals(job));
      return result ? [releasesIn(result, remembered)] : [];
    });
    return remembered.recall("room", shop, [shop, ...releases], () => roomOfJobs(shop, releases));
  });
  const jobs = outcomes((job: Job) => withAir(valueIn(totals(job)), rooms, remembered));
  const names = memo((file: FileId) => {
    const found = program.files.get(file);
    return found ? namesOf(program, found, resolutions.of, remembered) : [];
  });
  const checker: Checker = {
    program,
    scope: scopes,
    resolution: resolutions.of,
    findings: memo((file: FileId) => fileFindings(checker, { remembered, names, parts }, file)),
    jobs: memo((file: FileId) => jobsOf(program, file).flatMap((job) => checker.jobIfSound(job) ?? [])),
    job: (job) => valueIn(jobs(job)),
    jobIfSound: (job) => soundIn(jobs(job)),
    assumed: (recipe) => valueIn(assumed(recipe)),
    assumedIfSound: (recipe) => soundIn(assumed(recipe)),
  };
  return checker;
}

/** Jobs of all files that are done in this shop, on dates that are known. */
function jobsInShop(program: Program, scopes: (file: FileId) => Scope, shop: Shop): readonly Job[] {
  return [...program.files.keys()].flatMap((file) =>
    jobsOf(program, file).filter(
      (job) =>
        job.shop?.name === shop.name && job.start !== undefined && scopes(file).shops.get(shop.name) === shop,
    ),
  );
}

const asInRoom = ({ job, draws, schedule }: JobResult): JobInRoom => ({ name: job.name, draws, schedule });

function withAir(
  result: JobResult,
  rooms: (shop: Shop) => RoomOfJobs,
  remembered: Remembered<CheckView>,
): JobResult {
  const { shop, job } = result;
  if (!shop?.room) return result;
  const room = job.start === undefined ? undefined : rooms(shop);
  const own = remembered.recall("own air", job, [result, room !== undefined], () =>
    ownAir(asInRoom(result), shop, room !== undefined),
  );
  if (!own) return result;
  return remembered.recall("air in the room", job, [own, room], () => {
    const times = room ? timesOf(own, room) : [];
    return remembered.recall("air", job, [own, ...times], () => ({ ...result, air: jobAir(own, times) }));
  });
}

/** The same object as long as the job gives off the same. */
const releasesIn = (result: JobResult, remembered: Remembered<CheckView>): readonly JobRelease[] =>
  remembered.recall("releases", result.job, [result], () => datedReleases(asInRoom(result)), isSameInRoom);

const ownerOf = (file: FileId, { tree, lowered }: ProgramDeclaration): Owner =>
  lowered.model ?? { file, declaration: tree.key };

/** What the names of a file come to. */
function namesOf(
  program: Program,
  file: ProgramFile,
  resolutionOf: Checker["resolution"],
  remembered: Remembered<CheckView>,
): readonly PlacedFinding[] {
  const namesIn: NamesIn = (declaration, suggestions) => {
    const resolution = resolutionOf(file.id, declaration);
    if (isSettled(declaration, resolution)) return settledNames(file.id, declaration, resolution);
    const query = suggestions === 0 ? "names without suggestions" : "names";
    const owner = ownerOf(file.id, declaration);
    return remembered.recall(query, owner, [resolution, suggestions], (asking) =>
      namesInDeclaration(file.id, declaration, resolution, askingScope(asking, file.id), suggestions),
    );
  };
  const seen = reachableFiles(program, file.id);
  const owner = { file: file.id, declaration: "" };
  const mayRepeat = remembered.recall("repeated names", owner, remembered.outlines(seen), () =>
    repeatsNames(program, seen),
  );
  return checkNames(program, file, namesIn, mayRepeat);
}

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
  plan: schedule,
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

/** The recipes and jobs of a file that are not worked out: those that are too large, and those beyond the file's bounds. */
function beyondBudget(program: Program, file: FileId, sizes: Sizes): ReadonlyMap<Recipe | Job, TooLarge> {
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

function valueIn<T>(outcome: Outcome<T>): T {
  if ("error" in outcome) throw outcome.error;
  return outcome.value;
}

const soundIn = <T>(outcome: Outcome<T>): T | undefined => ("error" in outcome ? undefined : outcome.value);

function jobsOf(program: Program, file: FileId): readonly Job[] {
  const found = program.files.get(file);
  return found ? modelsOf(found).filter((model): model is Job => model.kind === "job") : [];
}

function recipesOf(program: Program, file: FileId): readonly Recipe[] {
  const found = program.files.get(file);
  return found ? modelsOf(found).filter((model): model is Recipe => model.kind === "recipe") : [];
}

/** What the findings of a file are put together with, beside the checker. */
interface Workshop {
  readonly remembered: Remembered<CheckView>;
  readonly names: (file: FileId) => readonly PlacedFinding[];
  readonly parts: CheckerParts;
}

function fileFindings(checker: Checker, shop: Workshop, file: FileId): readonly Finding[] {
  const { parts } = shop;
  const found = checker.program.files.get(file);
  if (!found) return [];
  const unread = checker.program.absent.get(file);
  if (unread !== undefined) return [notChecked(fileStart(file), "This file", unread)];
  const faults: Fault[] = [...found.faults];
  const start = fileStart(file);
  const findings = attempt(
    faults,
    { part: "The check of this file", place: start },
    () => {
      const named = attempt(faults, { part: "The check of names", place: start }, () => shop.names(file), []);
      const language = onePerPlace([...readFindings(found), ...named].map(languageFinding));
      const trade = tradeFindings(checker, shop, file);
      faults.push(...faultsOfWork(checker, file), ...trade.faults);
      const cut = cutsOf(runsOf(checker, file));
      const all = [...language, ...cut, ...cycleFindings(checker, file), ...trade.findings];
      return attempt(
        faults,
        { part: "The reading of `# allow` comments", place: start },
        () => applySuppressions(found, all),
        all,
      );
    },
    undefined,
  );
  // Where the check as a whole has failed, what does not depend on it is said all the same.
  const sound =
    findings ??
    readFindings(found)
      .filter(({ rule }) => rule === "syntax")
      .map(languageFinding);
  const large = faults.flatMap(({ part, place, error }) =>
    error instanceof TooLarge ? [notChecked(place, part, error.message)] : [],
  );
  const own = faults.filter(({ error }) => !(error instanceof TooLarge));
  for (const fault of own) parts.onFault(fault);
  return withinFindings([...sound, ...large, ...internalErrors(own)], start);
}

/** The jobs and recipes of a file that could not be worked out. */
function faultsOfWork(checker: Checker, file: FileId): readonly Fault[] {
  const faults: Fault[] = [];
  for (const job of jobsOf(checker.program, file))
    attempt(
      faults,
      { part: `The job \`${job.name}\``, place: job.namePlace },
      () => checker.job(job),
      undefined,
    );
  for (const recipe of recipesOf(checker.program, file))
    attempt(
      faults,
      { part: `The recipe \`${recipe.name}\``, place: recipe.namePlace },
      () => checker.assumed(recipe),
      undefined,
    );
  return faults;
}

/** What the reading of a file has found, before anything is looked up elsewhere. */
function readFindings(found: ProgramFile): readonly PlacedFinding[] {
  const local = found.declarations.flatMap((declaration) => readIn(found.id, declaration));
  const stray = found.tree.pieces.flatMap((piece) =>
    piece.kind === "stray" ? strayFindings(found.id, piece) : [],
  );
  return [...stray, ...local];
}

function readIn(file: FileId, { tree, lowered }: ProgramDeclaration): readonly PlacedFinding[] {
  if (lowered.findings.length === 0) return [];
  const known = READ.get(lowered) ?? lowered.findings.map((each) => placeFinding(file, tree.key, each));
  READ.set(lowered, known);
  return known;
}

/** A declaration is read once for its file and key. */
const READ = new WeakMap<LoweredDeclaration, readonly PlacedFinding[]>();

/** What one rule has to say about one and the same place is one finding: a surface without shape and wood. */
function onePerPlace(findings: readonly Finding[]): readonly Finding[] {
  const merged = new Map<string, Finding>();
  for (const finding of findings) {
    const key = `${finding.rule}\u0000${placeKey(finding.place)}`;
    const before = merged.get(key);
    merged.set(
      key,
      before
        ? { ...before, ...joinedText(before, finding), related: [...before.related, ...finding.related] }
        : finding,
    );
  }
  return [...merged.values()];
}

function strayFindings(file: FileId, piece: StrayPiece): readonly PlacedFinding[] {
  return piece.problems.map((problem) => {
    const place: Place = {
      file,
      declaration: "",
      span: { start: piece.offset + problem.span.start, end: piece.offset + problem.span.end },
    };
    const mend = problem.mend && {
      title: problem.mend.title,
      place: {
        file,
        declaration: "",
        span: { start: piece.offset + problem.mend.span.start, end: piece.offset + problem.mend.span.end },
      },
      text: problem.mend.text,
    };
    return { rule: "syntax", message: problem.message, place, related: [], ...(mend ? { fix: mend } : {}) };
  });
}

const languageFinding = onceFor((finding: PlacedFinding): Finding => {
  const fixes: readonly Fix[] = finding.fix
    ? [
        {
          title: finding.fix.title,
          kind: "change",
          edits: [{ place: finding.fix.place, text: finding.fix.text }],
        },
      ]
    : [];
  const severity: Severity = languageSeverity(finding.rule);
  return {
    rule: finding.rule,
    severity,
    place: finding.place,
    // Only a fault in this program has lines, since it says what was thrown.
    ...(finding.message.includes("\n") ? textOf(finding.message) : textOfSentences(finding.message)),
    related: finding.related,
    fixes,
  };
});

/** The runs of the recipes and jobs of a file. */
const runsOf = (checker: Checker, file: FileId): readonly SurfaceRun[] => [
  ...recipesOf(checker.program, file).flatMap((recipe) => checker.assumedIfSound(recipe) ?? []),
  ...checker.jobs(file).flatMap((result) => result.runs),
];

/** `follow` lines that lead back to their own recipe. */
function cycleFindings(checker: Checker, file: FileId): readonly Finding[] {
  const seen = new Set<string>();
  return runsOf(checker, file).flatMap((run) =>
    run.cycles.flatMap((cycle): readonly Finding[] => {
      // The last line of this file on the way round, rather one that names the next recipe than one that was given it.
      const here = cycle.filter((line) => line.place.file === file);
      const place = (here.findLast((line) => !line.isParameter) ?? here.at(-1))?.place;
      const key = `${place?.declaration} ${place?.span.start}`;
      if (place === undefined || seen.has(key)) return [];
      seen.add(key);
      return [
        {
          rule: "follow-cycle",
          severity: languageSeverity("follow-cycle"),
          place,
          headline: "Recipe cycle: this line makes the recipe follow itself",
          why: "A recipe cannot follow itself, not even by way of others.",
          remedy: "Take this line out, or name another recipe.",
          related: [],
          fixes: [],
        },
      ];
    }),
  );
}

function tradeFindings(checker: Checker, { remembered, parts }: Workshop, file: FileId): RuleFindings {
  const recipes = recipesOf(checker.program, file);
  const results = checker.jobs(file);
  const jobs = results.map((result): JobFacts => jobFacts(checker, remembered, result));
  const assumed = recipes.flatMap((recipe) => checker.assumedIfSound(recipe) ?? []);
  const elsewhere = recipesElsewhere(checker.program, file, [
    ...assumed,
    ...results.flatMap((result) => result.runs),
  ]);
  return runRules({
    rules: parts.rules,
    assumed,
    assumedElsewhere: elsewhere.flatMap((recipe) => checker.assumedIfSound(recipe) ?? []),
    jobs,
  });
}

/** Recipes of other files that these runs lead through: what holds of them always is said in their own files. */
function recipesElsewhere(program: Program, file: FileId, runs: readonly SurfaceRun[]): readonly Recipe[] {
  if (reachableFiles(program, file).length === 1) return [];
  const found = new Map<string, Recipe>();
  for (const run of runs) {
    for (const { action } of run.moments) {
      for (const place of action.frames) {
        const key = `${place.file}\u0000${place.declaration}`;
        if (place.file === file || found.has(key)) continue;
        const model = program.files.get(place.file)?.byKey.get(place.declaration)?.lowered.model;
        if (model?.kind === "recipe") found.set(key, model);
      }
    }
  }
  return [...found.values()];
}

function jobFacts(checker: Checker, remembered: Remembered<CheckView>, result: JobResult): JobFacts {
  const { job } = result;
  const earlier = job.after && checker.scope(job.file).jobs.get(job.after.job);
  const before = earlier && checker.jobIfSound(earlier);
  const finish = before?.totals.finish;
  return remembered.recall("facts", job, [result, before?.job, finish], () => ({
    job,
    runs: result.runs,
    totals: result.totals,
    schedule: result.schedule,
    ...(before ? { earlier: { job: before.job, finish: before.totals.finish } } : {}),
    needs: new Map(
      result.needs.map(({ material, litres = 0, onHand, draws }) => [
        material,
        { material, litres, onHand, draws },
      ]),
    ),
    ...(result.air ? { air: result.air } : {}),
  }));
}
