/**
 * The table of chemicals: its shape, its CAS numbers by their own check digit, and names copied from the published
 * source that stands beside each check, never from the table.
 */
import { describe, expect, test } from "vitest";
import { chemicalSchema } from "../../../server/src/core/knowledge/chemical-schema.ts";
import { chemicalsIn } from "../../../server/src/core/knowledge/chemical-words.ts";
import { CHEMICALS } from "../../../server/src/core/knowledge/chemicals.ts";

const named = (text: string): string[] => chemicalsIn(text, "label").map((it) => it.chemical);

/**
 * The check digit of a CAS registry number: the digits before it, from the right, times 1, 2, 3 …, added up, modulo 10
 * (CAS, "Check Digit Verification of CAS Registry Numbers"). Its worked example is water, 7732-18-5:
 * 8·1 + 1·2 + 2·3 + 3·4 + 7·5 + 7·6 = 105, and 105 mod 10 is 5.
 */
function checkDigit(number: string): number {
  const digits = number.replaceAll("-", "").slice(0, -1);
  const sum = [...digits].reverse().reduce((total, digit, at) => total + Number(digit) * (at + 1), 0);
  return sum % 10;
}

describe("the table", () => {
  test("holds only rows that the schema accepts, each name and each CAS number once", () => {
    for (const row of CHEMICALS) expect(chemicalSchema.safeParse(row).success, row.name).toBe(true);
    const names = CHEMICALS.map(({ name }) => name);
    const numbers = CHEMICALS.flatMap(({ cas }) => cas);
    expect(new Set(names).size).toBe(names.length);
    expect(new Set(numbers).size).toBe(numbers.length);
  });

  test("the check of CAS numbers finds the worked example right and a swapped digit wrong", () => {
    expect(checkDigit("7732-18-5")).toBe(5);
    expect(checkDigit("7723-18-5")).not.toBe(5);
  });

  test.each(CHEMICALS.flatMap(({ name, cas }) => cas.map((number) => [name, number] as const)))(
    "%s: the check digit of %s is right",
    (_, number) => {
      expect(checkDigit(number)).toBe(Number(number.at(-1)));
    },
  );

  test("every word and every number of a row finds that row", () => {
    for (const { name, words, cas } of CHEMICALS)
      for (const word of [...words, ...cas]) expect(named(word), word).toEqual([name]);
  });
});

describe("names copied from published lists", () => {
  const list: readonly [string, string][] = [
    // 29 CFR 1910.1052(a): methylene chloride, CAS 75-09-2.
    ["75-09-2", "methylene chloride"],
    // 84 FR 11420 (27 March 2019), summary: "Methylene chloride, also called dichloromethane".
    ["dichloromethane", "methylene chloride"],
    // 89 FR 102568 (17 December 2024): "Trichloroethylene (TCE)".
    ["TCE", "trichloroethylene"],
    // 89 FR 103560 (18 December 2024): "Perchloroethylene (PCE)".
    ["PCE", "perchloroethylene"],
    // 16 CFR 1500.17(a)(2): carbon tetrachloride.
    ["carbon tetrachloride", "carbon tetrachloride"],
    // NIOSH Publication 96-111 (1996), background: TDI, MDI and HDI with their names.
    ["toluene diisocyanate", "isocyanate"],
    ["TDI", "isocyanate"],
    ["methylene bisphenyl isocyanate", "isocyanate"],
    ["MDI", "isocyanate"],
    ["hexamethylene diisocyanate", "isocyanate"],
    ["HDI", "isocyanate"],
    // CCOHS CHEMINFO record 737, sodium hydroxide: synonyms and CAS 1310-73-2.
    ["caustic soda", "lye"],
    ["soda lye", "lye"],
    ["sodium hydrate", "lye"],
    ["1310-73-2", "lye"],
    // CRC Press data sheet, sulphuric acid: synonyms and CAS 7664-93-9.
    ["battery acid", "sulphuric acid"],
    ["oil of vitriol", "sulphuric acid"],
    ["7664-93-9", "sulphuric acid"],
    // ILO Encyclopaedia of Occupational Health and Safety, table of chemicals: ammonia and ammonium hydroxide.
    ["7664-41-7", "ammonia"],
    ["1336-21-6", "ammonia"],
    // 29 CFR 1910.1048(b): HCHO, CAS 50-00-0.
    ["HCHO", "formaldehyde"],
    ["50-00-0", "formaldehyde"],
    // CPSC, guidance on 16 CFR 1304 and 1305: the kinds of asbestos.
    ["crocidolite", "asbestos"],
    ["amosite", "asbestos"],
  ];
  test.each(list)("%s is %s", (words, name) => {
    expect(named(words)).toEqual([name]);
  });
});
