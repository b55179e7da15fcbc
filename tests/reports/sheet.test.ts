/** Sheets drawn as HTML, Markdown and text, read back by parsers that others wrote. */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { type DefaultTreeAdapterTypes, type ParserError, parse } from "parse5";
import { describe, expect, test } from "vitest";
import { docBlocks, prose } from "../../server/src/escape/prose.ts";
import { displayWidth } from "../../server/src/reports/display-text.ts";
import { type SheetDocument, sheetDocument } from "../../server/src/reports/sheet-document.ts";
import { sheetsHtml } from "../../server/src/reports/sheet-html.ts";
import { sheetsMarkdown } from "../../server/src/reports/sheet-markdown.ts";
import { type SheetFormat, sheetReport } from "../../server/src/reports/sheet-report.ts";
import { SHEET_COLOURS } from "../../server/src/reports/sheet-style.ts";
import { SHEET_COLUMNS, sheetsText } from "../../server/src/reports/sheet-text.ts";
import { SOURCE_COLOURS } from "../../server/src/reports/site/site-style.ts";
import { PAGE_SCRIPTS, pageScriptText } from "../../server/tools/write-page-scripts.ts";
import { analyse, lineOf } from "../harness/check-text.ts";
import { sampleAnalyst, sampleNames } from "../harness/samples.ts";
import { markdownTokens } from "./markdown.ts";

type Element = DefaultTreeAdapterTypes.Element;
type Node = DefaultTreeAdapterTypes.Node;

function documents(text: string): readonly SheetDocument[] {
  const analysis = analyse({ "test.finish": text });
  return analysis
    .sheets("test.finish")
    .map((sheet) =>
      sheetDocument(sheet, "test.finish", ({ span }) => `test.finish:${lineOf(text, span.start)}`),
    );
}

const SAMPLES = sampleNames.map((name) => {
  const analysis = sampleAnalyst().analysis();
  return {
    name,
    documents: analysis.sheets(name).map((sheet) => sheetDocument(sheet, name, ({ file }) => file)),
  };
});

/** Elements of a page, and what the parser of the HTML standard had to say against it. */
function page(html: string): { readonly elements: readonly Element[]; readonly errors: readonly string[] } {
  const errors: string[] = [];
  const tree = parse(html, {
    sourceCodeLocationInfo: true,
    onParseError: (error: ParserError) => errors.push(`${error.code} at line ${error.startLine}`),
  });
  return { elements: elementsIn(tree), errors };
}

function elementsIn(node: Node): readonly Element[] {
  const inside = "childNodes" in node ? node.childNodes.flatMap(elementsIn) : [];
  return "tagName" in node ? [node, ...inside] : inside;
}

const attribute = (element: Element, name: string): string | undefined =>
  element.attrs.find((each) => each.name === name)?.value;
const withTag = (elements: readonly Element[], ...tags: readonly string[]): readonly Element[] =>
  elements.filter(({ tagName }) => tags.includes(tagName));
/** A drawing has titles of its own. */
const isHtml = ({ namespaceURI }: Element): boolean => String(namespaceURI).endsWith("/xhtml");
const textIn = (node: Node): string =>
  "value" in node ? node.value : "childNodes" in node ? node.childNodes.map(textIn).join("") : "";

const SHELF = `## Two of these hang in the porch.
job shelves "Porch shelves" {
  piece shelf x 2
  in    room
  start 2027-03-08 09:00
  apply clearing(clear: clear_coat) to board
}
## Keep it from frost.
material clear_coat "Porch clear" {
  family waterborne polyurethane
  covers 10 m2/L
  solids 30 %
  touch  1 h
  recoat 2 h to 24 h
  cure   1 day
  rated  20 C, 50 % RH
  limits 10 C to 30 C, 80 % RH
  thin   water, up to 20 %
  colour clear
  packs  500 mL for 10.00, 1 L for 16.00
}
piece shelf "Shelf" {
  built  1990
  surface board {
    shape panel 2 m x 1 m
    wood  beech
    wear  light
  }
}
shop room "Back room" {
  air   20 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}
## Thin coats, and patience.
recipe clearing(clear: material, coats: number = 2) {
  for    wood
  safety dust_mask
  note   "Hold the brush flat."
  step   sand 150, 180, takes 30 min
  step   dust, takes 10 min
  layer  clear x coats, thinned 9:1 with water, takes 15 min {
    wait until recoat
    step sand 220, takes 15 min
    step dust, takes 10 min
  }
  wait   until recoat
}
`;

