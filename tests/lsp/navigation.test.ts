/** Going about and renaming, as they reach a rich client and a plain one, over open files, read ones and unread ones. */
import { describe, expect, test } from "vitest";
import { type Client, MINIMAL, type Setup, startClient } from "./harness.ts";

const A = "file:///shop/a.finish";
const B = "file:///shop/b.finish";
const C = "file:///shop/c.finish";

const FAILED = -32803;

const range = (line: number, start: number, end: number) => ({
  start: { line, character: start },
  end: { line, character: end },
});
const at = (character: number, uri = A) => ({ textDocument: { uri }, position: { line: 0, character } });

/** `a.finish` is open, `b.finish` is used by it, and `c.finish` lies in the folder. */
const start = async (setup: Setup = {}): Promise<Client> => {
  const client = await startClient({
    disk: new Map([
      [B, "name oil"],
      [C, "want oil\nwant oil"],
    ]),
    folderFiles: [A, B, C],
    ...setup,
  });
  await client.open(A, 'want oil\nuse "b.finish"');
  return client;
};

/** A plain client, which gets its findings unasked. */
const startPlain = async (): Promise<Client> => {
  const client = await start({ capabilities: MINIMAL });
  await client.pushed();
  return client;
};

const OIL_IN_B = { uri: B, range: range(0, 5, 8) };

describe("going to the definition", () => {
  test("a link underlines the name and shows the whole", async () => {
    const client = await start();
    expect(await client.request("textDocument/definition", at(6))).toEqual([
      {
        originSelectionRange: range(0, 5, 8),
        targetUri: B,
        targetRange: range(0, 0, 8),
        targetSelectionRange: range(0, 5, 8),
      },
    ]);
    expect(await client.request("textDocument/definition", at(0))).toBeNull();
    await client.end();
  });

  test("a place is enough for a client that takes no links", async () => {
    const client = await startPlain();
    expect(await client.request("textDocument/definition", at(6))).toEqual([OIL_IN_B]);
    await client.end();
  });
});

test("references come from files that nobody has opened as well, the declaration on demand", async () => {
  const client = await start();
  const references = (includeDeclaration: boolean) =>
    client.request("textDocument/references", { ...at(6), context: { includeDeclaration } });
  const wanted = [
    { uri: A, range: range(0, 5, 8) },
    { uri: C, range: range(0, 5, 8) },
    { uri: C, range: range(1, 5, 8) },
  ];
  expect(await references(false)).toEqual(expect.arrayContaining(wanted));
  expect(await references(false)).toHaveLength(3);
  expect(await references(true)).toEqual(expect.arrayContaining([...wanted, OIL_IN_B]));
  await client.end();
});

test("what is asked right at the start waits until the files of the folder are there", async () => {
  let list: (uris: readonly string[]) => void = () => {};
  const client = await start({
    folderFiles: new Promise<readonly string[]>((resolve) => {
      list = resolve;
    }),
  });
  const asked = client.request<unknown[]>("workspace/symbol", { query: "" });
  await client.request("textDocument/documentSymbol", { textDocument: { uri: A } });
  list([C, B]);
  expect(await asked).toHaveLength(1);
  await client.end();
});

test("highlights tell where a thing gets its name, and leave words to the client", async () => {
  const client = await start();
  await client.open(C, "name wax\nwant wax");
  expect(await client.request("textDocument/documentHighlight", at(6, C))).toEqual([
    { range: range(0, 5, 8), kind: 3 },
    { range: range(1, 5, 8), kind: 2 },
  ]);
  expect(await client.request("textDocument/documentHighlight", at(1, C))).toBeNull();
  await client.end();
});

