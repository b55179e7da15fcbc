import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { withSpan } from "../../../server/src/core/schedule/sessions/room-dust.ts";

const span = fc
  .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 8 }))
  .map(([from, length]) => ({ from, to: from + length }));

describe("spans that lie apart", () => {
  test("what touches becomes one, what lies between stays open", () => {
    const spans = [
      { from: 10, to: 20 },
      { from: 0, to: 5 },
      { from: 30, to: 40 },
      { from: 20, to: 22 },
      { from: 21, to: 28 },
    ];
    expect(spans.reduce(withSpan, [])).toEqual([
      { from: 0, to: 5 },
      { from: 10, to: 28 },
      { from: 30, to: 40 },
    ]);
  });

  test("they cover the moments that the spans cover, each once and in order", () => {
    fc.assert(
      fc.property(fc.array(span, { maxLength: 20 }), (spans) => {
        const apart = spans.reduce(withSpan, []);
        const isIn = (moment: number, all: typeof spans): boolean =>
          all.some(({ from, to }) => from <= moment && moment < to);
        for (let moment = 0; moment < 70; moment++)
          expect(isIn(moment, [...apart])).toBe(isIn(moment, spans));
        for (const [place, { from }] of apart.entries())
          if (place > 0) expect(from).toBeGreaterThan(apart[place - 1]!.to);
      }),
    );
  });
});
