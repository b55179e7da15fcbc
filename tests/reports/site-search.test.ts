import { describe, expect, test } from "vitest";
import { type SearchText, searched } from "../../server/src/reports/site/search-text.ts";

const text = (title: string, words: string): SearchText => ({
  path: `${title}.html`,
  title,
  kind: "recipe",
  text: words,
});
const TEXTS = [
  text("Stained top", "red oak, gel stain, wiped off"),
  text("Oak oil", "Stühle aus Eiche, hard wax oil"),
  text("Painted", "beech, slate trim paint"),
];
const found = (asked: string): readonly string[] => searched(TEXTS, asked).map(({ title }) => title);

describe("the search of a site", () => {
  test.each([
    ["oak", ["Oak oil", "Stained top"], "in a title goes first"],
    ["oak stain", ["Stained top"], "all words, the beginning of one is enough"],
    ["STUHLE", ["Oak oil"], "neither case nor accents count"],
    ["tain", [], "the middle of a word is no word"],
    ["hard-wax", ["Oak oil"], "signs between words do not count"],
    ["", [], "nothing asked, nothing found"],
    ["…", [], "without a word nothing is asked"],
  ])("%s: %j, %s", (asked, titles) => {
    expect(found(asked)).toEqual(titles);
  });
});
