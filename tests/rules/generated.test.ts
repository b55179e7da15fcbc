/**
 * What is written from the rules is fresh: the registry, the rule pages and the schema of the configuration file.
 * `npm run generate` writes all of them.
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { explainText } from "../../server/src/core/rules/explain.ts";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import { factsOf } from "../../server/src/features/rule-facts.ts";
import { CONFIG_SCHEMA_FILE, configSchemaText } from "../../server/tools/write-config-schema.ts";
import { RULE_PAGES_FOLDER, rulePages } from "../../server/tools/write-rule-pages.ts";
import { registryText, ruleFiles, summariesText } from "../../server/tools/write-rule-registry.ts";

const REGISTRY = new URL("../../server/src/core/rules/registry.generated.ts", import.meta.url);
const SUMMARIES = new URL("summaries.generated.ts", REGISTRY);
const pages = rulePages();

describe("written from the rules", () => {
  it("registry", () => {
    expect(readFileSync(REGISTRY, "utf8")).toBe(registryText());
  });

  it("a sentence on each rule", () => {
    expect(readFileSync(SUMMARIES, "utf8")).toBe(summariesText(RULES));
  });

  it("every file is named by its rule and stands in the rule's group", () => {
    expect(ruleFiles()).toEqual(RULES.map(({ group, id }) => ({ group, id })));
  });

  it("configuration schema", () => {
    expect(readFileSync(CONFIG_SCHEMA_FILE, "utf8")).toBe(configSchemaText());
  });

  it("no page too many", () => {
    expect(readdirSync(RULE_PAGES_FOLDER).sort()).toEqual([...pages.keys()].sort());
  });

  it.each([...pages.keys()])("page %s", (name) => {
    expect(readFileSync(new URL(name, RULE_PAGES_FOLDER), "utf8")).toBe(pages.get(name));
  });
});

describe("explanations", () => {
  it.each(RULES.map((rule) => [rule.id, rule] as const))("%s", (id, rule) => {
    const text = explainText(rule, factsOf(rule));
    expect(text.startsWith(`${id} (${rule.severity})\n`)).toBe(true);
    expect(text).not.toContain("#!");
    expect(pages.get(`${id}.md`)).not.toContain("#!");
  });
});
