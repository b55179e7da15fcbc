/** What the bench view says of a shop with all of its jobs, and of what is next in one of them. */
import { describe, expect, test } from "vitest";
import { airHtml } from "../../client/src/bench/air.ts";
import { cardsHtml, headHtml } from "../../client/src/bench/drawing.ts";
import { momentText } from "../../client/src/bench/moments.ts";
import { sectionsHtml } from "../../client/src/bench/sections.ts";
import { timelineHtml } from "../../client/src/bench/timeline.ts";
import { shopLoad } from "../../server/src/views/bench/shop-load.ts";
import { FILES } from "../cli/bench.ts";
import { analyse } from "../harness/check-text.ts";
import { look } from "../harness/drawn-bench.ts";
import { l10n } from "../harness/l10n.ts";
import { sampleAnalyst, sampleNames } from "../harness/samples.ts";

const job = (name: string, fields: string): string => `job ${name} "Shelf of ${name}" {
  piece    shelf x 2
  in       room
${fields}  apply    clearing(clear: clear_coat) to board
}
`;

const benchOf = (more: string, change: (text: string) => string = (text) => text) =>
  analyse({ ...FILES, "job.finish": change(`${FILES["job.finish"]}${more}`) }).bench(
    "job.finish",
    "shelf_job",
  )!;

describe("the work of a shop by the day", () => {
  test("is the hands-on hours of its jobs, beside the hours that its people are there", () => {
    // The shop is open from 09:00 to 17:00 with one person; the own job takes an hour: tests/cli/bench.ts.
    const alone = benchOf("");
    expect(alone.days).toEqual([{ from: -9, to: 15, hours: 1, has: 8, crew: 1 }]);
    const two = benchOf(job("later", "  start    2027-03-10 09:00\n"));
    expect(two.days.map(({ from }) => from)).toEqual([-9, 39]);
    expect(two.days[1]!.hours).toBeGreaterThan(1);
    expect(two.days.every(({ clash }) => clash === undefined)).toBe(true);
  });

  test("of jobs that one plan holds has no clash, however near they are", () => {
    const near = benchOf(job("near", "  start    2027-03-08 09:00\n"));
    const hours = near.days.reduce((sum, day) => sum + day.hours, 0);
    expect(near.days.every((day) => day.clash === undefined && day.hours <= day.has!)).toBe(true);
    expect(hours).toBeGreaterThan(2);
  });

  test("of jobs that are planned by themselves may need more people at once than there are, which is said", () => {
    const jobsOf = (text: string) => analyse({ ...FILES, "job.finish": text }).jobs("job.finish")[0]!;
    const own = jobsOf(FILES["job.finish"]);
    const other = jobsOf(FILES["job.finish"].replace('shelf_job "One shelf"', 'other_job "Another shelf"'));
    const apart = {
      shopPlans: () => ({ plans: [], singles: [], leftOut: [], pending: new Set<never>() }),
      jobs: () => [],
    };
    const [day] = shopLoad(own, [other], apart);
    // Both dust from 09:00 and coat to 09:45, with one person there.
    expect(day).toMatchObject({
      hours: 2,
      clash: { from: 0, needs: 2, jobs: ["One shelf", "Another shelf"] },
    });
    expect(shopLoad(own, [], apart)[0]!.clash).toBeUndefined();
  });

  test("is not known without dates", () => {
    expect(benchOf("", (text) => text.replace(/^ {2}start.*\n/mu, "")).days).toEqual([]);
  });
});

describe("what is next", () => {
  const next = (bench: ReturnType<typeof benchOf>) => ({
    next: bench.next.map(({ what, where, start }) => [what, where.join(), start]),
    last: bench.lastDone && [bench.lastDone.what, momentText(bench, bench.lastDone.start!, l10n)],
  });

  test("is the first of the plan, in the words of the sheet, with what comes after it", () => {
    expect(next(benchOf(""))).toEqual({
      next: [
        ["Take the dust off", "Board", 0],
        ["Clear, coat 1 of 2", "Board", 0.5],
      ],
      last: undefined,
    });
  });

  test("is what the record has not yet, and what it has last is named with its time", () => {
    const done = benchOf("", (text) =>
      text.replace(/^(job shelf_job[\s\S]*?)^\}/mu, "$1  done     2027-03-08 09:40 dust on board\n}"),
    );
    const { next: works, last } = next(done);
    expect(works[0]!.slice(0, 2)).toEqual(["Clear, coat 1 of 2", "Board"]);
    expect(last).toEqual(["Take the dust off", "Mon 8 Mar 09:40"]);
  });
});

describe("the blocks that draw a job of the samples", () => {
  const analysis = sampleAnalyst().analysis();
  const jobs = sampleNames.flatMap((file) =>
    analysis.jobs(file).map((result) => [result.job.name, analysis.bench(file, result.job.name)!] as const),
  );

  test.each(jobs)("%s: call everything by its title", (_name, bench) => {
    const html = [
      headHtml(bench),
      cardsHtml({ ...bench, findings: [] }, l10n),
      sectionsHtml(bench, look(1)).replaceAll(/<svg class="marks".*?<\/svg>/gu, ""),
      timelineHtml(bench, look(1)),
      airHtml(bench, look(1)),
    ].join("\n");
    const shown = html
      // What is to be written in the shop is no name.
      .replace("<code>night_air</code>", "")
      .replaceAll(/ (?:data-[a-z]+|class|id|fill)="[^"]*"/gu, "");
    expect(shown.match(/\b[a-z]+_[a-z_]+\b/gu)).toBeNull();
  });
});
