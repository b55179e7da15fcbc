/**
 * Opens, edits and closes files for a while: what stays in memory after all is collected must not grow from one turn to
 * the next. Runs in a process of its own that may collect when it wants to.
 */
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import fc from "fast-check";
import { sampleNames, sampleText } from "../harness/samples.ts";
import type { Attack, Flaw } from "./flaws.ts";
import { hostileText } from "./hostile-texts.ts";
import { startLocalServer } from "./local-server.ts";

export interface Turns {
  readonly turns: number;
  readonly texts: readonly string[];
}

export const soak: Attack<Turns> = {
  name: "soak",
  runs: 1,
  cpuSeconds: 3000,
  input: fc.record({
    turns: fc.constantFrom(40, 150),
    texts: fc.array(hostileText, { minLength: 4, maxLength: 4 }),
  }),
  check: soakFlaws,
};

/** What is kept on purpose is kept within the first turns. */
const WARM_SHARE = 0.4;
/** More than so much in all, from the warm turns' end to the last, is no chance. */
const MEGABYTES = 8;

export async function soakFlaws({ turns, texts }: Turns): Promise<readonly Flaw[]> {
  const server = await startLocalServer();
  const levels: number[] = [];
  try {
    for (let turn = 0; turn < turns; turn += 1) {
      for (const [idx, name] of sampleNames.entries()) {
        const text = idx < 6 ? sampleText(name) : (texts[(turn + idx) % texts.length] ?? "");
        // Every third turn brings names that were never there before.
        await session(server, `file:///shop/${turn % 3 === 0 ? `${turn}/` : ""}${name}`, text, turn);
      }
      levels.push(await megabytesInUse());
    }
  } finally {
    server.stop();
  }
  const warm = levels.slice(Math.floor(turns * WARM_SHARE));
  const third = Math.max(1, Math.floor(warm.length / 3));
  const growth = median(warm.slice(-third)) - median(warm.slice(0, third));
  return growth > MEGABYTES
    ? [{ kind: "leak", detail: `memory grew by ${growth.toFixed(1)} MB in ${warm.length} turns` }]
    : [];
}

async function session(
  { client }: Awaited<ReturnType<typeof startLocalServer>>,
  uri: string,
  text: string,
  turn: number,
): Promise<void> {
  const textDocument = { uri };
  await client.sendNotification("textDocument/didOpen", {
    textDocument: { uri, languageId: "finish", version: 1, text },
  });
  for (let version = 2; version < 5; version += 1) {
    const at = { line: (turn + version) % 9, character: 0 };
    await client.sendNotification("textDocument/didChange", {
      textDocument: { uri, version },
      contentChanges: [{ range: { start: at, end: at }, text: `# turn ${turn} ${version}\n` }],
    });
    await client.sendRequest("textDocument/diagnostic", { textDocument });
  }
  await client.sendRequest("textDocument/semanticTokens/full", { textDocument });
  await client.sendRequest("finishwright/report", { kind: "sheet", textDocument });
  await client.sendRequest("textDocument/completion", { textDocument, position: { line: 3, character: 2 } });
  await client.sendNotification("textDocument/didClose", { textDocument });
}

/** Node keeps the collector to itself unless it is told, which it can be at any time. */
setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc") as () => void;

async function megabytesInUse(): Promise<number> {
  // What is freed by a callback is freed behind the first collection.
  for (let time = 0; time < 3; time += 1) {
    collect();
    await new Promise((resolve) => setImmediate(resolve));
  }
  return process.memoryUsage().heapUsed / 1024 / 1024;
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
