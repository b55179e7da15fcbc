/**
 * Texts that nobody writes, and that somebody may send: each is one thing said again and again. What is done with them
 * may take no more than a little over in proportion to their length, whatever the line, the block or the list is long.
 *
 * Measured as exponents (see `growth.ts`), never as seconds.
 */
import picocolors from "picocolors";
import { describe, expect, test } from "vitest";
import { formatFile } from "../../grammar/src/format.ts";
import { lex } from "../../grammar/src/lexer.ts";
import { parseFile } from "../../grammar/src/parse.ts";
import type { Finding } from "../../server/src/core/findings.ts";
import { chemicalsNamed } from "../../server/src/core/knowledge/named-chemicals.ts";
import { groupFindings } from "../../server/src/core/rules/grouping.ts";
import { suppressionsIn } from "../../server/src/core/rules/suppressions.ts";
import { docBlocks } from "../../server/src/escape/prose.ts";
import { cursorAt } from "../../server/src/features/completion/cursor.ts";
import { findingsText } from "../../server/src/reports/findings-text.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import { analyseAnew as analyse } from "../harness/check-text.ts";
import { growth, MOST_GROWTH } from "../harness/growth.ts";
import { shareOf } from "../harness/share.ts";

type Text = (size: number) => string;

/** A unit said so many times; a size is about a number of characters. */
const again =
  (unit: string, before = "", after = ""): Text =>
  (size) =>
    before + unit.repeat(Math.ceil(size / unit.length)) + after;

/** The same with a number in it, so that no two are alike. */
const numbered =
  (unit: (index: number) => string, before = "", after = ""): Text =>
  (size) => {
    const count = Math.ceil(size / unit(100).length);
    return before + Array.from({ length: count }, (_, index) => unit(index)).join("") + after;
  };

const check = (name: string, make: Text, work: (text: string) => unknown, to: number) =>
  test(name, () => expect(growth(make, work, { from: 2000, to })).toBeLessThan(MOST_GROWTH));

describe("texts of one sign", () => {
  const texts: readonly [string, Text][] = [
    ["blanks", again(" ")],
    ["blanks behind a quote", again(" ", 'note "', "x")],
    ["quotes", again('"')],
    ["quotes and backslashes", again('"\\')],
    ["heads without end", again('material m "')],
    ["line ends", again("\n")],
    ["comments", again("#\n")],
    ["comments that allow", again("# allow no-dust-mask: x\n")],
    ["blanks in a comment that allows", again(" ", "# allow x", "y")],
    ["digits", again("1")],
    ["numbers with signs", again("1/-")],
    ["numbers with units", again("1 air 1m/")],
    ["hyphens", again("a-")],
    ["signs", again("°%(")],
    ["braces", again("{\n")],
    ["marks on a letter", again("\u0301", "a")],
  ];
  describe.each(shareOf(texts, 3))("%s", (_, make) => {
    check("lexer", make, lex, 64_000);
    check("parser", make, parseFile, 32_000);
    test("formatter", () => {
      const trees = (size: number) => parseFile(make(size));
      expect(growth(trees, formatFile, { from: 2000, to: 32_000 })).toBeLessThan(MOST_GROWTH);
    });
    test("comments that allow findings", () => {
      const trees = (size: number) => parseFile(make(size));
      expect(growth(trees, suppressionsIn, { from: 2000, to: 32_000 })).toBeLessThan(MOST_GROWTH);
    });
    test("cursor", () => {
      const trees = (size: number) => parseFile(make(size));
      const atEnd = (tree: ReturnType<typeof parseFile>) => cursorAt(tree, tree.text.length);
      expect(growth(trees, atEnd, { from: 2000, to: 32_000 })).toBeLessThan(MOST_GROWTH);
    });
  });
});

