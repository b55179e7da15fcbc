/**
 * Checks one file of a program: language errors, names, and the rules of the trade over all its recipes and jobs.
 *
 * A `Checker` belongs to one program and remembers scopes, runs and totals. Findings stand on lines of the file asked
 * for; the files it uses are read for their meaning, but their own findings are theirs.
 */

import type { StrayPiece } from "../../../grammar/src/tree.ts";
import type { Finding, Fix, Severity } from "./findings.ts";
import { checkNames, type FileNames, type PlacedFinding, placeFinding } from "./model/check-names.ts";
import type { Job, Recipe } from "./model/model.ts";
import { modelsOf, type Program, reachableFiles, type Scope, scopeOf } from "./model/program.ts";
import { type FileId, type Place, placeKey } from "./place.ts";
import { type JobFacts, runRules } from "./rules/engine.ts";
import { languageSeverity, TRADE_RULES } from "./rules/registry.ts";
import { applySuppressions } from "./rules/suppressions.ts";
import type { Planner } from "./schedule/remembered.ts";
import { schedule } from "./schedule/schedule.ts";
import { type AssumedRunner, createRunner, runAssumed, type SurfaceRun } from "./surface/run.ts";
import { createTotaller, type JobResult } from "./totals/job-totals.ts";

export interface Checker {
  readonly program: Program;
  scope(file: FileId): Scope;
  names(file: FileId): FileNames | undefined;
  findings(file: FileId): readonly Finding[];
  jobs(file: FileId): readonly JobResult[];
  job(job: Job): JobResult;
  assumed(recipe: Recipe): SurfaceRun;
}

/** What is kept from one program to the next: makers of plans and of runs that remember. */
export interface Memory {
  readonly plan: Planner;
  readonly assumed: AssumedRunner;
}

/** Without a memory everything is worked out anew. */
export function createChecker(program: Program, { plan, assumed: run }: Memory = NO_MEMORY): Checker {
  const scopes = memo((file: FileId) => scopeOf(program, file));
  const runner = createRunner(scopes, run);
  const totaller = createTotaller(runner, scopes, plan);
  const assumed = memo((recipe: Recipe) => runner.assumed(recipe));
  const names = memo((file: FileId) => {
    const found = program.files.get(file);
    return found && checkNames(program, found, scopes(file));
  });
  const checker: Checker = {
    program,
    scope: scopes,
    names,
    findings: memo((file: FileId) => fileFindings(checker, file)),
    jobs: memo((file: FileId) => jobsOf(program, file).map((job) => totaller.result(job))),
    job: (job) => totaller.result(job),
    assumed,
  };
  return checker;
}

const NO_MEMORY: Memory = { plan: schedule, assumed: runAssumed };

function memo<K, V>(compute: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    if (!known.has(key)) known.set(key, compute(key));
    return known.get(key)!;
  };
}

function jobsOf(program: Program, file: FileId): readonly Job[] {
  const found = program.files.get(file);
  return found ? modelsOf(found).filter((model): model is Job => model.kind === "job") : [];
}

function recipesOf(program: Program, file: FileId): readonly Recipe[] {
  const found = program.files.get(file);
  return found ? modelsOf(found).filter((model): model is Recipe => model.kind === "recipe") : [];
}

function fileFindings(checker: Checker, file: FileId): readonly Finding[] {
  const found = checker.program.files.get(file);
  if (!found) return [];
  const local = found.declarations.flatMap(({ tree, lowered }) =>
    lowered.findings.map((f) => placeFinding(file, tree.key, f)),
  );
  const stray = found.tree.pieces.flatMap((piece) =>
    piece.kind === "stray" ? strayFindings(file, piece) : [],
  );
  const named = checker.names(file)?.findings ?? [];
  const language = onePerPlace([...stray, ...local, ...named]).map(languageFinding);
  const all = [...language, ...cycleFindings(checker, file), ...tradeFindings(checker, file)];
  return applySuppressions(found, all);
}

/** What one rule has to say about one and the same place is one finding: a surface without shape and wood. */
function onePerPlace(findings: readonly PlacedFinding[]): readonly PlacedFinding[] {
  const merged = new Map<string, PlacedFinding>();
  for (const finding of findings) {
    const key = `${finding.rule}\u0000${placeKey(finding.place)}`;
    const before = merged.get(key);
    const said = before?.message.includes(finding.message);
    merged.set(
      key,
      before
        ? {
            ...before,
            message: said ? before.message : joined(before.message, finding.message),
            related: [...before.related, ...finding.related],
          }
        : finding,
    );
  }
  return [...merged.values()];
}

/** Messages of the grammar are clauses without a full stop, others are sentences. */
const joined = (first: string, second: string): string =>
  `${first}${/[.!?]$/.test(first) ? " " : "; "}${second}`;

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

function languageFinding(finding: PlacedFinding): Finding {
  const fixes: readonly Fix[] = finding.fix
    ? [
        {
          title: finding.fix.title,
          safe: false,
          edits: [{ place: finding.fix.place, text: finding.fix.text }],
        },
      ]
    : [];
  const severity: Severity = languageSeverity(finding.rule);
  return {
    rule: finding.rule,
    severity,
    place: finding.place,
    message: finding.message,
    related: finding.related,
    fixes,
  };
}

/** `follow` lines that lead back to their own recipe. */
function cycleFindings(checker: Checker, file: FileId): readonly Finding[] {
  const runs = [
    ...recipesOf(checker.program, file).map(checker.assumed),
    ...checker.jobs(file).flatMap((result) => result.runs),
  ];
  const seen = new Set<string>();
  return runs.flatMap((run) =>
    run.cycles.flatMap((cycle): readonly Finding[] => {
      // The last line of this file on the way round, rather one that names the next recipe than one that was given it.
      const here = cycle.filter((line) => line.place.file === file);
      const place = (here.findLast((line) => !line.isParameter) ?? here.at(-1))?.place;
      const key = `${place?.declaration} ${place?.span.start}`;
      if (place === undefined || seen.has(key)) return [];
      seen.add(key);
      const message =
        "This recipe comes round to itself here. A recipe cannot follow itself, not even by way of others: take this line out, or name another recipe.";
      return [
        {
          rule: "follow-cycle",
          severity: languageSeverity("follow-cycle"),
          place,
          message,
          related: [],
          fixes: [],
        },
      ];
    }),
  );
}

function tradeFindings(checker: Checker, file: FileId): readonly Finding[] {
  const recipes = recipesOf(checker.program, file);
  const results = checker.jobs(file);
  const jobs = results.map((result): JobFacts => jobFacts(checker, result));
  const assumed = recipes.map(checker.assumed);
  const elsewhere = recipesElsewhere(checker.program, file, [
    ...assumed,
    ...results.flatMap((result) => result.runs),
  ]);
  return runRules({
    rules: TRADE_RULES,
    assumed,
    assumedElsewhere: elsewhere.map(checker.assumed),
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

function jobFacts(checker: Checker, result: JobResult): JobFacts {
  const needs = new Map(
    result.needs.map((need) => [
      need.material,
      {
        material: need.material,
        litres: need.litres ?? 0,
        onHand: need.onHand,
        draws: need.draws,
      },
    ]),
  );
  const scope = checker.scope(result.job.file);
  const earlier = result.job.after && scope.jobs.get(result.job.after.job);
  return {
    job: result.job,
    runs: result.runs,
    scope,
    totals: result.totals,
    schedule: result.schedule,
    ...(earlier ? { earlier: { job: earlier, finish: checker.job(earlier).totals.finish } } : {}),
    needs,
  };
}
