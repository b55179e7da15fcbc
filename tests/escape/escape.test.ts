/** Each target by itself, on any text: what the format's own rules say of what comes out. */
import fc from "fast-check";
import ICAL from "ical.js";
import { parseFragment } from "parse5";
import { expect, test } from "vitest";
import { csvCell, csvRow } from "../../server/src/escape/csv.ts";
import { htmlText } from "../../server/src/escape/html.ts";
import { icsLine, icsText } from "../../server/src/escape/ics.ts";
import { jsonText } from "../../server/src/escape/json.ts";
import { markdownCode, markdownDocs, markdownLine, markdownText } from "../../server/src/escape/markdown.ts";
import { bareText, docBlocks } from "../../server/src/escape/prose.ts";
import { sarifText } from "../../server/src/escape/sarif.ts";
import { shownLines, shownText } from "../../server/src/escape/shown-text.ts";
import { findingsSarif } from "../../server/src/reports/findings-sarif.ts";
import type { FindingReport } from "../../server/src/reports/reported.ts";
import { hostileText } from "../harness/hostile.ts";
import { expectInert, expectInertMarkdown } from "../harness/inert.ts";
import { readMarkdownAsEditors } from "../reports/markdown.ts";

const anyText = fc.oneof(hostileText, fc.string({ unit: "binary", maxLength: 40 }));
const lines = fc.array(anyText, { maxLength: 5 }).map((all) => all.join("\n"));

test("shown text is one inert line, character for character", () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const shown = shownText(text);
      expectInert(shown);
      expect(shown).not.toContain("\n");
      expect(shown).toHaveLength(text.length);
      expect(shownText(shown)).toBe(shown);
    }),
  );
  fc.assert(fc.property(lines, (text) => expectInert(shownLines(text))));
});

test("what anybody may read stays as it is", () => {
  // ZERO WIDTH JOINER holds an emoji together and NON-JOINER parts letters in Persian, so neither is taken out.
  for (const text of ["Öl 木 ألف עץ", "👩‍🎨", "می‌خواهم", "½ µm – “so”"]) {
    expect(shownText(text)).toBe(text);
  }
  expect(shownText("a\tb\r\nc")).toBe("a b  c");
  expect(shownLines("a\r\nb\rc\n")).toBe("a\nb\nc\n");
  expect(shownText("\u001b[31m\u007f\u009b\u202e")).toBe("\u241b[31m\u2421\ufffd\ufffd");
});

test("JSON is the same data, without a character that drives a terminal", () => {
  fc.assert(
    fc.property(fc.dictionary(anyText, anyText), (data) => {
      const text = jsonText(data);
      expectInert(text);
      expect(JSON.parse(text)).toEqual(data);
    }),
  );
});

test.each([
  ["=1+1", "'=1+1"],
  ["+1", "'+1"],
  ["-1+1", "'-1+1"],
  ["@SUM(A1)", "'@SUM(A1)"],
  ["\t=1", "' =1"],
  ["\r=1", "' =1"],
  ["＝1", "'＝1"],
  ["a;=1", `"a;'=1"`],
  [`a;"=1"`, `"a;""'=1"""`],
  ["-5", "-5"],
  ["-5.25", "-5.25"],
  ["12.00", "12.00"],
  ["Oak - satin", "Oak - satin"],
  ["a, b", `"a, b"`],
])("%j is the cell %j", (text, cell) => {
  expect(csvCell(text)).toBe(cell);
});

test("a row is one line, whatever is in its cells", () => {
  fc.assert(
    fc.property(fc.array(anyText, { minLength: 1 }), (cells) => {
      expect(csvRow(cells).slice(0, -2)).not.toMatch(/[\r\n]/u);
    }),
  );
});

test("HTML reads back as the text that is shown, in an element and in an attribute", () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const fragment = parseFragment(`<p title="${htmlText(text)}">${htmlText(text)}</p>`);
      const [paragraph, ...others] = fragment.childNodes;
      expect(others).toEqual([]);
      const { attrs, childNodes } = paragraph as {
        readonly attrs: readonly unknown[];
        readonly childNodes: readonly { readonly value?: string }[];
      };
      expect(attrs).toEqual([{ name: "title", value: shownText(text) }]);
      expect(childNodes.map(({ value }) => value).join("")).toBe(shownText(text));
    }),
  );
});

