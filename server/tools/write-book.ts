/**
 * Writes `server/docs/book/*.md`: the book, whose commands are run, and what they print put behind them.
 *
 * The chapters with a number are one story: they are done in their order in one folder. Every other page begins with an
 * empty one. Files called `try…` are gone at the end of their page.
 *
 * Run by `npm run generate`; a test fails when a page is stale.
 */
import { execFileSync } from "node:child_process";
import {
  globSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { Readable } from "node:stream";
import { fileURLToPath } from "node:url";
import type { CliIo } from "../src/cli/io.ts";
import { run } from "../src/cli/main.ts";
import { nodeFiles, readStream } from "../src/cli/node-files.ts";
import { runGit } from "../src/cli/node-git.ts";
import { nodeWatch } from "../src/cli/node-watch.ts";
import { cachingPlanner } from "../src/core/schedule/plan-cache.ts";
import { createAnalyst } from "../src/features/analyst.ts";
import { bookParts, withDeclarations, withOutput } from "./book-page.ts";

export const BOOK_FOLDER = new URL("../docs/book/", import.meta.url);

/** What a block of a page came to, in the order of the pages. */
export type BookEvent =
  | {
      readonly kind: "file";
      readonly page: string;
      /** Undefined for a text that stands by itself. */
      readonly name: string | undefined;
      /** As the page writes it. */
      readonly block: string;
      /** The rules of all findings of the file then. */
      readonly found: readonly string[];
    }
  | {
      readonly kind: "command";
      readonly page: string;
      readonly command: string;
      readonly status: number;
      readonly output: string;
    }
  /** What is found in all files of the folder at the end of a page. */
  | { readonly kind: "end"; readonly page: string; readonly found: readonly string[] };

export interface Book {
  /** Every page by its file name, with what its commands print now. */
  readonly pages: ReadonlyMap<string, string>;
  readonly events: readonly BookEvent[];
}

const MOST_PLANS = 1000;

const HOME = fileURLToPath(new URL("../..", import.meta.url));

/** The pages as they lie in the folder of the book. */
export const bookPages = (): ReadonlyMap<string, string> =>
  new Map(
    readdirSync(BOOK_FOLDER)
      .filter((name) => name.endsWith(".md"))
      .toSorted()
      .map((name) => [name, readFileSync(new URL(name, BOOK_FOLDER), "utf8")]),
  );

/** Does all that the pages say, page by page. */
export async function runBook(pages: ReadonlyMap<string, string>): Promise<Book> {
  const made = new Map<string, string>();
  const events: BookEvent[] = [];
  const isChapter = (name: string): boolean => /^\d/u.test(name);
  const stories = [
    [...pages].filter(([name]) => isChapter(name)),
    ...[...pages].filter(([name]) => !isChapter(name)).map((page) => [page]),
  ];
  for (const story of stories) {
    const folder = realpathSync(mkdtempSync(path.join(tmpdir(), "finishwright-book-")));
    try {
      for (const [name, page] of story) made.set(name, await runPage(folder, name, page, events));
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
  return { pages: made, events };
}

async function runPage(folder: string, page: string, text: string, events: BookEvent[]): Promise<string> {
  const lines: string[] = [];
  for (const part of bookParts(text)) {
    if (part.kind === "read") {
      lines.push(...part.lines);
      continue;
    }
    if (part.kind === "file") {
      const { name, text: block } = part;
      if (name !== undefined) writeFile(path.join(folder, name), block, part.isWhole);
      if (part.language === "finish") {
        const found = name === undefined ? [] : await rulesFound(folder, name);
        events.push({ kind: "file", page, name, block, found });
      }
      lines.push(...part.lines);
      continue;
    }
    if (part.kind === "shown") {
      const shown = readFileSync(path.join(folder, part.name), "utf8").trimEnd();
      lines.push(`\`\`\`${part.language}`, ...shown.split("\n"), "```");
      continue;
    }
    const outputs: string[] = [];
    for (const command of part.commands) {
      const { status, output } = await runCommand(folder, command);
      events.push({ kind: "command", page, command, status, output });
      outputs.push(output);
    }
    lines.push(...withOutput(part.lines, outputs.join("")));
  }
  for (const name of globSync("**/try*", { cwd: folder }))
    rmSync(path.join(folder, name), { recursive: true });
  events.push({ kind: "end", page, found: hasRecipes(folder) ? await rulesFound(folder, ".") : [] });
  return lines.join("\n");
}

function writeFile(file: string, block: string, isWhole: boolean): void {
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, isWhole ? block : withDeclarations(readFileSync(file, "utf8"), block));
}

const hasRecipes = (folder: string): boolean => globSync("*.finish", { cwd: folder }).length > 0;

/** The rules that find something in a file, or in all files of the folder. */
async function rulesFound(folder: string, name: string): Promise<readonly string[]> {
  const { output } = await runFinishwright(folder, ["check", name, "--format", "json"]);
  const findings = JSON.parse(output) as readonly { readonly rule: string }[];
  return [...new Set(findings.map(({ rule }) => rule))].toSorted();
}

interface Ran {
  readonly status: number;
  /** What a terminal shows. */
  readonly output: string;
}

async function runCommand(folder: string, command: string): Promise<Ran> {
  const [program = "", ...argv] = wordsOf(command);
  if (program === "finishwright") return runFinishwright(folder, argv);
  if (program !== "git" && program !== "npm") throw new Error(`The book runs no \`${program}\`.`);
  const output = execFileSync(program, argv, { cwd: folder, encoding: "utf8", env: outsideEnv() });
  return { status: 0, output };
}

/** The words of a command; what stands in double quotes is one. */
const wordsOf = (command: string): readonly string[] =>
  [...command.matchAll(/"([^"]*)"|\S+/gu)].map(([word, quoted]) => quoted ?? word);

/** A plan depends on what is asked alone, and the same jobs are planned by many commands. */
const planner = cachingPlanner(MOST_PLANS);

async function runFinishwright(folder: string, argv: readonly string[]): Promise<Ran> {
  let output = "";
  const terminal = {
    write: (text: string) => {
      output += text;
    },
    isTTY: false,
    columns: 80,
  };
  const io: CliIo = {
    createAnalyst: (options) => createAnalyst({ plan: planner, ...options }),
    readInput: () => readStream(Readable.from([])),
    stdout: terminal,
    stderr: terminal,
    cwd: folder,
    env: {},
    files: nodeFiles,
    git: runGit,
    watch: nodeWatch,
    processors: 1,
    build: () => "book",
    cacheFolder: () => path.join(folder, ".caches"),
    version: "",
    home: HOME,
    now: () => "2027-03-01T08:00:00Z",
    startLanguageServer: async () => {},
  };
  const status = await run(argv, io);
  // CSV ends its lines as its standard says; a page has the ends of its own.
  return { status, output: output.replaceAll("\r\n", "\n") };
}

/** The same commits and no settings of a person, whoever runs it. */
const outsideEnv = (): NodeJS.ProcessEnv => ({
  ...process.env,
  GIT_CONFIG_GLOBAL: "/dev/null",
  GIT_CONFIG_SYSTEM: "/dev/null",
  GIT_AUTHOR_NAME: "Town library",
  GIT_AUTHOR_EMAIL: "library@example.org",
  GIT_AUTHOR_DATE: "2027-03-01T08:00:00Z",
  GIT_COMMITTER_NAME: "Town library",
  GIT_COMMITTER_EMAIL: "library@example.org",
  GIT_COMMITTER_DATE: "2027-03-01T08:00:00Z",
});

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { pages } = await runBook(bookPages());
  for (const [name, text] of pages) writeFileSync(new URL(name, BOOK_FOLDER), text);
}
