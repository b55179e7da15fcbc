/** A search as people type it, and what is understood of it. */
import { describe, expect, test } from "vitest";
import { readSaid } from "../../../server/src/views/find/said.ts";
import { familyAsked } from "../../../server/src/views/find/words.ts";

function queryOf(said: string) {
  const read = readSaid(said);
  if ("refusal" in read) throw new Error(read.refusal);
  return read.query;
}
const understood = (said: string) => {
  const read = readSaid(said);
  return "refusal" in read ? read.refusal : read.understood;
};
const familyOf = (word: string) => {
  const read = familyAsked(word);
  return "refusal" in read ? [] : read.word;
};

describe("words that the notation knows", () => {
  test("what did I use on oak with a flat clear", () => {
    const query = { wood: "oak", sheen: "flat", families: [familyOf("clear")] };
    const [sheen] = understood("flat") as readonly string[];
    expect(queryOf("oak flat clear")).toEqual({ ...query, sheen: sheen!.replace("sheen ", "") });
    expect(queryOf("What did I use on oak, with a flat clear")).toEqual(queryOf("oak flat clear"));
    expect(understood("oak flat clear")).toEqual(["wood oak", sheen, "any clear"]);
  });

  test("names of several words are one", () => {
    expect(queryOf("white oak")).toEqual({ wood: "white oak" });
    expect(queryOf("waterborne polyurethane")).toEqual({ families: [["waterborne polyurethane"]] });
    expect(queryOf("semi gloss")).toEqual({ sheen: "semi-gloss" });
    // The sheen is asked for by itself, though labels begin with it.
    expect(queryOf("satin waterborne polyurethane")).toEqual({
      sheen: "satin",
      families: [["waterborne polyurethane"]],
    });
  });

  test("a second wood is a word of what is written", () => {
    expect(queryOf("oak walnut gel")).toEqual({ wood: "oak", texts: ["walnut", "gel"] });
  });

  test("users, wear and kinds", () => {
    expect(queryOf("jobs for children hard wear")).toEqual({
      kinds: ["job"],
      meantFor: "children",
      wear: "hard",
    });
  });
});

describe("limits", () => {
  test.each([
    ["under 8 h", { hoursAtMost: 8 }],
    ["8h", { hoursAtMost: 8 }],
    ["at most 7.5 hours", { hoursAtMost: 7.5 }],
    ["10 days", { daysAtMost: 10 }],
    ["80 EUR", { costAtMost: 80 }],
    ["€80", { costAtMost: 80 }],
    ["hours:8 days:10 cost:80", { hoursAtMost: 8, daysAtMost: 10, costAtMost: 80 }],
    // A number by itself is a word.
    ["1902", { texts: ["1902"] }],
  ])("%s", (said, query) => expect(queryOf(said)).toEqual(query));
});

describe("words with a key", () => {
  test("say what they are", () => {
    expect(queryOf("wood:oak sheen:gloss wear:hard for:food shop:mill text:rings kind:piece")).toEqual({
      wood: "oak",
      sheen: "gloss",
      wear: "hard",
      meantFor: "food",
      shop: "mill",
      texts: ["rings"],
      kinds: ["piece"],
    });
    expect(queryOf('material:"hall clear" room:"the mill"')).toEqual({
      materials: ["hall clear"],
      shop: "the mill",
    });
  });

  test("of one that may be asked once, the last counts", () => {
    expect(queryOf("wood:oak wood:beech")).toEqual({ wood: "beech" });
  });

  test("are refused with what was expected", () => {
    expect(understood("colour:red")).toBe(
      "`colour:` is not known. Write wood:, sheen:, family:, material:, wear:, shop:, for:, text:, hours:, days:, cost:, kind:.",
    );
    expect(understood("hours:soon")).toContain("`hours:soon` is not a number. Write one, such as `hours:8`.");
    expect(understood("wear:wild")).toContain("is not a degree of wear. Write");
    expect(understood('material:""')).toContain('needs a word behind it, such as `material:"hall clear"`.');
    expect(understood("kind:shop")).toContain("is not a kind of match. Write recipe, job, piece, surface.");
    expect(understood("x".repeat(501))).toContain("at most 500 letters");
  });
});

describe("half typed", () => {
  test.each([
    ["", {}],
    ["  ,  ", {}],
    ["with a", {}],
    ["oak wood:", { wood: "oak" }],
    ['"rings of', { texts: ["rings of"] }],
    ["oa", { texts: ["oa"] }],
  ])("%j", (said, query) => expect(queryOf(said)).toEqual(query));
});

test("what is in quotes is looked for as it is written", () => {
  expect(queryOf('"oak"')).toEqual({ texts: ["oak"] });
});
