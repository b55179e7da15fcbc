/**
 * When the fumes of a job leave: day by day with the grams of every hour, and the hour in which most leaves, with the
 * lines that give it off.
 *
 * Hours are counted from the start of the job. The grams of a coat are taken to leave evenly from its first stroke until
 * half of its time to touch dry (`core/fumes/job-fumes.ts`), so the true peak is higher and the tail longer.
 */

import { t } from "../../../../grammar/src/translate.ts";
import { type FumesDraw, type HourFumes, hourlyFumes, jobFumes } from "../../core/fumes/job-fumes.ts";
import { dayText, gramsText, timeText } from "../../core/measure/figures.ts";
import { isoAfter } from "../../core/schedule/iso-after.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { momentAfterStart } from "../schedule/job-plan.ts";
import { coatsByLine, lineName } from "./fumes-facts.ts";

/** Said once beside the hours. */
export const hoursBasis = (): string =>
  t`a coat's grams leave evenly from its first stroke to half of touch dry, a step's to half an hour after it: common practice, no source`;

/** The hour in which most leaves. */
export interface PeakHour {
  readonly grams: number;
  /** `Mon 8 Mar 2027 10:00`, `the start`. */
  readonly from: string;
  /** What each line gives off in it, the most first; those of under half a gram are left out. */
  readonly lines: readonly { readonly name: string; readonly grams: number }[];
}

/** Undefined where the plan or a figure is not known, or nothing leaves. */
export function jobPeak(result: JobResult): PeakHour | undefined {
  const { byHour, coats } = jobFumes(result);
  const most = mostOf(byHour);
  if (!most) return undefined;
  const lines = coatsByLine(coats).flatMap((line) => {
    const actions = new Set(line.flatMap(({ parts }) => parts.map(({ action }) => action)));
    const hours = hourlyFumes(
      result.draws.filter(({ action }) => (actions as ReadonlySet<unknown>).has(action)),
      result.schedule,
    );
    const grams = hours?.find(({ hour }) => hour === most.hour)?.grams ?? 0;
    return grams >= 0.5 ? [{ name: lineName(line), grams }] : [];
  });
  return {
    grams: most.grams,
    from: momentAfterStart(result, most.hour),
    lines: lines.toSorted((a, b) => b.grams - a.grams),
  };
}

/** The hour in which most leaves of these draws of the job: `48 g in the hour from Mon 8 Mar 2027 10:00`. */
export function peakText(result: JobResult, draws: readonly FumesDraw[]): string {
  const most = mostOf(hourlyFumes(draws, result.schedule));
  return most ? t`${gramsText(most.grams)} in the hour from ${momentAfterStart(result, most.hour)}` : "";
}

/** One day of the job, or 24 h where it has no dates. */
export interface FumesDay {
  /** `Mon 8 Mar 2027`, `day 1`. */
  readonly name: string;
  readonly grams: number;
  /** `09:00`, or hours after the start of the day that the first figure is for. */
  readonly from: string;
  /** Grams of every hour from then on, to the last that has any. */
  readonly hours: readonly number[];
}

/** Days on which nothing worth a gram leaves are left out. */
export function fumesDays(result: JobResult): readonly FumesDay[] {
  const days = new Map<string, { from: string; first: number; grams: number[] }>();
  for (const { hour, grams } of jobFumes(result).byHour ?? []) {
    const iso = isoAfter(result.schedule, hour);
    const name = iso === undefined ? t`day ${Math.floor(hour / 24) + 1}` : dayText(iso);
    const from = iso === undefined ? t`hour ${hour % 24}` : timeText(iso);
    const day = days.get(name) ?? { from, first: hour, grams: [] };
    days.set(name, day);
    day.grams[hour - day.first] = grams;
  }
  return [...days].flatMap(([name, { from, grams }]) => {
    const hours = Array.from(grams, (each) => each ?? 0);
    const sum = hours.reduce((all, each) => all + each, 0);
    const last = hours.findLastIndex((each) => each >= 0.5);
    return sum < 0.5 ? [] : [{ name, grams: sum, from, hours: hours.slice(0, Math.max(1, last + 1)) }];
  });
}

function mostOf(hours: readonly HourFumes[] | undefined): HourFumes | undefined {
  return hours?.reduce<HourFumes | undefined>(
    (most, hour) => (hour.grams > (most?.grams ?? 0) + 1e-9 ? hour : most),
    undefined,
  );
}
