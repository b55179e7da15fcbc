/**
 * What a material's own words say that it holds: sentences as labels print them, and the same words where they say the
 * opposite or speak of something else.
 */
import { describe, expect, test } from "vitest";
import { type Chemical, namesChemical } from "../../../server/src/core/knowledge/named-chemicals.ts";

const says = (chemical: Chemical, title: string, docs = "", name = "tin"): boolean =>
  namesChemical({ name, title, docs }, chemical);

describe("silicone", () => {
  test.each([
    "Silicone polish",
    "Silicone furniture polish",
    "Silicone-based spray polish",
    "Spray polish with silicone",
    "Shine spray; contains silicones",
    "Polish that holds a little silicone",
    "Silicone oil",
    "Siliconised wax",
  ])("%s holds it", (title) => {
    expect(says("silicone", title)).toBe(true);
  });

  test.each([
    "Silicone-free polish",
    "Polish, free of silicone",
    "Contains no silicone",
    "Polish without silicones",
    "Wax and silicone remover",
    "Removes wax, grease and silicone",
    "Strips silicone oil",
    "Takes silicone off old polish",
    "For surfaces polished with silicone",
    "Fisheye additive with silicone",
    "May be used over silicone polish",
    "Silicone sealant gun",
    "Silicon carbide paper",
    "Beeswax polish",
  ])("%s: nothing certain", (title) => {
    expect(says("silicone", title)).toBe(false);
  });

  test("is read in the documentation and in the name too", () => {
    expect(
      says("silicone", "Shine", "Quick shine. Contains silicone: keep it off work to be refinished."),
    ).toBe(true);
    expect(says("silicone", "Shine", "", "silicone_polish")).toBe(true);
    expect(says("silicone", "Shine", "Quick shine.", "silicone_remover")).toBe(false);
  });
});

describe("the others", () => {
  const holds: readonly [Chemical, string, boolean][] = [
    ["lye", "Caustic stripper", true],
    ["lye", "Lye soap", true],
    ["lye", "Rinse that neutralises lye", false],
    ["lye", "Rinse for use after a caustic stripper", false],
    ["lye", "Non-caustic stripper", false],
    ["NMP", "Stripper with NMP", true],
    ["NMP", "NMP-free stripper", false],
    ["methylene chloride", "Contains dichloromethane", true],
    ["methylene chloride", "Contains neither solvent; no methylene chloride", false],
    ["isocyanate", "Hardener with polyisocyanate", true],
    ["isocyanate", "Free of isocyanates", false],
  ];
  test.each(holds)('%s in "%s": %s', (chemical, title, held) => {
    expect(says(chemical, title)).toBe(held);
  });
});
