/** The snippets as they are put into a recipe: notation, layout, findings, and that none is offered twice. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { formatFile } from "../../grammar/src/format.ts";
import { parseFile } from "../../grammar/src/parse.ts";
import { DECLARATION_WORDS } from "../../grammar/src/vocabulary.ts";
import { ruleById } from "../../server/src/core/rules/registry.ts";
import { summary } from "../harness/check-text.ts";
import { expandChoices, expandSnippet } from "../harness/expand-snippet.ts";

interface Snippet {
  readonly prefix: string;
  readonly body: readonly string[];
  readonly description: string;
}

const snippets: Readonly<Record<string, Snippet>> = JSON.parse(
  readFileSync(new URL("../../client/snippets/finish.code-snippets", import.meta.url), "utf8"),
);

const isDeclaration = (text: string): boolean =>
  /^(?:##.*\n)*(?:material|piece|shop|recipe|job) /u.test(text);

/** A line of a recipe needs a recipe around it to be read. */
const asFile = (text: string): string =>
  isDeclaration(text) ? `${text}\n` : `recipe r {\n${text.replace(/^/gmu, "  ")}\n}\n`;

/** Names are the user's to put in. */
const isAboutNotation = (rule: string): boolean =>
  ruleById(rule)?.group === "language" && !/-(?:name|argument|suppression)$/u.test(rule);

describe.each(Object.entries(snippets))("%s", (_, { prefix, body, description }) => {
  test("is in the notation and laid out, whatever is chosen", () => {
    for (const text of [expandSnippet(body), ...expandChoices(body)]) {
      const rules = summary(asFile(text)).map((line) => line.split(" ")[1]!);
      expect(
        rules.filter((rule) => isAboutNotation(rule)),
        text,
      ).toEqual([]);
      expect(formatFile(parseFile(asFile(text))).changes, text).toEqual([]);
    }
  });

  test("ends where one types on, and numbers its places without a gap", () => {
    const text = body.join("\n");
    expect(text.endsWith("$0")).toBe(true);
    const places = [...text.matchAll(/\$\{(\d+)[:|]/gu)].map(([, number]) => Number(number));
    expect(places.toSorted((a, b) => a - b)).toEqual(places.map((_, i) => i + 1));
  });

  test("goes by a word that is one word to the editor, and none that the server offers itself", () => {
    expect(prefix).toMatch(/^[a-z]+(?:-[a-z]+)+$/u);
    expect(Object.keys(DECLARATION_WORDS)).not.toContain(prefix);
    expect(description).toMatch(/^[A-Z].*[^.]$/u);
  });
});

test("the declarations together are a program without a finding", () => {
  const texts = Object.values(snippets).map(({ body }) => expandSnippet(body));
  const found = summary(texts.filter(isDeclaration).join("\n\n"));
  // Recipes stand beside pieces here that no job of a snippet brings together, which is a hint and no mistake.
  expect(found.filter((line) => !line.endsWith(" recipe-without-job"))).toEqual([]);
});

test("every word that opens a snippet is its own", () => {
  const prefixes = Object.values(snippets).map(({ prefix }) => prefix);
  expect(new Set(prefixes).size).toBe(prefixes.length);
});
