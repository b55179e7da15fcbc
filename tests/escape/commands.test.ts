/**
 * Every command in every format, on files in which all that anybody can write is hostile: what comes out on either
 * stream drives nothing, and is still what its format says that it is.
 */
import fc from "fast-check";
import ICAL from "ical.js";
import { parse as parseHtml } from "parse5";
import { expect, test } from "vitest";
import { runCli } from "../cli/run-cli.ts";
import { hostileFiles, hostileName, hostileTexts } from "../harness/hostile.ts";
import { expectInert, expectInertMarkdown } from "../harness/inert.ts";
import { sarifProblems } from "../harness/sarif-schema.ts";

interface Command {
  readonly argv: (file: string) => readonly string[];
  readonly look: (stdout: string) => void;
  readonly isTTY?: true;
}

const sheet = (format: string) => (file: string) => ["sheet", file, "--format", format];

const care = (format: string) => (file: string) => [
  "care",
  file,
  "--with",
  "owner,delivery",
  "--format",
  format,
];

const recipe = (format: string) => (file: string) => [
  "recipe",
  file,
  "--with",
  "owner,people,prices,delivery,photos",
  "--format",
  format,
];

const COMMANDS: Readonly<Record<string, Command>> = {
  check: { argv: (file) => ["check", file, "--fail-on", "hint"], look: expectInert },
  "check, the folder": { argv: () => ["check"], look: expectInert },
  "check lines": { argv: (file) => ["check", file, "--format", "lines"], look: expectLines },
  "check json": { argv: (file) => ["check", file, "--format", "json"], look: expectJson },
  "check sarif": { argv: (file) => ["check", file, "--format", "sarif"], look: expectSarif },
  "format check": { argv: (file) => ["format", "--check", file], look: expectInert },
  format: { argv: (file) => ["format", file], look: expectInert },
  totals: { argv: (file) => ["totals", file], look: expectInert },
  "totals json": { argv: (file) => ["totals", file, "--format", "json"], look: expectJson },
  schedule: { argv: (file) => ["schedule", file], look: expectInert },
  "schedule json": { argv: (file) => ["schedule", file, "--format", "json"], look: expectJson },
  "schedule ics": { argv: (file) => ["schedule", file, "--format", "ics"], look: expectCalendar },
  "sheet text": { argv: sheet("text"), look: expectInert },
  "sheet markdown": { argv: sheet("markdown"), look: expectInertMarkdown },
  "sheet html": { argv: sheet("html"), look: expectHtml },
  "care text": { argv: care("text"), look: expectInert },
  "care markdown": { argv: care("markdown"), look: expectInertMarkdown },
  "care html": { argv: care("html"), look: expectHtml },
  "recipe text": { argv: recipe("text"), look: expectInert },
  "recipe markdown": { argv: recipe("markdown"), look: expectInertMarkdown },
  "recipe html": { argv: recipe("html"), look: expectHtml },
  repair: { argv: (file) => ["repair", file], look: expectInert },
  compare: { argv: (file) => ["compare", `${file}:tables`, `${file}:second`], look: expectInert },
  "compare json": {
    argv: (file) => ["compare", `${file}:tables`, `${file}:second`, "--format", "json"],
    look: expectJson,
  },
  find: { argv: (file) => ["find", file, "--text", "e"], look: expectInert },
  "find json": { argv: (file) => ["find", file, "--text", "e", "--format", "json"], look: expectJson },
  "find, wrong words": { argv: (file) => ["find", "--sheen", file], look: expectInert },
  shopping: { argv: (file) => ["shopping", file], look: expectInert },
  "shopping json": { argv: (file) => ["shopping", file, "--format", "json"], look: expectJson },
  "shopping csv": { argv: (file) => ["shopping", file, "--format", "csv"], look: expectCsv },
  "shopping markdown": {
    argv: (file) => ["shopping", file, "--format", "markdown"],
    look: expectInertMarkdown,
  },
  "explain, a name": { argv: (file) => ["explain", file], look: expectInert },
  "no such command": { argv: (file) => [file], look: expectInert },
  "no such option": { argv: (file) => ["check", `--${file}`], look: expectInert },
  "no such file": { argv: (file) => ["check", `${file}x`], look: expectInert },
  "no such job": { argv: (file) => ["totals", file, "--job", file], look: expectInert },
};

function expectLines(text: string): void {
  expectInert(text);
  for (const line of text.split("\n").slice(0, -1)) {
    expect(line).toMatch(/^.+:\d+:\d+: (?:error|warning|information|hint): .+ \[[a-z0-9-]+\]$/u);
  }
}

function expectJson(text: string): void {
  expectInert(text);
  if (text !== "") JSON.parse(text);
}

interface Sarif {
  readonly runs: readonly {
    readonly results: readonly { readonly message: { readonly text: string } }[];
  }[];
}

/** No placeholder and no link is left in a message (SARIF 2.1.0, 3.11.5 and 3.11.6). */
function expectSarif(text: string): void {
  expectInert(text);
  expect(sarifProblems(JSON.parse(text))).toEqual([]);
  for (const { message } of (JSON.parse(text) as Sarif).runs.flatMap(({ results }) => results)) {
    expect(message.text.replaceAll("{{", "").replaceAll("}}", "")).not.toMatch(/[{}]/u);
    expect(message.text).not.toMatch(/(?<!\\)[[\]]/u);
  }
}

