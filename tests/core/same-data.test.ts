/** Whether plain data says the same, held against Node's own comparison. */
import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { expect, test } from "vitest";
import { isSameData } from "../../server/src/core/same-data.ts";

const data = fc.object({ withNullPrototype: false, maxDepth: 3 });

test("is what Node says of any two values and of a copy", () => {
  fc.assert(
    fc.property(data, data, (a, b) => {
      expect(isSameData(a, b)).toBe(isDeepStrictEqual(a, b));
      expect(isSameData(a, structuredClone(a))).toBe(true);
    }),
    { numRuns: 300, seed: 20270308 },
  );
});

test("tells lists from objects, what is absent from what is undefined, and lists by their order", () => {
  expect(isSameData([], {})).toBe(false);
  expect(isSameData({ a: undefined }, {})).toBe(false);
  expect(isSameData({ a: 1, b: 2 }, { b: 2, a: 1 })).toBe(true);
  expect(isSameData([1, 2], [2, 1])).toBe(false);
  expect(isSameData({ constructor: 1 }, {})).toBe(false);
});
