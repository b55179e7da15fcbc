/**
 * The book: every block of it is looked at and every command run, in the order of the pages. What is shown below a command
 * is what it prints, and whatever is found in a block is shown on its page.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { formatFile } from "../../grammar/src/format.ts";
import { parseFile } from "../../grammar/src/parse.ts";
import { bookParts, withDeclarations } from "../../server/tools/book-page.ts";
import { type Book, type BookEvent, bookPages, runBook } from "../../server/tools/write-book.ts";
import { findingsOf } from "../harness/check-text.ts";
import { runCli } from "./run-cli.ts";

const ROOT = path.resolve(import.meta.dirname, "../..");
const pages = bookPages();
const names = [...pages.keys()];

let book: Book;
beforeAll(async () => {
  book = await runBook(pages);
});

const eventsOf = (page: string): readonly BookEvent[] => book.events.filter((event) => event.page === page);

/** What `check` shows on a page after an event, up to the next change of a file where one is named. */
function shownAfter(events: readonly BookEvent[], at: number, name?: string): string {
  const rest = events.slice(at + 1);
  const next = rest.findIndex((event) => event.kind === "file" && event.name === name);
  return (name === undefined || next < 0 ? rest : rest.slice(0, next))
    .flatMap((event) =>
      event.kind === "command" && event.command.startsWith("finishwright check") ? [event.output] : [],
    )
    .join("\n");
}

const notShown = (found: readonly string[], shown: string): readonly string[] =>
  found.filter((rule) => !shown.includes(rule));

