/**
 * Pages on rules and the language as the extension shows them: every finding of an example stands at its line, words are
 * coloured, links lead to pages that are there, and nothing in a page can be markup.
 */
import { globSync, readFileSync } from "node:fs";
import path from "node:path";
import { type DefaultTreeAdapterTypes, parse } from "parse5";
import { describe, expect, test } from "vitest";
import { ROOT } from "../../client/bundles.ts";
import { type Example, partsOf } from "../../client/src/pages/examples.ts";
import { inline, OPEN_PAGE } from "../../client/src/pages/inline.ts";
import { blocksOf } from "../../client/src/pages/markdown.ts";
import { pageHtml, recipesOf } from "../../client/src/pages/page.ts";
import { exampleText } from "../../server/src/core/rules/explain.ts";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { coloured } from "../../server/src/lsp/requests/coloured.ts";

const DOCS = path.join(ROOT, "server/docs");
const PAGES = new Map(
  globSync("{.,rules}/*.md", { cwd: DOCS }).map((name) => [
    path.basename(name),
    readFileSync(path.join(DOCS, name), "utf8"),
  ]),
);

const examplesOf = (markdown: string): readonly Example[] =>
  partsOf(blocksOf(markdown)).flatMap((part) => (part.kind === "example" ? [part] : []));

const show = (markdown: string): string =>
  pageHtml(
    markdown,
    recipesOf(markdown).map((text) => coloured({ text })),
    "nonce",
  );

/** `3 error 0 m2/L` */
const marked = ({ lines, findings }: Example): readonly string[] =>
  findings.flatMap(({ severity, marks }) =>
    marks.map(({ line, from, to }) => `${line + 1} ${severity} ${lines[line]!.slice(from, to)}`),
  );

describe("examples", () => {
  test("what is said of a recipe stands at the words of its lines", () => {
    const [first] = examplesOf(PAGES.get("bad-number.md")!);
    expect(marked(first!)).toEqual(["3 error 0 m2/L", "4 error 120 %", "5 error 24 h to 2 h"]);
    expect(first!.findings[2]).toMatchObject({
      rule: "bad-number",
      headline: "The range runs backwards: its first value is the larger one",
      more: ["Swap the two."],
    });
  });

  test("a long finding is marked on every line, those that the page leaves out among them", () => {
    const page =
      "```finish\na\n  b c\n\n  d\ne\nf\n```\n\n```text\n1 | a\n  | ^\n2 |   b c\n  |   ^^^\n  | …\n6 | f\n  | ^\n```\n\n> Hint `grit-jump`: All of it\n";
    expect(marked(examplesOf(page)[0]!)).toEqual([
      "1 hint a",
      "2 hint b c",
      "3 hint ",
      "4 hint d",
      "5 hint e",
      "6 hint f",
    ]);
  });

  test.each(RULES.map((rule) => [rule.id, rule] as const))("%s: each finding of each example", (id, rule) => {
    const failing = examplesOf(PAGES.get(`${id}.md`)!).slice(0, rule.failing.length);
    expect(failing).toHaveLength(rule.failing.length);
    failing.forEach((example, i) => {
      const text = `${exampleText(rule.failing[i]!)}\n`;
      const analyst = createAnalyst({ resolve: (_, name) => name });
      analyst.setFile("a.finish", text);
      for (const file of analyst.missingFiles()) analyst.setAbsent(file, "there is no such file");
      const found = analyst.analysis().findings("a.finish");
      const lineAt = (offset: number): number => text.slice(0, offset).split("\n").length - 1;
      expect(example.lines.join("\n")).toBe(text.trimEnd());
      expect(
        example.findings.map(({ severity, rule: name, headline, more, marks }) => [
          severity,
          name,
          [headline, ...more].join("\n"),
          marks[0]!.line,
        ]),
      ).toEqual(
        found.map(({ severity, rule: name, message, span }) => [severity, name, message, lineAt(span.start)]),
      );
      for (const { marks } of example.findings)
        for (const { line, from, to } of marks) {
          expect(from).toBeGreaterThanOrEqual(0);
          // At the end of a line the sign behind the last is marked.
          expect(to).toBeLessThanOrEqual(example.lines[line]!.length + 1);
        }
    });
  });
});

