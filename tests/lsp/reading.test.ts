/**
 * What the server reads of what a text names: recipes of the open folders, and of a document that is open by itself
 * those of its own. What is not read is a finding at the `use` line; what does not come back holds up only what uses it.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, test, vi } from "vitest";
import { nodeHost } from "../../server/src/entry/node-host.ts";
import { createAllowedFolders } from "../../server/src/lsp/allowed-folders.ts";
import { clientFacts } from "../../server/src/lsp/client-facts.ts";
import type { Connection } from "../../server/src/lsp/connection.ts";
import { createFileReader } from "../../server/src/lsp/file-reader.ts";
import { fakeAnalyst } from "./fake-analyst.ts";
import { type Client, MINIMAL, type Setup, startClient } from "./harness.ts";

const A = "file:///shop/jobs/a.finish";
const OIL = "file:///stock/oils.finish";
const SETTING = { use: { readAlso: ["/stock"] } };
const UNKNOWN = "1:5-1:8 unknown-name: Nothing is called oil.";
const disk = new Map([[OIL, "name oil"]]);

const start = async (setup: Setup, used = "../../stock/oils.finish"): Promise<Client> => {
  const client = await startClient({ disk, ...setup });
  await client.open(A, `use "${used}"\nwant oil`);
  return client;
};

const outside = (also = ""): string =>
  '0:4-0:29 use-not-found: "../../stock/oils.finish" cannot be used: it lies outside of the folders that may be ' +
  "read here. Move or copy it into one of them, or open a folder that holds both, or add its folder to the setting " +
  `“finishwright.use.readAlso”${also}.`;

describe("where", () => {
  test("outside of the open folders nothing is read", async () => {
    const client = await start({ openFolders: ["file:///shop"] });
    expect(await client.findings(A)).toEqual([outside(), UNKNOWN]);
    await client.end();
  });

  test("of a document that is open by itself, its own folder", async () => {
    const client = await start({
      openFolders: [],
      disk: new Map([...disk, ["file:///shop/jobs/x/b.finish", "name oil"]]),
    });
    expect(await client.findings(A)).toEqual([outside(), UNKNOWN]);
    await client.change(A, 2, 'use "x/b.finish"\nwant oil');
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(A)).toEqual([]);
    await client.end();
  });

  test("a folder that is opened later counts from then on, and one that is closed no more", async () => {
    const client = await start({ openFolders: ["file:///shop"] });
    expect(await client.findings(A)).toHaveLength(2);
    const stock = [{ uri: "file:///stock", name: "stock" }];
    await client.notify("workspace/didChangeWorkspaceFolders", { event: { added: stock, removed: [] } });
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(A)).toEqual([]);
    await client.notify("workspace/didChangeWorkspaceFolders", { event: { added: [], removed: stock } });
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(A)).toEqual([outside(), UNKNOWN]);
    await client.end();
  });

  test.each([
    ["the person's setting counts where the workspace is trusted", true, []],
    [
      "it does not where the client says that it is not",
      false,
      [outside(", which counts once you trust this workspace"), UNKNOWN],
    ],
    [
      "nor where the client says nothing",
      undefined,
      [outside(", which counts once you trust this workspace"), UNKNOWN],
    ],
  ])("%s", async (_, trusted, expected) => {
    const client = await start({
      openFolders: ["file:///shop"],
      settings: SETTING,
      ...(trusted !== undefined && { initializationOptions: { trusted } }),
    });
    await expect.poll(() => client.findings(A)).toEqual(expected);
    const refresh = client.take("workspace/diagnostic/refresh");
    await Promise.race([refresh, new Promise((resolve) => setTimeout(resolve, 200))]);
    await client.request("shutdown", undefined);
  });

  test("a project file outside of the open folders is not asked for", async () => {
    const asked: string[] = [];
    const client = await startClient({
      openFolders: ["file:///shop/jobs"],
      host: {
        async readFromDisk(uri) {
          asked.push(uri);
          return { reason: "it does not exist" };
        },
      },
    });
    await client.open(A, "want oil");
    await client.findings(A);
    expect(asked).toEqual(["file:///shop/jobs/finishwright.config.json"]);
    await client.end();
  });
});

describe("what", () => {
  /** What is shown has the replacement character for half of a letter. */
  const cannot = (used: string, reason: string) =>
    `0:4-0:${used.length + 6} use-not-found: "${used.replace(/\p{Surrogate}/u, "\ufffd")}" cannot be used: it ${reason}.`;
  const NETWORK =
    "is named by way of another computer, and such names are never followed. Copy the file into this project, and " +
    "name it by its path from here";
  const HALF = "has a character in its path that no file name can have. Take it out";

  test.each([
    ["//nas/stock/oils.finish", NETWORK],
    ["\\\\nas\\stock\\oils.finish", NETWORK],
    ["\\\\.\\pipe\\oils.finish", NETWORK],
    [
      "/proc/self/environ",
      "is not a recipe: its name does not end in “.finish”. Name a recipe, or rename the file",
    ],
    ["\ud800.finish", HALF],
    ["\udc00/a.finish", HALF],
  ])("%s is not", async (used, reason) => {
    const asked: string[] = [];
    const client = await startClient({
      host: { readFromDisk: async (uri) => ({ reason: String(asked.push(uri)) }) },
    });
    await client.open(A, `use "${used}"`);
    expect(await client.findings(A)).toEqual([cannot(used, reason)]);
    expect(asked.filter((uri) => !uri.endsWith(".json"))).toEqual([]);
    await client.end();
  });

  test("half of a letter in a path leaves no finding of an older text", async () => {
    const client = await startClient();
    await client.open(A, "bad");
    expect(await client.findings(A)).toEqual(["0:0-0:3 bad-word: This is bad."]);
    await client.change(A, 2, 'use "\ud83d.finish"');
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(A)).toEqual([cannot("\ud83d.finish", HALF)]);
    await client.end();
  });

  test.each(["file:///shop/\ud83d.finish", "untitled:\udc00", "memfs:/\ud800/a.finish"])(
    "a document called %j is one like any other",
    async (uri) => {
      const client = await startClient();
      await client.open(uri, "bad");
      expect(await client.findings(uri)).toEqual(["0:0-0:3 bad-word: This is bad."]);
      await client.close(uri);
      await client.end();
    },
  );
});

