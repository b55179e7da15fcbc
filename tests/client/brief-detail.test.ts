/** Behind a job in the tree stand the day of its last work and its cost; what has no day is told as it is. */
import { expect, test } from "vitest";
import { briefDetail } from "../../client/src/brief-detail.ts";
import { sampleAnalyst } from "../harness/samples.ts";

test("the day and the cost of a job", () => {
  const { detail } = sampleAnalyst()
    .analysis()
    .workshop(["reading-tables.finish"], ["error"])
    .find(({ kind }) => kind === "job")!;
  expect(detail).toMatch(/^last work 15 Mar, light use 16 Mar, full use 12 Apr 2027 · 525\.27 EUR$/u);
  expect(briefDetail(detail)).toBe("15 Mar · 525.27 EUR");
});

test.each(["takes 25 days · 84.00 EUR", "being planned", "finish and cost not known: no `in`", ""])(
  "%s stays",
  (detail) => expect(briefDetail(detail)).toBe(detail),
);
