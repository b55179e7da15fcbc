/** What the words of a recipe tell of lead, and what remedies say first; sentences of the bench, no source. */

import { describe, expect, test } from "vitest";
import { exampleText } from "../../server/src/core/rules/explain.ts";
import { tellsOfLeadFound } from "../../server/src/core/rules/lead-caution.ts";
import { TRADE_RULES } from "../../server/src/core/rules/registry.ts";
import type { Report, RuleChecks, TradeRule } from "../../server/src/core/rules/rule.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";
import { findingsOf } from "../harness/check-text.ts";

describe("a test that found lead, in words", () => {
  test.each([
    "The swab came out positive for lead.",
    "tested positive for lead",
    "Lead was found in the lowest coat.",
    "The old paint contains lead.",
    "lead swab turned pink",
    "Lead was found in the lowest coat, so never sand it dry.",
  ])("told: %s", (text) => expect(tellsOfLeadFound(text)).toBe(true));
  test.each([
    "The laboratory found no lead.",
    "Lead was not found.",
    "Lead was found to be absent.",
    "The tests found that lead was not there.",
    "It was found free of lead.",
    "Lead: none found",
    "Where lead is found, a trained firm does this.",
    "If the swab is positive for lead, stop.",
    "tested negative for lead",
    "Test the old paint for lead",
    "It may contain lead.",
    "Lead the edge with a batten; the joint was found loose",
    "The lead time was confirmed.",
  ])("not told: %s", (text) => expect(tellsOfLeadFound(text)).toBe(false));
});

const job = (steps: string, surface: string, piece = "built 1936"): string => `piece table {
  ${piece}
  surface legs {
    shape    4 of post 50 mm x 700 mm
    wood     beech
${surface}
  }
}
recipe prepare {
  for wood
${steps}
}
job legs {
  piece table
  start 2027-03-08
  apply prepare to legs
}
`;
const levels = (text: string): readonly string[] =>
  findingsOf(text)
    .filter(({ rule }) => /lead/u.test(rule))
    .map(({ rule, severity }) => `${severity} ${rule}`);

const PAINT = "    existing alkyd paint";
const DRY = "  safety lead_test, dust_mask\n  step   scuff 180\n  step   dust";

/** What dry work leaves is then dusted dry. */
const DUSTED = "warning lead-unsafe-method";

describe("what lifts the presumption", () => {
  test("the duty to test does not say how to work", () =>
    expect(levels(job(DRY, PAINT))).toEqual(["error lead-unsafe-method", DUSTED]));
  test("a swab and an X-ray reading that find none lift nothing", () => {
    for (const method of ["swab", "xrf"])
      expect(levels(job(DRY, `${PAINT}\n    lead none_found by ${method} 2026-11-03`))).toEqual([
        "error lead-unsafe-method",
        DUSTED,
      ]);
  });
  test("a laboratory's does, if it is there when work begins", () => {
    expect(levels(job(DRY, `${PAINT}\n    lead none_found by laboratory 2026-11-03`))).toEqual([]);
    expect(levels(job(DRY, `${PAINT}\n    lead none_found by laboratory 2027-04-01`))).toEqual([
      "error lead-unsafe-method",
      DUSTED,
    ]);
  });
  test("it never lifts the dust mask", () => {
    const bare = "  step scuff 180\n  step dust";
    const rules = findingsOf(job(bare, `${PAINT}\n    lead none_found by laboratory 2026-11-03`)).map(
      ({ rule }) => rule,
    );
    expect(rules).toEqual(["no-dust-mask"]);
  });
  test("a recipe that waits for the laboratory only lacks the result", () => {
    const gate = `  step test "a chip of every layer, by a laboratory"\n  note "The laboratory's answer comes before the first stroke."\n${DRY}`;
    expect(levels(job(gate, PAINT))).toEqual(["information lead-unsafe-method"]);
  });
  test("words of a positive test count, also where the year is late", () => {
    const found = `  note "The swab came out positive for lead."\n${DRY}`;
    expect(levels(job(found, PAINT, "built 2001"))).toEqual([
      "error lead-unsafe-method",
      "warning no-lead-safe-work",
      DUSTED,
    ]);
  });
});

