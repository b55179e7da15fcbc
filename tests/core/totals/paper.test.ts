/** Paper by grit over a whole job, worked by hand. */
import { expect, test } from "vitest";
import { jobPaper } from "../../../server/src/core/totals/paper.ts";
import { analyse } from "../../harness/check-text.ts";
import { board, clear, job, recipe } from "./job-text.ts";

const paperOf = (...lines: readonly string[]) =>
  jobPaper(
    analyse({
      "test.finish": clear() + board() + recipe(...lines) + job("board x 3", "face"),
    }).jobs("test.finish")[0]!.runs,
  );

test("passes of a grit add up over pieces, steps and coat blocks", () => {
  // 2 m2 · 3 pieces a pass; 220 once bare and twice between three coats.
  expect(
    paperOf("step sand 120, 220", "step dust", "layer clear x 3 {", "step scuff 220", "}"),
  ).toMatchObject([
    // 6 m2 at 1.5 m2 a sheet; discs 4 / 0.19055 = 20.99
    { grit: 120, areaM2: 6, sheets: 4, discs: 21 },
    // 18 m2 at 2 m2 a sheet; discs 9 / 0.19055 = 47.2
    { grit: 220, areaM2: 18, sheets: 9, discs: 48 },
  ]);
});

test("hours are those of the step, divided among its grits", () => {
  // 3 pieces · 30 min / 2 grits
  const [first, second] = paperOf("step sand 120, 150, takes 30 min");
  expect(first!.hours).toBeCloseTo(0.75, 12);
  expect(second!.hours).toBeCloseTo(0.75, 12);
});

test("sheets are rounded up over the job, not for every step", () => {
  // 6 m2 twice: 12 / 2.5 = 4.8, where two steps by themselves would take 3 sheets each.
  expect(paperOf("step sand wet 320", "step sand wet 320")).toMatchObject([{ sheets: 5 }]);
  expect(paperOf("step dust")).toEqual([]);
});
