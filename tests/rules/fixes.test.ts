/**
 * Every fix that a rule offers on its failing examples removes that finding, leaves the text without syntax errors and
 * brings no new finding.
 */
import { describe, expect, it } from "vitest";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";
import { findingsOf } from "../harness/check-text.ts";
import { applied } from "../harness/show-findings.ts";

const FILE = "test.finish";

const counts = (text: string): ReadonlyMap<string, number> => {
  const byRule = new Map<string, number>();
  for (const { rule } of findingsOf(text).flatMap(partsOf)) byRule.set(rule, (byRule.get(rule) ?? 0) + 1);
  return byRule;
};

const cases = RULES.flatMap((rule) =>
  rule.failing.flatMap((example) =>
    findingsOf(example.text)
      .filter((finding) => partsOf(finding).some((part) => part.rule === rule.id))
      .flatMap((finding) =>
        finding.fixes.map(
          (fix) => [`${rule.id}: ${example.title}: ${fix.title}`, finding, example.text, fix] as const,
        ),
      ),
  ),
);

describe("fixes", () => {
  it.each(cases)("%s", (_, finding, text, fix) => {
    const before = counts(text);
    const fixed = applied(text, FILE, fix);
    const after = counts(fixed);
    const gone = new Map<string, number>();
    for (const { rule } of partsOf(finding)) gone.set(rule, (gone.get(rule) ?? 0) + 1);
    for (const [rule, count] of gone)
      expect(after.get(rule) ?? 0, fixed).toBe((before.get(rule) ?? 0) - count);
    for (const [rule, count] of after)
      expect(count, `${rule} in\n${fixed}`).toBeLessThanOrEqual(before.get(rule) ?? 0);
  });
});

/** Lines that state a duty, a test, a wait, or a fact of a label. */
const STATEMENT =
  /^\s*(?:safety|wait|lead|step\s+test|recoat|cure|touch|limits|voc|flash|pot_life|rags|on_hand)\b/mu;

describe("kinds of fixes", () => {
  it.each(cases)("%s", (_, __, text, fix) => {
    const { kind, title, edits } = fix;
    if (edits.some((edit) => STATEMENT.test(edit.text))) expect(kind).toBe("undertaking");
    if (kind === "undertaking") expect(title).toMatch(/^State that you /u);
    else expect(title).not.toMatch(/^Promise/u);
    // What is safe takes a comment out and leaves every other line as it is.
    if (kind === "safe") {
      const kept = new Set(applied(text, FILE, fix).split("\n"));
      const gone = text.split("\n").filter((line) => !kept.has(line));
      expect(gone.filter((line) => !/^\s*#/u.test(line))).toEqual([]);
    }
  });

  it("are safe in one rule only", () => {
    const safe = cases.filter(([, , , fix]) => fix.kind === "safe").map(([, finding]) => finding.rule);
    expect([...new Set(safe)]).toEqual(["unused-suppression"]);
  });
});
