/**
 * Puts the findings of a file together: what the reading of its text found, what its names come to, and what the rules say
 * of its recipes and jobs, without what its comments allow.
 */
import type { StrayPiece } from "../../../grammar/src/tree.ts";
import { absoluteSpan } from "../../../grammar/src/walk.ts";
import { cutsOf, notChecked, TooLarge, withinFindings } from "./budget.ts";
import { type Checker, type CheckerParts, type CheckView, jobsOf, recipesOf } from "./checker.ts";
import { type Finding, joinedText } from "./findings.ts";
import { attempt, type Fault, fileStart, internalErrors } from "./internal-error.ts";
import { findingBy, findingIn } from "./language-findings.ts";
import type { Remembered } from "./memory/memory.ts";
import type { Job, LoweredDeclaration, Recipe } from "./model/model.ts";
import { type Program, type ProgramDeclaration, type ProgramFile, reachableFiles } from "./model/program.ts";
import { withoutConsequences } from "./one-mistake.ts";
import { type FileId, placeKey } from "./place.ts";
import { type JobFacts, type RuleFindings, runRules } from "./rules/engine.ts";
import { languageSeverity } from "./rules/registry.ts";
import { applySuppressions } from "./rules/suppressions.ts";
import type { SurfaceRun } from "./surface/run.ts";
import type { JobResult } from "./totals/job-totals.ts";

/** What the findings of a file are put together with, beside the checker. */
export interface Workshop {
  readonly factsOf: (result: JobResult) => JobFacts;
  readonly names: (file: FileId) => readonly Finding[];
  readonly parts: CheckerParts;
}

export function fileFindings(checker: Checker, shop: Workshop, file: FileId): readonly Finding[] {
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
      const language = withoutConsequences(onePerPlace([...readFindings(found), ...named]), found);
      const trade = tradeFindings(checker, shop, file);
      faults.push(...faultsOfWork(checker, file), ...trade.faults);
      const cut = cutsOf(runsOf(checker, file));
      const all = [
        ...language,
        ...cut,
        ...cycleFindings(checker, file),
        ...loneRecipes(checker, file),
        ...trade.findings,
      ];
      return attempt(
        faults,
        { part: "The reading of `# allow` comments", place: start },
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
      () => [checker.assumed(recipe), checker.paired(recipe)],
      undefined,
    );
  return faults;
}

/** What the reading of a file has found, before anything is looked up elsewhere. */
function readFindings(found: ProgramFile): readonly Finding[] {
  const local = found.declarations.flatMap((declaration) => readIn(found.id, declaration));
  const stray = found.tree.pieces.flatMap((piece) =>
    piece.kind === "stray" ? strayFindings(found.id, piece) : [],
  );
  return [...stray, ...local];
}

function readIn(file: FileId, { tree, lowered }: ProgramDeclaration): readonly Finding[] {
  if (lowered.findings.length === 0) return [];
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

/** The runs of the recipes and jobs of a file. */
const runsOf = (checker: Checker, file: FileId): readonly SurfaceRun[] => [
  ...recipesOf(checker.program, file).flatMap((recipe) => [
    ...[checker.assumedIfSound(recipe)].filter((run) => run !== undefined),
    ...checker.pairedIfSound(recipe),
  ]),
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

/** Recipes that no job applies, beside pieces that no job names, where it is not clear which is meant for which. */
const loneRecipes = (checker: Checker, file: FileId): readonly Finding[] =>
  recipesOf(checker.program, file)
    .filter((recipe) => checker.meantFor(recipe)?.length === 0)
    .map((recipe) => ({
      rule: "recipe-without-job",
      severity: languageSeverity("recipe-without-job"),
      place: recipe.namePlace,
      headline: "No job applies this recipe, so it is checked without a piece",
      why: "It is not clear which surfaces it is for, so nothing is said about their wood, wear, age and old finish.",
      remedy: `Write a job that names a piece, and in it \`apply ${recipe.name} to\` with the surfaces.`,
      related: [],
      fixes: [],
    }));

function tradeFindings(checker: Checker, { factsOf, parts }: Workshop, file: FileId): RuleFindings {
  const recipes = recipesOf(checker.program, file);
  const results = checker.jobs(file);
  const jobs = results.map(factsOf);
  const assumed = recipes.flatMap((recipe) => checker.assumedIfSound(recipe) ?? []);
  const paired = recipes.flatMap((recipe) => checker.pairedIfSound(recipe));
  const elsewhere = recipesElsewhere(checker.program, file, [
    ...assumed,
    ...results.flatMap((result) => result.runs),
  ]);
  return runRules({
    rules: parts.rules,
    assumed,
    paired,
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

export function jobFacts(checker: Checker, remembered: Remembered<CheckView>, result: JobResult): JobFacts {
  const { job } = result;
  const before = earlierJob(checker, job);
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

/** What is known of the job that a job comes after. */
export function earlierJob(checker: Checker, job: Job): JobResult | undefined {
  const earlier = job.after && checker.scope(job.file).jobs.get(job.after.job);
  return earlier && checker.jobIfSound(earlier);
}
