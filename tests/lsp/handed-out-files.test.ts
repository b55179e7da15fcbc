/**
 * Files that the server cannot read by itself: those of a virtual folder, and in a browser every one. The client hands
 * them out, and what it cannot hand out is said in the words of a file on disk.
 */
import { Buffer } from "node:buffer";
import { describe, expect, test, vi } from "vitest";
import { createAllowedFolders } from "../../server/src/lsp/allowed-folders.ts";
import { clientFacts } from "../../server/src/lsp/client-facts.ts";
import type { Connection } from "../../server/src/lsp/connection.ts";
import { createFileReader } from "../../server/src/lsp/file-reader.ts";
import { fakeAnalyst } from "./fake-analyst.ts";
import { type Client, type Setup, startClient } from "./harness.ts";

const A = "vscode-vfs://github/mill/library/a.finish";
const B = "vscode-vfs://github/mill/library/b.finish";
const CONFIG = "vscode-vfs://github/mill/finishwright.config.json";

const bytes = (text: string | Uint8Array): unknown => ({ base64: Buffer.from(text).toString("base64") });

/** A client with a folder of texts. */
const handOutFrom = (folder: ReadonlyMap<string, string>) => (uri: string) => {
  const text = folder.get(uri);
  return text === undefined ? { failure: "missing" } : bytes(text);
};

const startIn = (folder: ReadonlyMap<string, string>, setup: Setup = {}): Promise<Client> =>
  startClient({ handOut: handOutFrom(folder), ...setup });

const notFound = (reason: string): string => `0:4-0:14 use-not-found: "b.finish" cannot be used: ${reason}.`;

describe("in a virtual folder", () => {
  test("a used file is asked for, and its names are known", async () => {
    const client = await startIn(new Map([[B, "name öl"]]));
    await client.open(A, 'use "b.finish"\nwant öl\nwant wax');
    expect(await client.findings(A)).toEqual(["2:5-2:8 unknown-name: Nothing is called wax."]);
    await client.end();
  });

  test("one that is missing is taken up when the client sees it appear, change and go", async () => {
    const folder = new Map<string, string>();
    const client = await startIn(folder);
    const watched = async (type: 1 | 2 | 3): Promise<void> => {
      await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: B, type }] });
      await client.take("workspace/diagnostic/refresh");
    };
    const unknown = "1:5-1:8 unknown-name: Nothing is called oil.";
    await client.open(A, 'use "b.finish"\nwant oil');
    expect(await client.findings(A)).toEqual([notFound("it does not exist"), unknown]);
    folder.set(B, "name oil");
    await watched(1);
    expect(await client.findings(A)).toEqual([]);
    folder.set(B, "");
    await watched(2);
    expect(await client.findings(A)).toEqual([unknown]);
    folder.delete(B);
    await watched(3);
    expect(await client.findings(A)).toEqual([notFound("it does not exist"), unknown]);
    await client.end();
  });

  test("the folder's other recipes are checked as well", async () => {
    const client = await startIn(new Map([[B, "bad"]]), { folderFiles: [B] });
    await client.open(A, "");
    await expect
      .poll(() => client.request("workspace/diagnostic", { previousResultIds: [] }))
      .toMatchObject({
        items: expect.arrayContaining([
          expect.objectContaining({ uri: B, items: [expect.objectContaining({ code: "bad-word" })] }),
        ]),
      });
    await client.end();
  });

  test("the project's configuration holds", async () => {
    const client = await startIn(new Map([[CONFIG, '{ "rules": { "unknown-name": "off" } }']]));
    await client.open(A, "want oil");
    expect(await client.findings(A)).toEqual([]);
    await client.end();
  });

  test("the saved text takes the place of a used file that is closed", async () => {
    const client = await startIn(new Map([[B, "name oil"]]));
    await client.open(A, 'use "b.finish"\nwant oil');
    await client.open(B, "");
    expect(await client.findings(A)).toEqual(["1:5-1:8 unknown-name: Nothing is called oil."]);
    await client.close(B);
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(A)).toEqual([]);
    await client.end();
  });

  test("without a client that hands files out, the finding says why", async () => {
    const client = await startClient();
    await client.open(A, 'use "b.finish"');
    expect(await client.findings(A)).toEqual([notFound("it is not on this machine's disk")]);
    await client.end();
  });
});

