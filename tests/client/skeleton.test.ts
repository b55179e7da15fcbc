/** What a new recipe starts with, and the count of its findings. */
import { expect, test } from "vitest";
import { findingsCount } from "../../client/src/findings-count.ts";
import { SKELETON } from "../../client/src/starter-recipe.ts";
import { formatFile } from "../../grammar/src/format.ts";
import { parseFile } from "../../grammar/src/parse.ts";
import { analyse } from "../harness/check-text.ts";

const analysis = analyse({ "new.finish": SKELETON });

test("a new recipe is free of findings, and laid out", () => {
  expect(analysis.findings("new.finish")).toEqual([]);
  expect(formatFile(parseFile(SKELETON)).changes).toEqual([]);
});

test("it says what its job comes to at once", () => {
  const [job] = analysis.jobs("new.finish");
  // 0.9 m × 0.5 m + 2 (0.9 m + 0.5 m) × 0.022 m
  expect(job?.totals.area_m2).toBeCloseTo(0.5116, 6);
  expect(job?.totals.surfaces.map(({ name }) => name)).toEqual(["top"]);
  expect(analysis.sheets("new.finish").map(({ kind, name }) => `${kind} ${name}`)).toEqual(["job first_job"]);
});

test.each([
  [[], "No findings"],
  [[0], "1 error"],
  [[3, 0, 1, 0, 2], "2 errors, 1 warning, 1 information, 1 hint"],
  [[1, 1, 3, 3], "2 warnings, 2 hints"],
])("the levels %j are said as %s", (levels, text) => {
  expect(findingsCount(levels)).toBe(text);
});
