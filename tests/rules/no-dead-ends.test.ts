/**
 * No dead ends: whatever finish somebody begins with, on whatever surface, a recipe that satisfies every remedy exists
 * and the fixes lead there, or one finding says that the finish is not for this use and names some that are.
 *
 * Here samples are walked, and in the long run one start in full; `npm run ends` walks them all.
 */
import { describe, expect, it } from "vitest";
import { WEARS_HARD } from "../../server/src/core/knowledge/wear.ts";
import { shareOf } from "../harness/share.ts";
import {
  type Case,
  casesFrom,
  nameOf,
  ORDERS,
  type Order,
  STARTS,
  textOf,
  type Walk,
  walkRemedies,
} from "../harness/walk-remedies.ts";

/** The walks that do not end well, with their way. */
function deadEnds(cases: readonly Case[], order: Order): readonly string[] {
  return cases.flatMap((each) => {
    const walk = walkRemedies(textOf(each), order);
    return isGoodEnd(walk)
      ? []
      : [
          `${nameOf(each)}, ${order} remedies: ${walk.end} at ${walk.left.map(({ rule }) => rule).join(", ")} after ${walk.steps.join("; ") || "nothing"}`,
        ];
  });
}

/** Nothing left, or told to finish with something else that does bear the wear. */
const isGoodEnd = ({ end, left }: Walk): boolean =>
  end === "clean" || (end === "unfit" && WEARS_HARD.some((family) => left[0]!.remedy.includes(family)));

describe("every family on every surface for every wear", () => {
  const cases = casesFrom("one line");

  it("leads somewhere by the first remedies", () => {
    expect(cases.length).toBeGreaterThan(1000);
    // A prime, as below.
    expect(deadEnds(shareOf(cases, 29), "first")).toEqual([]);
  });

  it("is fit for hard wear where a finding names it for that", () => {
    const named = cases.filter(({ family, wear }) => wear === "hard" && WEARS_HARD.includes(family));
    // Where oil cannot soak in, the way leads to another clear.
    const ends = named.map((each) => `${nameOf(each)}: ${walkRemedies(textOf(each), "first").end}`);
    expect(ends.filter((end) => !end.endsWith(": clean"))).toEqual([]);
  });
});

describe("a sample of other starts and of the last remedies", () => {
  /** A prime, so that the sample goes through families, surfaces and wears alike. */
  const EVERY = 29;

  it.each(
    (Object.keys(STARTS) as Case["start"][]).flatMap((start) =>
      ORDERS.map((order) => [start, order] as const),
    ),
  )("%s, %s remedies", (start, order) => {
    const sample = casesFrom(start).filter((_, index) => index % EVERY === 0);
    expect(deadEnds(sample, order)).toEqual([]);
  });
});

describe("what may hold lead", () => {
  const text = textOf({ family: "acrylic paint", surface: "old paint", wear: "normal", start: "one line" });
  const untested = text.replace(/\n.*lead none_found.*/u, "").replace("built 2015", "built 1950");

  it("ends at the test: no fix scuffs or strips it", () => {
    const walk = walkRemedies(untested, "first");
    expect(walk.end).toBe("no fix");
    expect(walk.text).not.toMatch(/step +(?:scuff|sand|strip|scrape)/u);
    expect(walk.left.map(({ remedy }) => remedy).join("\n")).toContain("laboratory");
  });

  it("goes on once a laboratory has found none", () => {
    expect(walkRemedies(text, "first").end).toBe("clean");
  });
});