describe("untested lead", () => {
  const [finding] = findingsOf(job("  step scuff 180\n  step dust", PAINT));
  test("counts as lead: words to write, no way round the test, and wet work", () => {
    expect(finding?.rule).toBe("lead-not-tested");
    expect(finding?.remedy).toMatch(
      /^Leave it alone until a laboratory has tested every layer: not tested counts as lead/u,
    );
    expect(finding?.remedy).toContain("`lead none_found by laboratory YYYY-MM-DD`");
    expect(finding?.remedy).toContain("Else it is wet work by hand");
    expect(finding?.remedy).not.toMatch(/or you cannot wait/u);
  });
  test("a dust mask is not offered as enough on its line", () => {
    const [lead, ...others] = findingsOf(job("  step scuff 180\n  step dust", PAINT)).filter((finding) =>
      partsOf(finding).some(({ rule }) => rule === "lead-not-tested" || rule === "no-dust-mask"),
    );
    expect(others).toEqual([]);
    expect(partsOf(lead!).map(({ rule }) => rule)).toEqual(["lead-not-tested", "no-dust-mask"]);
    expect(lead!.remedy).toContain(
      "behind a P100 respirator (a dust mask is not enough) and plastic sheeting",
    );
    expect(lead!.remedy).toContain("state `safety lead_safe`");
    expect(lead!.message).not.toContain("Also:");
  });
  test("a dust mask that is stated is called too little where the work is told", () => {
    const [told] = findingsOf(job(DRY, PAINT));
    expect(told?.rule).toBe("lead-unsafe-method");
    expect(told?.remedy).toMatch(
      /\n4\. Wear a P100 respirator .+; the `dust_mask` stated here is not enough\.\n/u,
    );
    expect(told?.remedy).toContain("`step scuff wet 180`");
    expect(told?.remedy).toContain("\n6. Clean up wet and with a HEPA vacuum, never dry.");
  });
});

describe("dust of dry work that may hold lead", () => {
  const dust = (line: string, surface = PAINT) =>
    findingsOf(job(`  step scuff 180\n  ${line}`, surface)).filter(({ span }, _, all) =>
      all.some((each) => each.rule === "lead-unsafe-method" && each.span.start === span.start),
    );
  test("is marked where it is taken up dry, and nitrocellulose has no motor near it", () => {
    expect(dust("step dust").map(({ headline }) => headline)).toEqual([
      "Dust that may hold lead is taken up dry",
    ]);
    expect(dust("step dust")[0]!.remedy).toContain('`step dust "HEPA vacuum"`');
    const lacquer = findingsOf(
      job("  step sand 80, 120\n  step dust", "    existing nitrocellulose lacquer"),
    ).find(({ rule }) => rule === "lead-unsafe-method");
    expect(lacquer?.remedy).toBe(
      "Wait for the lead test, and then take it up damp: write `step clean with water` and `wait overnight` in place of `step dust`.",
    );
    expect(lacquer?.why).toContain("the motor of any vacuum");
  });
  test.each(['step dust "HEPA vacuum"', 'step dust "a damp cloth"', "step clean with water"])(
    "is not where it is not: %s",
    (line) => expect(dust(line)).toEqual([]),
  );
});

describe("one coating, several remedies that go at it", () => {
  const steps = "  step sand 60, 180\n  step clean with soap\n  layer acrylic_paint\n  wait until cured";
  test("keep it short beside the finding on its lead, and lead there", () => {
    const [jump] = findingsOf(job(steps, PAINT)).filter(({ rule }) => rule === "grit-jump");
    expect(jump?.remedy).toMatch(
      /^Wait for the lead test\. If it finds lead, follow the finding on the lead instead\. Sand with 100/u,
    );
    expect(jump?.related.map(({ message }) => message)).toContain("What to do about lead is told here");
  });
  test("say it whole once where no finding does", () => {
    const jumps = steps.replace("  step sand 60, 180", "  step scuff wet 60, 180\n  step scuff wet 120, 400");
    const remedies = findingsOf(job(`  safety lead_test, lead_safe\n${jumps}`, `${PAINT}, 2 coats`))
      .filter(({ rule }) => rule === "grit-jump")
      .map(({ remedy }) => remedy.split(" ").slice(0, 4).join(" "));
    expect(remedies).toEqual(["First: the old alkyd", "Wait for the lead"]);
  });
});

