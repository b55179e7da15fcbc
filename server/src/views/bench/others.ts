/**
 * The other jobs of a job's shop as the bench view draws them under its own days: a row for each kind of piece, with the
 * times in which something is done to it and in which it is only waited for. Hours are counted from the start of the job.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { hoursBetween } from "../../core/measure/iso-dates.ts";
import type { Piece } from "../../core/model/model.ts";
import type { Place } from "../../core/place.ts";
import { isBeingPlanned } from "../../core/schedule/being-planned.ts";
import type { Action } from "../../core/surface/actions.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { tasksById } from "../../core/totals/planned-tasks.ts";
import { beingPlannedText, gapsOf, noDateText, unpromised } from "../missing-inputs.ts";
import { jobDates } from "../schedule/job-dates.ts";
import { isDated, planLines } from "../schedule/job-plan.ts";
import { actionTitle } from "../sheet/action-title.ts";
import { titleOf } from "../sheet/words.ts";
import type { BenchOther, BenchOtherBar, BenchOtherRow } from "./model.ts";

/** More jobs than these in one picture say nothing to an eye: those nearest in time are drawn. */
const MOST_OTHERS = 11;
/** Of one row. */
const MOST_BARS = 200;
/** Names of what is done in one go. */
const MOST_NAMED = 4;

export interface OtherJobs {
  readonly others: readonly BenchOther[];
  /** How many more there are. */
  readonly othersLeft: number;
}

/** `neighbours`: all other jobs of the shop; `at` says where a place is among those of the bench. */
export function otherJobs(
  result: JobResult,
  neighbours: readonly JobResult[],
  at: (place: Place) => number | undefined,
): OtherJobs {
  const startAt = isDated(result) ? result.schedule.startAt : undefined;
  const end = result.schedule.elapsedHours;
  const spans = neighbours.map((other) => {
    const from = startAt && other.schedule.startAt && hoursBetween(startAt, other.schedule.startAt);
    return { other, from: from === "" ? undefined : from };
  });
  const apart = ({ other, from }: (typeof spans)[number]): number =>
    from === undefined
      ? Number.POSITIVE_INFINITY
      : Math.max(0, from - end, -(from + other.schedule.elapsedHours));
  const nearest = spans.toSorted((a, b) => (apart(a) < apart(b) ? -1 : apart(a) > apart(b) ? 1 : 0));
  const taken = nearest.slice(0, MOST_OTHERS);
  return {
    others: taken
      .toSorted((a, b) => ((a.from ?? Infinity) < (b.from ?? Infinity) ? -1 : 1))
      .map(({ other, from }) => otherJob(other, from, at)),
    othersLeft: nearest.length - taken.length,
  };
}

function otherJob(
  other: JobResult,
  from: number | undefined,
  at: (place: Place) => number | undefined,
): BenchOther {
  const { job, schedule } = other;
  const line = at(job.namePlace);
  const base = {
    name: job.name,
    title: titleOf(job),
    ...(line === undefined ? {} : { at: line }),
  };
  if (isBeingPlanned(schedule)) return { ...base, plan: "being planned", note: beingPlannedText(), rows: [] };
  if (from === undefined || schedule.items.length === 0 || !isDated(other)) {
    const gaps = gapsOf(other, "finish");
    const what = unpromised(other) ? noDateText() : t`no dates`;
    return { ...base, plan: "none", note: gaps.length > 0 ? `${what}: ${gaps.join(", ")}` : "", rows: [] };
  }
  const last = jobDates(other).find(({ field }) => field === "last_work");
  return {
    ...base,
    plan: "planned",
    note: last ? t`last work ${last.text}` : "",
    rows: rowsOfOther(other, from, at),
  };
}

interface Stretch {
  start: number;
  end: number;
  readonly kind: BenchOtherBar["kind"];
  readonly what: Set<string>;
  readonly action: Action;
}

function rowsOfOther(
  other: JobResult,
  from: number,
  at: (place: Place) => number | undefined,
): readonly BenchOtherRow[] {
  const tasks = tasksById(other.runs);
  const rows = new Map<Piece | undefined, { readonly count: number; readonly stretches: Stretch[] }>();
  for (const { id, kind, start, end } of planLines(other)) {
    const task = tasks.get(id);
    if (task === undefined || end <= start) continue;
    const row = rows.get(task.run.piece) ?? { count: task.run.pieces, stretches: [] };
    rows.set(task.run.piece, row);
    const what = actionTitle(task.action);
    const sort = kind === "wait" ? "wait" : "work";
    // What is done without a break, on whichever surface, is one bar. Waits of several surfaces lie over each other.
    const before = row.stretches.findLast((each) => each.kind === sort && each.end >= start - 1e-6);
    if (before !== undefined) {
      before.end = Math.max(before.end, end);
      before.what.add(what);
    } else if (row.stretches.length < MOST_BARS) {
      row.stretches.push({ start, end, kind: sort, what: new Set([what]), action: task.action });
    }
  }
  return [...rows].map(([piece, { count, stretches }]) => ({
    title: `${piece ? titleOf(piece) : ""}${count > 1 ? ` × ${count}` : ""}`,
    bars: stretches.map(({ start, end, kind, what, action }): BenchOtherBar => {
      const line = at(action.place);
      const named = [...what].slice(0, MOST_NAMED);
      const left = what.size - named.length;
      return {
        kind,
        start: start + from,
        end: end + from,
        what: left > 0 ? t`${named.join("; ")} and ${left} more` : named.join("; "),
        ...(line === undefined ? {} : { at: line }),
      };
    }),
  }));
}
