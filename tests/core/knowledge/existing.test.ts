/** Old finishes of unknown kind. */
import { describe, expect, test } from "vitest";
import { possibleFinishes, worstFamilies } from "../../../server/src/core/knowledge/existing.ts";

describe("unknown finishes", () => {
  test("an unknown clear may be wax or hold it, and is lifted by alcohol and lacquer thinner", () => {
    const rows = worstFamilies("unknown clear");
    expect(rows.some(({ role }) => role === "wax")).toBe(true);
    expect(rows.some(({ waxBearing }) => waxBearing)).toBe(true);
    expect(rows.flatMap(({ dissolvedBy }) => dissolvedBy)).toEqual(
      expect.arrayContaining(["alcohol", "lacquer thinner", "mineral spirits"]),
    );
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
