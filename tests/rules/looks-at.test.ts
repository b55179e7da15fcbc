/**
 * A rule that says which runs it looks at is silent on the others: asked of every run, all rules say the same.
 */
import { expect, test } from "vitest";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import { TRADE_RULES } from "../../server/src/core/rules/registry.ts";
import type { TradeRule } from "../../server/src/core/rules/rule.ts";
import { BEING_PLANNED } from "../../server/src/core/schedule/being-planned.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { expectSame } from "../harness/same.ts";

const ASKED_OF_ALL: readonly TradeRule[] = TRADE_RULES.map(({ looksAt: _, ...rule }) => rule);

function said(text: string, rules: readonly TradeRule[]) {
  const analyst = createAnalyst({ resolve: (_, path) => path, plan: () => BEING_PLANNED, parts: { rules } });
  analyst.setFile("a.finish", text);
  return analyst.analysis().findings("a.finish");
}

/** What every rule is shown by. */
const TEXTS = RULES.flatMap(({ failing, passing }) => [...failing, ...passing]).map(({ text }) => text);

test("examples", () => {
  let findings = 0;
  for (const text of TEXTS) {
    const expected = said(text, ASKED_OF_ALL);
    findings += expected.length;
    expectSame(said(text, TRADE_RULES), expected);
  }
  expect(findings).toBeGreaterThan(400);
});

/** The lines of the first recipe of a text, its head and end left out. */
const linesOf = (text: string): string => /^recipe [^\n]*\{\n(.*?)^\}/msu.exec(text)?.[1] ?? "";

/** Things meet in them that no example has together. */
test("examples with the lines of others in their recipes", () => {
  let findings = 0;
  TEXTS.forEach((text, index) => {
    if (index % 3 > 0) return; // they take their time
    const others = [7, 131, 613].map((step) => linesOf(TEXTS[(index + step) % TEXTS.length]!)).join("");
    const mixed = text.replace(/^(recipe [^\n]*\{\n.*?)^\}/msu, (_, head: string) => `${head}${others}}`);
    const expected = said(mixed, ASKED_OF_ALL);
    findings += expected.length;
    expectSame(said(mixed, TRADE_RULES), expected);
  });
  expect(findings).toBeGreaterThan(1000);
});