describe("titles and documentation", () => {
  const words = [
    "-",
    " ",
    "no-",
    "no ",
    "lye ",
    "contains a silicone ",
    "silicone spray ",
    "with silicones - ",
  ];
  describe.each(shareOf([...words, "N-methyl-2-", "free of ", "instead of a ", "a, ", "poly"], 3))(
    "%j",
    (unit) => {
      const material = (size: number) => ({ name: "m", title: `${again(unit)(size)}lye`, docs: "" });
      test("named chemicals", () => {
        expect(growth(material, chemicalsNamed, { from: 2000, to: 32_000 })).toBeLessThan(MOST_GROWTH);
      });
    },
  );
  describe.each(shareOf(["*a", "**a", "`a", "_a ", "# ", " ", "#", "[", "- a\n", "1. ", "a\n"], 3))(
    "%j",
    (unit) => {
      check("sheet prose", again(unit, "", "x"), docBlocks, 64_000);
      check("sheet prose of a heading", again(unit, "# ", "x"), docBlocks, 64_000);
    },
  );
});

describe("lists on a line", () => {
  const texts: readonly [string, Text][] = [
    ["opening hours", again("Mon to Fri 08:00 to 09:00, ", "shop h {\n  hours ", "Sat 09:00 to 13:00\n}\n")],
    ["containers", numbered((i) => `${i} mL for ${i}.00, `, "material m {\n  sold ", "9 L for 300.00\n}\n")],
    ["old coats", again("alkyd paint, ", "piece p {\n  surface s {\n    existing ", "paste wax\n  }\n}\n")],
  ];
  for (const [name, make] of texts) check(name, make, parseFile, 64_000);
});

describe("the text report", () => {
  const colours = picocolors.createColors(false);
  const reportOf = ([text, findings]: readonly [string, readonly FileFinding[]]) =>
    findingsText(
      { files: [{ label: "a.finish", text, findings }], other: () => ({ label: "a.finish", text }) },
      { colours, columns: 100 },
    );
  const texts: readonly [string, Text][] = [
    ["parameters on a line", numbered((i) => `p${i}: material, `, "recipe r(", ") {\n  step dust\n}\n")],
    ["grits on a line", again("9999999, ", "recipe r {\n  step sand ", "150\n}\n")],
  ];
  test.each(texts)("%s", (_, make) => {
    const checked = (size: number) => {
      const text = make(size);
      return [text, analyse({ "a.finish": text }).findings("a.finish")] as const;
    };
    expect(checked(8000)[1].length).toBeGreaterThan(100);
    expect(growth(checked, reportOf, { from: 2000, to: 32_000 })).toBeLessThan(MOST_GROWTH);
  });
});

