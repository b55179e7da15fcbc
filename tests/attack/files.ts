/**
 * An odd folder, read by the command line and by the server as processes of their own, while files come and go.
 *
 * Both must come to an end, with no accident and no more memory than files can be worth; nothing from outside of the
 * folder comes out of them; and what only reads changes nothing.
 */
import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { once } from "node:events";
import {
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import process from "node:process";
import { fileURLToPath, pathToFileURL } from "node:url";
import fc from "fast-check";
import type { Attack, Flaw } from "./flaws.ts";
import { type Entry, makeFolder, oddFolder, SECRET, SECRET_TEXT } from "./odd-folders.ts";
import { pause, peakMegabytesOf, watch } from "./processes.ts";
import { framed, startWire } from "./wire.ts";

export interface OddFiles {
  readonly entries: readonly Entry[];
  readonly how: "command" | "server";
  readonly command: number;
  /** Whether a recipe comes and goes while it is read. */
  readonly restless: boolean;
}

const CLI = fileURLToPath(new URL("../../server/dist/finishwright.cjs", import.meta.url));

const COMMANDS: readonly (readonly string[])[] = [
  ["check"],
  ["check", "--format", "json", "a.finish"],
  ["check", "--format", "sarif"],
  ["totals", "a.finish"],
  ["schedule", "--format", "ics", "a.finish"],
  ["sheet", "a.finish"],
  ["sheet", "--format", "html", "a.finish"],
  ["shopping", "--format", "csv"],
  ["compare", "a.finish", "a.finish"],
  ["find", "--text", "a"],
  ["format", "--check"],
  ["format"],
];

export const files: Attack<OddFiles> = {
  name: "files",
  runs: 10,
  input: fc.record({
    entries: oddFolder,
    how: fc.constantFrom("command", "server"),
    command: fc.nat(COMMANDS.length - 1),
    restless: fc.boolean(),
  }),
  check: folderFlaws,
};

const CPU_SECONDS = 40;
/** Longer than any time after which a read is given up. */
const ASLEEP_SECONDS = 30;
/** Node itself and the bundles have some 150; files are read up to a limit of a few. */
const MEGABYTES = 1200;

async function folderFlaws(odd: OddFiles): Promise<readonly Flaw[]> {
  const top = mkdtempSync(path.join(tmpdir(), "finishwright-attack-"));
  const folder = path.join(top, "shop");
  let isOver = false;
  try {
    mkdirSync(folder);
    mkdirSync(path.join(top, "outside"));
    writeFileSync(path.join(top, "outside", "secret.finish"), SECRET_TEXT);
    writeFileSync(path.join(top, "outside", "secret.txt"), SECRET_TEXT);
    makeFolder(folder, odd.entries);
    const restless = odd.restless ? beRestless(folder, () => isOver) : undefined;
    const before = fingerprint(top, odd);
    const flaws = await (odd.how === "command"
      ? commandFlaws(folder, COMMANDS[odd.command]!)
      : serverFlaws(folder));
    isOver = true;
    await restless;
    return fingerprint(top, odd) === before
      ? flaws
      : [...flaws, flaw("lost", "reading changed what is on disk")];
  } finally {
    isOver = true;
    rmSync(top, { recursive: true, force: true });
  }
}

async function commandFlaws(folder: string, command: readonly string[]): Promise<readonly Flaw[]> {
  const child = spawn(process.execPath, [CLI, ...command], { cwd: folder, stdio: ["pipe", "pipe", "pipe"] });
  let output = "";
  for (const stream of [child.stdout, child.stderr]) {
    stream.on("data", (chunk: Buffer) => {
      if (output.length < 10_000_000) output += chunk.toString();
    });
  }
  let peak = 0;
  const timer = setInterval(() => {
    peak = Math.max(peak, peakMegabytesOf(child.pid!) ?? 0);
  }, 100);
  try {
    const closed = once(child, "close");
    const verdict = await watch(
      { pid: child.pid!, cpuSeconds: CPU_SECONDS, asleepSeconds: ASLEEP_SECONDS },
      closed,
    );
    const what = command[0];
    return [
      ...(verdict === "ended" ? [] : [flaw("hang", `${what}: ${verdict}`)]),
      ...(verdict === "ended" && ![0, 1, 2].includes(child.exitCode ?? -1)
        ? [flaw("crash", `${what}: ended with ${child.signalCode ?? child.exitCode}`)]
        : []),
      ...outputFlaws(output, `${what}`),
      ...(peak > MEGABYTES ? [flaw("leak", `${what}: more than ${MEGABYTES} MB of memory`)] : []),
    ];
  } finally {
    clearInterval(timer);
    child.kill("SIGKILL");
  }
}

/** As a finding, in any form; reports also list the rules that there are. */
const INTERNAL_ERROR = /\[internal-error\]|"(?:ruleId|rule|code)": ?"internal-error"/;

function outputFlaws(output: string, what: string): readonly Flaw[] {
  const accident =
    /A fault in the program itself[^\n]*|Unexpected: [^\n]*|^\s+at .*\.(?:cjs|ts):\d+.*$/m.exec(output)?.[0];
  return [
    ...(accident ? [flaw("crash", `${what}: ${accident}`)] : []),
    ...(INTERNAL_ERROR.test(output) ? [flaw("crash", `${what}: internal-error`)] : []),
    ...(output.includes(SECRET) || /root:.*:0:0:/.test(output)
      ? [flaw("lost", `${what}: what stands outside of the folder came out`)]
      : []),
  ];
}

async function serverFlaws(folder: string): Promise<readonly Flaw[]> {
  const wire = startWire(folder);
  const uri = pathToFileURL(path.join(folder, "a.finish")).href;
  const root = pathToFileURL(folder).href;
  const recipes = listed(folder).map((name) => pathToFileURL(path.join(folder, name)).href);
  void wire.waitFor(({ id, method }) => {
    if (method !== undefined && id !== undefined) {
      const result =
        method === "finishwright/findFiles" ? recipes : method === "workspace/configuration" ? [null] : null;
      wire.send(framed({ jsonrpc: "2.0", id, result }));
    }
    return false;
  });
  const send = (message: object): void => wire.send(framed({ jsonrpc: "2.0", ...message }));
  const capabilities = { workspace: { workspaceFolders: true }, textDocument: { diagnostic: {} } };
  send({
    id: 1,
    method: "initialize",
    params: {
      processId: process.pid,
      rootUri: root,
      workspaceFolders: [{ uri: root, name: "shop" }],
      capabilities,
      initializationOptions: { findFiles: true },
    },
  });
  send({ method: "initialized", params: {} });
  let text = "";
  try {
    text = readFileSync(path.join(folder, "a.finish"), "utf8");
  } catch {
    // It has gone for the moment.
  }
  send({
    method: "textDocument/didOpen",
    params: { textDocument: { uri, languageId: "finish", version: 1, text } },
  });
  send({ id: 2, method: "textDocument/diagnostic", params: { textDocument: { uri } } });
  send({ id: 3, method: "finishwright/report", params: { kind: "sheet", textDocument: { uri } } });
  send({ id: 4, method: "workspace/symbol", params: { query: "" } });
  try {
    const answered = Promise.all(
      [2, 3, 4].map((id) => Promise.race([wire.waitFor((one) => one.id === id), wire.exited])),
    );
    const verdict = await watch(
      { pid: wire.pid, cpuSeconds: CPU_SECONDS, asleepSeconds: ASLEEP_SECONDS },
      answered,
    );
    const peak = peakMegabytesOf(wire.pid) ?? 0;
    const ended = wire.hasExited() ? [flaw("crash", `the server ended: ${wire.said().slice(0, 200)}`)] : [];
    wire.closeInput();
    const end = await watch(
      { pid: wire.pid, cpuSeconds: CPU_SECONDS, asleepSeconds: ASLEEP_SECONDS },
      wire.exited,
    );
    return [
      ...(verdict === "ended" ? ended : [flaw("hang", `the server: ${verdict}`)]),
      ...(end === "ended" ? [] : [flaw("leak", "the server goes on when its input has closed")]),
      ...outputFlaws(JSON.stringify(wire.received) + wire.said(), "the server"),
      ...(peak > MEGABYTES ? [flaw("leak", `the server: more than ${MEGABYTES} MB of memory`)] : []),
    ];
  } finally {
    wire.kill();
  }
}

/** As a client lists recipes that it was asked for: by name, and into no linked folder. */
function listed(folder: string): readonly string[] {
  try {
    return readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((name) =>
      name.endsWith(".finish"),
    );
  } catch {
    return [];
  }
}

/** A recipe that goes and comes back, in one piece or in part. */
async function beRestless(folder: string, isOver: () => boolean): Promise<void> {
  const file = path.join(folder, "restless.finish");
  for (let turn = 0; !isOver(); turn += 1) {
    try {
      if (turn % 3 === 0) writeFileSync(file, "recipe here {\n}\n".repeat(1 + (turn % 50)));
      else if (turn % 3 === 1) renameSync(file, `${file}.finish`);
      else rmSync(`${file}.finish`, { force: true });
    } catch {
      // Whatever it was, the next turn is another.
    }
    await pause(3);
  }
}

/** Of all that must stay as it is: everything, or what is outside while recipes may be laid out. */
function fingerprint(top: string, { how, command }: OddFiles): string {
  const isWriting = how === "command" && COMMANDS[command]?.join() === "format";
  const hash = createHash("sha256");
  const look = (folder: string): void => {
    for (const name of readdirSync(folder).toSorted()) {
      const file = path.join(folder, name);
      const stat = lstatSync(file, { throwIfNoEntry: false });
      if (!stat || name.startsWith("restless")) continue;
      hash.update(`${file} ${stat.mode >> 12}`);
      if (stat.isDirectory() && !name.startsWith("deep")) look(file);
      else if (stat.isFile() && stat.size < 1_000_000 && !(isWriting && file.includes("/shop/")))
        hash.update(readFileSync(file));
    }
  };
  look(top);
  return hash.digest("hex");
}

const flaw = (kind: Flaw["kind"], detail: string): Flaw => ({ kind, detail });
