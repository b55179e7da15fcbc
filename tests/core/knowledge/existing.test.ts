/** Old finishes and lead, against 16 CFR 1303 and 40 CFR 745. */
import { describe, expect, test } from "vitest";
import { dutyByWord } from "../../../server/src/core/knowledge/duties.ts";
import {
  LEAD_BAN_DATE,
  leadNote,
  possibleFinishes,
  presumeLead,
  worstCase,
  worstFamilies,
} from "../../../server/src/core/knowledge/existing.ts";

describe("lead", () => {
  test("the ban is on paint made after 27 February 1978 (16 CFR 1303.4)", () => {
    expect(LEAD_BAN_DATE).toBe("1978-02-27");
  });
  // 40 CFR 745: target housing is housing built before 1978; unknown age is taken as the worst.
  const ages: readonly [number | undefined, boolean][] = [
    [undefined, true],
    [1850, true],
    [1936, true],
    [1977, true],
    [1978, false],
    [1979, false],
    [2020, false],
  ];
  test.each(ages)("a piece built %s: presumed %s", (built, presumed) => {
    expect(presumeLead(built)).toBe(presumed);
  });
  test("the duty to test names the ban and the rule on renovation", () => {
    expect(dutyByWord("lead_test")?.source).toMatch(/16 CFR 1303.*40 CFR 745/u);
  });
  test("the year of the ban itself is told as doubtful, and no year is told as free of lead", () => {
    expect(leadNote(1978)).toMatch(/test is wise/u);
    for (const built of [undefined, 1936, 1978, 2020]) expect(leadNote(built)).toMatch(/may .*hold lead/u);
  });
});

describe("unknown finishes", () => {
  test("the worst of an unknown clear: waxed, and lifted by alcohol and lacquer thinner", () => {
    const worst = worstCase("unknown clear", 1936);
    expect(worst.mayBeWaxed).toBe(true);
    expect(worst.mayBleedWaxOrStearate).toBe(true);
    expect(worst.dissolvedBy).toEqual(
      expect.arrayContaining(["alcohol", "lacquer thinner", "mineral spirits"]),
    );
    expect(worst.mayHoldLead).toBe(false);
  });
  test("the worst of an unknown paint holds lead before 1978 and at unknown age", () => {
    expect(worstCase("unknown paint").mayHoldLead).toBe(true);
    expect(worstCase("unknown paint", 1977).mayHoldLead).toBe(true);
    expect(worstCase("unknown paint", 1985).mayHoldLead).toBe(false);
  });
  test("age orders the guesses and drops none", () => {
    const old = possibleFinishes("unknown clear", 1900);
    const recent = possibleFinishes("unknown clear", 2000);
    expect(old.find((it) => it.family === "waxed shellac")?.likelihood).toBe("likely");
    expect(recent.find((it) => it.family === "waxed shellac")?.likelihood).toBe("unlikely");
    // Nitrocellulose lacquer came to furniture factories in the 1920s.
    expect(possibleFinishes("unknown clear", 1955)[0]?.likelihood).toBe("likely");
    expect(
      possibleFinishes("unknown clear", 1955).find((it) => it.family === "nitrocellulose lacquer")
        ?.likelihood,
    ).toBe("likely");
    expect(old.length).toBe(recent.length);
    expect(worstFamilies("unknown paint").map((row) => row.name)).toContain("alkyd paint");
  });
});
