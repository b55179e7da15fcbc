/** What spot tests leave of an unknown clear, and what they speak against. */
import { describe, expect, test } from "vitest";
import {
  contradicts,
  narrowedClear,
  SPOT_TESTS,
  type SpotTestWord,
} from "../../../server/src/core/knowledge/spot-tests.ts";

const left = (...words: readonly SpotTestWord[]): readonly string[] | undefined =>
  narrowedClear(words)?.map(({ name }) => name);

// The order of the trade: alcohol finds shellac, then lacquer thinner lacquer, then xylene waterborne clears; what
// none of them softens is oil, varnish or a catalysed finish. Common practice, no source.
describe("spot tests", () => {
  test("alcohol softens shellac alone", () => {
    expect(left("alcohol softens")).toEqual(["waxed shellac"]);
    expect(left("alcohol softens", "lacquer thinner softens", "water beads")).toEqual(["waxed shellac"]);
  });
  test("what lacquer thinner softens and alcohol does not is lacquer", () => {
    expect(left("alcohol nothing", "lacquer thinner softens")?.toSorted()).toEqual([
      "nitrocellulose lacquer",
      "precatalyzed lacquer",
    ]);
  });
  test("xylene softens waterborne clears", () => {
    expect(left("alcohol nothing", "xylene softens")).toEqual(["waterborne polyurethane"]);
  });
  test("what nothing softens is oil, varnish or catalysed", () => {
    expect(left("alcohol nothing", "lacquer thinner nothing", "xylene nothing")?.toSorted()).toEqual([
      "conversion varnish",
      "drying oil",
      "oil polyurethane",
      "oil varnish",
    ]);
  });
  test("no test, and tests that leave nothing, leave the finish unknown", () => {
    expect(left()).toBeUndefined();
    expect(left("alcohol softens", "alcohol nothing")).toBeUndefined();
  });
  test("what seldom happens contradicts nothing", () => {
    expect(contradicts("alcohol softens", "oil varnish")).toBe(true);
    expect(contradicts("alcohol softens", "waterborne polyurethane")).toBe(false);
    expect(contradicts("alcohol nothing", undefined)).toBe(false);
    expect(contradicts("water beads", undefined)).toBe(true);
  });
  test("every test has a source", () => {
    for (const { word, source } of SPOT_TESTS) expect(source, word).not.toBe("");
  });
});
