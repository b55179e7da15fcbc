/** How running text is broken into lines. */
import { describe, expect, test } from "vitest";
import { wrap } from "../../server/src/reports/display-text.ts";

describe("lines of running text", () => {
  test("break between words", () => {
    expect(wrap("Wax under paint stays soft.", 10)).toEqual(["Wax under", "paint", "stays", "soft."]);
    expect(wrap("", 10)).toEqual([]);
  });

  test.each([
    ["air of 85 % RH at most", 11, ["air of", "85 % RH at", "most"]],
    ["wait 72 h longer", 7, ["wait", "72 h", "longer"]],
    ["it covers 10 m2/L by brush", 13, ["it covers", "10 m2/L by", "brush"]],
  ])("never tear a number from its unit: %s", (text, columns, lines) => {
    expect(wrap(text, columns)).toEqual(lines);
  });

  test.each([
    ["Write `step sand wet 80` here.", 20, ["Write", "`step sand wet 80`", "here."]],
    ["Write (`wait 1 h`, `x 2`) or wait.", 16, ["Write", "(`wait 1 h`,", "`x 2`) or wait."]],
    ["`one two three four`", 10, ["`one two", "three", "four`"]],
    ["it's a ` alone in a line", 10, ["it's a `", "alone in a", "line"]],
  ])("never tear a quotation that fits on a line: %s", (text, columns, lines) => {
    expect(wrap(text, columns)).toEqual(lines);
  });

  test("a word longer than a line stands alone", () => {
    expect(wrap("a longestword b", 5)).toEqual(["a", "longestword", "b"]);
  });
});
