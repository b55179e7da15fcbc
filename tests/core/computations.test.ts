/** The table of computations names what exists, leaves nothing out, and its pages are fresh. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { COMPUTATIONS } from "../../server/src/core/computations.ts";
import { computationsPage, DOCS_FOLDER, handsOnPage } from "../../server/tools/write-computations.ts";

const CORE = new URL("../../server/src/core/", import.meta.url);
const TESTS = new URL("../", import.meta.url);

const exportsOf = (file: string): readonly string[] =>
  [
    ...readFileSync(new URL(file, CORE), "utf8").matchAll(
      /^export (?:function (\w+)|const (\w+) = (?:<[^>]*>)?\()/gm,
    ),
  ].map((match) => match[1] ?? match[2]!);

test.each(COMPUTATIONS.map((row) => [`${row.topic}: ${row.name}`, row] as const))("%s", (_, row) => {
  expect(exportsOf(row.file)).toEqual(expect.arrayContaining([...row.functions]));
  expect(row.tests.length).toBeGreaterThan(0);
  for (const file of row.tests) expect(existsSync(new URL(file, TESTS)), file).toBe(true);
});

test("names are used once", () => {
  const names = COMPUTATIONS.map(({ topic, name }) => `${topic}: ${name}`);
  expect(new Set(names).size).toBe(names.length);
});

describe("nothing is left out", () => {
  /** Ways to reach what the table has, not computations of their own. */
  const HELPERS = [
    "chainKey",
    "taskId",
    "itemOf",
    "tasksById",
    "drawsFor",
    "methodOf",
    "isBuiltInWater",
    "sum",
    "sumOrNull",
    "withoutDates",
    "onFiveMinutes",
  ];
  const files = ["air", "fumes", "geometry", "quantities", "totals"].flatMap((folder) =>
    readdirSync(new URL(`${folder}/`, CORE))
      .filter((name) => name.endsWith(".ts"))
      .map((name) => `${folder}/${name}`),
  );
  test.each(files)("of %s", (file) => {
    const named = new Set(COMPUTATIONS.flatMap((row) => (row.file === file ? row.functions : [])));
    expect(exportsOf(file).filter((name) => !named.has(name) && !HELPERS.includes(name))).toEqual([]);
  });
});

describe("pages", () => {
  test.each([
    ["computations.md", computationsPage()],
    ["hands-on-times.md", handsOnPage()],
  ])("%s is fresh", (name, text) => {
    expect(readFileSync(new URL(name, DOCS_FOLDER), "utf8")).toBe(text);
  });
});