/** Two jobs of two pieces give no event more than the plan has, and no line is longer than 75 octets. */
function expectCalendar(text: string): void {
  expectInert(text, { ends: "\r\n" });
  for (const line of text.split("\r\n")) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
  const names = new Set<string>();
  const calendar = new ICAL.Component(ICAL.parse(text));
  for (const event of calendar.getAllSubcomponents("vevent")) {
    for (const { name } of event.getAllProperties()) names.add(name);
  }
  // Where a plan has dates of use.
  names.delete("transp");
  expect([...names].toSorted()).toEqual(["description", "dtend", "dtstamp", "dtstart", "summary", "uid"]);
}

/** Read cell by cell, with either separator that spreadsheets take. */
function expectCsv(text: string): void {
  expectInert(text, { ends: "\r\n" });
  for (const separator of [",", ";"]) {
    const cells = csvCells(text, separator);
    for (const cell of cells.flat())
      expect(cell.trimStart()).not.toMatch(/^[=+@\uff1d\uff0b\uff0d\uff20]|^-(?!\d)/u);
  }
  for (const row of csvCells(text, ",")) expect(row).toHaveLength(10);
}

/** RFC 4180, by hand; a quotation mark inside an unquoted cell is a character, as spreadsheets have it. */
function csvCells(text: string, separator: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let at = 0;
  while (at < text.length) {
    const row: string[] = [];
    for (;;) {
      let cell = "";
      if (text[at] === '"') {
        at += 1;
        while (at < text.length && !(text[at] === '"' && text[at + 1] !== '"')) {
          if (text[at] === '"') at += 1;
          cell += text[at];
          at += 1;
        }
        at += 1;
      }
      while (at < text.length && text[at] !== separator && text[at] !== "\r") {
        cell += text[at];
        at += 1;
      }
      row.push(cell);
      if (text[at] !== separator) break;
      at += 1;
    }
    at += 2;
    rows.push(row);
  }
  return rows;
}

const TAGS = new Set(
  "html head meta title style body main nav ol ul li a article header footer section p h1 h2 h3 dl br div dt dd table caption thead tbody tr th td code strong em label input span figure figcaption svg g path rect text b small details summary button output textarea script".split(
    " ",
  ),
);

/** Only the tags and attributes that a sheet is made of, and links only within it. */
function expectHtml(text: string): void {
  expectInert(text);
  const look = (node: unknown): void => {
    const { tagName, attrs, childNodes } = node as {
      readonly tagName?: string;
      readonly attrs?: readonly { readonly name: string; readonly value: string }[];
      readonly childNodes?: readonly unknown[];
    };
    if (tagName !== undefined) expect(TAGS).toContain(tagName);
    for (const { name, value } of attrs ?? []) {
      expect(name).not.toMatch(/^on|^src$|^style$/u);
      if (name === "href") expect(value).toMatch(/^#sheet-\d+(?:-finding-\d+)?$/u);
    }
    for (const child of childNodes ?? []) look(child);
  };
  look(parseHtml(text));
}

test.each(Object.entries(COMMANDS))("%s", async (_, { argv, look }) => {
  await fc.assert(
    fc.asyncProperty(hostileTexts, hostileName, async (texts, name) => {
      const main = `${name}.finish`;
      const { stdout, stderr } = await runCli(argv(main), {
        files: hostileFiles(texts, { main, used: `${name}-stock.finish` }),
      });
      look(stdout);
      expectInert(stderr);
      expect(stderr).not.toContain("This is a bug");
    }),
    { numRuns: 4, endOnFailure: true },
  );
});

test("the jobs of the hostile files are worked out, so that everything is said of them", async () => {
  const texts = { title: "=1+1", docs: ["- [x](https://evil.example/)"], words: "\u001b[31m" };
  const files = hostileFiles(texts, { main: "a.finish", used: "b.finish" });
  const { stdout } = await runCli(["shopping", "a.finish", "--format", "csv"], { files });
  // 3 tables × 1.8 m × 0.9 m / 14 m2/L × 1.1 with the spare; two small tins (19.60) cost less than a large one (24.50).
  expect(stdout.split("\r\n")[1]).toBe("gel,'=1+1,0.381857,0,0.25,2,9.80,19.60,\u241b[31m,tables second");
  const sheets = await runCli(["sheet", "a.finish", "--format", "markdown"], { files });
  // Where a link leads is said in words, and nothing leads there.
  expect(sheets.stdout).toContain("- x (https\\:\\/\\/evil.example/)");
  expect(sheets.stdout).toContain("Inspect");
});

test("standard input is formatted byte by byte for programs, and inert on a terminal", async () => {
  const input = `material  a "\u001b[31m\u202e" {\n  family dewaxed shellac\n}\n`;
  const piped = await runCli(["format", "-"], { input });
  expect(piped.stdout).toBe(input.replace("material  a", "material a"));
  const shown = await runCli(["format", "-"], { input, isTTY: true });
  expectInert(shown.stdout);
});
