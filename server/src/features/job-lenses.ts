/**
 * What every job comes to, in one line above it: when it is done, what it costs, and how much there is to mend.
 *
 * Instead of a figure that is not known the first thing that is missing for it is said. Findings are those of the job's
 * own lines and those of the recipes of this file that the job goes through; other files have their own.
 */

import { t, translated } from "../../../grammar/src/translate.ts";
import { absoluteSpan } from "../../../grammar/src/walk.ts";
import type { Checker } from "../core/check.ts";
import { byGravity, type Severity } from "../core/findings.ts";
import { moneyText, monthDayText } from "../core/measure/figures.ts";
import { formatDuration } from "../core/measure/format-amount.ts";
import type { ProgramDeclaration } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import {
  awaitsPlan,
  beingPlannedText,
  type GapField,
  gapsOf,
  noDateText,
  uncheckedText,
  unpromised,
} from "../views/missing-inputs.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import { jobDates } from "../views/schedule/job-dates.ts";
import { declarationAt, declarationsOf } from "./job-findings.ts";
import type { JobLens, JobLensPart } from "./types.ts";

export function jobLensesOf(
  checker: Checker,
  file: FileId,
  findings: readonly FileFinding[],
  levels: readonly Severity[],
): readonly JobLens[] {
  const found = checker.program.files.get(file);
  if (!found) return [];
  const told = tallies(
    found.declarations,
    findings.filter(({ severity }) => levels.includes(severity)),
  );
  return checker.jobs(file).flatMap((result) => {
    const declaration = found.byKey.get(result.job.declaration);
    if (!declaration) return [];
    const { tree } = declaration;
    const { keyword, headSpan } = tree.body.syntax;
    const { count, first } = concerning(told, result);
    const [schedule, totals] = figuresText(result);
    const parts: readonly JobLensPart[] = [
      { kind: "schedule", text: schedule },
      { kind: "totals", text: totals },
      { kind: "findings", text: countText(count), ...(first ? { first: first.finding.span } : {}) },
    ];
    return [
      {
        job: result.job.name,
        span: absoluteSpan(tree, { start: keyword.span.start, end: headSpan.end }),
        parts: parts.filter(({ text }) => text !== ""),
      },
    ];
  });
}

/** When and for how much; what is missing for both is said once. */
function figuresText(result: JobResult): readonly [schedule: string, totals: string] {
  const [dates, cost] = [datesText(result), costText(result)];
  const gap = firstGap(result, "elapsed_h") ?? "";
  return gap !== "" && dates === t`finish not known: ${gap}` && cost === t`cost not known: ${gap}`
    ? [t`finish and cost not known: ${gap}`, ""]
    : [dates, cost];
}

/** A job without a start has no date, but a length. */
function datesText(result: JobResult): string {
  const kept = unpromised(result);
  if (kept) return `${noDateText()}: ${kept.reasons[0]!.replaceAll("`", "")}`;
  const { finish, elapsed_h } = result.totals;
  if (finish !== null) return knownDates(result);
  if (elapsed_h !== null) return t`takes ${formatDuration(elapsed_h)}`;
  if (awaitsPlan(result, "elapsed_h")) return beingPlannedText();
  const gap = firstGap(result, "elapsed_h");
  return gap === undefined ? "" : t`finish not known: ${gap}`;
}

/** `last work 8 Mar, light use 9 Mar, full use 30 Mar 2027`: the year once, unless it changes. */
function knownDates(result: JobResult): string {
  const dates = jobDates(result).filter((date) => date.at !== undefined);
  const told = dates
    .map(({ name, at }, index) => {
      const next = dates[index + 1]?.at;
      const year = next?.slice(0, 4) === at!.slice(0, 4) ? "" : ` ${at!.slice(0, 4)}`;
      return `${translated(name)} ${monthDayText(at!)}${year}`;
    })
    .join(", ");
  return [told, uncheckedText(result)].filter(Boolean).join("; ");
}

function costText(result: JobResult): string {
  const { total_cost } = result.totals;
  if (total_cost !== null) return moneyText(total_cost, result.shop?.currency);
  // The dates say so already.
  if (awaitsPlan(result, "total_cost")) return "";
  const gap = firstGap(result, "total_cost");
  return gap === undefined ? "" : t`cost not known: ${gap}`;
}

/** The first thing that is missing for a figure; a lens shows no Markdown. */
const firstGap = (result: JobResult, field: GapField): string | undefined =>
  gapsOf(result, field)[0]?.replaceAll("`", "");

const countText = (count: number): string =>
  count === 0 ? "" : count === 1 ? t`${count} finding` : t`${count} findings`;

/** How many findings, and the first of the gravest: what an editor that goes by severity shows first as well. */
interface Tally {
  readonly count: number;
  readonly first?: { readonly finding: FileFinding; readonly place: number };
}

const NOTHING: Tally = { count: 0 };

/** The findings that name a job, and those of each declaration that name none: once for all jobs of a file. */
interface Tallies {
  readonly byJob: ReadonlyMap<string, Tally>;
  readonly byDeclaration: ReadonlyMap<string, Tally>;
}

/** `declarations` in the order of the file. */
function tallies(declarations: readonly ProgramDeclaration[], findings: readonly FileFinding[]): Tallies {
  const byJob = new Map<string, Tally>();
  const byDeclaration = new Map<string, Tally>();
  for (const [place, finding] of findings.entries()) {
    const key = finding.job ?? declarationAt(declarations, finding.span.start);
    if (key === undefined) continue;
    const tallied = finding.job === undefined ? byDeclaration : byJob;
    tallied.set(key, both(tallied.get(key) ?? NOTHING, { count: 1, first: { finding, place } }));
  }
  return { byJob, byDeclaration };
}

function both(a: Tally, b: Tally): Tally {
  const first = [a.first, b.first]
    .flatMap((each) => each ?? [])
    .toSorted((one, other) => byGravity(one.finding, other.finding) || one.place - other.place)[0];
  return { count: a.count + b.count, ...(first ? { first } : {}) };
}

/** What names the job, stands in it, or holds of a recipe of this file that it goes through. */
const concerning = ({ byJob, byDeclaration }: Tallies, result: JobResult): Tally =>
  declarationsOf(result)
    .map((key) => byDeclaration.get(key) ?? NOTHING)
    .reduce(both, byJob.get(result.job.name) ?? NOTHING);
