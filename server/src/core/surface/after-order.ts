/**
 * The jobs of a scope in the order of `after`: which of the jobs that did something was the last to, going back from one
 * job to the one that it comes after. A walk back asks every job between; in a long row of jobs, each on surfaces of its
 * own, all walks together would cost the square of their number.
 */
import { firstIndex } from "../../../../grammar/src/binary-search.ts";
import type { Job } from "../model/model.ts";

/** A job among those that come after one another, as a tree is numbered: all that come after it begin within its span. */
interface Numbered {
  readonly start: number;
  readonly end: number;
}

/** Some jobs, in the order of their numbers, each with the nearest of them that it comes after. */
interface Row {
  readonly jobs: readonly Job[];
  readonly starts: readonly number[];
  /** Index of the nearest one before, −1 where there is none. */
  readonly before: readonly number[];
}

export interface AfterOrder {
  /**
   * The last of the jobs of a row to be done before `from` or as it, over `after`; undefined where none is. Not for jobs
   * that come after themselves, see `goesRound`.
   */
  nearest(from: Job, row: Row): Job | undefined;
  /** Those of the jobs that do not come after themselves. */
  row(jobs: Iterable<Job>): Row;
  /** The way back from a job never ends. */
  goesRound(job: Job): boolean;
}

export function afterOrder(jobs: ReadonlyMap<string, Job>): AfterOrder {
  const numbers = numbered(jobs);
  const startOf = (job: Job): number => numbers.get(job)!.start;
  return {
    goesRound: (job) => !numbers.has(job),
    row: (some) => {
      const inOrder = [...some].filter((job) => numbers.has(job)).sort((a, b) => startOf(a) - startOf(b));
      const before: number[] = [];
      const open: number[] = [];
      for (const [index, job] of inOrder.entries()) {
        while (open.length > 0 && numbers.get(inOrder[open.at(-1)!]!)!.end <= startOf(job)) open.pop();
        before.push(open.at(-1) ?? -1);
        open.push(index);
      }
      return { jobs: inOrder, starts: inOrder.map(startOf), before };
    },
    nearest: (from, row) => {
      const start = startOf(from);
      let index = firstIndex(row.starts, (each) => each > start) - 1;
      while (index >= 0 && numbers.get(row.jobs[index]!)!.end <= start) index = row.before[index]!;
      return row.jobs[index];
    },
  };
}

/** Every job whose way back ends, numbered from those that come after none. */
function numbered(jobs: ReadonlyMap<string, Job>): ReadonlyMap<Job, Numbered> {
  const later = new Map<Job, Job[]>();
  const firsts: Job[] = [];
  for (const job of jobs.values()) {
    const before = job.after && jobs.get(job.after.job);
    if (!before) firsts.push(job);
    else {
      const after = later.get(before);
      if (after) after.push(job);
      else later.set(before, [job]);
    }
  }
  const numbers = new Map<Job, Numbered>();
  const starts = new Map<Job, number>();
  // Without recursion, since thousands of jobs may come one after the other.
  const toDo = firsts.reverse();
  for (let job = toDo.at(-1); job; job = toDo.at(-1)) {
    const start = starts.get(job);
    if (start === undefined) {
      starts.set(job, starts.size);
      toDo.push(...(later.get(job) ?? []));
    } else {
      toDo.pop();
      numbers.set(job, { start, end: starts.size });
    }
  }
  return numbers;
}
