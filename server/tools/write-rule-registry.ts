/**
 * Writes `server/src/core/rules/registry.generated.ts`, one import for every rule file, and `summaries.generated.ts`, the
 * sentence on each rule, for who lists rules without loading what explains them.
 *
 * A rule file is `rules/<group>/<id>.ts` and exports one constant, its id in camel case. Run by `npm run generate`;
 * a test checks that the written file is fresh.
 */
import { readdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Rule } from "../src/core/rules/rule.ts";

const rulesFolder = join(dirname(fileURLToPath(import.meta.url)), "../src/core/rules");

export const camelCase = (id: string): string =>
  id.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());

/** Group and id of every rule file, in alphabetical order. */
export function ruleFiles(): readonly { readonly group: string; readonly id: string }[] {
  return readdirSync(rulesFolder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap((folder) =>
      readdirSync(join(rulesFolder, folder.name))
        .filter((name) => name.endsWith(".ts"))
        .map((name) => ({ group: folder.name, id: name.replace(/\.ts$/, "") })),
    )
    .sort((a, b) => (`${a.group}/${a.id}` < `${b.group}/${b.id}` ? -1 : 1));
}

export function registryText(): string {
  const files = ruleFiles();
  const rows = files.map(({ id }) => `  ${camelCase(id)},`);
  const imports = [
    ...files.map(({ group, id }) => ({ from: `./${group}/${id}.ts`, what: `{ ${camelCase(id)} }` })),
    { from: "./rule.ts", what: "type { Rule }" },
  ]
    .sort((a, b) => (a.from < b.from ? -1 : 1))
    .map(({ from, what }) => `import ${what} from "${from}";`);
  return [
    "// Written by server/tools/write-rule-registry.ts from the rule files; do not edit.",
    ...imports,
    "",
    "/** All rules, by group and id. */",
    "export const RULES: readonly Rule[] = [",
    ...rows,
    "];",
    "",
  ].join("\n");
}

const LINE_WIDTH = 110;

export function summariesText(rules: readonly Rule[]): string {
  const rows = rules
    .toSorted((a, b) => (a.id < b.id ? -1 : 1))
    .map(({ id, docs }) => {
      const [key, text] = [id.includes("-") ? JSON.stringify(id) : id, JSON.stringify(docs.summary)];
      const row = `  ${key}: ${text},`;
      // As the formatter lays it out.
      return row.length <= LINE_WIDTH ? row : `  ${key}:\n    ${text},`;
    });
  return [
    "// Written by server/tools/write-rule-registry.ts from the rule files; do not edit.",
    "",
    "/** A sentence on each rule, by its id. */",
    "export const RULE_SUMMARIES: Readonly<Record<string, string>> = {",
    ...rows,
    "};",
    "",
  ].join("\n");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(join(rulesFolder, "registry.generated.ts"), registryText());
  const { RULES } = await import("../src/core/rules/registry.generated.ts");
  writeFileSync(join(rulesFolder, "summaries.generated.ts"), summariesText(RULES));
}
