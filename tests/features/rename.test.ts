/** Renaming: everywhere at once, and never so that something else is meant than before. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Files, renamed, renameTarget } from "./navigate.ts";

const STOCK = `material hall_clear "Satin clear" {
  family waterborne polyurethane
}
material slate {
  family acrylic paint
}
`;

const RECIPES = `use "stock.finish"
recipe clearing(clear: material, coats: number = 3) {
  layer clear x coats
  step  clean with soap
}
`;

const OTHERS: Files = { "stock.finish": STOCK, "recipes.finish": RECIPES };

const JOB = `use "recipes.finish"
piece table {
  surface top {
    shape area 1 m2
    wood  beech
  }
  surface base {
    shape area 1 m2
    wood  beech
  }
}
job one {
  piece table
  apply clearing(clear: hall_clear) to top, base
}
`;

describe("what is renamed", () => {
  test("a material, in all files", () => {
    expect(renamed(JOB.replace("hall_clear", "hall$0_clear"), "satin", OTHERS)).toEqual([
      'stock.finish 1: material satin "Satin clear" {',
      "test.finish 14: apply clearing(clear: satin) to top, base",
    ]);
  });

  test("a parameter, in its recipe and in every call", () => {
    expect(renamed(JOB.replace("(clear:", "(cl$0ear:"), "finish", OTHERS)).toEqual([
      "recipes.finish 2: recipe clearing(finish: material, coats: number = 3) {",
      "recipes.finish 3: layer finish x coats",
      "test.finish 14: apply clearing(finish: hall_clear) to top, base",
    ]);
  });

  test("a recipe, a piece, a surface and a job", () => {
    expect(renamed(JOB.replace("apply clear", "apply cl$0ear"), "satin_top", OTHERS)).toEqual([
      "recipes.finish 2: recipe satin_top(clear: material, coats: number = 3) {",
      "test.finish 14: apply satin_top(clear: hall_clear) to top, base",
    ]);
    expect(renamed(JOB.replace("  piece table", "  piece tab$0le"), "desk", OTHERS)).toEqual([
      "test.finish 2: piece desk {",
      "test.finish 13: piece desk",
    ]);
    expect(renamed(JOB.replace("surface base", "surface ba$0se"), "legs", OTHERS)).toEqual([
      "test.finish 7: surface legs {",
      "test.finish 14: apply clearing(clear: hall_clear) to top, legs",
    ]);
    expect(renamed(`${JOB}job two {\n  after on$0e\n}\n`, "first", OTHERS)).toEqual([
      "test.finish 12: job first {",
      "test.finish 17: after first",
    ]);
  });

  test("letters of any script; accents become one letter", () => {
    expect(renamed("material o$0il {\n  family drying oil\n}\n", "Öl_2")).toEqual([
      "test.finish 1: material Öl_2 {",
    ]);
    expect(renamed("material o$0il {\n  family drying oil\n}\n", " e\u0301tui ")).toEqual([
      "test.finish 1: material \u00e9tui {",
    ]);
  });

  test("to its own name: nothing", () => {
    expect(renamed("material o$0il {\n}\n", "oil")).toEqual([]);
  });

  test("a shadow of a built-in material, without touching files that mean the built-in one", () => {
    expect(
      renamed("material so$0ap {\n  family cleaner\n}\n", "savon", {
        "a.finish": 'use "test.finish"\nrecipe a {\n  step clean with soap\n}\n',
        "b.finish": "recipe b {\n  step clean with soap\n}\n",
      }),
    ).toEqual(["a.finish 3: step clean with savon", "test.finish 1: material savon {"]);
  });
});

describe("what must keep one name goes along", () => {
  test("the parameters that one call names in several recipes", () => {
    const text = `recipe a(coat$0: material) {
  layer coat
}
recipe b(coat: material) {
  layer coat x 2
}
recipe outer(how: recipe = a) {
  follow how(coat: soap)
}
job one {
  apply outer(how: b) to all
  apply b(coat: soap) to all
}
`;
    expect(renamed(text, "film")).toEqual([
      "test.finish 1: recipe a(film: material) {",
      "test.finish 2: layer film",
      "test.finish 4: recipe b(film: material) {",
      "test.finish 5: layer film x 2",
      "test.finish 8: follow how(film: soap)",
      "test.finish 12: apply b(film: soap) to all",
    ]);
  });

  test("a surface and the one of the same name that an earlier job left", () => {
    const text = `piece found {
  surface case {
    shape area 1 m2
    wood  beech
  }
}
piece kept {
  surface ca$0se {
    shape area 1 m2
    wood  beech
    existing as left by first
  }
}
job start {
  piece found
  apply nothing to case
}
job first {
  after start
}
job second {
  piece kept
  apply nothing to case
}
`;
    expect(renamed(text, "carcass")).toEqual([
      "test.finish 2: surface carcass {",
      "test.finish 8: surface carcass {",
      "test.finish 16: apply nothing to carcass",
      "test.finish 23: apply nothing to carcass",
    ]);
  });
});

describe("what is refused", () => {
  test.each([
    ["", "Nothing is not a name: a name is a letter, followed by letters, digits and `_`."],
    ["3coats", "`3coats` is not a name: a name is a letter, followed by letters, digits and `_`."],
    ["_a", "`_a` is not a name: a name is a letter, followed by letters, digits and `_`."],
    [
      "semi-gloss",
      "`semi-gloss` is not a name: a name is a letter, followed by letters, digits and `_`. Write `semi_gloss`.",
    ],
    [
      "hall clear",
      "`hall clear` is not a name: a name is a letter, followed by letters, digits and `_`. Write `hall_clear`.",
    ],
    ["a\nb", "`a\nb` is not a name: a name is a letter, followed by letters, digits and `_`. Write `a_b`."],
    ["to", "`to` is a word of the notation. Choose another name."],
  ])("%j is no name", (name, message) => {
    expect(renamed("material o$0il {\n}\n", name)).toBe(message);
  });

  test("`all`, for a surface only", () => {
    expect(renamed(JOB.replace("surface base", "surface ba$0se"), "all", OTHERS)).toBe(
      "`all` is a word of the notation. Choose another name.",
    );
    expect(renamed("material o$0il {\n}\n", "all")).toEqual(["test.finish 1: material all {"]);
  });

  test("names that are taken", () => {
    expect(renamed(JOB.replace("hall_clear", "hall$0_clear"), "slate", OTHERS)).toBe(
      "There already is a material `slate` in line 4 of stock.finish. Choose another name.",
    );
    expect(renamed(JOB.replace("surface base", "surface ba$0se"), "top", OTHERS)).toBe(
      "The piece `table` already has a surface `top` in line 3. Choose another name.",
    );
    expect(renamed(JOB.replace("(clear:", "(cl$0ear:"), "coats", OTHERS)).toBe(
      "The recipe `clearing` already has a parameter `coats` in line 2 of recipes.finish. Choose another name.",
    );
  });

  test("a name that is taken in a file beside, which a third one sees as well", () => {
    expect(
      renamed("job o$0ne {\n}\n", "two", {
        "beside.finish": "job two {\n}\n",
        "both.finish": 'use "beside.finish"\nuse "test.finish"\n',
      }),
    ).toBe(
      "There already is a job `two` in line 1 of beside.finish, and both.finish uses both files. Choose another name.",
    );
    expect(renamed("job o$0ne {\n}\n", "two", { "beside.finish": "job two {\n}\n" })).toEqual([
      "test.finish 1: job two {",
    ]);
  });

  test("the same name of another kind is not taken", () => {
    expect(renamed("job o$0ne {\n}\nrecipe two {\n}\n", "two")).toEqual(["test.finish 1: job two {"]);
  });

  test("a built-in material", () => {
    const text = "recipe r {\n  step clean with so$0ap\n}\n";
    const message =
      "`soap` is built in and keeps its name. Declare a material of the same family to give it a name of your own.";
    expect(renamed(text, "savon")).toBe(message);
    expect(renameTarget(text)).toBe(message);
  });

  test("a name that nobody knows, a word, a path", () => {
    expect(renameTarget("recipe r {\n  layer fo$0o\n}\n")).toBe(
      "Nothing is known here by the name `foo`, so it cannot be renamed.",
    );
    expect(renameTarget("recipe r {\n  st$0ep dust\n}\n")).toMatch(/^There is no name here/u);
    expect(
      renameTarget("piece p {\n  surface top {\n  }\n}\njob j {\n  piece p\n  apply r to a$0ll\n}\n"),
    ).toMatch(/^There is no name here/u);
    expect(renameTarget('use "st$0ock.finish"\n', OTHERS)).toMatch(/^This is the path of a file/u);
  });

  test("a surface that two pieces have", () => {
    const text =
      "piece a {\n  surface top {\n  }\n}\npiece b {\n  surface top {\n  }\n}\njob j {\n  piece a\n  piece b\n  apply r to to$0p\n}\n";
    expect(renameTarget(text)).toBe(
      "`top` may mean several things here. Rename the one you mean where it is declared.",
    );
    expect(renamed(text.replace("$0", "").replace("surface top", "surface t$0op"), "lid")).toBe(
      "In line 12 `top` would mean the surface `top` instead of one of several surfaces. Choose another name.",
    );
  });
});

describe("what would mean something else afterwards", () => {
  const recipe = (lines: string): string =>
    `material oil {\n  family drying oil\n}\nrecipe r(coat: material, n: number = 2, pause: duration = 2 h) {\n${lines}\n}\n`;

  test("a material that a parameter would hide", () => {
    expect(renamed(recipe("  layer o$0il\n  layer coat"), "coat")).toBe(
      "In line 5 `coat` would mean the parameter `coat` instead of the material `oil`. Choose another name.",
    );
    expect(renamed(recipe("  layer coat").replace("material oil", "material o$0il"), "coat")).toEqual([
      "test.finish 1: material coat {",
    ]);
  });

  test("a parameter that would hide a material", () => {
    expect(renamed(recipe("  layer oil\n  layer co$0at"), "oil")).toBe(
      "In line 5 `oil` would mean the parameter `oil` instead of the material `oil`. Choose another name.",
    );
    expect(renamed(recipe("  layer co$0at"), "oil")).toEqual([
      "test.finish 4: recipe r(oil: material, n: number = 2, pause: duration = 2 h) {",
      "test.finish 5: layer oil",
    ]);
  });

  test("a parameter that would hide a built-in material", () => {
    expect(renamed(recipe("  step clean with soap\n  layer co$0at"), "soap")).toBe(
      "In line 5 `soap` would mean the parameter `soap` instead of the built-in `soap`. Choose another name.",
    );
  });

  test("a built-in material that would be shadowed, in any file", () => {
    expect(renamed(JOB.replace("hall_clear", "hall$0_clear"), "soap", OTHERS)).toBe(
      "In line 4 of recipes.finish `soap` would mean the material `soap` instead of the built-in `soap`. Choose another name.",
    );
  });

  test("a recipe that a parameter would hide", () => {
    expect(
      renamed("recipe a {\n  step dust\n}\nrecipe b(how: recipe) {\n  follow a$0\n  follow how\n}\n", "how"),
    ).toBe("In line 5 `how` would mean the parameter `how` instead of the recipe `a`. Choose another name.");
  });

  test("words that the notation takes for its own in one place", () => {
    expect(renamed(recipe("  wait pa$0use"), "overnight")).toBe(
      "In line 5 the notation would read `overnight` as a word of its own. Choose another name.",
    );
    expect(renamed(recipe("  layer coat,\n    wiped after pa$0use"), "wiped")).toEqual([
      "test.finish 4: recipe r(coat: material, n: number = 2, wiped: duration = 2 h) {",
      "test.finish 6: wiped after wiped",
    ]);
    expect(renamed(recipe("  step sand n$0, n"), "wet")).toMatch(/^In line 5 /u);
  });

  test("an argument that is given already, to a parameter that there is not yet", () => {
    const text =
      "recipe r(coat$0: material) {\n  layer coat\n}\njob j {\n  apply r(coat: soap, film: soap) to all\n}\n";
    expect(renamed(text, "film")).toBe(
      "In line 5 `film` means nothing yet, and would mean the parameter `film`. Choose another name.",
    );
  });

  test("but a name that meant nothing may come to mean this", () => {
    expect(renamed("material o$0il {\n}\nrecipe r {\n  layer linseed\n}\n", "linseed")).toEqual([
      "test.finish 1: material linseed {",
    ]);
  });

  test("a material's only word of what is dangerous in it", () => {
    const text = "material ly$0e_wash {\n  family wood bleach\n}\n";
    expect(renamed(text.replace("lye_wash", "lye").replace("ly$0e_wash", "ly$0e"), "wash")).toBe(
      "Only its name tells that `lye` holds something caustic, and findings go by that. Say so in its title or in a `##` line first.",
    );
    expect(renamed(`## Contains lye.\n${text}`, "wash")).toEqual(["test.finish 2: material wash {"]);
  });
});

test("in a text that is half typed the intact parts are renamed", () => {
  const text = `material oi$0l {
  family drying oil
recipe r(coat: material = oil {
  layer oil x , by
  layer
  step clean with
`;
  expect(renamed(text, "linseed")).toEqual([
    "test.finish 1: material linseed {",
    "test.finish 3: recipe r(coat: material = linseed {",
    "test.finish 4: layer linseed x , by",
  ]);
});

test("whatever the new name, it is refused or every text reads as before but for it", () => {
  fc.assert(
    fc.property(fc.string({ unit: "grapheme", maxLength: 8 }), (name) => {
      const result = renamed(JOB.replace("hall_clear", "hall$0_clear"), name, OTHERS);
      if (typeof result === "string") expect(result).toMatch(/[.]$/u);
      else expect(result).toHaveLength(2);
    }),
  );
});
