/**
 * Every word of every finding: of each rule's examples in `findings/<rule>.txt`, of each sample in
 * `findings/samples/<sample>.txt`. `npx vitest run --config tests/vitest.config.ts tests/rules/findings.test.ts -u`
 * writes them anew; what has changed is to be read, not only accepted.
 */
import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { exampleText } from "../../server/src/core/rules/explain.ts";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import type { RuleExample } from "../../server/src/core/rules/rule.ts";
import { analyse } from "../harness/check-text.ts";
import { sampleAnalyst, sampleNames } from "../harness/samples.ts";
import { showFindings } from "../harness/show-findings.ts";

const FILE = "example.finish";

const shown = (kind: string, examples: readonly RuleExample[]): readonly string[] =>
  examples.map((example) => {
    const analysis = analyse({ [FILE]: `${exampleText(example)}\n` });
    const isQuiet = analysis.findings(FILE).length === 0;
    return isQuiet
      ? `== ${kind}, nothing said: ${example.title}\n`
      : `== ${kind}: ${example.title}\n\n${showFindings(analysis, FILE)}`;
  });

describe("what is said of the examples", () => {
  it.each(RULES.map((rule) => [rule.id, rule] as const))("%s", async (id, rule) => {
    const text = [...shown("failing", rule.failing), ...shown("passing", rule.passing)].join("\n");
    await expect(text).toMatchFileSnapshot(`findings/${id}.txt`);
  });

  it("has no file too many", () => {
    const files = readdirSync(new URL("findings/", import.meta.url)).filter((name) => name.endsWith(".txt"));
    expect(files.sort()).toEqual(RULES.map(({ id }) => `${id}.txt`).sort());
  });
});

describe("what is said of the samples", () => {
  const analysis = sampleAnalyst().analysis();
  it.each(sampleNames)("%s", async (name) => {
    await expect(showFindings(analysis, name)).toMatchFileSnapshot(
      `findings/samples/${name.replace(/\.finish$/u, "")}.txt`,
    );
  });
});
