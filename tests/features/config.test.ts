/**
 * The project's configuration: what is read from the file, what is said of wrong entries, and what it does.
 */
import { describe, expect, it } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { applySettings, type ProjectConfig, readConfig } from "../../server/src/features/config.ts";
import { configSchema } from "../../server/tools/config-schema.ts";

const TEXT = "recipe smooth {\n  for  wood\n  step sand 150\n  step dust\n}\n";

function findingsWith(config: ProjectConfig): readonly string[] {
  const analyst = createAnalyst({ resolve: (_, path) => path, config: () => config });
  analyst.setFile("test.finish", TEXT);
  return analyst
    .analysis()
    .findings("test.finish")
    .map((finding) => `${finding.severity} ${finding.rule}`);
}

describe("reading", () => {
  it.each([
    [
      "levels",
      '{ "rules": { "grit-jump": "off", "no-dust-mask": "error" } }',
      { "grit-jump": "off", "no-dust-mask": "error" },
      [],
    ],
    ["nothing", "{}", {}, []],
    ["a schema beside", '{ "$schema": "x.json", "rules": {} }', {}, []],
    ["a byte order mark", '\ufeff{ "rules": { "late": "hint" } }', { late: "hint" }, []],
    [
      "an unknown rule",
      '{ "rules": { "grit-jumps": "off", "late": "hint" } }',
      { late: "hint" },
      ["There is no rule `grit-jumps`. Did you mean `grit-jump`?"],
    ],
    [
      "an unknown level",
      '{ "rules": { "late": "warn" } }',
      {},
      ['`late` is "warn", but takes one of: error, warning, information, hint, off.'],
    ],
    [
      "an unknown entry",
      '{ "rule": {} }',
      {},
      ["finishwright.config.json has no entry `rule`; it may have `rules`, `units` and `waitMarginPercent`."],
    ],
    [
      "a list",
      "[]",
      {},
      ['finishwright.config.json must hold an object, such as { "rules": { "grit-jump": "off" } }.'],
    ],
    [
      "rules as a list",
      '{ "rules": [] }',
      {},
      ['`rules` in finishwright.config.json must be an object, such as { "rules": { "grit-jump": "off" } }.'],
    ],
  ])("%s", (_, text, rules, complaints) => {
    expect(readConfig(text)).toEqual({ config: { rules }, complaints });
  });

  it("a file that is no JSON", () => {
    const { config, complaints } = readConfig('{ "rules": ');
    expect(config).toEqual({ rules: {} });
    expect(complaints).toHaveLength(1);
    expect(complaints[0]).toMatch(/^finishwright\.config\.json is not valid JSON: /);
  });

  it("the schema agrees", () => {
    expect(configSchema.safeParse({ rules: { late: "off" } }).success).toBe(true);
    expect(configSchema.safeParse({ rules: { late: "loud" } }).success).toBe(false);
    expect(configSchema.safeParse({ rules: { "no-such-rule": "off" } }).success).toBe(false);
  });
});

describe("applying", () => {
  it.each([
    [{}, ["warning no-dust-mask"]],
    [{ "no-dust-mask": "hint" }, ["hint no-dust-mask"]],
    [{ "no-dust-mask": "off" }, []],
    [{ "no-gloves": "off" }, ["warning no-dust-mask"]],
  ] as const)("%j", (rules, expected) => {
    expect(findingsWith({ rules })).toEqual(expected);
  });

  it("keeps findings that keep their level as they are", () => {
    const finding = { rule: "late", severity: "warning" } as const;
    expect(applySettings([finding], { rules: { late: "warning" } })[0]).toBe(finding);
    expect(applySettings([finding], { rules: {} })[0]).toBe(finding);
  });

  const slightly = {
    rule: "recoat-too-early",
    severity: "hint",
    eased: { percent: 3, severity: "warning" },
  } as const;
  it.each([
    ["the whole margin", { rules: {} }, "hint"],
    ["just as much as is missing", { rules: {}, waitMarginPercent: 3 }, "hint"],
    ["less", { rules: {}, waitMarginPercent: 2.9 }, "warning"],
    ["none", { rules: {}, waitMarginPercent: 0 }, "warning"],
    ["a level of its own, beyond", { rules: { "recoat-too-early": "error" }, waitMarginPercent: 0 }, "error"],
    ["a level of its own, within", { rules: { "recoat-too-early": "error" } }, "hint"],
  ] as const)("a margin for waits: %s", (_, config, severity) => {
    expect(applySettings([slightly], config)[0]?.severity).toBe(severity);
  });
});

describe("the margin for waits", () => {
  it("can be made smaller", () => {
    expect(readConfig('{ "units": "us" }')).toEqual({ config: { rules: {}, units: "us" }, complaints: [] });
    expect(readConfig('{ "units": "imperial" }')).toEqual({
      config: { rules: {} },
      complaints: ['`units` is "imperial", but takes one of: metric, us.'],
    });
    expect(readConfig('{ "waitMarginPercent": 2.5 }')).toEqual({
      config: { rules: {}, waitMarginPercent: 2.5 },
      complaints: [],
    });
  });

  it.each([["10"], ["-1"], ['"2"'], ["null"]])("cannot be %s", (given) => {
    const { config, complaints } = readConfig(`{ "waitMarginPercent": ${given} }`);
    expect(config).toEqual({ rules: {} });
    expect(complaints).toEqual([
      `\`waitMarginPercent\` is ${given}, but takes a number from 0 to 5: the margin can be made smaller, never larger.`,
    ]);
  });
});
