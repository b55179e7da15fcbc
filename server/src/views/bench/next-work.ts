/** What of a job is done last by its record, and what is to be done next, in the words of its sheet. */
import { translated } from "../../../../grammar/src/translate.ts";
import { hoursBetween } from "../../core/measure/iso-dates.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { isDated } from "../schedule/job-plan.ts";
import type { BenchRow, Sheet } from "../sheet/model.ts";
import type { Bench, BenchWork } from "./model.ts";

/** The next one, and what comes after it. */
const MOST_NEXT = 2;

export function nextWork(
  { bench }: Sheet,
  result: JobResult,
): Pick<Bench<unknown>, "next" | "lastDone" | "dangers"> {
  const startAt = isDated(result) ? result.schedule.startAt : undefined;
  const hoursTo = (iso: string | undefined): number | undefined => {
    const hours = startAt === undefined || iso === undefined ? undefined : hoursBetween(startAt, iso);
    return hours !== undefined && Number.isFinite(hours) ? hours : undefined;
  };
  const rows = bench.groups.flatMap((group) => group.rows);
  const works = rows.map((row): Row => {
    const at = (row.done ?? []).map((each) => each.at).toSorted();
    return { row, isDone: at.length > 0 && at.length >= row.pieces.length, doneAt: at.at(-1) };
  });
  const lastDone = works
    .filter(({ doneAt }) => doneAt !== undefined)
    .toSorted((a, b) => (a.doneAt! < b.doneAt! ? -1 : a.doneAt! > b.doneAt! ? 1 : 0))
    .at(-1);
  const work = ({ row }: Row, start: string | undefined, end?: string): BenchWork => {
    const [from, to] = [hoursTo(start), hoursTo(end)];
    return {
      what: row.title,
      where: row.steps.map(({ surface }) => surface),
      ...(from === undefined ? {} : { start: from }),
      ...(to === undefined ? {} : { end: to }),
      wear: row.wear.map(translated),
    };
  };
  const toCome = works.filter(({ isDone }) => !isDone);
  return {
    dangers: [...new Set(toCome.flatMap(({ row }) => row.dangers.map(translated)))],
    next: toCome.slice(0, MOST_NEXT).map((each) => work(each, each.row.startAt, each.row.endAt)),
    ...(lastDone ? { lastDone: work(lastDone, lastDone.doneAt) } : {}),
  };
}

interface Row {
  readonly row: BenchRow;
  readonly isDone: boolean;
  /** Local ISO date-time at which the last of its pieces was done. */
  readonly doneAt: string | undefined;
}
