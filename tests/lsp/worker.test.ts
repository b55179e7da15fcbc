/**
 * The server's bundle for browsers, in a world that has what a Web Worker has and nothing of Node.
 *
 * The world is a context of this process; messages go over a real channel, so that what cannot be posted fails here as
 * it does in a browser. `npm run build` makes the bundle; `npm test` does that first.
 */
import { readFileSync } from "node:fs";
import { createContext, runInContext } from "node:vm";
import { MessageChannel, type MessagePort } from "node:worker_threads";
import { afterEach, describe, expect, test } from "vitest";
import {
  AbstractMessageReader,
  AbstractMessageWriter,
  type DataCallback,
  type Message,
  type MessageReader,
  type MessageWriter,
} from "vscode-languageserver/node";
import { WORKER_IS_READY } from "../../server/src/lsp/custom-requests.ts";
import { type Client, joinServer, MINIMAL, type Setup, VSCODE } from "./harness.ts";

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

/** Resolves when the server has said that it is there. `more` is what its world has besides. */
const startWorker = async (more: Readonly<Record<string, unknown>> = {}): Promise<Worker> => {
  const { port1: outside, port2: inside } = new MessageChannel();
  ports = [outside, inside];
  let closed = false;
  const scope: Record<string, unknown> = {
    ...WORLD,
    location: { href: "worker.js" },
    ...more,
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

const PLANNED = `shop room {
  hours Mon to Fri 09:00 to 17:00
}

piece table {
  surface top {
    shape panel 1800 mm x 900 mm x 30 mm
  }
}

recipe quick {
  layer waterborne_polyurethane x 2 {
    wait until recoat
  }
}

job it {
  piece table
  in room
  start 2027-03-08
  apply quick to top
}
`;

const lensOf = async (client: Client, uri: string): Promise<string> =>
  JSON.stringify(await client.request("textDocument/codeLens", { textDocument: { uri } }));

/** A client that need not wait for plans, since it can be told of them. */
const TOLD: Setup = {
  capabilities: {
    ...VSCODE,
    workspace: { ...VSCODE.workspace, codeLens: { refreshSupport: true } },
  },
};

describe("plans", () => {
  /** A worker below the first, of the same script in a world of its own; what it is given waits until `release`. */
  const workersBelow = () => {
    const started: { readonly script: string; isEnded: boolean }[] = [];
    const held: (() => void)[] = [];
    let isHolding = false;
    class Below {
      onmessage: ((event: { readonly data: unknown }) => void) | null = null;
      readonly #scope: Record<string, unknown>;
      readonly #entry: (typeof started)[number];
      constructor(script: string, { name }: { readonly name: string }) {
        this.#entry = { script, isEnded: false };
        started.push(this.#entry);
        const scope: Record<string, unknown> = {
          ...WORLD,
          name,
          postMessage: (data: unknown) =>
            this.#entry.isEnded || this.onmessage?.({ data: structuredClone(data) }),
        };
        scope.self = scope;
        this.#scope = scope;
        runInContext(SCRIPT, createContext(scope));
      }
      postMessage(message: unknown): void {
        const data: unknown = structuredClone(message);
        const take = (): void => {
          const { onmessage } = this.#scope;
          if (typeof onmessage === "function") onmessage({ data });
        };
        if (isHolding) held.push(take);
        else setTimeout(take, 0);
      }
      terminate(): void {
        this.#entry.isEnded = true;
      }
    }
    return {
      started,
      Worker: Below,
      hold: () => {
        isHolding = true;
      },
      isHeld: () => held.length > 0,
      release: () => {
        isHolding = false;
        for (const take of held.splice(0)) take();
      },
    };
  };

  test("are made in another worker of the same script, so that this one goes on answering", async () => {
    const below = workersBelow();
    below.hold();
    const client = await join(await startWorker({ Worker: below.Worker }), TOLD);
    const uri = `${ID}planned.finish`;
    await client.open(uri, PLANNED);
    await client.findings(uri);
    await expect.poll(below.isHeld).toBe(true);
    expect(await lensOf(client, uri)).toContain("being planned");
    below.release();
    await expect.poll(() => lensOf(client, uri)).toContain("2027");
    expect(below.started).toEqual([{ script: "worker.js", isEnded: false }]);
  });

  test("are given up by an edit that changes them, together with the worker", async () => {
    const below = workersBelow();
    below.hold();
    const client = await join(await startWorker({ Worker: below.Worker }), TOLD);
    const uri = `${ID}planned.finish`;
    await client.open(uri, PLANNED);
    await client.findings(uri);
    await expect.poll(below.isHeld).toBe(true);
    await client.change(uri, 2, PLANNED.replace("x 2", "x 3"));
    await client.findings(uri);
    await expect.poll(() => below.started.map(({ isEnded }) => isEnded)).toEqual([true, false]);
    below.release();
    await expect.poll(() => lensOf(client, uri)).toContain("2027");
  });

  test.each([
    ["there are no workers", {}],
    [
      "no worker may be started",
      {
        Worker: class {
          constructor() {
            throw new Error("Not from here.");
          }
        },
      },
    ],
    [
      "what is started is no planner",
      {
        Worker: class {
          onmessage: ((event: { readonly data: unknown }) => void) | null = null;
          postMessage(): void {
            setTimeout(() => this.onmessage?.({ data: WORKER_IS_READY }), 0);
          }
          terminate(): void {}
        },
      },
    ],
  ])("are made here where %s", async (_, more) => {
    const client = await join(await startWorker(more), TOLD);
    const uri = `${ID}planned.finish`;
    await client.open(uri, PLANNED);
    await client.findings(uri);
    await expect.poll(() => lensOf(client, uri)).toContain("2027");
  });
});
