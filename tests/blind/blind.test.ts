/** The blind recipes are what they say: sound notation, known kinds of mistakes, and words with each mark. */
import { expect, test } from "vitest";
import { readBlind } from "./cases.ts";
import { isCategory } from "./categories.ts";

const cases = readBlind();

test("there are a hundred of them, and most are sound", () => {
  expect(cases.length).toBe(100);
  expect(cases.filter(({ marks }) => marks.length === 0).length).toBe(62);
});

test.each(cases.map((one) => [one.name, one] as const))("%s says what its marks mean", (_, { marks }) => {
  for (const { category, words } of marks) {
    expect(isCategory(category), category).toBe(true);
    expect(words).not.toBe("");
  }
});
