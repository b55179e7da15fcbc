/** Lead in old coatings, against 16 CFR 1303, 40 CFR 745, 24 CFR 35 and Health Canada's SOR/2005-109. */
import { describe, expect, test } from "vitest";
import { countryCode, countryCodes, countryName } from "../../../server/src/core/knowledge/countries.ts";
import { dutyByWord } from "../../../server/src/core/knowledge/duties.ts";
import {
  countsAsLead,
  type LeadFacts,
  leadNote,
  leadStatus,
} from "../../../server/src/core/knowledge/lead.ts";

const lab = (finding: "none_found" | "found", date = "2026-11-03") =>
  ({ finding, method: "laboratory", date }) as const;

describe("when lead is presumed", () => {
  // 16 CFR 1303.4: paint made after 27 February 1978, so the year itself is doubtful. SOR/2005-109: 19 April 2005.
  const cases: readonly [string, LeadFacts, ReturnType<typeof leadStatus>][] = [
    ["unknown age", { country: "US" }, "presumed"],
    ["1977, US", { built: 1977, country: "US" }, "presumed"],
    ["the year of the ban, US", { built: 1978, country: "US" }, "presumed"],
    ["1979, US", { built: 1979, country: "US" }, "unlikely"],
    ["1979, Canada", { built: 1979, country: "CA" }, "presumed"],
    ["the year of the limit, Canada", { built: 2005, country: "CA" }, "presumed"],
    ["2006, Canada", { built: 2006, country: "CA" }, "unlikely"],
    ["a country whose limit is not in the table", { built: 2015, country: "FR" }, "presumed"],
    ["no country, before any limit", { built: 1936 }, "presumed"],
    ["no country, 1985", { built: 1985 }, "possible"],
    ["no country, 2020", { built: 2020 }, "possible"],
  ];
  test.each(cases)("%s", (_, facts, status) => {
    expect(leadStatus(facts)).toBe(status);
    expect(countsAsLead(leadStatus(facts))).toBe(status !== "unlikely");
  });
});

describe("results", () => {
  test("only a laboratory lifts the presumption", () => {
    expect(leadStatus({ built: 1936, result: lab("none_found") })).toBe("none_found");
    for (const method of ["swab", "xrf"] as const) {
      expect(leadStatus({ built: 1936, result: { ...lab("none_found"), method } })).toBe("presumed");
    }
  });
  test("what finds lead counts by any method, in any country and year", () => {
    for (const method of ["laboratory", "swab", "xrf"] as const) {
      expect(leadStatus({ built: 2020, country: "US", result: { ...lab("found"), method } })).toBe("found");
    }
  });
  test("a result of a later day than the first day of work lifts nothing yet", () => {
    const result = lab("none_found", "2027-03-09");
    expect(leadStatus({ built: 1936, result, begins: "2027-03-08" })).toBe("presumed");
    expect(leadStatus({ built: 1936, result, begins: "2027-03-09" })).toBe("none_found");
  });
  test("no sentence says that there is none", () => {
    const facts: readonly LeadFacts[] = [
      {},
      { built: 1936 },
      { built: 1985 },
      { built: 1978, country: "US" },
      { built: 2020, country: "US" },
      { built: 2020, country: "FR" },
      { built: 1936, result: { ...lab("none_found"), method: "swab" } },
    ];
    for (const each of facts) expect(leadNote(each)).toMatch(/may (?:still )?hold lead/u);
    expect(leadNote({ built: 1936, result: lab("none_found") })).toMatch(
      /dust .* must still not be breathed in/u,
    );
  });
});

test("the duty to test names the ban and the rule on renovation", () => {
  expect(dutyByWord("lead_test")?.source).toMatch(/16 CFR 1303.*40 CFR 745/u);
});

describe("countries", () => {
  // ISO 3166-1:2020 has 249 officially assigned alpha-2 codes.
  test("the codes are those of ISO 3166-1", () => {
    const codes = countryCodes();
    expect(codes.length).toBeGreaterThanOrEqual(249);
    for (const code of ["US", "CA", "AU", "GB", "DE", "CI", "TR", "AX"]) expect(codes).toContain(code);
    for (const code of ["EU", "UN", "ZZ", "XA", "UK"]) expect(codes).not.toContain(code);
  });
  test("names, names in daily use and old codes", () => {
    expect(countryCode("us")).toBe("US");
    expect(countryCode("United  Kingdom")).toBe("GB");
    expect(countryCode("UK")).toBe("GB");
    expect(countryCode("Cote d'Ivoire")).toBe("CI");
    expect(countryCode("Holland")).toBe("NL");
    expect(countryName("US")).toBe("United States");
    for (const text of ["", "Q", "XX", "EU", "Atlantis"]) expect(countryCode(text)).toBeUndefined();
  });
});
