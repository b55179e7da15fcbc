/** Days on which jobs that are planned beside each other need more hours than the shop has. */
import { expect, test } from "vitest";
import { dayClashes } from "../../server/src/views/bench/day-clashes.ts";
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
  // Left out of the plan of the shop, each has people of its own as far as its plan knows.
  const leftOut = () => ({ plans: [], singles: [], leftOut: [], pending: new Set<never>() });
  const source = alone ? { jobs: analysis.jobs, shopPlans: leftOut } : analysis;
  return dayClashes(results, source).map(({ date, of, hours, has, isOver, clash }) => ({
    date,
    jobs: of.map(({ job }) => job.name),
    hours,
    has,
    isOver,
    needs: clash?.needs,
  }));
};

test("four jobs of 2 h 45 min, each planned by itself for one day, need 11 h of 8 h", () => {
  // Dusting is set up in 3 min, and a session ends on a step of five minutes.
  const [first, ...others] = clashes();
  expect(others).toEqual([]);
  expect(first).toMatchObject({ date: "2026-12-03", jobs: names, has: 8, isOver: true });
  expect(first!.hours).toBeCloseTo(11, 0);
});

test("two people have 16 h, but not four hands; a plan of all of them books nobody twice", () => {
  // All four begin at 08:00.
  expect(clashes("  crew 2\n")).toMatchObject([{ has: 16, isOver: false, needs: 4 }]);
  expect(clashes("", false)).toEqual([]);
});
