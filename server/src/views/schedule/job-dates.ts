/**
 * The dates that people ask for, always in the order in which they come: last work, light use, full use. Each says what
 * it waits for, and where it is not known, what is missing.
 *
 * Every text about dates is made of these: schedule, totals, bench sheet, hover and lens. How they are calculated is
 * said in `core/totals/use-dates.ts`.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { momentText } from "../../core/measure/figures.ts";
import { exactDuration, roundedUpHours } from "../../core/measure/format-amount.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import type { Task } from "../../core/totals/planned-tasks.ts";
import { fewestCoatDates, type UseDate, type UseDates, useDates } from "../../core/totals/use-dates.ts";
import { markdownCode as code } from "../../escape/markdown.ts";
import { actionText } from "../action-text.ts";
import {
  awaitsPlan,
  beingPlannedText,
  gapsOf,
  noDateText,
  uncheckedText,
  unpromised,
} from "../missing-inputs.ts";

export interface JobDate {
  readonly field: "last_work" | "light_use" | "full_use";
  readonly name: "last work" | "light use" | "full use";
  /** Local ISO date-time; undefined where it is not known. */
  readonly at?: string;
  /** `Mon 15 Mar 2027 09:55`, `being planned`, `no date` or `not known`. */
  readonly text: string;
  /** What it waits for, or what is missing; a clause with names in backticks. Empty while it is being planned. */
  readonly reason: string;
}

const NAMES = [
  ["last_work", "last work", "lastWork"],
  ["light_use", "light use", "lightUse"],
  ["full_use", "full use", "fullUse"],
] as const;

/** All three, in this order. */
export function jobDates(result: JobResult): readonly JobDate[] {
  const { totals, runs, schedule } = result;
  return datesOf(result, totals.finish === null ? undefined : useDates(runs, schedule));
}

/** The reasons by the dates' fields, in their order; null where there is none to tell. For programs. */
export const dateReasons = (result: JobResult): Readonly<Record<string, string | null>> =>
  Object.fromEntries(jobDates(result).map(({ field, reason }) => [field, reason === "" ? null : reason]));

/** What a date waits for, without the line that it is: `a day after the last coat`; empty where it is that line. */
export const briefReason = (reason: string): string => {
  const name = reason.indexOf("`");
  return (name < 0 ? reason : reason.slice(0, name)).replace(/[,:] $/u, "");
};

/**
 * The same with the fewest coats, where some are decided at the bench and the work can end earlier without them;
 * undefined elsewhere.
 */
export function fewestCoatJobDates(result: JobResult): readonly JobDate[] | undefined {
  const { totals, runs, schedule } = result;
  const dates = totals.finish === null ? undefined : fewestCoatDates(runs, schedule);
  return dates && datesOf(result, dates);
}

function datesOf(result: JobResult, dates: UseDates | undefined): readonly JobDate[] {
  return NAMES.map(([field, name, key]): JobDate => {
    if (awaitsPlan(result, field)) return { field, name, text: beingPlannedText(), reason: "" };
    const date = dates?.[key];
    if (date === undefined) {
      const text = unpromised(result) ? noDateText() : t`not known`;
      return { field, name, text, reason: gapsOf(result, field).join(", ") };
    }
    const reason = [uncheckedText(result), reasonText(name, date)].filter(Boolean).join("; ");
    return { field, name, at: date.at, text: momentText(date.at), reason };
  });
}

/** `` a day after the last coat, `hall_clear, coat 3 of 3, by pad` on `top`, piece 2 `` */
function reasonText(name: JobDate["name"], { waitsFor, task, hours }: UseDate): string {
  if (task === undefined) return t`nothing is done by hand`;
  if (name === "last work") return taskText(task);
  switch (waitsFor) {
    case "work":
      return t`after the last work, ${taskText(task)}`;
    case "day":
      return t`a day after the last coat, ${taskText(task)}`;
    case "recoat":
      return t`${lengthText(hours)} after the last coat, its time to the next one: ${taskText(task)}`;
    case "cured":
      return t`cured ${lengthText(hours)} after the last coat, ${taskText(task)}`;
  }
}

function taskText({ run, piece, index }: Task): string {
  const what = code(actionText(run.moments[index]!.action));
  return run.pieces > 1
    ? t`${what} on ${code(run.label)}, piece ${piece + 1} of ${run.pieces}`
    : t`${what} on ${code(run.label)}`;
}

const lengthText = (hours: number): string => exactDuration(roundedUpHours(hours));
