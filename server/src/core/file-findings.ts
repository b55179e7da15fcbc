/**
 * Puts the findings of a file together: what the reading of its text found, what its names come to, and what the rules say
 * of its recipes and jobs, without what its comments allow.
 */
import { t } from "../../../grammar/src/translate.ts";
import type { StrayPiece } from "../../../grammar/src/tree.ts";
import { absoluteSpan } from "../../../grammar/src/walk.ts";
import { cutsOf, notChecked, TooLarge, withinFindings } from "./budget.ts";
import { type Checker, type CheckerParts, type CheckView, jobsOf, recipesOf } from "./checker.ts";
import type { WorkedFile } from "./file-work.ts";
import { type Finding, joinedText } from "./findings.ts";
import { attempt, type Fault, fileStart, internalErrors } from "./internal-error.ts";
import { findingBy, findingIn } from "./language-findings.ts";
import type { Remembered } from "./memory/memory.ts";
import type { Job, LoweredDeclaration, Recipe } from "./model/model.ts";
import type { Program, ProgramDeclaration, ProgramFile } from "./model/program.ts";
import { onceFor } from "./once.ts";
import { withoutConsequences } from "./one-mistake.ts";
import { type Outcome, soundIn, valueIn } from "./outcome.ts";
import { type FileId, type Place, placeKey } from "./place.ts";
import {
  type JobFacts,
  type Judge,
  type Judgement,
  outdoorsOnly,
  type RuleFindings,
  runRules,
} from "./rules/engine.ts";
import { languageSeverity } from "./rules/registry.ts";
import { applySuppressions } from "./rules/suppressions.ts";
import type { SurfaceRun } from "./surface/run.ts";
import type { JobResult } from "./totals/job-totals.ts";

/** What the findings of a file are put together with, beside the checker. */
export interface Workshop {
  readonly names: (file: FileId) => readonly Finding[];
  readonly worked: (file: FileId) => WorkedFile;
  readonly judge: Judge;
  readonly parts: CheckerParts;
}

export function fileFindings(checker: Checker, shop: Workshop, file: FileId): readonly Finding[] {
  const { parts } = shop;
  const found = checker.program.files.get(file);
  if (!found) return [];
  const unread = checker.program.absent.get(file);
  if (unread !== undefined) return [notChecked(fileStart(file), t`This file`, unread)];
  const faults: Fault[] = [...found.faults];
  const start = fileStart(file);
  const findings = attempt(
    faults,
    { part: t`The check of this file`, place: start },
    () => {
      const named = attempt(
        faults,
        { part: t`The check of names`, place: start },
        () => shop.names(file),
        [],
      );
      const language = withoutConsequences(onePerPlace([...readFindings(found), ...named]), found);
      const worked = shop.worked(file);
      const trade = tradeFindings(checker, shop, worked, file);
      faults.push(...faultsOfWork(checker, worked, file), ...trade.faults);
      const all = [
        ...language,
        ...cutsOf(worked.odd),
        ...cycleFindings(worked.odd, file),
        ...loneRecipes(worked.lone),
        ...trade.findings,
      ];
      return attempt(
        faults,
        { part: t`The reading of \`# allow\` comments`, place: start },
        () => applySuppressions(found, all, checker.awaitsPlans(file)),
        all,
      );
    },
    undefined,
  );
  // Where the check as a whole has failed, what does not depend on it is said all the same.
  const sound = findings ?? readFindings(found).filter(({ rule }) => rule === "syntax");
  const large = faults.flatMap(({ part, place, error }) =>
    error instanceof TooLarge ? [notChecked(place, part, error.message)] : [],
  );
  const own = faults.filter(({ error }) => !(error instanceof TooLarge));
  for (const fault of own) parts.onFault(fault);
  return withinFindings([...sound, ...large, ...internalErrors(own)], start);
}

