/**
 * Comments that allow a finding: their form, what they cover, and what is said of those that do not do their work.
 */
import { describe, expect, it } from "vitest";
import { parseFile } from "../../grammar/src/parse.ts";
import { suppressionsIn } from "../../server/src/core/rules/suppressions.ts";
import { summary } from "../harness/check-text.ts";

const sanded = (comment: string, newline = "\n"): string =>
  ["recipe smooth {", "  for  wood", ...comment.split("\n"), "  step sand 150", "  step dust", "}", ""].join(
    newline,
  );

describe("comments that allow a finding", () => {
  it.each([
    ["allowed", "  # allow no-dust-mask: extraction at the sander", []],
    ["without a space", "  #allow no-dust-mask:extraction", []],
    ["with other comments between", "  # allow no-dust-mask: extraction\n  # with the grain", []],
    [
      "two stacked, one of them unused",
      "  # allow no-gloves: bare hands\n  # allow no-dust-mask: out of doors",
      ["3 unused-suppression"],
    ],
    ["no reason", "  # allow no-dust-mask:", ["3 suppression-without-reason", "4 no-dust-mask"]],
    ["no colon", "  # allow no-dust-mask out of doors", ["3 suppression-without-reason", "4 no-dust-mask"]],
    [
      "a blank line between",
      "  # allow no-dust-mask: out of doors\n",
      ["3 unused-suppression", "5 no-dust-mask"],
    ],
    ["another rule", "  # allow no-gloves: bare hands", ["3 unused-suppression", "4 no-dust-mask"]],
    ["no such rule", "  # allow no-dusk-mask: night shift", ["3 unused-suppression", "4 no-dust-mask"]],
    ["prose", "  # allow time for it: 20 min", ["4 no-dust-mask"]],
    ["one word of prose", "  # allow time: 20 min", ["4 no-dust-mask"]],
    ["documentation", "  ## allow no-dust-mask: extraction", ["4 no-dust-mask"]],
  ])("%s", (_, comment, expected) => {
    expect(summary(sanded(comment))).toEqual(expected);
    expect(summary(sanded(comment, "\r\n"))).toEqual(expected);
  });

  it("a comment after code is none", () => {
    const text =
      "recipe smooth {\n  for  wood # allow no-dust-mask: extraction\n  step sand 150\n  step dust\n}\n";
    expect(summary(text)).toEqual(["3 no-dust-mask"]);
  });

  it("covers a statement that goes on over several lines", () => {
    const text = `recipe seal {
  safety no_ignition
  # allow thinned-too-far: tried on a board
  # allow no-ventilation: tried on a board
  layer  dewaxed_shellac, # the first coat
    thinned 1:9 with alcohol
  wait   until recoat
  layer  waterborne_polyurethane
  wait   until cured
}
`;
    expect(summary(text).filter((line) => !line.includes("unused"))).toEqual([]);
    expect(suppressionsIn(parseFile(text)).map((it) => it.covers)).toEqual([
      [4, 5],
      [4, 5],
    ]);
  });

  it("stands above a declaration too", () => {
    const text = `# allow material-not-known: the tin has lost its label
material old_tin {
  covers 10 m2/L
}
`;
    expect(summary(text)).toEqual([]);
  });
});
