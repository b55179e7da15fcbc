/**
 * Writes `server/docs/rules/<id>.md`, one page a rule, and `server/docs/rules/index.md`, all from the rules.
 *
 * Run by `npm run generate`; a test fails when a page is stale. Pages of rules that are gone are taken out.
 */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { renderRelationMatrix } from "../src/core/knowledge/layer-relation.ts";
import { explainMarkdown, indexMarkdown } from "../src/core/rules/explain.ts";
import { RULES } from "../src/core/rules/registry.generated.ts";
import { factsOf } from "../src/features/rule-facts.ts";

export const RULE_PAGES_FOLDER = new URL("../docs/rules/", import.meta.url);

/** Every page by its file name. */
export function rulePages(): ReadonlyMap<string, string> {
  return new Map([
    ["index.md", indexMarkdown(RULES, renderRelationMatrix())],
    ...RULES.map((rule) => [`${rule.id}.md`, explainMarkdown(rule, factsOf(rule))] as const),
  ]);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const pages = rulePages();
  mkdirSync(RULE_PAGES_FOLDER, { recursive: true });
  for (const name of readdirSync(RULE_PAGES_FOLDER)) {
    if (name.endsWith(".md") && !pages.has(name)) rmSync(new URL(name, RULE_PAGES_FOLDER));
  }
  for (const [name, text] of pages) writeFileSync(new URL(name, RULE_PAGES_FOLDER), text);
}
