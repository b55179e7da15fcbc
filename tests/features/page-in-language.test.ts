/** Pages on rules in German: the explanations are looked up, and what is found in an example is told anew. */
import { readFileSync } from "node:fs";
import { afterEach, beforeEach, expect, test } from "vitest";
import { partsOf } from "../../client/src/pages/examples.ts";
import { blocksOf } from "../../client/src/pages/markdown.ts";
import { speak } from "../../grammar/src/translate.ts";
import { FOUND_HERE, withoutFound, withoutMarks } from "../../server/src/core/rules/found-here.ts";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import { pageInLanguage } from "../../server/src/features/page-in-language.ts";
import { languageOf } from "../../server/src/lsp/language.ts";
import { packedTexts, translations } from "../../server/tools/texts.ts";

const pageOf = (name: string): string =>
  readFileSync(new URL(`../../server/docs/rules/${name}.md`, import.meta.url), "utf8");

const GERMAN = new Map(Object.values(translations("de")).flatMap((texts) => Object.entries(texts)));

beforeEach(() => speak(languageOf("de", JSON.parse(packedTexts("de")))));
afterEach(() => speak(undefined));

test("a page stays as it is where English is spoken", () => {
  speak(undefined);
  expect(pageInLanguage(pageOf("coat-over-wax"))).toBe(pageOf("coat-over-wax"));
});

/** Recipes, and of each finding all but its words. */
const shape = (page: string) =>
  partsOf(blocksOf(page)).flatMap((part) =>
    part.kind === "example"
      ? [
          {
            lines: part.lines,
            found: part.findings.map(({ severity, rule, marks }) => [severity, rule, marks]),
          },
        ]
      : [],
  );

test.each(RULES.map((rule) => [rule.id, rule] as const))(
  "%s is explained in German, and its recipes and marks are as they are",
  (id, { docs, failing, passing }) => {
    const page = pageOf(id);
    const said = pageInLanguage(page);
    const lines = said.split("\n");
    for (const text of [docs.summary, docs.why, docs.remedy]) expect(lines).toContain(GERMAN.get(text));
    for (const { title } of [...failing, ...passing]) expect(lines).toContain(`${GERMAN.get(title)}:`);
    expect(lines).toContain("## Warum");
    const english = /^## (?:Why|What to do|Reported|Not reported|Sources|Levels)$|^A single finding/mu;
    expect(english.exec(said)).toBeNull();
    expect(shape(said)).toEqual(shape(page));
  },
);

test("what is found in an example is told in German", () => {
  const [example] = partsOf(blocksOf(pageInLanguage(pageOf("caught-in-machine")))).filter(
    (part) => part.kind === "example",
  );
  const [english] = partsOf(blocksOf(pageOf("caught-in-machine"))).filter((part) => part.kind === "example");
  expect(example!.findings[0]!.headline).not.toBe(english!.findings[0]!.headline);
});

test("the list of rules has its sentences in German, and its links", () => {
  const page = pageInLanguage(pageOf("index"));
  const row = page.split("\n").find((line) => line.includes("(coat-over-wax.md)"));
  const summary = GERMAN.get(RULES.find(({ id }) => id === "coat-over-wax")!.docs.summary);
  expect(row).toBe(`| [\`coat-over-wax\`](coat-over-wax.md) | Fehler | ${summary} |`);
});

test("what is found elsewhere than a page says stays as the page has it", () => {
  const page =
    "# coat-over-wax\n\n```finish\nrecipe a {\n}\n```\n\n```text\n1 | recipe a {\n```\n\n> Error `coat-over-wax`: Nothing that is found here\n";
  expect(pageInLanguage(page)).toBe(page);
});

test.each([...RULES.map(({ id }) => id), "index"])(
  "%s is packed without what is found, which is told again as it was",
  (id) => {
    speak(undefined);
    const page = pageOf(id);
    const packed = withoutFound(page);
    expect(packed).not.toMatch(/^(?:> |```text)/mu);
    expect(pageInLanguage(packed)).toBe(page);
    expect(withoutMarks(packed)).not.toContain(FOUND_HERE);
  },
);

test("a packed page is German as the whole one is", () => {
  const page = pageOf("coat-over-wax");
  expect(pageInLanguage(withoutFound(page))).toBe(pageInLanguage(page));
  expect(pageInLanguage(withoutFound(page))).toContain(
    "> Fehler `coat-over-wax`: ".replace("Fehler", "Error"),
  );
});
