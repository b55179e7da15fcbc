/**
 * How much of a file is worked out: bounds far beyond what is written for a bench, counted in actions, so that they are
 * the same on every machine and never depend on its load.
 *
 * What lies beyond is left out as a whole and named by `not-checked`, since figures of a part would be taken for those of
 * the whole. Within one file recipes and jobs are taken in their order, so an edit below costs nothing above.
 */
import { t } from "../../../grammar/src/translate.ts";
import { byGravity, type Finding } from "./findings.ts";
import { onceFor } from "./once.ts";
import type { Place } from "./place.ts";
import { placeKey } from "./place.ts";
import { sentence } from "./sentence.ts";
import type { SurfaceRun } from "./surface/run.ts";

export const NOT_CHECKED = "not-checked";

/** Actions of the recipes of a file, each run by itself. */
export const MOST_RECIPE_ACTIONS = 100_000;
/** Actions of one job, all its surfaces together; pieces that are alike count once. */
export const MOST_JOB_ACTIONS = 10_000;
/** Actions of all jobs of a file. */
export const MOST_FILE_JOB_ACTIONS = 100_000;
/** Things to plan in one job: every step, coat and wait of every piece. */
export const MOST_PLANNED = 100_000;
/** Things to plan in one job times the length of its longest chain, which is what a plan costs; one chain alone costs its length. */
export const MOST_PLAN_WORK = 5_000_000;
/** The same for all jobs of a file. */
export const MOST_FILE_PLAN_WORK = 20_000_000;
/** Findings of one file; the gravest are kept. */
export const MOST_FINDINGS = 10_000;

/** Thrown in the place of work that goes beyond the bounds; the message ends a sentence that begins with what was left out. */
export class TooLarge extends Error {}

/** What running and planning the surfaces of a job costs. */
export interface JobWork {
  readonly actions: number;
  readonly planned: number;
  readonly planWork: number;
}

export const jobWork = onceFor((runs: readonly SurfaceRun[]): JobWork => {
  const actions = sumOf(runs, (run) => run.moments.length);
  const planned = sumOf(runs, (run) => plannedOf(run) * run.pieces);
  const longest = runs.reduce((most, run) => Math.max(most, plannedOf(run)), 0);
  const isAlone = sumOf(runs, (run) => run.pieces) <= 1;
  return { actions, planned, planWork: isAlone ? planned : planned * longest };
});

/** Notes take no time. */
const plannedOf = (run: SurfaceRun): number =>
  run.moments.reduce((count, { action }) => count + (action.op === "note" ? 0 : 1), 0);

const sumOf = (runs: readonly SurfaceRun[], of: (run: SurfaceRun) => number): number =>
  runs.reduce((sum, run) => sum + of(run), 0);

/** Why a job by itself is not worked out. */
export function jobTooLarge({ actions, planned, planWork }: JobWork): TooLarge | undefined {
  if (actions > MOST_JOB_ACTIONS)
    return new TooLarge(t`it has ${actions} steps, coats and waits, and a job may have ${MOST_JOB_ACTIONS}`);
  if (planned > MOST_PLANNED || planWork > MOST_PLAN_WORK)
    return new TooLarge(t`with all its pieces it has ${planned} steps, coats and waits, too many to plan`);
  return undefined;
}

export const beyondFile = (): TooLarge =>
  new TooLarge(t`what stands above it in this file is already as much as is worked out of one file`);

/** The finding for something that was left out. */
export function notChecked(place: Place, what: string, why: string): Finding {
  return {
    rule: NOT_CHECKED,
    severity: "error",
    place,
    headline: t`${what} is not checked`,
    why: t`${sentence(why)}. What is left out is neither judged nor added up, so "nothing found" means nothing here.`,
    remedy: t`Divide it into smaller jobs, recipes or files.`,
    related: [],
    fixes: [],
  };
}

/** One finding for every line of a recipe or job on whose way it was cut off. */
export function cutsOf(runs: readonly SurfaceRun[]): readonly Finding[] {
  const found = new Map<string, Finding>();
  for (const run of runs) {
    for (const line of cutLines(run)) {
      found.set(
        placeKey(line),
        notChecked(
          line,
          t`What comes from here on`,
          t`so many steps, or recipes followed inside one another, are more than is worked out for one surface`,
        ),
      );
    }
  }
  return [...found.values()];
}

/** The lines of a run's owner on whose way it was cut off. */
const cutLines = onceFor(({ owner, moments }: SurfaceRun): readonly Place[] => {
  const isOwn = ({ file, declaration }: Place): boolean =>
    file === owner.file && declaration === owner.declaration;
  return moments.flatMap(({ action }) =>
    action.op === "open" && action.missing === undefined
      ? [action.frames.findLast(isOwn) ?? action.place]
      : [],
  );
});

/** Whether some of what a run should have done was not worked out. */
export const isCutOff = (run: SurfaceRun): boolean => cutLines(run).length > 0;

/** The gravest findings, as many as a file may have, and one that counts the others. */
export function withinFindings(findings: readonly Finding[], start: Place): readonly Finding[] {
  if (findings.length <= MOST_FINDINGS) return findings;
  const gravest = findings.toSorted(byGravity).slice(0, MOST_FINDINGS);
  const left = findings.length - MOST_FINDINGS;
  return [
    ...gravest,
    {
      ...notChecked(start, "", ""),
      headline: t`This file has ${left} more findings, which are left out`,
      why: t`Only the gravest ${MOST_FINDINGS} are shown.`,
      remedy: t`Fix these first.`,
    },
  ];
}