test("iCalendar text reads back, and ends no line", () => {
  fc.assert(
    fc.property(lines, (text) => {
      const line = icsLine(`SUMMARY:${icsText(text)}`);
      for (const part of line.split("\r\n")) expect(Buffer.byteLength(part)).toBeLessThanOrEqual(75);
      const calendar = ICAL.parse(`BEGIN:VEVENT\r\n${line}END:VEVENT\r\n`);
      expect(new ICAL.Component(calendar).getFirstPropertyValue("summary")).toBe(shownLines(text));
    }),
  );
});

test("a break in a text makes no property of what follows", () => {
  expect(icsText("a\r\nEND:VEVENT\rX:\u2028y\u0085z")).toBe("a\\nEND:VEVENT\\nX: y\ufffdz");
});

test("Markdown is read as the text that is shown", () => {
  fc.assert(
    fc.property(anyText, (text) => {
      // Blanks at either end and in a row fall together, as anywhere in Markdown.
      const words = (shown: string): string => shown.replace(/\s+/gu, " ").trim();
      for (const escaped of [`So: ${markdownText(text)}`, `${markdownLine(text)}.`]) {
        expectInertMarkdown(escaped);
        const tokens = readMarkdownAsEditors(escaped);
        expect(tokens.map(({ type }) => type)).toEqual(
          expect.arrayContaining(["paragraph_open", "inline", "paragraph_close"]),
        );
        const read = tokens.find(({ type }) => type === "inline")?.text ?? "";
        expect([words(`So: ${shownText(text)}`), words(`${shownText(text)}.`)]).toContain(words(read));
      }
    }),
  );
});

test("code is code, whatever is in it", () => {
  fc.assert(fc.property(anyText, (text) => expectInertMarkdown(`So: ${markdownCode(text)}`)));
});

test.each([
  ["See [the label](https://example.org/a) first.", "See the label (https://example.org/a) first."],
  ["![Before](photos/before.jpg)", "Before (picture photos/before.jpg)"],
  // What leads elsewhere, or does something, stays the characters that it is.
  ["[run](command:x)", "[run](command:x)"],
  ["[run](javascript:alert(1))", "[run](javascript:alert(1))"],
  ["![p](https://evil.example/p.png)", "![p](https://evil.example/p.png)"],
  ["![p](//evil.example/p.png)", "![p](//evil.example/p.png)"],
  ["![p](/etc/p.png)", "![p](/etc/p.png)"],
  ["![p](data:image/png;base64,AA.png)", "![p](data:image/png;base64,AA.png)"],
  ["![p](notes.svg)", "![p](notes.svg)"],
])("in documentation %s reads %s", (written, shown) => {
  expect(docBlocks(written).map((block) => (block.kind === "paragraph" ? bareText(block.text) : ""))).toEqual(
    [shown],
  );
  expectInertMarkdown(markdownDocs(written));
});

test("documentation keeps its paragraphs, lists, emphasis and code, and nothing else", () => {
  expect(markdownDocs("Wipe **thin**, off *across* the `grain`.\n\n- one\n- two\n\n# Label")).toBe(
    "Wipe **thin**, off *across* the `grain`.\n\n- one\n- two\n\n**Label**",
  );
  expect(markdownDocs("2. two\n3. three\n\n~~~js\n``` <b>\n~~~")).toBe(
    "2. two\n3. three\n\n````\n``` <b>\n````",
  );
  expect(markdownDocs("![x](https://evil.example/x.png) [y](command:z) <b>w</b>")).toBe(
    "\\!\\[x\\](https\\:\\/\\/evil.example/x.png) \\[y\\](command:z) \\<b\\>w\\</b\\>",
  );
  fc.assert(fc.property(lines, (text) => expectInertMarkdown(markdownDocs(text))));
});

test("a SARIF message has no placeholder and no link", () => {
  expect(sarifText("see {0} or [here](1)")).toBe("see {{0}} or \\[here\\](1)");
});

test("SARIF has an address for a file whose name is half a character", () => {
  const report: FindingReport = {
    files: [
      {
        label: "a\ud800.finish",
        text: "x",
        findings: [
          {
            rule: "syntax",
            severity: "error",
            file: "a",
            span: { start: 0, end: 1 },
            headline: "No",
            why: "",
            remedy: "",
            message: "No",
            related: [],
            fixes: [],
          },
        ],
      },
    ],
    other: () => ({ label: "a", text: "x" }),
  };
  // U+FFFD in UTF-8
  expect(findingsSarif(report, "1.0.0")).toContain('"uri": "a%EF%BF%BD.finish"');
});