describe.skipIf(process.platform === "win32")("on a real disk", () => {
  test("a pipe, a device and a link that leads out are findings", async () => {
    const folder = mkdtempSync(path.join(tmpdir(), "finishwright-"));
    try {
      const file = (name: string) => path.join(folder, name);
      execFileSync("mkdir", [file("shop")]);
      execFileSync("mkfifo", [file("shop/pipe.finish")]);
      symlinkSync("/dev/zero", file("shop/zero.finish"));
      writeFileSync(file("secret.finish"), "name oil");
      symlinkSync("../secret.finish", file("shop/link.finish"));
      const client = await startClient({
        openFolders: [pathToFileURL(file("shop")).href],
        host: { readFromDisk: nodeHost().readFromDisk },
      });
      const uri = pathToFileURL(file("shop/a.finish")).href;
      await client.open(uri, 'use "pipe.finish"\nuse "zero.finish"\nuse "link.finish"');
      expect(await client.findings(uri)).toEqual([
        expect.stringContaining("is not a plain file but a device, a pipe or a socket"),
        expect.stringContaining("is a link to what is not a recipe"),
        expect.stringContaining("is a link to what lies outside of the folders"),
      ]);
      await client.end();
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

describe("how long", () => {
  const slow: Setup["host"] = {
    readFromDisk: (uri) =>
      uri.endsWith("/slow.finish")
        ? new Promise(() => {})
        : Promise.resolve({ text: uri.endsWith(".json") ? "{}" : "name oil" }),
  };
  const B = "file:///shop/jobs/b.finish";

  test("a file that does not come back holds up only what uses it", async () => {
    const client = await startClient({ host: slow });
    await client.open(A, 'use "slow.finish"\nbad');
    await client.open(B, 'use "quick.finish"\nwant oil\nbad');
    expect(await client.findings(B)).toEqual(["2:0-2:3 bad-word: This is bad."]);
    expect(
      await client.request("textDocument/hover", {
        textDocument: { uri: B },
        position: { line: 2, character: 1 },
      }),
    ).not.toBeUndefined();
    const report: { items: { uri: string }[] } = await client.request("workspace/diagnostic", {
      previousResultIds: [],
    });
    expect(report.items.map(({ uri }) => uri)).toContain(B);
    expect(report.items.map(({ uri }) => uri)).not.toContain(A);
    await client.end();
  });

  test("nor where the findings are pushed", async () => {
    const client = await startClient({ host: slow, capabilities: MINIMAL });
    await client.open(A, 'use "slow.finish"\nbad');
    await client.open(B, "bad");
    expect(await client.pushed()).toMatchObject({ uri: B, diagnostics: [{ code: "bad-word" }] });
    await client.end();
  });

  test("it is given up after a while, and said so", async () => {
    vi.useFakeTimers();
    try {
      const facts = clientFacts({ processId: null, rootUri: null, capabilities: {} });
      const allowed = createAllowedFolders();
      allowed.changeWorkspace(["file:///shop"], []);
      const host = { version: "0", createAnalyst: fakeAnalyst, rulePage: () => undefined, ...slow };
      const reader = createFileReader(host, {} as Connection, () => facts, allowed);
      const read = reader.read("file:///shop/slow.finish", "recipe");
      await vi.advanceTimersByTimeAsync(10_000);
      expect(await read).toMatchObject({
        reason: expect.stringContaining("it does not respond, so reading it was abandoned"),
      });
    } finally {
      vi.useRealTimers();
    }
  });
});
