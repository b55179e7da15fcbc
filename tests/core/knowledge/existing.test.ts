/** Old finishes of unknown kind. */
import { describe, expect, test } from "vitest";
import { possibleFinishes, worstCase, worstFamilies } from "../../../server/src/core/knowledge/existing.ts";

describe("unknown finishes", () => {
  test("the worst of an unknown clear: waxed, and lifted by alcohol and lacquer thinner", () => {
    const worst = worstCase("unknown clear", { built: 1936 });
    expect(worst.mayBeWaxed).toBe(true);
    expect(worst.mayBleedWaxOrStearate).toBe(true);
    expect(worst.dissolvedBy).toEqual(
      expect.arrayContaining(["alcohol", "lacquer thinner", "mineral spirits"]),
    );
    // Lead driers: 24 CFR 35.110 counts varnish and shellac among coatings.
    expect(worst.mayHoldLead).toBe(true);
  });
  test("the worst of an unknown paint holds lead before 1978 and at unknown age", () => {
    expect(worstCase("unknown paint").mayHoldLead).toBe(true);
    expect(worstCase("unknown paint", { built: 1977, country: "US" }).mayHoldLead).toBe(true);
    expect(worstCase("unknown paint", { built: 1985, country: "US" }).mayHoldLead).toBe(false);
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