test("a server without a disk asks for files on disk as well", async () => {
  const client = await startIn(new Map([["file:///shop/b.finish", "name oil"]]), {
    host: { readFromDisk: undefined },
  });
  await client.open("file:///shop/a.finish", 'use "b.finish"\nwant oil');
  expect(await client.findings("file:///shop/a.finish")).toEqual([]);
  await client.end();
});

test("a server with a disk does not ask for files on it", async () => {
  const asked: string[] = [];
  const client = await startClient({
    disk: new Map([["file:///shop/b.finish", "name oil"]]),
    handOut: (uri) => asked.push(uri),
  });
  await client.open("file:///shop/a.finish", 'use "b.finish"\nwant oil');
  expect(await client.findings("file:///shop/a.finish")).toEqual([]);
  expect(asked).toEqual([]);
  await client.end();
});

test("the pages of the rules are where the client shows them", async () => {
  const client = await startClient({ rulePages: "finishwright-rules:" });
  await client.open(A, "bad");
  expect(await client.pull(A)).toMatchObject({
    items: [{ code: "bad-word", codeDescription: { href: "finishwright-rules:/bad-word.md" } }],
  });
  await client.end();
});

describe("what cannot be handed out", () => {
  test.each<[string, unknown, string]>([
    ["a folder", { failure: "folder" }, "it is a folder, not a file. Name a file in it"],
    [
      "a link",
      { failure: "linked" },
      "it is a link, and where it leads cannot be seen from here. Name the file that is meant",
    ],
    [
      "a large file",
      { failure: "too-large" },
      "it is larger than 4 MB, which no recipe is. Split it, or name another file",
    ],
    [
      "a forbidden file",
      { failure: "forbidden" },
      "it may not be read: you have no permission for it. Ask for it, or leave the file out",
    ],
    [
      "a far-away one",
      { failure: "unavailable" },
      "it cannot be reached at the moment; saving this file retries",
    ],
    [
      "anything else",
      { failure: "other", detail: "the mill is flooded" },
      "it cannot be read: the mill is flooded",
    ],
    ["without a word", { failure: "other" }, "it cannot be read: unknown error"],
    [
      // 0xFC is ü in Latin-1, and no letter of UTF-8.
      "no UTF-8",
      bytes(Uint8Array.of(0x0a, 0xfc)),
      "it is not UTF-8 text: byte FC in line 2 is none. Save it as UTF-8",
    ],
    ["nothing", null, "it cannot be read: the editor's answer is not understood"],
    ["no base64", { base64: "name oil" }, "it cannot be read: the editor's answer is not understood"],
    ["an unknown failure", { failure: "tired" }, "it cannot be read: the editor's answer is not understood"],
  ])("%s", async (_name, answer, reason) => {
    const client = await startClient({ handOut: (uri) => (uri === B ? answer : { failure: "missing" }) });
    await client.open(A, 'use "b.finish"');
    expect(await client.findings(A)).toEqual([notFound(reason)]);
    await client.end();
  });

  test("a client that fails", async () => {
    const client = await startClient({
      handOut: (uri) => {
        if (uri === B) throw new Error("out of order");
        return { failure: "missing" };
      },
    });
    await client.open(A, 'use "b.finish"');
    const [finding] = await client.findings(A);
    expect(finding).toMatch(/cannot be used: it cannot be read: .*out of order/);
    await client.end();
  });

  test("is tried again when the user saves", async () => {
    const folder = new Map<string, string>();
    const client = await startIn(folder);
    await client.open(A, 'use "b.finish"');
    expect(await client.findings(A)).toEqual([notFound("it does not exist")]);
    folder.set(B, "");
    await client.notify("textDocument/didSave", { textDocument: { uri: A } });
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(A)).toEqual([]);
    await client.end();
  });

  test("a client that never answers is waited for, but not for ever", async () => {
    vi.useFakeTimers();
    try {
      const facts = clientFacts({
        processId: null,
        rootUri: null,
        capabilities: {},
        initializationOptions: { readFile: true },
      });
      const everywhere = createAllowedFolders();
      everywhere.changeWorkspace([B.slice(0, B.lastIndexOf("/"))], []);
      const silent: Partial<Connection> = { sendRequest: () => new Promise(() => {}) };
      const host = { version: "0", createAnalyst: fakeAnalyst, rulePage: () => undefined };
      const reader = createFileReader(host, silent as Connection, () => facts, everywhere);
      const read = reader.read(B, "recipe");
      await vi.runAllTimersAsync();
      expect(await read).toMatchObject({
        reason: "it could not be loaded from the editor in time; saving this file retries",
      });
    } finally {
      vi.useRealTimers();
    }
  });
});
