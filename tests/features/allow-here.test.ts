/** The comment that allows a finding: where it goes, and that without a reason it allows nothing. */
import { describe, expect, it } from "vitest";
import { allowingIn } from "../../server/src/features/allow-here.ts";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";
import { findingsOf, summary } from "../harness/check-text.ts";

const FILE = "test.finish";

/** The text after the action for a rule, with its caret marked, and the findings once a reason stands there. */
function allowed(text: string, rule: string) {
  const part = findingsOf(text)
    .flatMap(partsOf)
    .find((each) => each.rule === rule)!;
  const edit = allowingIn(text)({ ...part, file: FILE })!;
  const put = (comment: string) =>
    text.slice(0, edit.span.start) + edit.text.replace(": ", `: ${comment}`) + text.slice(edit.span.end);
  return { shown: put("|"), open: put(""), reasoned: put("tried on a board") };
}

const SANDED = (newline: string) =>
  ["recipe smooth {", "  for  wood", "  step sand 150", "  step dust", "}", ""].join(newline);

describe.each([
  ["LF", "\n"],
  ["CRLF", "\r\n"],
])("with %s", (_, newline) => {
  const text = SANDED(newline);
  const { shown, open, reasoned } = allowed(text, "no-dust-mask");

  it("stands above the line, indented like it", () => {
    expect(shown.split(newline)[2]).toBe("  # allow no-dust-mask: |");
  });

  it("allows nothing before a reason is written", () => {
    expect(summary(open)).toEqual(["3 suppression-without-reason", "4 no-dust-mask"]);
    expect(summary(reasoned)).toEqual([]);
  });
});

it("stands above the first line of a statement that goes on", () => {
  const text = `recipe seal {
  for    wood
  layer  dewaxed_shellac,
    thinned 1:9 with alcohol
  wait   until recoat
  layer  waterborne_polyurethane
  wait   until cured
}
`;
  const { shown, reasoned } = allowed(text, "no-ventilation");
  expect(shown.split("\n")[2]).toBe("  # allow no-ventilation: |");
  expect(summary(reasoned)).not.toEqual(expect.arrayContaining([expect.stringContaining("no-ventilation")]));
});

it("goes below the comments that stand there", () => {
  const text = SANDED("\n").replace("  step sand", "  # with the grain\n  step sand");
  expect(summary(allowed(text, "no-dust-mask").reasoned)).toEqual([]);
});

it("is not offered for what no comment allows", () => {
  const at = { file: FILE, span: { start: 0, end: 1 }, severity: "error", headline: "" } as const;
  for (const rule of [
    "internal-error",
    "not-checked",
    "use-not-found",
    "unused-suppression",
    "suppression-without-reason",
  ])
    expect(allowingIn(SANDED("\n"))({ ...at, rule })).toBeUndefined();
});