describe("renaming", () => {
  const ask = (client: Client, newName: string, character = 6) =>
    client.request("textDocument/rename", { ...at(character), newName });

  test("edits every file, open ones in the version that was looked at", async () => {
    const client = await start();
    await client.change(A, 2, 'want oil\nuse "b.finish"\n');
    const edits = (...ranges: unknown[]) => ranges.map((each) => ({ range: each, newText: "wax" }));
    expect(await ask(client, "wax")).toEqual({
      documentChanges: expect.arrayContaining([
        { textDocument: { uri: A, version: 2 }, edits: edits(range(0, 5, 8)) },
        { textDocument: { uri: B, version: null }, edits: edits(range(0, 5, 8)) },
        { textDocument: { uri: C, version: null }, edits: edits(range(0, 5, 8), range(1, 5, 8)) },
      ]),
    });
    await client.end();
  });

  test("edits plainly for a client that knows no versions", async () => {
    const client = await startPlain();
    expect(await ask(client, "wax")).toEqual({
      changes: {
        [A]: [{ range: range(0, 5, 8), newText: "wax" }],
        [B]: [{ range: range(0, 5, 8), newText: "wax" }],
        [C]: [
          { range: range(0, 5, 8), newText: "wax" },
          { range: range(1, 5, 8), newText: "wax" },
        ],
      },
    });
    await client.end();
  });

  test("says in words why not", async () => {
    const client = await start();
    await expect(ask(client, "Wax")).rejects.toMatchObject({ code: FAILED, message: "Only small letters." });
    await expect(client.request("textDocument/prepareRename", at(0))).rejects.toMatchObject({
      code: FAILED,
      message: "Nothing has a name here.",
    });
    await client.end();
  });

  test("shows the name that it is about", async () => {
    const client = await start();
    expect(await client.request("textDocument/prepareRename", at(8))).toEqual({
      range: range(0, 5, 8),
      placeholder: "oil",
    });
    await client.end();
  });

  test("says so when there are more files than are read", async () => {
    const many = Array.from({ length: 501 }, (_, index) => `file:///shop/many-${index}.finish`);
    const client = await start({ folderFiles: [B, ...many] });
    await client.take("window/logMessage");
    expect(await ask(client, "wax")).toMatchObject({ documentChanges: [{}, {}] });
    const { message } = await client.take<{ message: string }>("window/showMessage");
    expect(message).toMatch(/more than 500 recipes/);
    await client.end();
  });

  test("is called off when the text changes while it waits for files", async () => {
    let deliver: (result: { text: string }) => void = () => {};
    const client = await startClient({
      host: {
        async readFromDisk(uri) {
          if (!uri.endsWith(".finish")) return { reason: "it does not exist" };
          return new Promise((resolve) => {
            deliver = resolve;
          });
        },
      },
    });
    await client.open(A, 'want oil\nuse "b.finish"');
    const asked = ask(client, "wax");
    await client.change(A, 2, 'want shellac\nuse "b.finish"');
    await client.request("textDocument/documentSymbol", { textDocument: { uri: A } });
    deliver({ text: "name oil" });
    await expect(asked).rejects.toMatchObject({ code: -32801 });
    await client.end();
  });
});

test("symbols of all files, by some of their letters", async () => {
  const client = await start();
  const oil = { name: "oil", kind: 12, location: OIL_IN_B, containerName: "it" };
  expect(await client.request("workspace/symbol", { query: "oi" })).toEqual([oil]);
  expect(await client.request("workspace/symbol", { query: "wax" })).toEqual([]);
  await client.end();
});

describe("links", () => {
  test("lead to the used file", async () => {
    const client = await start();
    expect(await client.request("textDocument/documentLink", { textDocument: { uri: A } })).toEqual([
      { range: range(1, 4, 14), target: B, tooltip: "Open b.finish" },
    ]);
    await client.end();
  });

  test("have no tooltip where none is shown, and lead nowhere from a text that was never saved", async () => {
    const client = await startPlain();
    const untitled = "untitled:Untitled-1";
    expect(await client.request("textDocument/documentLink", { textDocument: { uri: A } })).toEqual([
      { range: range(1, 4, 14), target: B },
    ]);
    await client.open(untitled, 'use "b.finish"');
    await client.pushed();
    expect(await client.request("textDocument/documentLink", { textDocument: { uri: untitled } })).toEqual(
      [],
    );
    await client.end();
  });
});

describe("when files are about to be renamed", () => {
  const move = (client: Client, oldUri: string, newUri: string) =>
    client.request("workspace/willRenameFiles", { files: [{ oldUri, newUri }] });

  test("the client is told which ones matter", async () => {
    const client = await start();
    expect(client.initialized.capabilities.workspace?.fileOperations?.willRename?.filters).toEqual([
      { pattern: { glob: "**/*.finish", matches: "file" } },
      { pattern: { glob: "**", matches: "folder" } },
    ]);
    await client.end();
  });

  test("lines that use them are edited, by whatever spelling they are named", async () => {
    const client = await start();
    expect(await move(client, "file:///shop/%62.finish", "file:///shop/d%201.finish")).toEqual({
      documentChanges: [
        {
          textDocument: { uri: A, version: 1 },
          edits: [{ range: range(1, 4, 14), newText: '"file:///shop/d%201.finish"' }],
        },
      ],
    });
    await client.end();
  });

  test("a folder takes its files along", async () => {
    const client = await start();
    expect(await move(client, "file:///shop/", "file:///mill")).toMatchObject({
      documentChanges: [{ edits: [{ newText: '"file:///mill/b.finish"' }] }],
    });
    expect(await move(client, "file:///sho", "file:///mill")).toBeNull();
    await client.end();
  });
});

test("calls lead from recipe to recipe", async () => {
  const client = await start();
  await client.open(C, "name wax\nwant oil");
  const oil = { name: "oil", kind: 12, uri: B, range: range(0, 0, 8), selectionRange: range(0, 5, 8) };
  const wax = { ...oil, name: "wax", uri: C };
  expect(await client.request("textDocument/prepareCallHierarchy", at(6))).toEqual([oil]);
  expect(await client.request("textDocument/prepareCallHierarchy", at(0))).toBeNull();
  expect(await client.request("callHierarchy/incomingCalls", { item: oil })).toEqual([
    { from: wax, fromRanges: [range(1, 5, 8)] },
  ]);
  expect(await client.request("callHierarchy/outgoingCalls", { item: wax })).toEqual([
    { to: oil, fromRanges: [range(1, 5, 8)] },
  ]);
  await client.end();
});