/** The jobs and recipes of a file that could not be worked out. */
function faultsOfWork(
  checker: Checker,
  { refused, assumed, paired, results }: WorkedFile,
  file: FileId,
): readonly Fault[] {
  if (refused.size === 0 && [assumed, paired, results].every(areSound)) return [];
  const faults: Fault[] = [];
  for (const job of jobsOf(checker.program, file))
    attempt(
      faults,
      { part: t`The job \`${job.name}\``, place: job.namePlace },
      () => checker.job(job),
      undefined,
    );
  for (const recipe of recipesOf(checker.program, file))
    attempt(
      faults,
      { part: t`The recipe \`${recipe.name}\``, place: recipe.namePlace },
      () => [checker.assumed(recipe), checker.paired(recipe)],
      undefined,
    );
  return faults;
}

/** Asked once a list, which most edits leave as it is. */
const areSound = onceFor((all: readonly Outcome<unknown>[]): boolean =>
  all.every((outcome) => "value" in outcome),
);

/** What the reading of a file has found, before anything is looked up elsewhere. */
function readFindings(found: ProgramFile): readonly Finding[] {
  const stray: Finding[] = [];
  for (const piece of found.tree.pieces)
    if (piece.kind === "stray") stray.push(...strayFindings(found.id, piece));
  const local: Finding[] = [];
  for (const declaration of found.declarations)
    if (declaration.lowered.findings.length > 0) local.push(...readIn(found.id, declaration));
  return [...stray, ...local];
}

function readIn(file: FileId, { tree, lowered }: ProgramDeclaration): readonly Finding[] {
  const known = READ.get(lowered) ?? lowered.findings.map((each) => findingIn(file, tree.key, each));
  READ.set(lowered, known);
  return known;
}

/** A declaration is read once for its file and key. */
const READ = new WeakMap<LoweredDeclaration, readonly Finding[]>();

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

/** Of lines that begin no declaration. */
const strayFindings = (file: FileId, piece: StrayPiece): readonly Finding[] =>
  piece.problems.map((problem) =>
    findingBy((span) => ({ file, declaration: "", span: absoluteSpan(piece, span) }), {
      rule: "syntax",
      ...problem,
    }),
  );

/** `follow` lines that lead back to their own recipe. */
function cycleFindings(runs: readonly SurfaceRun[], file: FileId): readonly Finding[] {
  const seen = new Set<string>();
  return runs.flatMap((run) =>
    run.cycles.flatMap((cycle): readonly Finding[] => {
      // The last line of this file on the way round, rather one that names the next recipe than one that was given it.
      const isHere = (line: (typeof cycle)[number]): boolean => line.place.file === file;
      const line = cycle.findLast((each) => isHere(each) && !each.isParameter) ?? cycle.findLast(isHere);
      const place = line?.place;
      const key = `${place?.declaration} ${place?.span.start}`;
      if (place === undefined || seen.has(key)) return [];
      seen.add(key);
      return [
        {
          rule: "follow-cycle",
          severity: languageSeverity("follow-cycle"),
          place,
          headline: t`Recipe cycle: this line makes the recipe follow itself`,
          why: t`A recipe cannot follow itself, not even by way of others.`,
          remedy: t`Take this line out, or name another recipe.`,
          related: [],
          fixes: [],
        },
      ];
    }),
  );
}

/** Recipes that no job applies, beside pieces that no job names, where it is not clear which is meant for which. */
const loneRecipes = (recipes: readonly Recipe[]): readonly Finding[] =>
  recipes.map((recipe) => ({
    rule: "recipe-without-job",
    severity: languageSeverity("recipe-without-job"),
    place: recipe.namePlace,
    headline: t`No job applies this recipe, so it is checked without a piece`,
    why: t`It is not clear which surfaces it is for, so nothing is said about their wood, wear, age and old finish.`,
    remedy: t`Write a job that names a piece, and in it \`apply ${recipe.name} to\` with the surfaces.`,
    related: [],
    fixes: [],
  }));