describe("what `##` and titles say of the piece", () => {
  // In a country whose ban the piece is younger than, so that nothing else tells of lead.
  const late = (text: string) =>
    levels(
      text
        .replace("built 1936", "built 1990")
        .replace("  start 2027-03-08", "  in us")
        .concat("shop us {\n  country US\n}\n"),
    );
  const FOUND = ["error lead-unsafe-method", "warning no-lead-safe-work", DUSTED];
  const base = job("  safety dust_mask\n  step   scuff 180\n  step   dust", PAINT);
  const above = (words: string, line: string) => base.replace(line, `## ${words}\n${line}`);
  test("nothing, where nothing is said", () => expect(late(base)).toEqual([]));
  test.each(["piece table", "  surface legs", "recipe prepare", "job legs"])("a test above `%s`", (line) => {
    expect(late(above("Tested positive for lead.", line))).toEqual(FOUND);
    expect(late(above("The test of 2019 was\n## positive for lead.", line))).toEqual(FOUND);
    expect(late(above("Tested negative for lead.", line))).toEqual([]);
  });
  test.each([
    ["The legs are in red lead.", true],
    ["Lead-based paint below the green.", true],
    ["Contains lead", true],
    ["Not lead paint.", false],
    ["Built after the ban on lead paint.", false],
    ["It may be lead paint.", false],
    ["The lead paint was stripped in 1995.", false],
    ["Lead time: two weeks.", false],
  ] as const)("%s", (words, isFound) => {
    expect(late(above(words, "piece table"))).toEqual(isFound ? FOUND : []);
    expect(late(above(words, "job legs"))).toEqual(isFound ? FOUND : []);
  });
});

describe("methods", () => {
  const found = `${PAINT}\n    lead found by laboratory 2026-11-03`;
  // 24 CFR 35.140(c): heat guns above 1100 F; (1100 − 32) × 5/9 = 593.3 C.
  test.each([
    ['  safety lead_safe\n  step scrape "heat gun at 593 C"', ["warning lead-unsafe-method"]],
    ['  safety lead_safe\n  step scrape "heat gun at 1100 F"', ["warning lead-unsafe-method"]],
    // The advice of the United Kingdom's environment department: below 450 C.
    ['  safety lead_safe\n  step scrape "heat gun at 451 C"', ["warning lead-unsafe-method"]],
    ['  safety lead_safe\n  step scrape "heat gun at 450 C"', []],
    ['  safety lead_safe\n  step scrape "heat gun at 400 C until it smokes"', ["error lead-unsafe-method"]],
    ['  safety lead_safe\n  step scrape "heat gun at 594 C"', ["error lead-unsafe-method"]],
    ['  safety lead_safe\n  step scrape "heat gun"', ["error lead-unsafe-method"]],
    ["  safety lead_safe\n  step scrape", ["error lead-unsafe-method"]],
    ['  safety lead_safe\n  step scrape "misted with water"', []],
    ["  safety lead_safe\n  step distress", ["error lead-unsafe-method"]],
    ["  safety lead_safe\n  step sand wet 180", []],
    ["  step sand wet 180", ["warning no-lead-safe-work"]],
    ['  safety lead_safe, hearing\n  step sand 120 "belt sander"', ["error lead-unsafe-method"]],
    ['  safety lead_safe, hearing\n  step sand 120 "belt sander on a HEPA vacuum"', []],
  ])("%s", (steps, expected) =>
    expect(levels(job(`${steps}\n  step clean with water`, found))).toEqual(expected),
  );
});

