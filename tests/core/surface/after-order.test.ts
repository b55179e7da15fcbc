/** The nearest job back over `after`, beside a plain walk back; and what a long row of jobs costs. */
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Job } from "../../../server/src/core/model/model.ts";
import { afterOrder } from "../../../server/src/core/surface/after-order.ts";
import { growth, MOST_GROWTH } from "../../harness/growth.ts";

/** Jobs `0`, `1` …, each after the one whose number is given; a number beyond the last is nobody's. */
function jobsAfter(before: readonly (number | undefined)[]): ReadonlyMap<string, Job> {
  return new Map(
    before.map((earlier, index) => [
      String(index),
      { name: String(index), ...(earlier === undefined ? {} : { after: { job: String(earlier) } }) } as Job,
    ]),
  );
}

function walk(from: Job, jobs: ReadonlyMap<string, Job>, some: ReadonlySet<Job>): Job | "round" | undefined {
  const way = new Set<Job>();
  for (let job: Job | undefined = from; job; job = job.after && jobs.get(job.after.job)) {
    if (way.has(job)) return "round";
    way.add(job);
  }
  return [...way].find((job) => some.has(job));
}

test("finds what a walk back finds, in any jobs", () => {
  const number = fc.nat({ max: 24 });
  fc.assert(
    fc.property(
      fc.array(fc.option(number, { nil: undefined }), { minLength: 1, maxLength: 24 }),
      fc.array(number),
      (before, some) => {
        const jobs = jobsAfter(before);
        const order = afterOrder(jobs);
        const chosen = new Set(some.flatMap((each) => jobs.get(String(each)) ?? []));
        const row = order.row(chosen);
        for (const job of jobs.values()) {
          const walked = walk(job, jobs, chosen);
          expect(order.goesRound(job)).toBe(walked === "round");
          if (walked !== "round") expect(order.nearest(job, row)).toBe(walked);
        }
      },
    ),
  );
});

test("a long row of jobs, none of which did anything, costs what it is long", () => {
  const row = (count: number) =>
    jobsAfter(Array.from({ length: count }, (_, index) => (index === 0 ? undefined : index - 1)));
  const ask = (jobs: ReadonlyMap<string, Job>) => {
    const order = afterOrder(jobs);
    return [...jobs.values()].map((job) => order.nearest(job, order.row([job])));
  };
  expect(growth(row, ask, { from: 1000, to: 64_000 })).toBeLessThan(MOST_GROWTH);
});
