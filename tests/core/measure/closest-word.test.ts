/** The nearest word of a list, and the distance below it. */
import { expect, test } from "vitest";
import { closestWord, editDistance } from "../../../server/src/core/measure/closest-word.ts";

test.each([
  // Classic pairs: kitten → sitting needs 3 edits; a swap of neighbours counts once.
  ["kitten", "sitting", 3],
  ["pannel", "panel", 1],
  ["baord", "board", 1],
  ["", "abc", 3],
  ["same", "same", 0],
])("%s and %s", (a, b, expected) => {
  expect(editDistance(a, b)).toBe(expected);
  expect(editDistance(b, a)).toBe(expected);
});

test("near words are found, far ones are not", () => {
  const shapes = ["panel", "disc", "oval", "band", "post", "round", "box", "area"];
  expect(closestWord("pannel", shapes)).toBe("panel");
  expect(closestWord("disk", shapes)).toBe("disc");
  expect(closestWord("Oval", shapes)).toBe("oval");
  expect(closestWord("cylinder", shapes)).toBeUndefined();
  expect(closestWord("", shapes)).toBeUndefined();
});
