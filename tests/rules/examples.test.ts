/**
 * The examples of every rule are its tests: a failing example has exactly the findings that its marks say, a passing
 * one has none at all, not even of other rules.
 */
import { describe, expect, it } from "vitest";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import { findingsOf, lineOf, markedSummary, summary } from "../harness/check-text.ts";

const sorted = (lines: readonly string[]) => [...lines].sort();
const readable = (text: string) =>
  findingsOf(text).map((f) => `${lineOf(text, f.span.start)} ${f.rule}: ${f.message}`);

/**
 * No text is known that brings a fault in the program (`tests/robustness/faults.test.ts` puts failing parts in), and
 * texts that go beyond the bounds are too long for a page (`tests/robustness/budgets.test.ts`).
 */
const WITHOUT_EXAMPLES = ["internal-error", "not-checked"];

const withExamples = RULES.filter(({ id }) => !WITHOUT_EXAMPLES.includes(id));

describe.each(withExamples.map((rule) => [rule.id, rule] as const))("%s", (id, rule) => {
  it("has examples of both kinds", () => {
    expect(rule.failing.length).toBeGreaterThan(0);
    expect(rule.passing.length).toBeGreaterThan(0);
  });

  it.each(rule.failing.map((example) => [example.title, example.text] as const))("fails: %s", (_, text) => {
    const marks = markedSummary(text);
    expect(marks.some((mark) => mark.endsWith(` ${id}`))).toBe(true);
    expect(sorted(summary(text)), readable(text).join("\n")).toEqual(sorted(marks));
  });

  it.each(rule.passing.map((example) => [example.title, example.text] as const))("passes: %s", (_, text) => {
    expect(readable(text)).toEqual([]);
  });
});