describe("findings", () => {
  const recipe =
    (lines: Text): Text =>
    (size) =>
      `recipe r {\n${lines(size)}}\n`;
  const called =
    (arguments_: Text): Text =>
    (size) => {
      const parameters = numbered((i) => `p${i}: material, `)(size);
      return `recipe s(${parameters}q: number) {\n  step dust\n}\nrecipe r {\n  follow s(${arguments_(size)}q: 3)\n}\n`;
    };
  const texts: readonly [string, Text][] = [
    ["unknown materials", recipe(numbered((i) => `  layer unknown_${i}\n`))],
    ["one long name", again("a", "material ", " {\n  family shellac\n}\nrecipe r {\n  layer aaab\n}\n")],
    ["unknown arguments", called(numbered((i) => `x${i}zz: shellac, `))],
    [
      "missing arguments",
      (size) => called(() => "")(size).replace("  follow", `${again("  follow s\n")(size)}  follow`),
    ],
    ["comments above one line", recipe(again("  # allow no-dust-mask: x\n", "", "  step sand 150\n"))],
    ["unknown rules in comments", recipe(again("  # allow no-such-rule: x\n  step sand 150\n"))],
  ];
  const findings = (text: string) => analyse({ "a.finish": text }).findings("a.finish");
  for (const [name, make] of texts) check(name, make, findings, 64_000);

  // Each is compared with 400 names at most. Up to so many recipes, at 15 000 characters, the cost is their square, then it is in
  // proportion; were each compared with all, the square would go on.
  test("unknown recipes among many", () => {
    const make = numbered((i) => `recipe known_${i} {\n  follow wrong_${i}\n}\n`);
    expect(growth(make, findings, { from: 2000, to: 64_000 })).toBeLessThan(MOST_GROWTH + 0.3);
  });

  test("one surface that hundreds of lines apply a recipe to, on its sheet", () => {
    const applied = (count: number) =>
      analyse({
        "a.finish": `piece p {\n  surface s {\n    shape area 1 m2\n    wood oak\n  }\n}\nrecipe r {\n  step dust\n}\njob j {\n  piece p\n  start 2027-03-08\n${"  apply r to s\n".repeat(count)}}\n`,
      });
    const sheets = (analysis: ReturnType<typeof analyse>) => analysis.sheets("a.finish");
    expect(growth(applied, sheets, { from: 500, to: 4000 })).toBeLessThan(MOST_GROWTH);
  });

  test("consequences among thousands of findings of one declaration", () => {
    const findings = (count: number): readonly Finding[] =>
      Array.from({ length: count }, (_, index) => ({
        rule: index % 2 === 0 ? "cause" : "consequence",
        severity: "warning" as const,
        headline: "x",
        why: "x",
        remedy: "x",
        place: {
          file: "a.finish",
          declaration: "recipe r",
          span: { start: 10 * Math.floor(index / 2), end: 10 * Math.floor(index / 2) + 5 },
        },
        related: [],
        fixes: [],
      }));
    const group = (all: readonly Finding[]) =>
      groupFindings(all, (rule) => (rule === "consequence" ? ["cause"] : []));
    expect(group(findings(10)).map(({ rule }) => rule)).toEqual([
      "cause",
      "cause",
      "cause",
      "cause",
      "cause",
    ]);
    expect(growth(findings, group, { from: 2000, to: 32_000 })).toBeLessThan(MOST_GROWTH);
  });

  test("say where suggestions end", () => {
    const text = recipe(numbered((i) => `  layer shelac_${i}x\n`))(8000);
    const unknown = analyse({ "a.finish": text })
      .findings("a.finish")
      .filter(({ rule }) => rule === "unknown-name");
    expect(unknown.length).toBeGreaterThan(101);
    expect(unknown[99]!.message).not.toContain("for this one no longer");
    expect(unknown[100]!.message).toContain("for this one no longer");
  });

  test("a number of coats out of range is not done", () => {
    const text =
      "recipe r(n: number = 99999) {\n  for wood\n  layer dewaxed_shellac x n {\n    wait until recoat\n  }\n}\n";
    const jobs = `${text}piece t {\n  surface top {\n    shape panel 1 m x 1 m\n    wood oak\n  }\n}\njob j {\n  piece t\n  start 2027-03-08\n  apply r to top\n}\n`;
    const [job] = analyse({ "a.finish": jobs }).jobs("a.finish");
    expect(job!.runs[0]!.moments.length).toBe(1);
  });
});

describe("what an editor asks for", () => {
  const layers: Text = (size) => {
    const count = Math.ceil(size / 24);
    return `recipe r {\n${"layer shellac x 2 {\n".repeat(count)}${"}\n".repeat(count)}}\n`;
  };
  const open: Text = (size) => `recipe r {\n${"layer shellac x 2 {\n".repeat(Math.ceil(size / 20))}`;
  const steps = again("  step sand 150\n", "recipe r {\n", "}\n");
  describe.each([
    ["layers in layers", layers],
    ["layers in layers without an end", open],
    ["steps", steps],
  ])("%s", (_, make) => {
    const analysed = (size: number) => {
      const analysis = analyse({ "a.finish": make(size) });
      return { analysis, end: make(size).length, middle: Math.floor(make(size).length / 2) };
    };
    type Analysed = ReturnType<typeof analysed>;
    const asked: readonly [string, (it: Analysed) => unknown][] = [
      ["symbols", ({ analysis }) => analysis.symbols("a.finish")],
      ["selections", ({ analysis, middle }) => analysis.selections("a.finish", middle)],
      ["foldings", ({ analysis }) => analysis.foldings("a.finish")],
      ["semantic tokens", ({ analysis }) => analysis.semanticTokens("a.finish", "all")],
      ["completions", ({ analysis, end }) => analysis.completions("a.finish", end - 1)],
      ["hover", ({ analysis, middle }) => analysis.hover("a.finish", middle)],
    ];
    test.each(asked)("%s", (_name, work) => {
      expect(growth(analysed, work, { from: 2000, to: 16_000 })).toBeLessThan(MOST_GROWTH);
    });
  });
});
