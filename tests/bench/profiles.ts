/**
 * `npm run profile`: where the time of the bench's rows goes. It drives the readable build as `npm run bench` does, with
 * V8's sampling profiler in the thread that answers, and prints shares of the samples by part of the project and the
 * functions with the most of their own. Like the bench it fails at nothing: people judge.
 *
 * `--only start,keys,many,check,reading` runs some of them, `--lines 10000` says how long the text of `keys` is.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { Client } from "./client.ts";
import { byPart, ofThread, type Share } from "./profile-shares.ts";
import { PROGRAM, withFiles } from "./programs.ts";
import { FINISHWRIGHT, placeIn, recipeText } from "./servers.ts";
import { quiet, typist } from "./suites.ts";

const { values } = parseArgs({
  options: { only: { type: "string" }, lines: { type: "string", default: "10000" } },
});

/** The clock that the profiler has too, in microseconds. */
const microseconds = (): number => Number(process.hrtime.bigint() / 1000n);

/** Between which two moments samples count: what goes before belongs to other rows. */
interface Span {
  readonly from: number;
  readonly to: number;
}

const flags = (folder: string): readonly string[] => ["--cpu-prof", "--cpu-prof-dir", folder];

/** Drives a server that is profiled; what `drive` returns says which samples count. */
async function served(folder: string, drive: (client: Client) => Promise<Span>): Promise<Span> {
  const client = new Client({ ...FINISHWRIGHT, command: [...flags(folder), ...FINISHWRIGHT.command] });
  await client.initialize();
  const span = await drive(client);
  await client.stop();
  return span;
}

const URI = "file:///bench/profiled.finish";

async function start(folder: string): Promise<Span> {
  for (let time = 0; time < 5; time += 1)
    await served(folder, async (client) => {
      await client.open(URI, recipeText(26));
      return { from: 0, to: microseconds() };
    });
  return { from: 0, to: microseconds() };
}

function keys(folder: string): Promise<Span> {
  return served(folder, async (client) => {
    const text = recipeText(Number(values.lines));
    await client.open(URI, text);
    await quiet(client, 120);
    const type = typist(placeIn(text, FINISHWRIGHT.places.recipe!));
    for (let warm = 0; warm < 10; warm += 1) await client.keystroke(URI, type());
    const from = microseconds();
    for (let stroke = 0; stroke < 100; stroke += 1) await client.keystroke(URI, type());
    return { from, to: microseconds() };
  });
}

function many(folder: string): Promise<Span> {
  return served(folder, async (client) => {
    const from = microseconds();
    const uris = Array.from({ length: 1000 }, (_, i) => `file:///bench/many-${i}.finish`);
    await Promise.all(uris.map((uri) => client.open(uri, recipeText(26))));
    return { from, to: microseconds() };
  });
}

const program = (folder: string, args: readonly string[]): Span => {
  spawnSync(process.execPath, [...flags(folder), ...args], { stdio: "ignore" });
  return { from: 0, to: microseconds() };
};

const check = (folder: string): Span =>
  withFiles(1000, "with no job", (files) => program(folder, [PROGRAM, "check", "--format", "lines", files]));

/** In a process of its own, from the sources. */
const reading = (folder: string): Span =>
  program(folder, [fileURLToPath(new URL("read-often.ts", import.meta.url)), values.lines]);

const PARTS: Readonly<Record<string, (folder: string) => Promise<Span> | Span>> = {
  start,
  keys,
  many,
  check,
  reading,
};

const percent = ({ share }: Share): string => `${(share * 100).toFixed(1).padStart(5)} %`;

for (const part of values.only?.split(",") ?? Object.keys(PARTS)) {
  const run = PARTS[part];
  if (run === undefined) throw new Error(`--only takes ${Object.keys(PARTS).join(", ")}, and got "${part}".`);
  const folder = mkdtempSync(path.join(tmpdir(), "finishwright-profile-"));
  try {
    const span = await run(folder);
    // The thread that answers has the number 0; those beside it have files of their own.
    const files = readdirSync(folder).filter((name) => /\.0\.\d+\.cpuprofile$/u.test(name));
    const samples = files.flatMap((name) =>
      ofThread(JSON.parse(readFileSync(path.join(folder, name), "utf8")), span),
    );
    const { parts, functions, ms } = byPart(samples);
    console.log(`\n${part}: ${Math.round(ms)} ms`);
    for (const share of parts.filter((each) => each.share >= 0.01))
      console.log(`${percent(share)}  ${share.name}`);
    console.log("  of which by themselves:");
    for (const share of functions.slice(0, 12)) console.log(`${percent(share)}  ${share.name}`);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