describe("as HTML", () => {
  test("the words of a recipe are coloured, the words at fault marked, and the headline stands beside them", () => {
    const page =
      "# bad-number\n\n```finish\nmaterial oil {\n  covers 0 m2/L\n}\n```\n\n```text\n2 |   covers 0 m2/L\n  |          ^^^^^^\n```\n\n> Error `bad-number`: Not `0`\n>\n> More.\n";
    const html = show(page);
    expect(html).toContain('<span class="keyword">material</span> <span class="variable">oil</span> {');
    expect(html).toContain(
      '  <span class="property">covers</span> <mark class="error"><span class="number">0</span> <span class="number">m2/L</span></mark></code><span class="said">',
    );
    expect(html).toContain("<span>Not <code>0</code></span>");
    expect(html).toContain("<dt>Line 2</dt><dd><p>More.</p></dd>");
    expect(html).not.toContain("^^^^^^");
  });

  test("findings of another rule say which", () => {
    const page =
      "# a-rule\n\n```finish\nx\n```\n\n```text\n1 | x\n  | ^\n```\n\n> Warning `other-rule`: So\n";
    expect(show(page)).toContain('<span class="second">other-rule</span>');
  });

  test("markup in a text is text, and a link leads to pages of ours alone", () => {
    const bad = '<img src="http://bad.test/a.png" onerror="x()">';
    const html = show(
      `# ${bad}\n\n${bad} [a](http://bad.test/b) [c](command:bad) [d](../language.md) [e](#f)\n\n\`\`\`finish\n${bad}\n\`\`\`\n`,
    );
    expect(html).not.toMatch(/<img|http-equiv="refresh|href="http/u);
    expect([...html.matchAll(/href="([^"]*)"/gu)].map(([, target]) => target)).toEqual([
      `command:${OPEN_PAGE}?${encodeURIComponent('["language.md"]')}`,
      "#f",
    ]);
    expect(inline("`<b>`")).toBe("<code>&lt;b&gt;</code>");
  });

  test.each([...PAGES.keys()].toSorted())(
    "%s: all of its text, tables without gaps, and links to what is there",
    (name) => {
      const markdown = PAGES.get(name)!;
      const document = parse(show(markdown), { onParseError: ({ code }) => expect.fail(code) });
      const elements = [...walk(document)];
      const ids = elements.flatMap((each) => attribute(each, "id") ?? []);
      for (const each of elements) {
        const target = attribute(each, "href");
        if (target?.startsWith("#")) expect(ids).toContain(decodeURIComponent(target.slice(1)));
        else if (target !== undefined)
          expect([...PAGES.keys()]).toContain(/\["(.*)"\]/u.exec(decodeURIComponent(target))?.[1]);
        expect(attribute(each, "style")).toBeUndefined();
        if (each.tagName === "table") {
          const wide = new Set(
            [...walk(each)]
              .filter(({ tagName }) => tagName === "tr")
              .map(({ childNodes }) => childNodes.length),
          );
          expect([...wide]).toHaveLength(1);
        }
      }
      const main = elements.find(({ tagName }) => tagName === "main")!;
      const said = wordsIn(textIn(main));
      for (const word of wordsIn(plain(markdown))) expect(said).toContain(word);
      // Blocks that the page cannot read would be left as they were written.
      expect(textIn(main)).not.toMatch(/^(?:#+ |```|\| |> |<)/mu);
    },
  );
});

function* walk(node: DefaultTreeAdapterTypes.ParentNode): Generator<DefaultTreeAdapterTypes.Element> {
  for (const child of node.childNodes) {
    if (!("tagName" in child)) continue;
    yield child;
    yield* walk(child);
  }
}

const attribute = (element: DefaultTreeAdapterTypes.Element, name: string): string | undefined =>
  element.attrs.find((each) => each.name === name)?.value;

const textIn = (node: DefaultTreeAdapterTypes.ParentNode): string =>
  node.childNodes
    .map((child) => ("value" in child ? child.value : "childNodes" in child ? textIn(child) : ""))
    .join(" ");

const wordsIn = (text: string): ReadonlySet<string> => new Set(text.match(/[\p{L}\p{N}]+/gu));

/** What a reader of the page need not see as it is written. */
const plain = (markdown: string): string =>
  markdown
    .replace(/^<!--.*-->$/gmu, "")
    .replace(/^<\/?(?:details|summary)>|<\/summary>$/gmu, "")
    .replace(/\]\([^()\s]+\)/gu, "")
    .replace(/^```[a-z]*$|^\d+\. /gmu, "")
    .replace(/^> (?:Error|Warning|Information|Hint) `/gmu, "");
