/**
 * What every job comes to, in one line above it: when it is done, what it costs, and how much there is to mend.
 *
 * Instead of a figure that is not known the first thing that is missing for it is said. Findings are those of the job's
 * own lines and those of the recipes of this file that the job goes through; other files have their own.
 */

import { absoluteSpan } from "../../../grammar/src/walk.ts";
import type { Checker } from "../core/check.ts";
import { SEVERITIES, type Severity } from "../core/findings.ts";
import { moneyText, monthDayText } from "../core/measure/figures.ts";
import { formatDuration } from "../core/measure/format-amount.ts";
import type { ProgramDeclaration } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { awaitsPlan, BEING_PLANNED_TEXT, type GapField, gapsOf } from "../views/missing-inputs.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import { jobDates } from "../views/schedule/job-dates.ts";
import type { JobLens, JobLensPart } from "./types.ts";

export function jobLensesOf(
  checker: Checker,
  file: FileId,
  findings: readonly FileFinding[],
  levels: readonly Severity[],
): readonly JobLens[] {
  const found = checker.program.files.get(file);
  if (!found) return [];
  const counted = findings.filter(({ severity }) => levels.includes(severity));
  return checker.jobs(file).flatMap((result) => {
    const declaration = found.byKey.get(result.job.declaration);
    if (!declaration) return [];
    const { tree } = declaration;
    const { keyword, headSpan } = tree.body.syntax;
    const own = counted.filter(concerns(found.declarations, declaration, result));
    const first = gravest(own);
    const parts: readonly JobLensPart[] = [
      { kind: "schedule", text: datesText(result) },
      { kind: "totals", text: costText(result) },
      { kind: "findings", text: countText(own.length), ...(first ? { first: first.span } : {}) },
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

/** The first of the gravest: what an editor that goes by severity shows first as well. */
const gravest = (findings: readonly FileFinding[]): FileFinding | undefined =>
  SEVERITIES.flatMap((level) => findings.find(({ severity }) => severity === level) ?? [])[0];

/** A job without a start has no date, but a length. */
function datesText(result: JobResult): string {
  const { finish, elapsed_h } = result.totals;
  if (finish !== null) return knownDates(result);
  if (elapsed_h !== null) return `takes ${formatDuration(elapsed_h)}`;
  if (awaitsPlan(result, "elapsed_h")) return BEING_PLANNED_TEXT;
  return missingText(result, "elapsed_h", "finish");
}

/** `last work 8 Mar, light use 9 Mar, full use 30 Mar 2027`: the year once, unless it changes. */
function knownDates(result: JobResult): string {
  const dates = jobDates(result).filter((date) => date.at !== undefined);
  return dates
    .map(({ name, at }, index) => {
      const next = dates[index + 1]?.at;
      const year = next?.slice(0, 4) === at!.slice(0, 4) ? "" : ` ${at!.slice(0, 4)}`;
      return `${name} ${monthDayText(at!)}${year}`;
    })
    .join(", ");
}

function costText(result: JobResult): string {
  const { total_cost } = result.totals;
  if (total_cost !== null) return moneyText(total_cost, result.shop?.currency);
  return missingText(result, "total_cost", "cost");
}

/** A lens shows no Markdown. */
function missingText(result: JobResult, field: GapField, name: string): string {
  const [gap] = gapsOf(result, field);
  return gap === undefined ? "" : `${name} not known: ${gap.replaceAll("`", "")}`;
}

const countText = (count: number): string => (count === 0 ? "" : `${count} finding${count === 1 ? "" : "s"}`);

/** What names the job, stands in it, or holds of a recipe of this file that it goes through. */
function concerns(
  declarations: readonly ProgramDeclaration[],
  own: ProgramDeclaration,
  { job, runs }: JobResult,
): (finding: FileFinding) => boolean {
  const places = runs.flatMap(({ moments }) => moments.flatMap(({ action }) => action.frames));
  const keys = new Set(places.flatMap(({ file, declaration }) => (file === job.file ? [declaration] : [])));
  const through = declarations.filter(({ tree }) => keys.has(tree.key) || tree === own.tree);
  return (finding) =>
    finding.job === job.name ||
    (finding.job === undefined &&
      through.some(
        ({ tree }) => tree.offset <= finding.span.start && finding.span.start < tree.offset + tree.length,
      ));
}