function tradeFindings(
  checker: Checker,
  { judge }: Workshop,
  { assumed, results, judged }: WorkedFile,
  file: FileId,
): RuleFindings {
  const isElsewhere = (checker.program.files.get(file)?.uses.length ?? 0) > 0;
  const elsewhere = isElsewhere
    ? recipesElsewhere(checker.program, soundOnes(assumed), soundOnes(results))
    : [];
  return runRules({
    assumed: tellingOnes(judged.assumed),
    paired: judged.paired.map(valueIn),
    // Of a job that could not be worked out that is said; what fails with the others concerns the file.
    jobs: areSound(judged.jobs)
      ? tellingOnes(judged.jobs)
      : judged.jobs.flatMap((outcome, row) => ("value" in results[row]! ? [valueIn(outcome)] : [])),
    elsewhere: elsewhere.flatMap((recipe) => {
      const run = checker.assumedIfSound(recipe);
      return run ? [judge.run(run)] : [];
    }),
    outdoors: areOutdoors(results)
      ? outdoorsOnly(
          soundOnes(assumed),
          soundOnes(results).flatMap((job) => job.runs),
        )
      : NOWHERE,
  });
}

/** Most of a file has nothing to be said of; looked for once a list, which most edits leave as it is. */
const tellingOnes = onceFor((all: readonly Outcome<Judgement>[]): readonly Judgement[] =>
  soundOnes(all).filter(({ drafts, faults }) => drafts.length + faults.length > 0),
);

const areOutdoors = (results: readonly Outcome<JobResult>[]): boolean =>
  results.some((outcome) => soundIn(outcome)?.shop?.outdoors);

const NOWHERE: ReadonlySet<string> = new Set();

const soundOnes = <T>(outcomes: readonly Outcome<T>[]): readonly T[] =>
  outcomes.flatMap((outcome) => ("value" in outcome ? [outcome.value] : []));

/** Recipes of other files that these runs lead through: what holds of them always is said in their own files. */
function recipesElsewhere(
  program: Program,
  assumed: readonly SurfaceRun[],
  jobs: readonly JobResult[],
): readonly Recipe[] {
  const found = new Map<string, Recipe>();
  const look = (run: SurfaceRun): void => {
    for (const place of declarationsElsewhere(run)) {
      const key = `${place.file}\u0000${place.declaration}`;
      if (found.has(key)) continue;
      const model = program.files.get(place.file)?.byKey.get(place.declaration)?.lowered.model;
      if (model?.kind === "recipe") found.set(key, model);
    }
  };
  assumed.forEach(look);
  for (const { runs } of jobs) runs.forEach(look);
  return [...found.values()];
}

/** One place in each declaration of other files that a run leads through. */
const declarationsElsewhere = onceFor(({ owner, moments }: SurfaceRun): readonly Place[] => {
  const places = new Map<string, Place>();
  for (const { action } of moments)
    for (const place of action.frames)
      if (place.file !== owner.file) places.set(`${place.file}\u0000${place.declaration}`, place);
  return [...places.values()];
});

export function jobFacts(checker: Checker, remembered: Remembered<CheckView>, result: JobResult): JobFacts {
  const { job } = result;
  const before = earlierJob(checker, job);
  const finish = before && asPlanned(before).totals.finish;
  const { totals, schedule } = asPlanned(result);
  return remembered.recall("facts", job, [result, before?.job, finish], () => ({
    job,
    runs: result.runs,
    totals,
    schedule,
    ...(result.record ? { goesOnAt: result.record.from } : {}),
    ...(before && finish !== undefined ? { earlier: { job: before.job, finish } } : {}),
    needs: new Map(
      result.needs.map(({ material, litres = 0, onHand, draws }) => [
        material,
        { material, litres, onHand, draws },
      ]),
    ),
    ...(result.air ? { air: result.air } : {}),
  }));
}

/** Rules look at the plan that is behind dates which cannot be promised: a job that would be late is late. */
const asPlanned = (result: JobResult): JobResult => result.voided?.planned ?? result;

/** What is known of the job that a job comes after. */
export function earlierJob(checker: Checker, job: Job): JobResult | undefined {
  const earlier = job.after && checker.scope(job.file).jobs.get(job.after.job);
  return earlier && checker.jobIfSound(earlier);
}
