/** What a layer or step line gives off in each job: grams, the air that it asks for with its sum, and the hour of most. */

import { t } from "../../../../grammar/src/translate.ts";
import { type CoatFumes, coatFumes } from "../../core/fumes/job-fumes.ts";
import { gramsText } from "../../core/measure/figures.ts";
import { formatDuration, formatNumber } from "../../core/measure/format-amount.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { actionHours } from "../../core/totals/task-plan.ts";
import { coatAir, coatAirWorking } from "../../views/fumes/fumes-facts.ts";
import { peakText } from "../../views/fumes/fumes-hours.ts";
import type { LineRun } from "../../views/sums/line-run.ts";
import { code } from "../markdown.ts";

/** One text a job; none where nothing is given off, or it is not known. */
export function fumesOfLine(runs: readonly LineRun[]): readonly string[] {
  const results = new Set(runs.flatMap(({ result }) => result ?? []));
  return [...results].flatMap((result) => {
    const own = runs.filter((line) => line.result === result);
    return jobText(result, new Set(own.flatMap(({ times }) => times.map(({ action }) => action)))) ?? [];
  });
}

/** On all surfaces and pieces together: a coat is put on everything before the next one begins. */
function jobText(result: JobResult, actions: ReadonlySet<unknown>): string | undefined {
  const coats = coatFumes(result.draws).filter(({ parts }) =>
    parts.some(({ action }) => actions.has(action)),
  );
  const [first] = coats;
  const grams = coats.reduce((sum, coat) => sum + (coat.grams ?? 0), 0);
  if (!first || grams === 0 || coats.some((coat) => coat.grams === undefined)) return undefined;
  const job = code(result.job.name);
  const each = gramsText(first.grams!);
  const peak = peakText(
    result,
    result.draws.filter(({ action }) => actions.has(action)),
  );
  return [
    coats.length > 1
      ? t`fumes in ${job}: ${each} a coat, × ${coats.length} = ${gramsText(grams)}`
      : t`fumes in ${job}: ${each}`,
    airText(result, first),
    rateText(first),
    peak && t`most ${peak}`,
  ]
    .filter((text) => text !== "")
    .join("; ");
}

/** How fast one piece gives it off, from which the hours are added up; several surfaces differ. */
function rateText({ parts, grams, dryingH }: CoatFumes): string {
  const [part] = parts;
  if (!part || parts.length > 1 || grams === undefined) return "";
  const { run, action } = part;
  const each = grams / run.pieces;
  const workH = actionHours(run, action);
  const hours = workH + dryingH;
  const whose =
    run.pieces > 1
      ? t`of each piece ${formatNumber(each, 1)} g in ${formatDuration(workH)}`
      : t`${formatNumber(each, 1)} g in ${formatDuration(workH)}`;
  return `${whose} + ${formatDuration(dryingH)} = ${formatNumber(each / hours, 1)} g/h`;
}

/** `needs 8.6 air changes/h, 10 stated (240 g / …)` */
function airText(result: JobResult, coat: CoatFumes): string {
  const air = coatAir(result, coat);
  const working = coatAirWorking(result, coat);
  return working ? `${air} (${working})` : air;
}
