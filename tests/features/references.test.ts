/** Everywhere that a thing is named, and the same within one file. */
import { describe, expect, test } from "vitest";
import { cursorIn, HERE, highlights, references } from "./navigate.ts";

const STOCK = `material hall_clear "Satin clear" {
  family waterborne polyurethane
}
`;

const RECIPES = `use "stock.finish"
recipe clearing(clear: material, coats: number = 3) {
  layer clear x coats
}
recipe inner(how: recipe, clear: material = hall_clear) {
  follow how(clear: hall_clear, coats: 2)
  follow clearing(clear: clear)
}
`;

const JOBS = `use "recipes.finish"
piece table {
  surface top {
    shape area 1 m2
    wood  beech
  }
}
job one {
  piece table
  apply inner(how: clearing, clear: hall_clear) to all
}
job two {
  after one
  piece table
  apply clearing(clear: hall_clear) to table.top
}
`;

const ALL = { "stock.finish": STOCK, "recipes.finish": RECIPES, "jobs.finish": JOBS };

test("a material is found in every file, as a default and as an argument, also of a recipe that is handed on", () => {
  const places = references(STOCK.replace("hall_clear", "hall$0_clear"), {
    "recipes.finish": RECIPES.replace("stock", "test"),
    "jobs.finish": JOBS,
  });
  expect(places).toEqual([
    "recipes.finish 5: recipe inner(how: recipe, clear: material = [hall_clear]) {",
    "recipes.finish 6: follow how(clear: [hall_clear], coats: 2)",
    "jobs.finish 10: apply inner(how: clearing, clear: [hall_clear]) to all",
    "jobs.finish 15: apply clearing(clear: [hall_clear]) to table.top",
    'test.finish 1: material [hall_clear] "Satin clear" {',
  ]);
});

test("it does not matter from where one asks", () => {
  const from = (text: string, cursor: string): readonly string[] =>
    references(text.replace(cursor.replace("$0", ""), cursor), { ...ALL, "jobs.finish": "" });
  const places = from(JOBS, "hall_$0clear) to all");
  expect(places).toHaveLength(5);
  expect(from(JOBS, "$0hall_clear) to table")).toEqual(places);
  expect(from(JOBS, "hall_clear$0) to table")).toEqual(places);
});

test("a parameter is found in its recipe and in every call", () => {
  expect(
    references(RECIPES.replace("(clear: material, c", "(cle$0ar: material, c"), {
      ...ALL,
      "jobs.finish": JOBS.replace("recipes", "test"),
    }),
  ).toEqual([
    "jobs.finish 15: apply clearing([clear]: hall_clear) to table.top",
    "test.finish 2: recipe clearing([clear]: material, coats: number = 3) {",
    "test.finish 3: layer [clear] x coats",
    "test.finish 6: follow how([clear]: hall_clear, coats: 2)",
    "test.finish 7: follow clearing([clear]: clear)",
  ]);
});

test("a recipe is found where it is followed, applied and handed on", () => {
  expect(
    references(RECIPES.replace("recipe clearing", "recipe cl$0earing"), {
      ...ALL,
      "jobs.finish": JOBS.replace("recipes", "test"),
    }),
  ).toEqual([
    "jobs.finish 10: apply inner(how: [clearing], clear: hall_clear) to all",
    "jobs.finish 15: apply [clearing](clear: hall_clear) to table.top",
    "test.finish 2: recipe [clearing](clear: material, coats: number = 3) {",
    "test.finish 7: follow [clearing](clear: clear)",
  ]);
});

test("a piece, a surface (also among `all`) and a job", () => {
  expect(
    references(JOBS.replace("piece table {", "piece ta$0ble {"), ALL).filter((place) =>
      place.startsWith(HERE),
    ),
  ).toEqual([
    "test.finish 2: piece [table] {",
    "test.finish 9: piece [table]",
    "test.finish 14: piece [table]",
    "test.finish 15: apply clearing(clear: hall_clear) to [table].top",
  ]);
  expect(references(JOBS.replace("surface top", "surface to$0p"), { ...ALL, "jobs.finish": "" })).toEqual([
    "test.finish 3: surface [top] {",
    "test.finish 10: apply inner(how: clearing, clear: hall_clear) to [all]",
    "test.finish 15: apply clearing(clear: hall_clear) to table.[top]",
  ]);
  expect(references(JOBS.replace("after one", "after o$0ne"), { ...ALL, "jobs.finish": "" })).toEqual([
    "test.finish 8: job [one] {",
    "test.finish 13: after [one]",
  ]);
});

test("the declaration is left out on demand", () => {
  const { analysis, offset } = cursorIn(JOBS.replace("after one", "after o$0ne"));
  expect(analysis.references(HERE, offset, false)).toHaveLength(1);
});

test("a built-in material has uses, though no declaration", () => {
  expect(
    references("recipe r {\n  step clean with so$0ap\n}\n", {
      "b.finish": "recipe s {\n  step clean with soap\n}\n",
    }),
  ).toEqual(["b.finish 2: step clean with [soap]", "test.finish 2: step clean with [soap]"]);
});

test("things of one name in files that do not see each other are different things", () => {
  const text = "material oil {\n  family drying oil\n}\n";
  expect(
    references(text.replace("oil", "o$0il"), { "b.finish": `${text}recipe r {\n  layer oil\n}\n` }),
  ).toEqual(["test.finish 1: material [oil] {"]);
});

test("the path of a `use` line is found in all lines that use the file", () => {
  expect(references('use "./sto$0ck.finish"\n', ALL)).toEqual([
    'recipes.finish 1: use ["stock.finish"]',
    'test.finish 1: use ["./stock.finish"]',
  ]);
});

test("nothing is found for a name that nobody knows, nor for a word of the notation", () => {
  expect(references("recipe r {\n  layer foo$0\n}\n")).toEqual([]);
  expect(references("recipe r {\n  la$0yer soap\n}\n")).toEqual([]);
});

describe("highlights", () => {
  test("declarations write, everything else reads", () => {
    expect(
      highlights(
        "recipe r(clear: material) {\n  layer clear\n  layer cl$0ear, thinned 1:1 with clear\n}\njob j {\n  apply r(clear: soap) to all\n}\n",
      ),
    ).toEqual([
      "write 1: recipe r([clear]: material) {",
      "read 2: layer [clear]",
      "read 3: layer [clear], thinned 1:1 with clear",
      "read 3: layer clear, thinned 1:1 with [clear]",
      "read 6: apply r([clear]: soap) to all",
    ]);
  });

  test("names that are only spelt alike are left alone", () => {
    expect(highlights("material one {\n  family water\n}\nrecipe one {\n  layer o$0ne\n}\n")).toEqual([
      "write 1: material [one] {",
      "read 5: layer [one]",
    ]);
    expect(highlights("recipe r {\n  step sa$0nd 120\n}\n")).toEqual([]);
  });
});
