/** Halving against looking at one item after the other. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { firstIndex, indexAt } from "../../grammar/src/binary-search.ts";

const numbers = fc.array(fc.integer({ min: 0, max: 30 }), { maxLength: 20 });

test("the first index is that of findIndex, or the length", () => {
  fc.assert(
    fc.property(numbers, fc.integer({ min: -1, max: 31 }), (unsorted, least) => {
      const sorted = unsorted.toSorted((a, b) => a - b);
      const found = sorted.findIndex((each) => each >= least);
      expect(firstIndex(sorted, (each) => each >= least)).toBe(found < 0 ? sorted.length : found);
    }),
  );
});

test("the index at an offset is that of findLastIndex, or 0", () => {
  fc.assert(
    fc.property(numbers, fc.integer({ min: -1, max: 31 }), (unsorted, offset) => {
      const sorted = unsorted.toSorted((a, b) => a - b);
      const found = sorted.findLastIndex((each) => each <= offset);
      expect(indexAt(sorted, offset, (each) => each)).toBe(Math.max(0, found));
    }),
  );
});
