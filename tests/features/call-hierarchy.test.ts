/** Who does whose steps. */
import { expect, test } from "vitest";
import { calls, cursorIn, HERE } from "./navigate.ts";

const RECIPES = `recipe cleaning {
  step clean with soap
}
recipe clearing(clear: material) {
  follow cleaning
  layer  clear x 2 {
    follow cleaning()
  }
}
recipe whole(how: recipe = clearing) {
  follow cleaning
  follow how(clear: gel_stain)
}
`;

const JOBS = `use "recipes.finish"
job one "The first" {
  apply whole(how: clearing) to all
  apply clearing(clear: soap) to all
}
job {
  apply cleaning() to all
}
`;

const OTHERS = { "jobs.finish": JOBS.replace("recipes", "test") };

test("incoming: every recipe and job that does the steps, with all lines that say so", () => {
  expect(calls("incoming", RECIPES.replace("recipe cleaning", "recipe clean$0ing"), OTHERS)).toEqual([
    "job (job without a name) (jobs.finish) by jobs.finish 7: apply [cleaning]() to all",
    "recipe clearing (test.finish) by test.finish 5: follow [cleaning]; test.finish 7: follow [cleaning]()",
    "recipe whole (test.finish) by test.finish 11: follow [cleaning]",
  ]);
});

test("incoming: also by way of a parameter that it is handed on to", () => {
  expect(calls("incoming", RECIPES.replace("recipe clearing", "recipe clear$0ing"), OTHERS)).toEqual([
    "job one (jobs.finish) by jobs.finish 4: apply [clearing](clear: soap) to all",
    "recipe whole (test.finish) by test.finish 12: follow [how](clear: gel_stain)",
  ]);
});

test("outgoing: what a recipe or job follows, from its name or from a line that names it", () => {
  const whole = [
    "recipe cleaning (test.finish) by test.finish 11: follow [cleaning]",
    "recipe clearing (test.finish) by test.finish 12: follow [how](clear: gel_stain)",
  ];
  expect(calls("outgoing", RECIPES.replace("recipe whole", "recipe who$0le"))).toEqual(whole);
  expect(calls("outgoing", `${RECIPES}job j {\n  apply who$0le to all\n}\n`)).toEqual(whole);
  expect(calls("outgoing", JOBS.replace("job one", "job o$0ne"), { "recipes.finish": RECIPES })).toEqual([
    "recipe whole (recipes.finish) by test.finish 3: apply [whole](how: clearing) to all",
    "recipe clearing (recipes.finish) by test.finish 4: apply [clearing](clear: soap) to all",
  ]);
});

test("a followed parameter shows every recipe that it may be", () => {
  const { analysis, offset } = cursorIn(RECIPES.replace("follow how", "follow h$0ow"), OTHERS);
  expect(analysis.callItems(HERE, offset).map(({ kind, name }) => `${kind} ${name}`)).toEqual([
    "recipe clearing",
  ]);
});

test("a declaration without a name is asked at its first word", () => {
  const text = JOBS.replace("job {", "jo$0b {");
  expect(calls("outgoing", text, { "recipes.finish": RECIPES })).toEqual([
    "recipe cleaning (recipes.finish) by test.finish 7: apply [cleaning]() to all",
  ]);
});

test("materials, surfaces and words have no calls", () => {
  for (const text of [
    RECIPES.replace("with soap", "with so$0ap"),
    RECIPES.replace("(clear: material)", "(cl$0ear: material)"),
    RECIPES.replace("follow cleaning", "fol$0low cleaning"),
    "piece p {\n  surface to$0p {\n  }\n}\n",
  ]) {
    const { analysis, offset } = cursorIn(text);
    expect(analysis.callItems(HERE, offset)).toEqual([]);
  }
});
