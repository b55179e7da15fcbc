/**
 * The built server as a process of its own, with the real analysis and a real folder, over both ways of talking.
 *
 * It runs on the Node of the tests, and on the first other one of this machine as well: editors bring their own, and it
 * may be older. `npm run build` makes the bundle; `npm test` does that first.
 */
import { type ChildProcess, fork, spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import process from "node:process";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import {
  IPCMessageReader,
  IPCMessageWriter,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { BENCH, type BenchAnswer, REPORT } from "../../server/src/lsp/custom-requests.ts";
import { type Client, joinServer, MINIMAL, type Setup, startClient } from "./harness.ts";

const SERVER = fileURLToPath(new URL("../../server/dist/server.cjs", import.meta.url));

const nodes = (): readonly string[] => {
  const folders = (process.env.PATH ?? "").split(path.delimiter);
  const other = folders
    .filter((folder) => !folder.includes("node_modules"))
    .map((folder) => path.join(folder, "node"))
    .find((program) => existsSync(program));
  return [...new Set([process.execPath, ...(other === undefined ? [] : [other])])];
};

let folder: string;
let server: ChildProcess;
beforeAll(() => {
  if (!existsSync(SERVER)) throw new Error("There is no built server: run `npm run build` first.");
});
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "finishwright-lsp-"));
});
afterEach(() => {
  server.kill();
  rmSync(folder, { recursive: true, force: true });
});

const uriOf = (name: string): string => pathToFileURL(path.join(folder, name)).href;

const overStdio = (node: string, setup: Setup): Promise<Client> => {
  const child = spawn(node, [SERVER], { stdio: ["pipe", "pipe", "inherit"] });
  server = child;
  return joinServer(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin), {
    ...setup,
    hasOwnProcess: true,
  });
};

const overIpc = (node: string, setup: Setup): Promise<Client> => {
  server = fork(SERVER, ["--node-ipc"], { execPath: node, execArgv: [] });
  return joinServer(new IPCMessageReader(server), new IPCMessageWriter(server), {
    ...setup,
    hasOwnProcess: true,
  });
};

const at = (line: number, character: number) => ({ line, character });

const JOB = `use "stock.finish"

recipe quick(clear: material) {
  layer clear x 2
}

material wrong {
  family drying oil
  covers 3 h
}

job it {
  apply quick(clear: hall_clear) to top
}
`;

describe.each(nodes())("on %s", (node) => {
  test.each([
    ["standard input and output", overStdio],
    ["Node's message channel", overIpc],
  ])("a rich client over %s", async (_name, join) => {
    writeFileSync(
      path.join(folder, "stock.finish"),
      "material hall_clear {\n  family waterborne polyurethane\n}\n",
    );
    const client = await join(node, {});
    await client.open(uriOf("job.finish"), JOB);
    const findings = await client.findings(uriOf("job.finish"));
    expect(findings).toContainEqual(expect.stringMatching(/^8:9-8:12 wrong-unit: /));
    expect(findings.filter((finding) => /hall_clear|use-not-found/.test(finding))).toEqual([]);
    // These are in a bundle beside the server's, which looks into what the server holds.
    const textDocument = { uri: uriOf("job.finish") };
    const hovered = await client.request("textDocument/hover", { textDocument, position: at(12, 25) });
    expect(JSON.stringify(hovered)).toContain("waterborne polyurethane");
    const offered = await client.request("textDocument/completion", { textDocument, position: at(12, 22) });
    expect(JSON.stringify(offered)).toContain("hall_clear");
    const renamed = await client.request("textDocument/rename", {
      textDocument,
      position: at(2, 9),
      newName: "slow",
    });
    expect(JSON.stringify(renamed).match(/"newText":"slow"/gu)).toHaveLength(2);
    const exited = once(server, "exit");
    await client.end();
    expect(await exited).toEqual([0, null]);
  });

  test("a plain client, and a used file that comes late", async () => {
    const client = await overStdio(node, { capabilities: MINIMAL });
    const uri = uriOf("job.finish");
    await client.open(uri, 'use "late.finish"\n');
    expect((await client.pushed()).diagnostics.map(({ code }) => code)).toContain("use-not-found");
    writeFileSync(path.join(folder, "late.finish"), "");
    await client.notify("textDocument/didSave", { textDocument: { uri } });
    expect((await client.pushed()).diagnostics.map(({ code }) => code)).not.toContain("use-not-found");
    const exited = once(server, "exit");
    await client.end();
    expect(await exited).toEqual([0, null]);
  });

  test("reports, which are loaded when they are asked for", async () => {
    const client = await overStdio(node, {});
    const textDocument = { uri: uriOf("job.finish") };
    await client.open(textDocument.uri, JOB);
    const asked = { schedule: "it", totals: "it", shopping: "Shopping list for it", sheet: "# " } as const;
    for (const [kind, words] of Object.entries(asked)) {
      expect(await client.request(REPORT, { textDocument, kind })).toContain(words);
    }
    await client.end();
  });

  test("the drawing of a job, as the unbundled server has it", async () => {
    const textDocument = { uri: uriOf("job.finish") };
    const local = await startClient({ host: { createAnalyst } });
    const bundled = await overStdio(node, {});
    const answers = [];
    for (const client of [local, bundled]) {
      await client.open(textDocument.uri, JOB.replace('use "stock.finish"\n', ""));
      const answer = await client.request<BenchAnswer>(BENCH, { textDocument, job: "it" });
      expect(answer.bench?.name).toBe("it");
      answers.push(answer);
    }
    expect(answers[1]).toEqual(answers[0]);
    await local.end();
    await bundled.end();
  });

  test("a client that goes without a word does not leave the server behind", async () => {
    await overStdio(node, { capabilities: MINIMAL });
    const exited = once(server, "exit");
    server.stdin?.end();
    expect(await exited).toEqual([1, null]);
  });
});
