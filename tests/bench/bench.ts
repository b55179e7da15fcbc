/**
 * `npm run bench`: measures this server beside others from npm in one run, over standard input and output as an editor
 * would, and prints one table in Markdown for DEVELOPERS.md. Nothing here fails: people judge.
 *
 * `--only start,keys,…` runs some parts (`PARTS` below), `--servers Finishwright,JSON` some servers, `--keystrokes 12` types
 * less than 60 times at each place, and `--quick` asks for few repetitions, to see that all of it runs. The peers are installed by the first run, into this folder, so that a
 * checkout does not pay for them. Run it alone on a machine: about a quarter of an hour.
 */
import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { cpus } from "node:os";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { printPlans } from "./plans.ts";
import { checkFolders, reading, shortPrograms } from "./programs.ts";
import { printRatios } from "./ratios.ts";
import { FINISHWRIGHT, FLOOR, PEERS, type Server } from "./servers.ts";
import { printSessions } from "./sessions.ts";
import {
  burst,
  coldStart,
  type Figure,
  keystrokes,
  manyDocuments,
  type Options,
  type Row,
  requests,
  Table,
} from "./suites.ts";
import { benchViews } from "./view.ts";

const PEERS_FOLDER = fileURLToPath(new URL("peers/", import.meta.url));

const FULL: Options = {
  starts: 7,
  warm: 40,
  keystrokes: 120,
  sizes: [100, 1000, 10_000],
  documents: 1000,
  burst: 2000,
  idleMs: 5000,
};
const QUICK: Options = {
  starts: 1,
  warm: 2,
  keystrokes: 6,
  sizes: [100, 1000],
  documents: 50,
  burst: 100,
  idleMs: 500,
};

const { values } = parseArgs({
  options: {
    only: { type: "string" },
    servers: { type: "string" },
    quick: { type: "boolean" },
    keystrokes: { type: "string" },
    shops: { type: "string" },
    tries: { type: "string" },
    seconds: { type: "string" },
  },
});
const usual = values.quick ? QUICK : FULL;
const options: Options = { ...usual, keystrokes: Number(values.keystrokes ?? usual.keystrokes) };
const table = new Table();

const servers = [FINISHWRIGHT, FLOOR, ...PEERS].filter(
  ({ name }) => values.servers === undefined || values.servers.split(",").includes(name),
);

const eachServer = (part: (server: Server, given: Options, into: Table) => Promise<void>) => async () => {
  for (const server of servers) {
    try {
      await part(server, options, table);
    } catch (error) {
      console.error(`${server.name}: ${error instanceof Error ? error.message : error}`);
    }
  }
};

const PARTS: Readonly<Record<string, () => Promise<void> | void>> = {
  programs: () => shortPrograms(options.starts * 3, table),
  reading: () => reading(options.sizes, table),
  start: eachServer(coldStart),
  keys: eachServer(keystrokes),
  requests: eachServer(requests),
  burst: eachServer(burst),
  many: eachServer(manyDocuments),
  view: () => benchViews(Math.min(24, options.keystrokes), table),
  check: () => checkFolders(values.quick ? [20] : [1000, 10_000], table),
};

async function installPeers(): Promise<void> {
  if (!existsSync(`${PEERS_FOLDER}node_modules`)) {
    console.error("Installing the servers to compare with …");
    execFileSync("npm", ["ci", "--no-audit", "--no-fund", "--ignore-scripts"], {
      cwd: PEERS_FOLDER,
      stdio: ["ignore", "ignore", "inherit"],
    });
  }
  const { keepGrammar } = await import("./peers/langium-grammar.mjs");
  await keepGrammar();
}

const number = (value: number): string =>
  value.toLocaleString("en", { maximumSignificantDigits: 3, useGrouping: false });

/** Processor time before time on the clock. */
function figureText({ cpuMs, wallMs, megabytes }: Figure = {}): string {
  const times = [cpuMs, wallMs].filter((time) => time !== undefined).map(number);
  const parts = [
    ...(times.length > 0 ? [`${times.join(" / ")}${cpuMs === undefined ? " (clock)" : ""}`] : []),
    ...(megabytes === undefined ? [] : [`${number(megabytes)} MB`]),
  ];
  return parts.join(", ");
}

function print(rows: readonly Row[]): void {
  const names = [FINISHWRIGHT, FLOOR, ...PEERS]
    .map(({ name }) => name)
    .filter((name) => rows.some(({ figures }) => figures[name] !== undefined));
  console.log(`| ms of CPU / ms on the clock | ${names.join(" | ")} |`);
  console.log(`| --- |${names.map(() => " ---: |").join("")}`);
  for (const { what, figures } of rows) {
    console.log(`| ${what} | ${names.map((name) => figureText(figures[name])).join(" | ")} |`);
  }
}

const asked = values.only?.split(",") ?? [...Object.keys(PARTS), "plans", "sessions", "ratios"];
const machine = `${cpus().length} × ${cpus()[0]?.model.trim()}, Node ${process.version}`;
if (asked.some((part) => ["start", "keys", "requests", "burst", "many"].includes(part))) await installPeers();
for (const part of asked) {
  if (["plans", "sessions", "ratios"].includes(part)) continue;
  console.error(`${part} …`);
  await PARTS[part]?.();
}
if (table.rows.length > 0) {
  console.log(`${new Date().toISOString().slice(0, 10)}, ${machine}\n`);
  print(table.rows);
}
if (asked.includes("plans")) printPlans();
if (asked.includes("sessions"))
  await printSessions(Number(values.shops ?? 200), Number(values.tries ?? 300), Number(values.seconds ?? 60));
if (asked.includes("ratios")) printRatios();
