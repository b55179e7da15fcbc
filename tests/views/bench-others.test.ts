/** The other jobs of a shop as the bench view of one of them has them. */
import { expect, test } from "vitest";
import { BEING_PLANNED } from "../../server/src/core/schedule/being-planned.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { FILES } from "../cli/bench.ts";
import { analyse } from "../harness/check-text.ts";

const jobNamed = (name: string, fields: string): string => `job ${name} "Shelf of ${name}" {
  piece    shelf x 2
  in       room
${fields}  apply    clearing(clear: clear_coat) to board
}
`;

/** The first begins on Monday 8 March 2027 at 09:00. */
const files = (more: string) => ({ ...FILES, "job.finish": `${FILES["job.finish"]}${more}` });

test("have a row for each kind of piece, in hours after the start of the job that is drawn, and lead to their lines", () => {
  const text = files(jobNamed("later", "  start    2027-03-10 09:00\n"));
  const analysis = analyse(text);
  const bench = analysis.bench("job.finish", "shelf_job")!;
  expect(bench.others.map(({ name, title, plan }) => [name, title, plan])).toEqual([
    ["later", "Shelf of later", "planned"],
  ]);
  const [later] = bench.others;
  const [row] = later!.rows;
  expect(later!.rows).toHaveLength(1);
  expect(row!.title).toBe("Shelf × 2");
  // Dust for 30 min each, then the first coats: from Monday 09:00 to Wednesday 09:00 are 48 h.
  const work = row!.bars.filter(({ kind }) => kind === "work");
  expect(work[0]).toMatchObject({ start: 48 });
  expect(work[0]!.what).toMatch(/^Take the dust off; Clear, coat 1 of 2/);
  const plan = analysis.jobs("job.finish")[1]!;
  expect(work.at(-1)!.end).toBeCloseTo(48 + plan.schedule.lastWorkHours!, 1);
  expect(later!.note).toMatch(/^last work Wed 10 Mar 2027/);
  const lineAt = (at: number): string => {
    const { file, span } = bench.places[at]!;
    return text[file as keyof typeof text].slice(span.start).split("\n")[0]!;
  };
  expect(lineAt(later!.at!)).toMatch(/^later/);
  expect(lineAt(work[0]!.at!)).toMatch(/^step +dust/);
  // The shop is shut until its jobs are done, also after the one that is drawn.
  expect(bench.shut.at(-1)!.to).toBeGreaterThan(work.at(-1)!.end);
  // Drawn from the other end, the hours are before the start.
  const other = analysis.bench("job.finish", "later")!.others[0]!;
  expect([other.name, other.rows[0]!.bars[0]!.start]).toEqual(["shelf_job", -48]);
});

test("without dates say what is missing, and while they are planned that they are", () => {
  const text = files(`${jobNamed("later", "  start    2027-03-10 09:00\n")}${jobNamed("undated", "")}`);
  const { others } = analyse(text).bench("job.finish", "shelf_job")!;
  expect(others.map(({ name, plan, rows }) => [name, plan, rows.length])).toEqual([
    ["later", "planned", 1],
    ["undated", "none", 0],
  ]);
  expect(others[1]!.note).toBe("no dates: no `start`");

  const analyst = createAnalyst({ resolve: (_, path) => path, plan: () => BEING_PLANNED });
  for (const [name, each] of Object.entries(text)) analyst.setFile(name, each);
  const waiting = analyst.analysis().bench("job.finish", "shelf_job")!;
  expect(waiting.others.map(({ plan, note }) => [plan, note])).toContainEqual([
    "being planned",
    "being planned",
  ]);
});

test("are the nearest in time where there are many, and the rest is counted", () => {
  const days = Array.from({ length: 14 }, (_, i) => `2027-04-${String(30 - 2 * i).padStart(2, "0")}`);
  const more = days.map((day, i) => jobNamed(`job_${i}`, `  start    ${day} 09:00\n`)).join("");
  const { others, othersLeft } = analyse(files(more)).bench("job.finish", "shelf_job")!;
  expect(othersLeft).toBe(3);
  // The last three of April are those that are furthest away.
  expect(others.map(({ name }) => name)).toEqual(Array.from({ length: 11 }, (_, i) => `job_${13 - i}`));
});