test.each(PAGE_SCRIPTS)("$constant is bundled from its source", async (script) => {
  expect(readFileSync(script.file, "utf8")).toBe(await pageScriptText(script));
});

describe("a sheet as a whole", () => {
  test("as text", async () => {
    await expect(sheetsText(documents(SHELF))).toMatchFileSnapshot("sheets/shelves.txt");
  });

  test("as Markdown", async () => {
    await expect(sheetsMarkdown(documents(SHELF))).toMatchFileSnapshot("sheets/shelves.md");
  });

  test("as HTML", async () => {
    await expect(sheetsHtml(documents(SHELF))).toMatchFileSnapshot("sheets/shelves.html");
  });
});

describe("HTML", () => {
  test.each(SAMPLES)("of $name is valid and has its parts by what they are", ({ documents: sample }) => {
    const { elements, errors } = page(sheetsHtml(sample));
    expect(errors).toEqual([]);
    expect(attribute(withTag(elements, "html")[0]!, "lang")).toBe("en");
    expect(withTag(elements, "title").filter(isHtml)).toHaveLength(1);
    expect(withTag(elements, "h1")).toHaveLength(sample.length);
    const ids = elements.flatMap((element) => attribute(element, "id") ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    for (const link of withTag(elements, "a")) expect(ids).toContain(attribute(link, "href")!.slice(1));
    for (const element of elements) {
      const label = attribute(element, "aria-labelledby");
      if (label !== undefined) expect(ids).toContain(label);
    }
    // No heading leaves a level out.
    const levels = withTag(elements, "h1", "h2", "h3", "h4").map(({ tagName }) => Number(tagName[1]));
    for (const [i, level] of levels.entries()) expect(level).toBeLessThanOrEqual((levels[i - 1] ?? 0) + 1);
  });

  test.each(SAMPLES)("of $name has tables that say what their cells belong to", ({ documents: sample }) => {
    const { elements } = page(sheetsHtml(sample));
    for (const head of withTag(elements, "th")) {
      expect(["col", "row", "rowgroup"]).toContain(attribute(head, "scope"));
    }
    for (const table of withTag(elements, "table")) {
      const inside = elementsIn(table);
      expect(withTag(inside, "caption")).toHaveLength(1);
      const columns = withTag(inside, "th").filter((head) => attribute(head, "scope") === "col").length;
      // The head of a group stands in its first row only.
      for (const body of withTag(inside, "tbody")) {
        const [head] = withTag(elementsIn(body), "th");
        const rows = withTag(elementsIn(body), "tr");
        expect(Number(attribute(head!, "rowspan") ?? 1)).toBe(rows.length);
        for (const row of rows) {
          const wide = withTag(elementsIn(row), "td").map((cell) => Number(attribute(cell, "colspan") ?? 1));
          expect(wide.reduce((sum, each) => sum + each, 0)).toBe(columns - 1);
        }
      }
    }
  });

  test.each(SAMPLES)("of $name has every step on a line, each with a named box", ({ documents: sample }) => {
    const { elements } = page(sheetsHtml(sample));
    const lines = withTag(elements, "li").filter((item) => attribute(item, "data-step") !== undefined);
    const shown = lines.map((line) => attribute(line, "data-step"));
    const meant = sample.flatMap(({ sheet }) => sheet.bench.groups.flatMap(({ rows }) => rows));
    expect(shown).toEqual(meant.map(({ fingerprint }) => fingerprint));
    // No step of any surface is missing but waits, which stand behind what is waited for.
    for (const { sheet } of sample) {
      const listed = sheet.bench.groups.flatMap(({ rows }) => rows.flatMap(({ steps }) => steps));
      for (const { title, entries } of sheet.procedures) {
        const numbers = entries.flatMap((entry) =>
          entry.kind === "step" && entry.op !== "wait" ? [entry.number] : [],
        );
        const there = listed.flatMap(({ surface, number }) => (surface === title ? [number] : []));
        expect([...new Set(there)].toSorted((x, y) => x - y)).toEqual(numbers);
      }
    }
    for (const line of lines) {
      const boxes = withTag(elementsIn(line), "input").filter((box) => attribute(box, "type") === "checkbox");
      expect(boxes.length).toBeGreaterThan(0);
      for (const box of boxes) expect(attribute(box, "aria-label")).toMatch(/done: \S|^Done: \S/u);
    }
  });

  test.each(SAMPLES)(
    "of $name needs nothing from elsewhere, and runs its own script alone",
    ({ documents: sample }) => {
      const html = sheetsHtml(sample);
      const { elements } = page(html);
      expect(withTag(elements, "link", "img", "iframe", "object", "embed", "form")).toEqual([]);
      expect(html).not.toMatch(/https?:|@import|url\(/u);
      expect(elements.flatMap(({ attrs }) => attrs).filter(({ name }) => name.startsWith("on"))).toEqual([]);
      // Content Security Policy Level 3: the hash is that of the text of the element.
      const [script, ...others] = withTag(elements, "script");
      expect(others).toEqual([]);
      const hash = createHash("sha256").update(textIn(script!)).digest("base64");
      const policy = withTag(elements, "meta").find(
        (meta) => attribute(meta, "http-equiv") === "Content-Security-Policy",
      );
      expect(attribute(policy!, "content")).toBe(
        `default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'`,
      );
    },
  );

  test("HTML names the days between two of work, on which nothing is to be done, with the warmth to keep", () => {
    // Open from Tuesday to Thursday: the second coat, a week after the first, goes on at the next opening.
    const rests = (text: string): readonly string[] =>
      [
        ...sheetsHtml(documents(text)).matchAll(
          /<tr class="rest"><th scope="row">(.*?)<\/th><td colspan="3">(.*?)<\/td>/gu,
        ),
      ].map(([, days, what]) => `${days}: ${what}`.replaceAll("\u00a0", " "));
    const weekly = SHELF.replace(/recoat .*/u, "recoat 3 days");
    expect(rests(weekly).join("; ")).toMatch(
      /^\w{3} \d+ Mar to \w{3} \d+ Mar: nothing to do, keep it at 20 °C/u,
    );
    expect(rests(weekly.replace(/^ {2}air .*\n/mu, "")).join("; ")).toMatch(/: nothing to do, it dries/u);
  });

  test("on HTML a danger stands out on the line that brings it, and is named on the next with less weight", () => {
    const risky = SHELF.replace("safety dust_mask", "safety dust_mask, ventilate, no_ignition").replace(
      /^ {2}step {3}dust, takes 10 min$/mu,
      "  step   dewax with mineral_spirits\n  step   clean with mineral_spirits\n$&",
    );
    const html = sheetsHtml(documents(risky));
    const said = [...html.matchAll(/<span class="danger">(.*?)<\/span>/gu)].map(([, text]) => text!);
    // Taking the wax off brings all three, and cleaning after it the same.
    expect(said.slice(0, 2)).toEqual([
      "Caution: <strong>fumes</strong>, <strong>fire</strong>, <strong>solvent rags</strong>.",
      "Caution: fumes, fire, solvent rags.",
    ]);
  });

  test("has contents where there are several sheets", () => {
    const several = page(sheetsHtml(documents(`${SHELF}recipe other {\n  step dust\n}\n`)));
    const [contents] = withTag(several.elements, "nav");
    expect(withTag(elementsIn(contents!), "a").map(textIn)).toEqual(["Porch shelves", "Other"]);
    expect(withTag(page(sheetsHtml(documents(SHELF))).elements, "nav")).toEqual([]);
  });
});

/** WCAG 2.2, definition of relative luminance and contrast ratio. */
function contrast(a: string, b: string): number {
  const luminance = (colour: string): number => {
    const [r, g, blue] = [1, 3, 5].map((i) => {
      const channel = Number.parseInt(colour.slice(i, i + 2), 16) / 255;
      return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
  };
  const [dark, light] = [luminance(a), luminance(b)].toSorted((x, y) => x - y) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

test("colours have the contrast that the guidelines ask for, and paper is black on white", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 6);
  // Published example: #767676 on white is the lightest grey that passes, 4.54 to 1.
  expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2);
  for (const { paper, rule, ...inks } of Object.values(SHEET_COLOURS)) {
    for (const ink of Object.values(inks)) expect(contrast(ink, paper)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(rule, paper)).toBeGreaterThanOrEqual(3);
  }
  for (const look of ["light", "dark"] as const)
    for (const ink of Object.values(SOURCE_COLOURS[look]))
      expect(contrast(ink, SHEET_COLOURS[look].paper)).toBeGreaterThanOrEqual(4.5);
  expect(SHEET_COLOURS.light).toMatchObject({ paper: "#ffffff", ink: "#000000" });
});

describe("what a recipe says stays what it is", () => {
  const EVIL = `## <img src=x onerror=alert(1)> [here](javascript:alert(2)) \`code </code><b>\`
## # Not a heading & **bold** text
## - [ ] item <i>one</i>
job evil "</title><script>alert('x')</script> & | *so*" {
  piece shelf
  apply work to board
}
piece shelf "<b>Shelf</b>" {
  surface board {
    shape area 1 m2
    wood  beech
  }
}
material odd "| \`pipe\` _x_ <u>" {
  family waterborne polyurethane
  colour "<i>red</i>"
}
recipe work {
  note "1. --- <script>alert(3)</script> \u202e"
  step test "</li></ol><script>"
  layer odd
}
`;

  test("in HTML", () => {
    const html = sheetsHtml(documents(EVIL));
    const { elements, errors } = page(html);
    expect(errors).toEqual([]);
    expect(withTag(elements, "script")).toHaveLength(1);
    expect(withTag(elements, "img", "i", "u")).toEqual([]);
    expect(textIn(withTag(elements, "h1")[0]!)).toBe("</title><script>alert('x')</script> & | *so*");
    expect(withTag(elements, "a")).toEqual([]);
    expect(html).not.toContain("\u202e");
    const header = textIn(withTag(elements, "main")[0]!);
    expect(header).toContain("[here](javascript:alert(2))");
    expect(withTag(elements, "strong").map(textIn)).toEqual(
      expect.arrayContaining(["Not a heading & ", "bold", " text"]),
    );
  });

  test("in Markdown", () => {
    const tokens = markdownTokens(sheetsMarkdown(documents(EVIL)));
    expect(tokens.filter(({ type }) => type.startsWith("html"))).toEqual([]);
    expect(tokens.filter(({ type }) => type === "link_open" || type === "image")).toEqual([]);
    const [title] = tokens.filter(({ type }) => type === "inline");
    expect(title!.text).toBe("</title><script>alert('x')</script> & | *so*");
    expect(tokens.filter(({ type }) => type === "heading_open").map(({ tag }) => tag)[0]).toBe("h1");
    const cells = tokens.flatMap(({ type }, i) => (type === "td_open" ? [tokens[i + 1]!.text] : []));
    expect(cells).toContain("| `pipe` _x_ <u>");
    expect(cells).toContain("waterborne polyurethane, <i>red</i> odd");
  });

  test("in text", () => {
    const text = sheetsText(documents(EVIL));
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/u);
  });
});

describe("Markdown", () => {
  test.each(SAMPLES)("of $name has its steps as numbered lists with boxes", ({ documents: sample }) => {
    const markdown = sheetsMarkdown(sample);
    const tokens = markdownTokens(markdown);
    expect(tokens.filter(({ type }) => type.startsWith("html"))).toEqual([]);
    const starts = tokens.flatMap(({ type, start, level }) =>
      type === "ordered_list_open" && level === 0 ? [start] : [],
    );
    const meant = sample.flatMap(({ sections }) =>
      sections.flatMap(({ blocks }) =>
        // A wait has no number and ends a list; the next one goes on with the number after it.
        blocks.flatMap((block) =>
          block.kind === "steps"
            ? block.steps.flatMap(({ number }, i) =>
                number === undefined || block.steps[i - 1]?.number !== undefined ? [] : [number],
              )
            : [],
        ),
      ),
    );
    expect(starts).toEqual(meant);
    const boxes = tokens.filter(({ type, text }) => type === "inline" && text.startsWith("[ ] "));
    const ticks = sample.flatMap(({ sections }) =>
      sections.flatMap(({ blocks }) =>
        blocks.flatMap((block) =>
          block.kind === "steps"
            ? block.steps.flatMap(({ ticks: each }) => each.flatMap(({ labels }) => labels))
            : [],
        ),
      ),
    );
    expect(boxes).toHaveLength(ticks.length);
  });
});

describe("text", () => {
  test.each(SAMPLES)("of $name keeps to its columns", ({ documents: sample }) => {
    const wide = sheetsText(sample)
      .split("\n")
      .filter((line) => displayWidth(line) > SHEET_COLUMNS);
    expect(wide).toEqual([]);
  });

  test("gives way in the widest column where a table is wider than the page", () => {
    const long = SHELF.replace(
      '"Porch clear"',
      `"${"Clear for porches, gates and garden seats ".repeat(4)}"`,
    );
    for (const line of sheetsText(documents(long)).split("\n")) {
      expect(displayWidth(line)).toBeLessThanOrEqual(SHEET_COLUMNS);
    }
  });
});

describe("many pieces", () => {
  const sheet = (count: number): SheetDocument =>
    documents(SHELF.replace("shelf x 2", `shelf x ${count}`))[0]!;
  const ticks = (document: SheetDocument) =>
    document.sections
      .flatMap(({ blocks }) => blocks)
      .flatMap((block) => (block.kind === "steps" ? block.steps : []))
      .map((step) => step.ticks);

  test("have a box each, up to a dozen", () => {
    for (const of of ticks(sheet(12))) {
      expect(
        of
          .flatMap(({ labels }) => labels)
          .map(Number)
          .toSorted((a, b) => a - b),
      ).toEqual(Array.from({ length: 12 }, (_, i) => i + 1));
    }
  });

  test("and one for all above that, with the time from the first to the last", () => {
    const [first] = ticks(sheet(13));
    expect(first).toHaveLength(1);
    // One pair of hands sands 13 × 30 min, 6.5 h of the 8 h of a day, with other work between.
    expect(first![0]!.labels).toEqual([""]);
    expect(first![0]!.time).toMatch(/^Mon 8 Mar 09:00 to .*, all pieces$/u);
  });
});

describe("texts with marks", () => {
  test("names in backticks are code; a lone backtick is itself", () => {
    expect(prose("Over `walnut` goes `clear`.")).toEqual([
      { kind: "text", text: "Over " },
      { kind: "code", text: "walnut" },
      { kind: "text", text: " goes " },
      { kind: "code", text: "clear" },
      { kind: "text", text: "." },
    ]);
    expect(prose("5` and on")).toEqual([
      { kind: "text", text: "5" },
      { kind: "text", text: "` and on" },
    ]);
  });

  test("doc comments are read as paragraphs, lists, emphasis and code", () => {
    expect(docBlocks("Rubs *out* well,\n**slowly**.\n\n- `one`\n  goes on\n2. two\n\n# Head")).toEqual([
      {
        kind: "paragraph",
        text: [
          { kind: "text", text: "Rubs " },
          { kind: "emphasis", text: "out" },
          { kind: "text", text: " well, " },
          { kind: "strong", text: "slowly" },
          { kind: "text", text: "." },
        ],
      },
      {
        kind: "bullets",
        items: [
          [
            { kind: "code", text: "one" },
            { kind: "text", text: " goes on" },
          ],
        ],
      },
      { kind: "numbers", start: 2, items: [[{ kind: "text", text: "two" }]] },
      { kind: "paragraph", text: [{ kind: "strong", text: "Head" }] },
    ]);
    expect(docBlocks("2 * 3 * 4 and snake_case_name")).toEqual([
      { kind: "paragraph", text: [{ kind: "text", text: "2 * 3 * 4 and snake_case_name" }] },
    ]);
    expect(docBlocks("")).toEqual([]);
  });

  test("numbered lists begin where they say, and fenced code stays as it is", () => {
    const one = (text: string) => [{ kind: "text", text }];
    expect(docBlocks("3. three\n4) four\n- dot\n1. one")).toEqual([
      { kind: "numbers", start: 3, items: [one("three"), one("four")] },
      { kind: "bullets", items: [one("dot")] },
      { kind: "numbers", start: 1, items: [one("one")] },
    ]);
    expect(docBlocks("So:\n ```finish\n   step *dust*\n # no heading\n\n ``` \nThen.")).toEqual([
      { kind: "paragraph", text: one("So:") },
      { kind: "code", lines: ["  step *dust*", "# no heading", ""] },
      { kind: "paragraph", text: one("Then.") },
    ]);
    // A fence of more signs is closed by as many, one of tildes by tildes, and one that is not by the end.
    expect(docBlocks("````\n```\n````\n~~~\n```\n~~~~\n```\nto the end")).toEqual([
      { kind: "code", lines: ["```"] },
      { kind: "code", lines: ["```"] },
      { kind: "code", lines: ["to the end"] },
    ]);
    // Code in a line is no fence.
    expect(docBlocks("```a``` b")).toHaveLength(1);
    expect(docBlocks("```a``` b")[0]).toMatchObject({ kind: "paragraph" });
  });

  test("every form of a sheet draws them", () => {
    const docs = "1. Dust.\n2. Wax.\n\n```\na <b>  c\n```";
    const text = `${docs.replaceAll(/^/gmu, "## ")}\nrecipe waxed {\n  layer paste_wax\n}\n`;
    const analysis = analyse({ "a.finish": text });
    const made = (format: SheetFormat) =>
      sheetReport(analysis, analysis.sheets("a.finish"), format, (file) => file);
    expect(made("text")).toContain("\n1. Dust.\n2. Wax.\n\n    a <b>  c\n");
    expect(made("markdown")).toContain("\n1. Dust.\n2. Wax.\n\n```\na <b>  c\n```\n");
    expect(made("html")).toContain(
      "<ol>\n<li>Dust.</li>\n<li>Wax.</li>\n</ol>\n<pre><code>a &lt;b&gt;  c</code></pre>",
    );
  });
});
