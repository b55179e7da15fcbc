/** Another day makes of an analyst what one that began with it is, and nothing is kept of the day before. */
import { expect, test } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { Analyst } from "../../server/src/features/types.ts";
import { FILES } from "../cli/bench.ts";
import { plan } from "../harness/planner.ts";

/** Uses no other file, begun by its record and wanted before the day that is set. */
const LONE =
  FILES["stock.finish"] +
  FILES["job.finish"]
    .replace('use "stock.finish"\n', "")
    .replace(
      "  supplies 2.00\n",
      "  supplies 2.00\n  ready    2027-03-09\n  done     2027-03-08 09:45 coat 1 of clear_coat on board\n",
    );
const TEXTS = { ...FILES, "lone.finish": LONE };

function analystOf(today?: string): Analyst {
  const analyst = createAnalyst({
    resolve: (_, path) => path,
    plan,
    ...(today === undefined ? {} : { parts: { today } }),
  });
  for (const [file, text] of Object.entries(TEXTS)) analyst.setFile(file, text);
  return analyst;
}

const told = (analyst: Analyst) => {
  const analysis = analyst.analysis();
  return Object.keys(TEXTS).map((file) => ({
    file,
    findings: analysis.findings(file).map(({ rule, message }) => `${rule}: ${message}`),
    lastWork: analysis.jobs(file).map(({ totals }) => totals.last_work),
  }));
};

test.each(["2027-03-10", "2027-03-10T14:00", "2027-03-01"])("%s, and back", (today) => {
  const analyst = analystOf();
  const before = told(analyst);
  analyst.setToday(today);
  expect(told(analyst)).toEqual(told(analystOf(today)));
  analyst.setToday(undefined);
  expect(told(analyst)).toEqual(before);
});

test("what is late from that day on is found, and the record goes on from there", () => {
  const analyst = analystOf();
  const late = (): boolean =>
    analyst
      .analysis()
      .findings("lone.finish")
      .some(({ rule }) => rule === "late");
  expect(late()).toBe(false);
  analyst.setToday("2027-03-10");
  expect(late()).toBe(true);
  // The second coat is all that is left: 09:00 to 09:15.
  expect(analyst.analysis().jobs("lone.finish")[0]!.totals.last_work).toBe("2027-03-10T09:15:00");
});
