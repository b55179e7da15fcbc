/** The parts of a long run are the whole of it, each once. */
import { describe, expect, test } from "vitest";
import { partOf, readPart } from "../long/parts.ts";

describe("parts of a long run", () => {
  test("are said as one of so many", () => {
    expect(readPart([])).toEqual({ part: 1, of: 1 });
    expect(readPart(["2/5"])).toEqual({ part: 2, of: 5 });
  });

  test.each(["6/5", "0/5", "2", "2/0", "a/b", "1.5/2"])("%s is none", (text) => {
    expect(() => readPart([text])).toThrow(text);
  });

  test("two are too many", () => {
    expect(() => readPart(["1/2", "2/2"])).toThrow("1/2 2/2");
  });

  test.each([1, 2, 3, 5])("%i have everything, and nothing twice", (of) => {
    const all = ["ends", "recipes", "attack"];
    const dealt = Array.from({ length: of }, (_, index) => partOf(all, { part: index + 1, of }));
    expect(dealt.flat().toSorted()).toEqual(all.toSorted());
    expect(Math.max(...dealt.map(({ length }) => length))).toBe(Math.ceil(all.length / of));
  });
});
