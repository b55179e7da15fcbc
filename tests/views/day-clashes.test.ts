/** Days on which jobs that are planned beside each other need more hours than the shop has. */
import { expect, test } from "vitest";
import { dayClashes } from "../../server/src/views/schedule/day-clashes.ts";
import { analyse } from "../harness/check-text.ts";

const names = ["a", "b", "c", "d"];
const text = (people: string): string => `piece box {
  surface lid {
    shape area 1 m2
    wood  beech
  }
}
shop mill {
  hours Mon to Fri 08:00 to 12:00, 13:00 to 17:00
${people}}
recipe dusted {
  step dust, takes 2 h 45 min
}
${names.map((name) => `job ${name} {\n  piece box\n  in    mill\n  start 2026-12-03\n  apply dusted to lid\n}\n`).join("")}`;

const clashes = (people = "", alone = true) => {
  const analysis = analyse({ "t.finish": text(people) });
  const together = analysis.jobs("t.finish");
  const results = alone ? together.map((result) => analysis.alone(result)) : together;
  return dayClashes(results[0]!.shop!, results).map(({ date, jobs, needed, open }) => ({
    date,
    jobs: jobs.map(({ job }) => job.name),
    needed,
    open,
  }));
};

test("four jobs of 2 h 45 min, each planned by itself for one day, need 11 h of 8 h", () => {
  expect(clashes()).toEqual([{ date: "2026-12-03", jobs: names, needed: 11, open: 8 }]);
});

test("two people have 16 h, and a plan of all of them books nobody twice", () => {
  expect(clashes("  crew 2\n")).toEqual([]);
  expect(clashes("", false)).toEqual([]);
});