describe.each(names)("%s", (name) => {
  test("shows what its commands print", () => {
    expect(pages.get(name)).toBe(book.pages.get(name));
  });

  test("has no command that is used wrongly", () => {
    for (const event of eventsOf(name))
      if (event.kind === "command") expect(event.status, `${event.command}\n${event.output}`).not.toBe(2);
  });

  test("shows every finding of its blocks", () => {
    const events = eventsOf(name);
    for (const [at, event] of events.entries()) {
      if (event.kind !== "file") continue;
      if (event.name === undefined) expect(findingsOf(event.block), event.block).toEqual([]);
      else expect(notShown(event.found, shownAfter(events, at, event.name)), event.block).toEqual([]);
    }
  });

  test("leaves no finding that neither it nor a page before shows", () => {
    const at = book.events.findIndex((event) => event.kind === "end" && event.page === name);
    const end = book.events[at]!;
    const shown = shownAfter(book.events.slice(0, at), -1);
    if (end.kind === "end") expect(notShown(end.found, shown)).toEqual([]);
  });

  test("has its recipes in the standard layout, but for what it formats", () => {
    const events = eventsOf(name);
    const formatted = events.map((event) => (event.kind === "command" ? event.command : ""));
    for (const event of events) {
      if (event.kind !== "file" || formatted.includes(`finishwright format ${event.name}`)) continue;
      expect(formatFile(parseFile(event.block)).changes, event.block).toEqual([]);
    }
  });

  test("names no command and no option that there is not", async () => {
    const said = [...pages.get(name)!.matchAll(/`finishwright ([a-z-]+)([^`\n]*)`/gu)];
    for (const [whole, command = "", rest = ""] of said) {
      const { status, stdout } = await runCli([command, "--help"]);
      expect(status, whole).toBe(0);
      for (const [option] of rest.matchAll(/(?<= )--?[a-z][a-z-]*/gu))
        expect(stdout, whole).toContain(option);
    }
  });

  test("has no place of the machine that made it", () => {
    expect(pages.get(name)).not.toMatch(/\/tmp\/|\/home\/|\/work\//u);
  });
});

/** One word for one thing: what the book does not say, and what it says instead. */
const OTHER_WORDS: readonly (readonly [other: RegExp, ours: string])[] = [
  [/\b(?:tins?|tubs?|containers?)\b/iu, "can"],
  [/\bphones?\b/iu, "telephone"],
  [/\b(?:finish coat|top ?coat|undercoat)s?\b/iu, "coat, primer"],
  [/\b(?:complaints?|issues?|diagnostics?)\b/iu, "finding"],
  [/\b(?:dry(?:ing)? times?|curing times?)\b/iu, "wait"],
  [/\b(?:clients?|customers?)\b/iu, "owner"],
  [/\bworkshops?\b/iu, "shop"],
  [/\b(?:sand ?paper|abrasives?)\b/iu, "paper"],
  [/\b(?:white spirit|turps)\b/iu, "mineral spirits"],
  [/\b(?:procedures?|instructions?|formulations?)\b/iu, "recipe"],
  [/\b(?:furniture items?|articles?|objects?)\b/iu, "piece"],
  [/\b(?:deadlines?|due dates?)\b/iu, "the day it is wanted"],
  [/\b(?:colors?|meters?|liters?|molds?|vapors?)\b/u, "British spelling"],
  [/\b(?:utili[sz]e|leverage|in order to|prior to|via|ensure)\b/iu, "a plain word"],
  [/\b(?:simply|easily|powerful|seamless|effortless|intuitive|blazing|robust)\b/iu, "nothing: it sells"],
  [
    /\b(?:error message|warning message|lint|linter|parse|compile|syntax|boolean|string|integer)\b/iu,
    "a word of the trade",
  ],
  [/[–—]/u, "a full stop, a comma or a colon"],
];

/** What a person wrote: no blocks, no code and no titles of sources. */
const prose = (page: string): string =>
  bookParts(page)
    .flatMap((part) => (part.kind === "read" ? part.lines : []))
    .join("\n")
    .replace(/```[\s\S]*?```/gu, "")
    .replace(/`[^`\n]*`/gu, "")
    .replace(/^Sources?: .*$/gmu, "");

describe("words", () => {
  test.each(names)("%s has one word for one thing", (name) => {
    const text = prose(pages.get(name)!);
    const found = OTHER_WORDS.flatMap(([other, ours]) => {
      const [word] = other.exec(text) ?? [];
      return word === undefined ? [] : [`${word}: say ${ours}`];
    });
    expect(found).toEqual([]);
  });

  test("of the list are found", () => {
    expect(prose("A tin.\n\n```sh\na tin\n```\n\nSee `a tin`.\nSources: a tin.")).toBe("A tin.\n\n\nSee .\n");
    expect(OTHER_WORDS[0]![0].test("A tin.")).toBe(true);
    expect(OTHER_WORDS[0]![0].test("continue, attain")).toBe(false);
  });
});

/** What a formula of a spreadsheet gives in a row: texts, cells and `TEXT(F2;"0.00")`, joined by `&`. */
const formulaText = (formula: string, row: readonly string[]): string =>
  [...formula.matchAll(/"((?:[^"]|"")*)"(?!\))|(?<!TEXT\()\b([A-F])2\b|TEXT\(([A-F])2;"0\.00"\)/gu)]
    .map(([, text, cell, figure]) => {
      if (text !== undefined) return text.replaceAll('""', '"');
      const value = row[(cell ?? figure!).charCodeAt(0) - "A".charCodeAt(0)]!;
      return figure === undefined ? value : Number(value).toFixed(2);
    })
    .join("");

test("the formulas for a spreadsheet give the lines that are shown", () => {
  const page = pages.get("spreadsheet.md")!;
  const [cans, pieces] = [...page.matchAll(/^=.*$/gmu)].map(([formula]) => formula);
  const [, ...rows] = [...page.matchAll(/^\| \d \| (.*) \|$/gmu)].map(([, cells]) => cells!.split(" | "));
  expect(rows).toHaveLength(2);
  for (const row of rows) expect(page).toContain(`\n${formulaText(cans!, row)}\n`);
  const stool = ["stool", "Step stool", "5", "0.6", "pine", "bare"];
  expect(page).toContain(`\n${formulaText(pieces!, stool)}\n`);
});

/** As code hosts make an anchor of a heading. */
const anchor = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s_-]/gu, "")
    .trim()
    .replace(/\s/gu, "-");

describe("links", () => {
  const docs = readdirSync(path.join(ROOT, "server/docs"), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".md"))
    .map((name) => path.join("server/docs", name));
  test.each(["README.md", "DEVELOPERS.md", ...docs])("of %s lead somewhere", (name) => {
    const text = readFileSync(path.join(ROOT, name), "utf8")
      .replace(/^```[\s\S]*?^```$/gmu, "")
      .replace(/`[^`\n]*`/gu, "");
    for (const [, target = ""] of text.matchAll(/\]\(([^)\s]+)\)/gu)) {
      if (/^[a-z]+:/u.test(target)) continue;
      const [file = "", heading] = target.split("#");
      const full = file === "" ? path.join(ROOT, name) : path.resolve(ROOT, path.dirname(name), file);
      expect(existsSync(full), `${name}: ${target}`).toBe(true);
      if (heading === undefined) continue;
      const anchors = [...readFileSync(full, "utf8").matchAll(/^#+ (.*)$/gmu)].map(([, title]) =>
        anchor(title!),
      );
      expect(anchors, `${name}: ${target}`).toContain(heading);
    }
  });

  test("the index leads to every page", () => {
    const index = pages.get("index.md")!;
    for (const name of names) if (name !== "index.md") expect(index).toContain(`(${name})`);
  });
});

describe("a page in its parts", () => {
  const page =
    'Read.\n\n`a.finish`:\n\n```finish\nuse "b.finish"\n```\n\n```sh\nfinishwright check\n```\n\n```text\nold\n```\n\nEnd.\n';
  test("has files and commands, and leaves out what was printed", () => {
    expect(bookParts(page)).toEqual([
      { kind: "read", lines: ["Read.", "", "`a.finish`:", ""] },
      {
        kind: "file",
        language: "finish",
        name: "a.finish",
        isWhole: true,
        text: 'use "b.finish"\n',
        lines: ["```finish", 'use "b.finish"', "```"],
      },
      { kind: "read", lines: [""] },
      { kind: "commands", commands: ["finishwright check"], lines: ["```sh", "finishwright check", "```"] },
      { kind: "read", lines: ["", "End.", ""] },
    ]);
  });

  test("declarations take the place of their own, and new ones come last", () => {
    const text = 'use "a.finish"\n\n# First.\nshop b {\n  crew 1\n}\n\njob c {\n  in b\n}\n';
    expect(
      withDeclarations(text, 'use "d.finish"\n\n## New.\nshop b {\n  crew 2\n}\n\nshop e {\n  crew 3\n}\n'),
    ).toBe(
      'use "a.finish"\nuse "d.finish"\n\n## New.\nshop b {\n  crew 2\n}\n\njob c {\n  in b\n}\n\nshop e {\n  crew 3\n}\n',
    );
  });
});
