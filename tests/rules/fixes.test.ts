/**
 * Every fix that a rule offers on its failing examples removes that finding, leaves the text without syntax errors and
 * brings no new finding.
 */
import { describe, expect, it } from "vitest";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import type { FileFix } from "../../server/src/features/types.ts";
import { findingsOf } from "../harness/check-text.ts";

function applyFix(text: string, fix: FileFix): string {
  return [...fix.edits]
    .sort((a, b) => b.span.start - a.span.start)
    .reduce(
      (result, edit) => result.slice(0, edit.span.start) + edit.text + result.slice(edit.span.end),
      text,
    );
}

const counts = (text: string): ReadonlyMap<string, number> => {
  const byRule = new Map<string, number>();
  for (const { rule } of findingsOf(text)) byRule.set(rule, (byRule.get(rule) ?? 0) + 1);
  return byRule;
};

const cases = RULES.flatMap((rule) =>
  rule.failing.flatMap((example) =>
    findingsOf(example.text)
      .filter((finding) => finding.rule === rule.id)
      .flatMap((finding) =>
        finding.fixes.map(
          (fix) => [`${rule.id}: ${example.title}: ${fix.title}`, rule.id, example.text, fix] as const,
        ),
      ),
  ),
);

describe("fixes", () => {
  it.each(cases)("%s", (_, id, text, fix) => {
    const before = counts(text);
    const fixed = applyFix(text, fix);
    const after = counts(fixed);
    expect(after.get(id) ?? 0, fixed).toBe((before.get(id) ?? 0) - 1);
    for (const [rule, count] of after)
      expect(count, `${rule} in\n${fixed}`).toBeLessThanOrEqual(before.get(rule) ?? 0);
  });
});
