/** The reading room's jobs as pages for the wall: one plan for all of them, one page a week, nobody in two places at once. */
import { expect, test } from "vitest";
import { coloursFor } from "../../server/src/reports/colours.ts";
import { scheduleText } from "../../server/src/reports/schedule-text.ts";
import { plannedShops } from "../../server/src/views/schedule/shop-weeks.ts";
import { sampleAnalyst, sampleNames } from "../harness/samples.ts";

const analysis = sampleAnalyst().analysis();
// The page of every kind of line has a shop of its own.
const results = sampleNames
  .filter((name) => name !== "first-page.finish")
  .filter((name) => name !== "mistakes.finish")
  .flatMap((name) => analysis.jobs(name))
  .filter(({ shop }) => shop !== undefined);
const shops = plannedShops(analysis, results);

test("the four jobs of the old mill have one plan", () => {
  expect(
    shops.map(({ plans }) => plans.map(({ jobs }) => jobs.map(({ job }) => job.name).toSorted())),
  ).toEqual([[["catalogue_now", "childrens_corner", "hall_tables", "six_chairs"]]]);
});

test("no person is at two sessions at once, and no more are at work than there are", () => {
  const [{ weeks, shop }] = shops as [(typeof shops)[0]];
  const sessions = weeks.flatMap((week) => week.sessions);
  expect(Math.max(...sessions.map(({ person }) => person))).toBeLessThanOrEqual(shop.crew);
  for (const [at, a] of sessions.entries())
    for (const b of sessions.slice(at + 1))
      if (a.person === b.person) expect(a.endAt <= b.startAt || b.endAt <= a.startAt).toBe(true);
});

test("every task of the jobs stands in it once", () => {
  const [{ weeks, jobs }] = shops as [(typeof shops)[0]];
  const done = weeks.flatMap(({ sessions }) =>
    sessions.flatMap(({ does }) => does.flatMap(({ row }) => row.surfaces.flatMap(({ which }) => which))),
  );
  const tasks = jobs.flatMap(({ runs }) =>
    runs.flatMap(({ moments, pieces }) =>
      moments.flatMap(({ action }) =>
        action.op === "step" || action.op === "layer" ? Array.from({ length: pieces }) : [],
      ),
    ),
  );
  expect(done).toHaveLength(tasks.length);
});

test("as text it fits on a page a week", async () => {
  const text = scheduleText(results, coloursFor({ isTTY: false, env: {} }), { shops });
  const pages = text.split(/^(?=Week of )/mu).slice(1);
  // A printed page has about 60 lines.
  for (const page of pages) expect(page.split("\n\n")[0]!.split("\n").length).toBeLessThan(60);
  await expect(text).toMatchFileSnapshot("shop-weeks.txt");
});
