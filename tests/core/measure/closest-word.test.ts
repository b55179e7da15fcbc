/** The nearest word of a list, and the distance below it. */
import { describe, expect, it, test } from "vitest";
import { closestWord, editDistance } from "../../../grammar/src/closest-word.ts";
import { closestName } from "../../../server/src/core/model/suggest.ts";

test.each([
  // Classic pairs: kitten → sitting needs 3 edits; a swap of neighbours counts once.
  ["kitten", "sitting", 3],
  ["pannel", "panel", 1],
  ["baord", "board", 1],
  ["", "abc", 3],
  ["same", "same", 0],
])("%s and %s", (a, b, expected) => {
  expect(editDistance(a, b)).toBe(expected);
  expect(editDistance(b, a)).toBe(expected);
});

test("near words are found, far ones are not", () => {
  const shapes = ["panel", "disc", "oval", "band", "post", "round", "box", "area"];
  expect(closestWord("pannel", shapes)).toBe("panel");
  expect(closestWord("disk", shapes)).toBe("disc");
  expect(closestWord("Oval", shapes)).toBe("oval");
  expect(closestWord("cylinder", shapes)).toBeUndefined();
  expect(closestWord("", shapes)).toBeUndefined();
});

test("what begins with the word wins over what is as near", () => {
  const names = ["waterborne_lacquer", "waterborne_polyurethane", "waterborne_acrylic"];
  // 6 letters are missing of what is meant; 5 changes make it another name.
  expect(editDistance("waterborne_polyur", "waterborne_lacquer")).toBe(5);
  expect(closestWord("waterborne_polyur", names)).toBe("waterborne_polyurethane");
  expect(closestWord("Waterborne_Poly", names)).toBe("waterborne_polyurethane");
  // Of several that begin so the nearest, and none where much is missing of each.
  expect(closestWord("dewax", ["dewaxed_shellac", "dewaxed", "dew"])).toBe("dewaxed");
  expect(closestWord("oil", ["oil_stain", "oil_varnish"])).toBeUndefined();
  expect(closestWord("oil", ["oil_stain", "oak"])).toBe("oil_stain");
  // One or two letters begin too many words.
  expect(closestWord("oi", ["oil_varnish"])).toBeUndefined();
  // The word itself in other letters is nearest.
  expect(closestWord("Oil", ["oil_stain", "oil"])).toBe("oil");
});

describe("the last part of a name", () => {
  it("is enough where one name alone ends so and nothing else is near", () => {
    expect(closestName("stripper", ["paint_stripper", "oil_stain"])).toBe("paint_stripper");
    expect(closestName("stripper", ["paint_stripper", "gel_stripper"])).toBeUndefined();
    expect(closestName("striper", ["stripes", "paint_striper"])).toBe("stripes");
    expect(closestWord("mask", ["dust_mask", "gloves"])).toBeUndefined();
  });
});
