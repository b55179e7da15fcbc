/**
 * How people write the names of chemicals, on labels and in recipes, and where the same words say something else.
 */
import { describe, expect, test } from "vitest";
import { chemicalsIn } from "../../../server/src/core/knowledge/chemical-words.ts";
import type { Reading } from "../../../server/src/core/knowledge/denials.ts";

const named = (text: string, reading: Reading): string[] =>
  chemicalsIn(text, reading)
    .filter(({ stance }) => stance === "named")
    .map((it) => it.chemical);

describe("ways of writing a name", () => {
  const ways: readonly [string, string][] = [
    ["Methylene Chloride", "methylene chloride"],
    ["methylene-chloride", "methylene chloride"],
    ["methylenechloride", "methylene chloride"],
    ["methylene\u2011chloride", "methylene chloride"],
    ["quick_dcm_gel", "methylene chloride"],
    ["CH₂Cl₂", "methylene chloride"],
    ["CAS 75-09-2, 80 %", "methylene chloride"],
    ["CAS: 75–09–2", "methylene chloride"],
    ["N-methyl-2-pyrrolidone", "NMP"],
    ["n methyl pyrrolidone", "NMP"],
    ["(NMP)", "NMP"],
    ["1,6-hexamethylene diisocyanate", "isocyanate"],
    ["aliphatic polyisocyanates", "isocyanate"],
    ["free NCO 20 %", "isocyanate"],
    ["per-chlor-ethylene", "perchloroethylene"],
    ["Cr(VI)", "chromium(VI)"],
    ["Scheele's green", "arsenic"],
    ["Scheele’s green", "arsenic"],
    ["spirits of salts", "hydrochloric acid"],
    ["benzoyl peroxide paste", "organic peroxide"],
  ];
  test.each(ways)("%s", (text, name) => {
    expect(named(text, "label")).toEqual([name]);
  });

  test.each([
    "Benzine, a light naphtha",
    "Petroleum distillate",
    "Methylated spirits",
    "Emerald green",
    "Vermilion red",
    "Silicon carbide",
    "Fatty acids of tall oil",
    "Leads the eye along the grain",
    "Lot 75 09 2",
    "Part 175-09-21",
    "Petrol generator outside",
    "Mercury thermometer",
  ])("%s is none of them", (text) => {
    expect(named(text, "label")).toEqual([]);
    expect(named(text, "recipe")).toEqual([]);
  });
});

describe("labels that deny, compare or guard", () => {
  test.each([
    "NMP-free gel",
    "Free of methylene chloride and NMP",
    "Free of: NMP, DCM, benzene",
    "Contains no lye, ammonia or acid",
    "Does not contain isocyanates",
    "Doesn’t contain DCM",
    "Without added formaldehyde",
    "Holds neither benzene nor methanol",
    "No longer holds NMP",
    "Zero NMP",
    "Citrus gel instead of methylene chloride",
    "Works like methylene chloride",
    "Safer than DCM",
    "Resists alcohol, ammonia and household bleach",
    "Ammonia-resistant clear",
    "An alternative to NMP",
    "Replaces trichloroethylene",
    "For use after bleach",
    "Non-caustic",
    "Methylene chloride is not used in it",
    "Methylene chloride: none",
    "Rinse that neutralises lye",
  ])("%s", (text) => {
    expect(named(text, "label")).toEqual([]);
  });
});

describe("labels that hold it all the same", () => {
  test.each([
    ["Non-flammable methylene chloride stripper", "methylene chloride"],
    ["No-drip gel with DCM", "methylene chloride"],
    ["No rinse needed: holds NMP", "NMP"],
    ["No more than 5 % NMP", "NMP"],
    ["Lead-free; with benzene", "benzene"],
    ["Lead-free drier, benzene", "benzene"],
    ["Contains DCM, which must not be inhaled", "methylene chloride"],
    ["DCM must not be breathed in", "methylene chloride"],
    ["Old kind with methylene chloride, now banned", "methylene chloride"],
    ["Removes wax with NMP", "NMP"],
    ["Not only mineral spirits but methanol", "methanol"],
  ])("%s", (text, name) => {
    expect(named(text, "label")).toContain(name);
  });
});

describe("words of a recipe that tell to use it", () => {
  test.each([
    ["Works fastest with methylene chloride remover from an old tin.", "methylene chloride"],
    ["A dash of benzol lets the first coat run into the grain.", "benzene"],
    ["Darken with a five per cent solution of potassium dichromate.", "chromium(VI)"],
    ["Wipe down with petrol before the first coat", "petrol"],
    ["Thin it with wood alcohol.", "methanol"],
    ["No rinse is needed, just wipe with trichloroethylene.", "trichloroethylene"],
    ["Remove the wax with carbon tetrachloride.", "carbon tetrachloride"],
    ["Once dry, wash with caustic soda.", "lye"],
  ])("%s", (text, name) => {
    expect(named(text, "recipe")).toContain(name);
  });
});

describe("words of a recipe that forbid, warn or compare", () => {
  test.each([
    "Never use methylene chloride in here.",
    "Do not thin with benzene or petrol.",
    "Don't clean the top with ammonia.",
    "No NMP, no lye.",
    "Methylene chloride is forbidden in this shop.",
    "Methylene chloride has killed people in closed rooms.",
    "Old fillers may hold asbestos.",
    "The filler was tested for asbestos.",
    "Use the benzyl alcohol gel instead of methylene chloride.",
    "Use naphtha rather than benzene.",
    "Avoid ammonia on oak.",
    "Keep out petrol, which is a danger here.",
    "Never put household bleach or ammonia into the rinsing water.",
    "Benzene must not be used.",
    "If the stripper contains methylene chloride, take it back.",
    "Ask whether the old filler has asbestos in it.",
    "The old varnish smells of benzene.",
    "Household bleach is no wood bleach and is not used here.",
    "Keep household bleach and ammonia apart.",
    "The mercury falls: watch the weather glass.",
    "Dispose of the old methylene chloride stripper at the depot.",
    "The old can of benzene goes to the hazardous waste collection.",
  ])("%s", (text) => {
    expect(named(text, "recipe")).toEqual([]);
  });
});

test("a long text without end of clause is read through", () => {
  expect(chemicalsIn(`${"methylene ".repeat(20_000)}chloride`, "recipe")).toHaveLength(1);
});

describe("what must not be mixed with a thing is not in it", () => {
  test.each([
    "Oxalic acid in warm water. Never mix it with chlorine bleach.",
    "Oxalic acid. Not to be used together with household bleach.",
    "Oxalic acid; do not combine this product with chlorine bleach.",
  ])("%s", (text) => {
    expect(named(text, "label")).toEqual(["oxalic acid"]);
  });
  test("a denial before a comma says nothing of what it is mixed with", () => {
    expect(named("No smell, mix it with household ammonia.", "label")).toEqual(["ammonia"]);
  });
});
