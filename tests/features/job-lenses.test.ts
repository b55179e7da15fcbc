/** The line above each job: text in, its words out. */
import { expect, test } from "vitest";
import type { Severity } from "../../server/src/core/findings.ts";
import { BEING_PLANNED } from "../../server/src/core/schedule/being-planned.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { analyse } from "../harness/check-text.ts";

const ALL: readonly Severity[] = ["error", "warning", "information", "hint"];

const lenses = (
  text: string,
  levels = ALL,
  others: Readonly<Record<string, string>> = {},
): readonly string[] =>
  analyse({ ...others, "test.finish": text })
    .jobLenses("test.finish", levels)
    .map(
      ({ span, parts }) =>
        `[${text.slice(span.start, span.end)}] ${parts.map((part) => part.text).join(" · ")}`,
    );

const STOCK = `material satin {
  family waterborne polyurethane
  covers 10 m2/L
  packs  1 L for 20.00
}
piece table {
  built  1990
  bought 60.00
  surface top {
    shape area 2 m2
    wood  red oak
  }
}
shop mill {
  hours    Mon to Fri 09:00 to 17:00
  currency EUR
}
`;
const GOOD = `recipe clear {
  safety dust_mask, ventilate
  step   sand 120, 150
  step   dampen
  wait   2 h
  step   sand 180
  step   dust
  layer  satin x 3, by pad {
    wait until recoat
    step sand 220
    step dust
  }
  wait   until cured
}
`;
const job = (fields: string): string => `## Words before.\njob one "One" {\n  ${fields}\n}\n`;

test("the day it is done and what it costs", () => {
  expect(
    lenses(`${STOCK}${GOOD}${job("piece table\n  in mill\n  start 2027-03-08\n  apply clear to top")}`),
  ).toEqual(['[job one "One"] last work 9 Mar, light use 10 Mar, full use 30 Mar 2027 · 80.00 EUR']);
});

test("without a date how long it takes", () => {
  expect(lenses(`${STOCK}${GOOD}${job("piece table\n  apply clear to top")}`)[0]).toMatch(
    /takes \d+ days.* · 80\.00$/,
  );
});

test("what is missing stands in for what is not known", () => {
  const unsold = STOCK.replace("  packs  1 L for 20.00\n", "");
  expect(lenses(`${unsold}${GOOD}${job("piece table\n  apply clear to top")}`)[0]).toMatch(
    /cost not known: no packs for satin$/,
  );
  expect(lenses(`${STOCK}${job("piece table\n  apply gone to top")}`)[0]).toMatch(/ · 1 finding$/);
});

test.each([
  ["piece table\n  in mill\n  start 2027-03-08", "no apply"],
  ["piece table\n  in mill\n  start 2027-03-08\n  apply gone to top", "no recipe gone"],
  ["in mill\n  start 2027-03-08\n  apply clear to top", "no piece"],
  ["piece table\n  apply clear to lid", "no surface that an apply leads to"],
  ["piece table\n  apply idle to top", "nothing to do in its recipes"],
])(
  "a job without work says once what is missing, and never that it takes no time and costs nothing: %s",
  (fields, gap) => {
    const [lens] = lenses(`${STOCK}${GOOD}recipe idle {\n}\n${job(fields)}`);
    expect(lens).toMatch(/^\[job one "One"\] finish and cost not known: /u);
    expect(lens).toContain(`: ${gap} · `);
  },
);

test("findings are counted on the job, on what it goes through, and at the levels shown", () => {
  const bad = "recipe bad {\n  step sand 60, 180\n  layer satin\n  layer satin\n}\n";
  const other = bad.replace("bad", "unused");
  const text = `${STOCK}${bad}${other}${job("piece table\n  apply bad to top")}`;
  const countOf = (lens: string | undefined): number => Number(/(\d+) findings?$/.exec(lens ?? "")?.[1] ?? 0);
  const all = analyse({ "test.finish": text }).findings("test.finish");
  const count = countOf(lenses(text)[0]);
  expect(count).toBeGreaterThan(2);
  expect(count).toBeLessThan(all.length);
  expect(countOf(lenses(text, ["error"])[0])).toBeLessThan(count);
});

test("each part says what it leads to, the findings to the first of the gravest", () => {
  const bad =
    "recipe bad {\n  step sand 60, 180\n  layer satin\n  layer waxed_shellac\n  layer gel_stain\n}\n";
  const text = `${STOCK}${bad}${job("piece table\n  apply bad to top")}`;
  const [lens] = analyse({ "test.finish": text }).jobLenses("test.finish", ALL);
  expect(lens!.job).toBe("one");
  expect(lens!.parts.map(({ kind }) => kind)).toEqual(["schedule", "totals", "findings"]);
  const { first } = lens!.parts[2]!;
  expect(text.slice(first!.start, first!.end)).toBe("layer gel_stain");
});

test("a job that is being planned says so once", () => {
  const analyst = createAnalyst({ resolve: (_, path) => path, plan: () => BEING_PLANNED });
  // Hours cost something, so that the cost waits for the plan as well.
  const one = job("piece table\n  in mill\n  start 2027-03-08\n  apply clear to top");
  analyst.setFile(
    "test.finish",
    `${STOCK.replace("currency", "rate     20.00 per h\n  currency")}${GOOD}${one}`,
  );
  const [lens] = analyst.analysis().jobLenses("test.finish", ALL);
  expect(lens?.parts.map(({ text }) => text).filter((text) => /planned/u.test(text))).toEqual([
    "being planned",
  ]);
});
