/**
 * Light and dark, from numbers and words. The lightness of grey is checked against published CIE L* values of sRGB.
 */
import { describe, expect, it } from "vitest";
import { lightnessOf, shadeOf } from "../../server/src/core/colour.ts";

describe("lightness", () => {
  it.each([
    ["#000000", 0],
    ["#fff", 100],
    ["#777777", 50.03],
    ["#ff0000", 53.24],
    ["#00ff00", 87.73],
    ["#0000ff", 32.3],
  ])("%s is %d", (colour, lightness) => expect(lightnessOf(colour)).toBeCloseTo(lightness, 1));

  it("is not known of words and broken numbers", () => {
    expect(lightnessOf("slate")).toBeUndefined();
    expect(lightnessOf("#12")).toBeUndefined();
  });
});

describe("shade", () => {
  it.each([
    ["#2b3a42", "dark"],
    ["#7d8a86", "middle"],
    ["#F3EAD3", "light"],
    ["white", "light"],
    ["Antique white", "light"],
    ["Off-white", "light"],
    ["Black", "dark"],
    ["Dark walnut", "dark"],
    ["Black and white", undefined],
    ["Slate", undefined],
    ["clear", undefined],
    [undefined, undefined],
  ])("%s is %s", (colour, shade) => expect(shadeOf(colour)).toBe(shade));
});
