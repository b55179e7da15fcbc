/** Going to what a name means: within a file, over files, and in texts that are half typed. */
import { describe, expect, test } from "vitest";
import { definition, definitionSpans } from "./navigate.ts";

const STOCK = `material hall_clear "Satin clear" {
  family waterborne polyurethane
}
material water_coat {
  family waterborne polyurethane
  mix    4:1 with hardener
}
material hardener {
  family water
}
`;

const SHOP = `shop mill {
  air 18 C, 60 % RH
}
`;

const RECIPES = `use "stock.finish"
recipe clearing(clear: material, coats: number = 3, pause: duration = 2 h) {
  layer clear x coats {
    wait pause
  }
}
recipe waxing(wax: material) {
  layer wax
}
recipe two_parts(below: recipe, above: recipe = waxing, wax: material) {
  follow below(clear: hall_clear)
  follow above(wax: wax)
}
`;

const PIECE = `piece table {
  surface top {
    shape panel 2 m x 1 m
    wood  red oak
  }
  surface base {
    shape area 1 m2
    wood  red oak
  }
}
piece chair {
  surface top {
    shape area 1 m2
    wood  beech
    existing as left by first
  }
}
`;

const ALL = { "stock.finish": STOCK, "shop.finish": SHOP, "recipes.finish": RECIPES };
const USES = 'use "recipes.finish"\nuse "shop.finish"\n';
const job = (lines: string): string => `${USES}${PIECE}job first {\n${lines}\n}\n`;

describe("a name leads to its declaration", () => {
  test.each([
    [
      "a material as an argument",
      job("  apply clearing(clear: hall_$0clear) to top"),
      'stock.finish 1: material [hall_clear] "Satin clear" {',
    ],
    ["a piece", job("  piece ta$0ble x 2"), "test.finish 3: piece [table] {"],
    ["a shop", job("  in mill$0"), "shop.finish 1: shop [mill] {"],
    [
      "a recipe",
      job("  apply $0clearing(clear: hall_clear) to top"),
      "recipes.finish 2: recipe [clearing](clear: material, coats: number = 3, pause: duration = 2 h) {",
    ],
    [
      "a named argument",
      job("  apply clearing(cl$0ear: hall_clear) to top"),
      "recipes.finish 2: recipe clearing([clear]: material, coats: number = 3, pause: duration = 2 h) {",
    ],
    [
      "a surface of the only piece",
      job("  piece table\n  apply clearing(clear: hall_clear) to ba$0se"),
      "test.finish 8: surface [base] {",
    ],
    [
      "a surface with its piece",
      job("  piece table\n  piece chair\n  apply clearing(clear: hall_clear) to chair.to$0p"),
      "test.finish 14: surface [top] {",
    ],
    [
      "the piece in front of a surface",
      job("  piece table\n  piece chair\n  apply clearing(clear: hall_clear) to cha$0ir.top"),
      "test.finish 13: piece [chair] {",
    ],
    [
      "a job that is gone on from",
      `${job("  piece table")}job second {\n  after fi$0rst\n}\n`,
      "test.finish 20: job [first] {",
    ],
    [
      "a job that left layers",
      `${PIECE.replace("by first", "by fi$0rst")}job first {\n  piece chair\n}\n`,
      "test.finish 18: job [first] {",
    ],
    ["the declared name itself", `${USES}shop ga$0rret {\n}\n`, "test.finish 3: shop [garret] {"],
    ["a hardener", STOCK.replace("with hardener", "with harde$0ner"), "test.finish 8: material [hardener] {"],
    [
      "a parameter as a material",
      RECIPES.replace("layer clear", "layer cl$0ear"),
      "test.finish 2: recipe clearing([clear]: material, coats: number = 3, pause: duration = 2 h) {",
    ],
    [
      "a parameter as a number",
      RECIPES.replace("x coats", "x co$0ats"),
      "test.finish 2: recipe clearing(clear: material, [coats]: number = 3, pause: duration = 2 h) {",
    ],
    [
      "a parameter as a time",
      RECIPES.replace("wait pause", "wait pau$0se"),
      "test.finish 2: recipe clearing(clear: material, coats: number = 3, [pause]: duration = 2 h) {",
    ],
    [
      "a parameter that is followed",
      RECIPES.replace("follow below", "follow bel$0ow"),
      "test.finish 10: recipe two_parts([below]: recipe, above: recipe = waxing, wax: material) {",
    ],
    [
      "a parameter that is handed on",
      RECIPES.replace("wax: wax)", "wax: wa$0x)"),
      "test.finish 10: recipe two_parts(below: recipe, above: recipe = waxing, [wax]: material) {",
    ],
    [
      "a default",
      RECIPES.replace("= waxing", "= wax$0ing"),
      "test.finish 7: recipe [waxing](wax: material) {",
    ],
    [
      "an argument of the recipe that a parameter stands for by default",
      RECIPES.replace("above(wax", "above(w$0ax"),
      "test.finish 7: recipe waxing([wax]: material) {",
    ],
  ])("%s", (_, text, place) => {
    expect(definition(text, ALL)).toEqual([place]);
  });

  test("what an argument of a handed-on recipe means depends on all that is handed on", () => {
    const text = `recipe a(coat: material) {
  layer coat
}
recipe b(coat: material) {
  layer coat x 2
}
recipe inner(how: recipe) {
  follow how(co$0at: gel_stain)
}
recipe outer(which: recipe) {
  follow inner(how: which)
}
job one {
  apply outer(which: a) to all
  apply inner(how: b) to all
}
`;
    expect(definition(text)).toEqual([
      "test.finish 4: recipe b([coat]: material) {",
      "test.finish 1: recipe a([coat]: material) {",
    ]);
  });

  test("`all` leads to every surface", () => {
    expect(definition(job("  piece table\n  apply clearing(clear: hall_clear) to a$0ll"), ALL)).toEqual([
      "test.finish 4: surface [top] {",
      "test.finish 8: surface [base] {",
    ]);
  });

  test("a surface that two pieces have leads to both", () => {
    expect(
      definition(job("  piece table\n  piece chair\n  apply clearing(clear: hall_clear) to to$0p"), ALL),
    ).toEqual(["test.finish 4: surface [top] {", "test.finish 14: surface [top] {"]);
  });
});

