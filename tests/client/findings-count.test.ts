/** How many findings there are, as the status bar says it. */
import { expect, test } from "vitest";
import { findingsCount } from "../../client/src/findings-count.ts";

test.each([
  [[], "No findings"],
  [[0], "1 error"],
  [[3, 0, 1, 0, 2], "2 errors, 1 warning, 1 information, 1 hint"],
  [[1, 1, 3, 3], "2 warnings, 2 hints"],
])("the levels %j are said as %s", (levels, text) => {
  expect(findingsCount(levels)).toBe(text);
});
