/** The workflows and the action for code hosts: they parse, call scripts that there are, and put no words of strangers into a script. */
import { readFileSync } from "node:fs";
import { globSync } from "tinyglobby";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";

const ROOT = new URL("../../", import.meta.url);
const read = (name: string): string => readFileSync(new URL(name, ROOT), "utf8");
const files = globSync(".github/**/*.yml", { cwd: new URL(".", ROOT).pathname, dot: true }).toSorted();

const { scripts } = JSON.parse(read("package.json")) as {
  readonly scripts: Readonly<Record<string, string>>;
};

/** Every text under a `run:`. */
function runs(value: unknown): readonly string[] {
  if (Array.isArray(value)) return value.flatMap(runs);
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === "run" && typeof inner === "string" ? [inner] : runs(inner),
  );
}

test("there are the tests, the release and the action", () => {
  expect(files).toEqual([
    ".github/actions/recipes/action.yml",
    ".github/workflows/release.yml",
    ".github/workflows/test.yml",
  ]);
});

describe.each(files)("%s", (file) => {
  const content: unknown = parse(read(file));

  test("calls scripts that there are", () => {
    const called = runs(content).flatMap((text) => [...text.matchAll(/npm run (?:--silent )?([\w:]+)/gu)]);
    for (const [, name] of called) expect(Object.keys(scripts)).toContain(name);
  });

  test("puts nothing that others write into a script", () => {
    for (const text of runs(content)) expect(text).not.toContain("${{");
  });

  test("may write nothing that it need not", () => {
    expect(read(file)).not.toMatch(/^\s+(?:contents|packages|actions|pull-requests): write/mu);
  });
});