test("an old clear: heat, machines and taking it off dry are errors, lighter and wet work is not", () => {
  const clear = "    existing oil varnish";
  const hot = findingsOf(job('  step scrape "heat gun"', clear)).flatMap(partsOf);
  expect(hot.map(({ rule, severity }) => `${severity} ${rule}`)).toContain("error lead-unsafe-method");
  expect(levels(job("  safety dust_mask\n  step scuff 220\n  step dust", clear))).toEqual([]);
  expect(levels(job("  step scrape", clear))).toEqual(["error lead-not-tested"]);
  expect(levels(job("  step sand 80", clear))).toEqual(["error lead-not-tested"]);
  expect(levels(job("  step sand wet 80", clear))).toEqual(["information lead-not-tested"]);
  expect(levels(job("  step strip with paint_stripper", clear))).toEqual(["information lead-not-tested"]);
  // Its age is not stated: a clear is not presumed to hold lead as paint is.
  expect(levels(job("  step sand 80", clear, 'note "old"'))).toEqual([]);
});

describe("remedies that tell to sand, scuff or strip", () => {
  const coat = "  step clean with soap\n  layer acrylic_paint\n  wait until cured";
  const unscuffed = (surface: string) =>
    findingsOf(job(coat, surface)).find(({ rule }) => rule === "coat-on-unscuffed-surface")!;

  test("say of lead first, and offer no fix", () => {
    expect(unscuffed(PAINT).remedy).toMatch(/^First: the old alkyd paint may hold lead/u);
    const { remedy, fixes } = unscuffed("    existing oil varnish");
    expect(remedy).toMatch(/^First: the old oil varnish may hold lead/u);
    expect(fixes).toEqual([]);
  });
  test("need not once a laboratory has found none", () => {
    const { remedy, fixes } = unscuffed(
      "    existing oil varnish\n    lead none_found by laboratory 2026-11-03",
    );
    expect(remedy).toMatch(/^Scuff/u);
    expect(fixes.length).toBeGreaterThan(0);
  });
  test("no fix writes a lead result", () => {
    const all = findingsOf(job(DRY, PAINT)).flatMap(({ fixes }) => fixes);
    expect(JSON.stringify(all)).not.toMatch(/none_found|lead found/u);
  });
  test("say as data that they do, whatever their words", () => {
    const sends = /\b(?:sand|scuff|scrape|strip|stripper|abrade)\b/iu;
    const unmarked = TRADE_RULES.filter(({ speaksOfLead }) => !speaksOfLead)
      .flatMap(({ id, failing }) => failing.map((example) => ({ id, text: `${exampleText(example)}\n` })))
      .flatMap(({ id, text }) => reportsOf(id, text).map((report) => ({ id, report })))
      .filter(({ id, report }) => sends.test(report.remedy) && !report.abrades && !HARMLESS.has(id));
    expect([...new Set(unmarked.map(({ id, report }) => `${id}: ${report.remedy}`))]).toEqual([]);
  });
});

/** Rules whose remedies speak of sanding or stripping without sending anyone into an old coating. */
const HARMLESS: ReadonlySet<string> = new Set([
  "caustic-on-aluminium", // bare metal
  "mdf-edge-unsealed", // the new sealer
  "wax-sanded-in", // dewaxing comes before what is done already
]);

/** What a rule reports before the engine adds its caution. */
function reportsOf(id: string, text: string): readonly Report[] {
  const reports: Report[] = [];
  const analyst = createAnalyst({
    resolve: (_, path) => path,
    parts: { rules: TRADE_RULES.map((rule) => (rule.id === id ? listening(rule, reports) : rule)) },
  });
  analyst.setFile("test.finish", text);
  analyst.analysis().findings("test.finish");
  return reports;
}

type Listened = { report: (...args: never[]) => void };

const listening = (rule: TradeRule, reports: Report[]): TradeRule => ({
  ...rule,
  checks: Object.fromEntries(
    Object.entries(rule.checks).map(([name, check]) => [
      name,
      (ctx: Listened) =>
        (check as (ctx: Listened) => void)({
          ...ctx,
          report: (...args: never[]) => {
            reports.push(args.at(-1)! as Report);
            ctx.report(...args);
          },
        }),
    ]),
  ) as RuleChecks,
});
