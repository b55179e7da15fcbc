/** What the editor does without a server: words, indents and Enter, by the expressions that it uses. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const configuration = JSON.parse(
  readFileSync(new URL("../../client/language-configuration.json", import.meta.url), "utf8"),
);

test.each([
  ["layer hall_clear x 3", ["layer", "hall_clear", "x", "3"]],
  ["material öl_2 {", ["material", "öl_2"]],
  ["sheen semi-gloss", ["sheen", "semi-gloss"]],
  ["covers 12.5 m2/L", ["covers", "12.5", "m2", "L"]],
  ["wood 19mm", ["wood", "19", "mm"]],
  ["# allow grit-jump: a test", ["allow", "grit-jump", "a", "test"]],
])("the words of %s", (line, words) => {
  const { pattern, flags } = configuration.wordPattern;
  expect(line.match(new RegExp(pattern, `g${flags}`))).toEqual(words);
});

describe("indents", () => {
  const matches = (name: string, line: string): boolean =>
    new RegExp(configuration.indentationRules[name]).test(line);

  test.each([
    ["recipe hard_clear(clear: material) {", true],
    ["layer clear x 2, by pad {   # between coats", true],
    ['piece a "{" {', true],
    ['piece a "{"', false],
    ["# a block opens with {", false],
    ["layer clear x 2", false],
  ])("%s opens a block: %s", (line, opens) => {
    expect(matches("increaseIndentPattern", line)).toBe(opens);
  });

  test.each([
    ["  }", true],
    ["}", true],
    ["layer clear {", false],
  ])("%s closes one: %s", (line, closes) => {
    expect(matches("decreaseIndentPattern", line)).toBe(closes);
  });

  test.each([
    ["packs 946 mL for 28.00,", true],
    ["packs 946 mL for 28.00,  # small", true],
    ["packs 946 mL for 28.00", false],
    ["# one, two,", false],
    ['note "one, two,"', false],
  ])("%s goes on in the next line: %s", (line, goesOn) => {
    expect(matches("indentNextLinePattern", line)).toBe(goesOn);
  });
});

describe("Enter", () => {
  interface Rule {
    readonly beforeText: string;
    readonly afterText?: string;
    readonly action: { readonly appendText: string };
  }
  const rules: readonly Rule[] = configuration.onEnterRules;
  const appended = (before: string, after: string): string | undefined =>
    rules.find(
      (rule) => new RegExp(rule.beforeText).test(before) && new RegExp(rule.afterText ?? "").test(after),
    )?.action.appendText;

  test.each([
    ["## Thin coats.", "", "## "],
    ["  ## Thin", " coats.", "## "],
    ["## ", "", undefined],
    ["##", "", undefined],
    ["# A remark", "", undefined],
    ["# A remark", " cut in two", "# "],
    ["layer clear", "", undefined],
  ])("after %j before %j goes on with %j", (before, after, wanted) => {
    expect(appended(before, after)).toBe(wanted);
  });
});
