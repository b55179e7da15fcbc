/** Lines that a fix puts in stand as the lines around them do. */
import { describe, expect, test } from "vitest";
import { findingsOf } from "../harness/check-text.ts";

/** What the fixes of a recipe's findings put in, for sanding dust under the coat of its last line. */
function inserted(...lines: readonly string[]): readonly string[] {
  const text = ["recipe clear_coat {", ...lines, "}", ""].join("\n");
  const finding = findingsOf(text).find(({ rule }) => rule === "coat-on-unclean-surface");
  return finding!.fixes.flatMap(({ edits }) => edits.map((edit) => edit.text));
}

describe("a line put in by a fix", () => {
  test("has the indent of the line below it, and its value in the same column", () => {
    expect(
      inserted(
        "  for    wood",
        "  safety dust_mask",
        "  step   sand 120",
        "  layer  waterborne_polyurethane",
      ),
    ).toEqual(["  step   dust\n"]);
    expect(inserted("\tstep sand 120", "\tlayer  waterborne_polyurethane")).toEqual(["\tstep   dust\n"]);
  });

  test("keeps one space where its keyword is as long as the column", () => {
    expect(inserted("  step sand 120", "  layer waterborne_polyurethane")).toEqual(["  step  dust\n"]);
  });
});
