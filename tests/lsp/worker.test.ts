/**
 * The server's bundle for browsers, in a world that has what a Web Worker has and nothing of Node.
 *
 * The world is a context of this process; messages go over a real channel, so that what cannot be posted fails here as
 * it does in a browser. `npm run build` makes the bundle; `npm test` does that first.
 */
import { readFileSync } from "node:fs";
import { createContext, runInContext } from "node:vm";
import { MessageChannel, type MessagePort } from "node:worker_threads";
import { afterEach, expect, test } from "vitest";
import {
  AbstractMessageReader,
  AbstractMessageWriter,
  type DataCallback,
  type Message,
  type MessageReader,
  type MessageWriter,
} from "vscode-languageserver/node";
import { WORKER_IS_READY } from "../../server/src/lsp/custom-requests.ts";
import { type Client, joinServer, MINIMAL, type Setup } from "./harness.ts";

const ROOT = new URL("../../", import.meta.url);
const SCRIPT = readFileSync(new URL("server/dist/worker.js", ROOT), "utf8");

/** What the server's code may use of a browser's worker; the language's own globals come with every context. */
const WORLD = {
  atob,
  clearTimeout,
  console,
  crypto,
  MessageChannel,
  performance,
  queueMicrotask,
  setTimeout,
  TextDecoder,
  TextEncoder,
  URL,
};

interface Worker {
  readonly port: MessagePort;
  readonly closed: () => boolean;
}

let ports: readonly MessagePort[] = [];
afterEach(() => {
  for (const port of ports) port.close();
});

/** Resolves when the server has said that it is there. */
const startWorker = async (): Promise<Worker> => {
  const { port1: outside, port2: inside } = new MessageChannel();
  ports = [outside, inside];
  let closed = false;
  const scope: Record<string, unknown> = {
    ...WORLD,
    postMessage: (message: unknown) => inside.postMessage(message),
    addEventListener: () => {},
    close: () => {
      closed = true;
    },
  };
  scope.self = scope;
  inside.on("message", (data) => {
    if (typeof scope.onmessage === "function") scope.onmessage({ data });
  });
  const ready = new Promise((resolve) => outside.once("message", resolve));
  runInContext(SCRIPT, createContext(scope));
  expect(await ready).toBe(WORKER_IS_READY);
  return { port: outside, closed: () => closed };
};

class PortReader extends AbstractMessageReader implements MessageReader {
  readonly #port: MessagePort;
  constructor(port: MessagePort) {
    super();
    this.#port = port;
  }
  listen(callback: DataCallback) {
    this.#port.on("message", callback);
    return { dispose: () => this.#port.off("message", callback) };
  }
}

class PortWriter extends AbstractMessageWriter implements MessageWriter {
  readonly #port: MessagePort;
  constructor(port: MessagePort) {
    super();
    this.#port = port;
  }
  async write(message: Message): Promise<void> {
    this.#port.postMessage(message);
  }
  end(): void {}
}

const join = ({ port }: Worker, setup: Setup): Promise<Client> =>
  joinServer(new PortReader(port), new PortWriter(port), { ...setup, hasOwnProcess: true });

const ID = "vscode-vfs://github/mill/library/";
const CLEAR = "material hall_clear {\n  family waterborne polyurethane\n}\n";
const JOB = `use "stock.finish"

recipe quick(clear: material) {
  layer clear x 2
}

material wrong {
  family drying oil
  covers 3 h
}

job it {
  start 2027-03-08 09:00
  apply quick(clear: hall_clear) to top
}
`;

const handOut = (uri: string): unknown =>
  uri === `${ID}stock.finish` ? { base64: btoa(CLEAR) } : { failure: "missing" };

test("a rich client gets findings, hovers and completion over files that it hands out", async () => {
  const worker = await startWorker();
  const client = await join(worker, { handOut, rulePages: "finishwright-rules:" });
  const { version } = JSON.parse(readFileSync(new URL("package.json", ROOT), "utf8"));
  expect(client.initialized.serverInfo).toEqual({ name: "Finishwright", version });
  const uri = `${ID}job.finish`;
  await client.open(uri, JOB);
  const findings = await client.findings(uri);
  expect(findings).toContainEqual(expect.stringMatching(/^8:9-8:12 wrong-unit: /));
  expect(findings.filter((finding) => /hall_clear|use-not-found/.test(finding))).toEqual([]);
  expect(await client.pull(uri)).toMatchObject({
    items: expect.arrayContaining([
      expect.objectContaining({ codeDescription: { href: "finishwright-rules:/wrong-unit.md" } }),
    ]),
  });
  const textDocument = { uri };
  const hover: unknown = await client.request("textDocument/hover", {
    textDocument,
    position: { line: 13, character: 24 },
  });
  expect(JSON.stringify(hover)).toMatch(/waterborne polyurethane/);
  const offered: unknown = await client.request("textDocument/completion", {
    textDocument,
    position: { line: 1, character: 0 },
  });
  expect(JSON.stringify(offered)).toMatch(/"label":"material"/);
  expect(worker.closed()).toBe(false);
  await client.end();
});

test("all findings of many files come, with the messages in between let through", async () => {
  const client = await join(await startWorker(), {
    handOut: (uri) => (/\d\.finish$/.test(uri) ? { base64: btoa(JOB) } : handOut(uri)),
    folderFiles: Array.from({ length: 40 }, (_, index) => `${ID}${index}.finish`),
  });
  await client.open(`${ID}main.finish`, CLEAR);
  // The folder's files come in by and by, and each answer is what is known by then.
  const seen = new Set<string>();
  const known = new Map<string, string>();
  while (seen.size < 40) {
    const { items } = await client.request<{
      readonly items: readonly { uri: string; resultId: string; items?: readonly unknown[] }[];
    }>("workspace/diagnostic", {
      previousResultIds: [...known].map(([uri, value]) => ({ uri, value })),
    });
    for (const { uri, resultId, items: found } of items) {
      known.set(uri, resultId);
      if (found !== undefined && found.length > 0) seen.add(uri);
    }
  }
  expect(seen.size).toBe(40);
  await client.end();
});

test("a plain client is sent its findings, and the worker ends itself when told to", async () => {
  const worker = await startWorker();
  const client = await join(worker, { capabilities: MINIMAL });
  await client.open(`${ID}job.finish`, JOB);
  const { diagnostics } = await client.pushed();
  expect(diagnostics.map(({ code }) => code)).toContain("use-not-found");
  await client.end();
  await expect.poll(worker.closed).toBe(true);
});