describe("what hides what", () => {
  test("a declared material shadows the built-in one, which has no place", () => {
    const text = "recipe r {\n  step clean with so$0ap\n}\n";
    expect(definition(text)).toEqual([]);
    expect(
      definition(`use "own.finish"\n${text}`, { "own.finish": "material soap {\n  family cleaner\n}\n" }),
    ).toEqual(["own.finish 1: material [soap] {"]);
  });

  test("a parameter hides a material in the lines of its recipe, but not in its head", () => {
    const text = (layer: string, value: string): string =>
      `material oil {\n  family drying oil\n}\nrecipe r(oil: material = ${value}) {\n  layer ${layer}\n}\n`;
    expect(definition(text("o$0il", "oil"))).toEqual(["test.finish 4: recipe r([oil]: material = oil) {"]);
    expect(definition(text("oil", "o$0il"))).toEqual(["test.finish 1: material [oil] {"]);
  });

  test("kinds do not hide each other", () => {
    const text =
      "material one {\n  family water\n}\nrecipe one {\n  layer one\n}\nrecipe two {\n  follow on$0e\n}\n";
    expect(definition(text)).toEqual(["test.finish 4: recipe [one] {"]);
  });

  test("a file that is not used does not count", () => {
    expect(definition("recipe r {\n  layer hall$0_clear\n}\n", ALL)).toEqual([]);
  });
});

describe("the path of a `use` line", () => {
  test("leads to the file", () => {
    expect(definitionSpans('use "sto$0ck.finish"\n', ALL)).toEqual(['"stock.finish"', ""]);
  });

  test("leads nowhere when there is no such file", () => {
    expect(definition('use "gone$0.finish"\n')).toEqual([]);
  });
});

test("the whole of what is meant is told apart from its name", () => {
  expect(definitionSpans(job("  piece table\n  apply clearing(clear: hall_clear) to ba$0se"), ALL)).toEqual([
    "base",
    "surface base {\n    shape area 1 m2\n    wood  red oak\n  }",
  ]);
  expect(definitionSpans(RECIPES.replace("x coats", "x co$0ats"), ALL)).toEqual([
    "coats",
    "coats: number = 3",
  ]);
  expect(definitionSpans(`${SHOP}job j {\n  in mi$0ll\n}\n`)).toEqual(["mill", SHOP.trimEnd()]);
});

describe("in a text that is half typed", () => {
  test("intact parts lead where they lead", () => {
    const text = `material oil {
  family drying oil
recipe r(clear: , coats: number {
  layer oil x co$0ats, by
`;
    expect(definition(text)).toEqual(["test.finish 3: recipe r(clear: , [coats]: number {"]);
    expect(definition(text.replace("$0", "").replace("layer oil", "layer o$0il"))).toEqual([
      "test.finish 1: material [oil] {",
    ]);
    expect(definition(text.replace("$0", "").replace("layer oil", "layer cl$0ear"))).toEqual([
      "test.finish 3: recipe r([clear]: , coats: number {",
    ]);
  });

  test("a call without its end, and an argument whose parameter is not known", () => {
    const text = "material oil {\n  family drying oil\n}\njob j {\n  apply nothing(what: oi$0l";
    expect(definition(text)).toEqual(["test.finish 1: material [oil] {"]);
  });

  test("words of the notation, numbers and comments lead nowhere", () => {
    for (const text of [
      "recipe r {\n  st$0ep dust\n}",
      "recipe r {\n  step du$0st\n}",
      "recipe r {\n  wait 7$02 h\n}",
      "# us$0e\n",
      "$0",
    ]) {
      expect(definition(text)).toEqual([]);
    }
  });
});
