/** What whole programs cost: Node by itself, the command line, and reading a text in this process. */
import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { lex } from "../../grammar/src/lexer.ts";
import { parseFile } from "../../grammar/src/parse.ts";
import { recipeText, unplannedText } from "./servers.ts";
import { type Figure, median, type Table } from "./suites.ts";

export const PROGRAM = fileURLToPath(new URL("../../server/dist/finishwright.cjs", import.meta.url));
const OURS = "Finishwright";

/** Runs a program to its end. Processor time and memory are those of the last look before it ended. */
function run(args: readonly string[], lookMs: number): Promise<Figure> {
  return new Promise((resolve) => {
    const began = performance.now();
    const child = spawn(process.execPath, args, { stdio: "ignore" });
    let [cpuMs, megabytes] = [0, 0];
    const look = (): void => {
      try {
        const stat = readFileSync(`/proc/${child.pid}/stat`, "utf8").split(") ")[1]!.split(" ");
        const status = readFileSync(`/proc/${child.pid}/status`, "utf8");
        cpuMs = (Number(stat[11]) + Number(stat[12])) * 10;
        megabytes = Number(/VmHWM:\s+(\d+)/u.exec(status)?.[1] ?? megabytes * 1024) / 1024;
      } catch {
        // It has ended.
      }
    };
    const timer = setInterval(look, lookMs);
    child.once("exit", () => {
      clearInterval(timer);
      resolve({ cpuMs, megabytes, wallMs: performance.now() - began });
    });
  });
}

/** Processor time of a short program, as the shell measures it, in milliseconds. */
function shortRun(args: readonly string[]): Promise<number> {
  return new Promise((resolve) => {
    const script = 'TIMEFORMAT="%U %S"; time "$@" >/dev/null';
    const child = spawn("bash", ["-c", script, "bash", process.execPath, ...args], {
      stdio: ["ignore", "ignore", "pipe"],
    });
    let said = "";
    child.stderr.on("data", (chunk: Buffer) => {
      said += chunk.toString();
    });
    child.once("close", () => {
      const [user, system] = said.trim().split("\n").at(-1)!.split(" ").map(Number);
      resolve((user! + system!) * 1000);
    });
  });
}

export async function shortPrograms(times: number, table: Table): Promise<void> {
  const programs: readonly (readonly [string, readonly string[]])[] = [
    ["`node -e 0`", ["-e", "0"]],
    ["`finishwright --version`", [PROGRAM, "--version"]],
    ["`finishwright --help`", [PROGRAM, "--help"]],
  ];
  for (const [what, args] of programs) {
    const figures: number[] = [];
    for (let time = 0; time <= times; time += 1) figures.push(await shortRun(args));
    table.set(what, OURS, { cpuMs: median(figures.slice(1)) });
  }
}

const TEXTS = { "with no job": unplannedText(59), "with two jobs to plan each": recipeText(59) } as const;

/** Does something with a folder of so many files of 59 lines, and takes it away again. */
export function withFiles<T>(count: number, kind: keyof typeof TEXTS, work: (folder: string) => T): T {
  const folder = mkdtempSync(path.join(tmpdir(), "finishwright-bench-"));
  const forget = (): void => rmSync(folder, { recursive: true });
  let result: T;
  try {
    for (let file = 0; file < count; file += 1) {
      const below = path.join(folder, `part-${Math.floor(file / 100)}`);
      if (file % 100 === 0) mkdirSync(below);
      // No two files are the same, or one would be planned for all.
      const text = TEXTS[kind].replaceAll("1800.5", `1${800 + (file % 997)}.${file}`);
      writeFileSync(path.join(below, `recipe-${file}.finish`), text);
    }
    result = work(folder);
  } catch (error) {
    forget();
    throw error;
  }
  if (result instanceof Promise) return result.finally(forget) as T;
  forget();
  return result;
}

/** `check` over folders of files of 59 lines, with two jobs each and without any. */
export async function checkFolders(counts: readonly number[], table: Table): Promise<void> {
  for (const count of counts) {
    // Ten thousand with jobs are twenty thousand plans: a quarter of an hour that tells no more than a thousand do.
    const kinds = count > 1000 ? (["with no job"] as const) : (Object.keys(TEXTS) as (keyof typeof TEXTS)[]);
    for (const kind of kinds) {
      const figure = await withFiles(count, kind, (folder) =>
        run([PROGRAM, "check", "--format", "lines", folder], 20),
      );
      table.set(`\`check\` of ${count} files ${kind}`, OURS, figure);
    }
  }
}

/** Reading a text by itself: processor time of the lexer, and of a tree from nothing. */
export function reading(sizes: readonly number[], table: Table): void {
  for (const size of sizes) {
    const text = recipeText(size);
    const kilobytes = Math.round(text.length / 1000);
    table.set(`lexing ${size} lines (${kilobytes} kB)`, OURS, { cpuMs: warmCost(() => lex(text)) });
    table.set(`reading ${size} lines anew`, OURS, { cpuMs: warmCost(() => parseFile(text)) });
  }
}

/** The clock of the processor moves in steps of some milliseconds: a reading lasts many of them. */
const LOOK_MS = 200;

/** Processor time of some work that has been done before, in milliseconds, what it leaves behind collected among it. */
function warmCost(work: () => void): number {
  let times = 1;
  while (costOf(work, times) < LOOK_MS) times *= 2;
  // The machine goes on compiling for the first few hundred thousand lines.
  costOf(work, 5 * times);
  return median(Array.from({ length: 7 }, () => costOf(work, times) / times));
}

function costOf(work: () => void, times: number): number {
  const began = process.cpuUsage();
  for (let time = 0; time < times; time += 1) work();
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1000;
}
