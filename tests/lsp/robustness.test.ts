/** What must not stop the server: failures inside, nonsense from outside, and questions that nobody waits for. */

import { expect, test } from "vitest";
import { CancellationTokenSource, type WorkspaceDiagnosticReport } from "vscode-languageserver/node";
import { createChanges } from "../../server/src/lsp/changes.ts";
import { guardRequest } from "../../server/src/lsp/guard.ts";
import { drawDiagnostic, MINIMAL, startClient } from "./harness.ts";

const A = "file:///shop/a.finish";
const document = { textDocument: { uri: A } };
const somewhere = { ...document, position: { line: 0, character: 0 } };

test("a failure inside is logged and answered with nothing", async () => {
  const client = await startClient();
  await client.open(A, "crash");
  const answers: readonly [string, unknown, unknown][] = [
    ["textDocument/hover", somewhere, null],
    ["textDocument/completion", somewhere, null],
    ["textDocument/documentSymbol", document, []],
    ["textDocument/definition", somewhere, null],
    ["textDocument/references", { ...somewhere, context: { includeDeclaration: true } }, null],
    ["textDocument/documentHighlight", somewhere, null],
    ["textDocument/prepareRename", somewhere, null],
    ["textDocument/rename", { ...somewhere, newName: "other" }, null],
    ["textDocument/documentLink", document, []],
    ["textDocument/prepareCallHierarchy", somewhere, null],
    ["workspace/symbol", { query: "" }, []],
    ["workspace/willRenameFiles", { files: [{ oldUri: A, newUri: `${A}.finish` }] }, null],
    ["textDocument/formatting", { ...document, options: {} }, null],
    ["textDocument/signatureHelp", somewhere, null],
    ["textDocument/semanticTokens/full", document, null],
    ["textDocument/semanticTokens/full/delta", { ...document, previousResultId: "1" }, null],
    ["textDocument/foldingRange", document, []],
    ["textDocument/selectionRange", { ...document, positions: [somewhere.position] }, null],
    [
      "textDocument/codeAction",
      {
        ...document,
        range: { start: somewhere.position, end: somewhere.position },
        context: { diagnostics: [] },
      },
      [],
    ],
  ];
  for (const [method, params, answer] of answers) {
    expect(await client.request(method, params), method).toEqual(answer);
    const { message } = await client.take<{ message: string }>("window/logMessage");
    expect(message).toMatch(new RegExp(`^${method} failed: Error: on purpose`));
  }
  await client.change(A, 2, "bad");
  expect(await client.findings(A)).toEqual(["0:0-0:3 bad-word: This is bad."]);
  await client.end();
});

const NOT_CHECKED =
  /^0:0-0:0 internal-error: The check of this file failed\nThis is a bug .* \(Error: on purpose\)\n/;

test("findings that fail are neither empty nor those of the text before", async () => {
  const client = await startClient();
  await client.open(A, "bad");
  const before = await client.pull(A);
  expect(before).toMatchObject({ kind: "full", items: [{ code: "bad-word" }] });
  await client.change(A, 2, "bad crash");
  expect(await client.findings(A)).toEqual([expect.stringMatching(NOT_CHECKED)]);
  const other = "file:///shop/b.finish";
  await client.open(other, "dull");
  const all = await client.request<WorkspaceDiagnosticReport>("workspace/diagnostic", {
    previousResultIds: [],
  });
  const codes = all.items.map((item) => [
    item.uri,
    item.kind === "full" && item.items.map(({ code }) => code),
  ]);
  expect(codes).toEqual([
    [A, ["internal-error"]],
    [other, ["dull-word"]],
  ]);
  await client.take("window/logMessage");
  await client.take("window/logMessage");
  await client.change(A, 3, "bad");
  expect(await client.findings(A)).toEqual(["0:0-0:3 bad-word: This is bad."]);
  await client.end();
});

test("findings that fail while pushing are named, and do not stop the next push", async () => {
  const client = await startClient({ capabilities: MINIMAL });
  await client.open(A, "crash");
  expect((await client.pushed()).diagnostics.map(drawDiagnostic)).toEqual([
    expect.stringMatching(NOT_CHECKED),
  ]);
  await client.take("window/logMessage");
  await client.change(A, 2, "bad");
  expect((await client.pushed()).diagnostics).toHaveLength(1);
  await client.end();
});

test("files that nobody opened, and changes beyond the text, are no accident", async () => {
  const client = await startClient();
  const nowhere = { textDocument: { uri: "untitled:Untitled-7" }, position: { line: 9, character: 9 } };
  expect(await client.request("textDocument/hover", nowhere)).toBeNull();
  expect(await client.findings("nonsense")).toEqual([]);
  await client.change(A, 5, "bad");
  await client.close(A);
  await client.open(A, "good");
  await client.notify("textDocument/didChange", {
    textDocument: { uri: A, version: 2 },
    contentChanges: [
      { range: { start: { line: 7, character: 7 }, end: { line: 9, character: 0 } }, text: " bad" },
    ],
  });
  expect(await client.findings(A)).toEqual(["0:5-0:8 bad-word: This is bad."]);
  await client.end();
});

test("a message without sense is logged, and the next one is answered", async () => {
  const client = await startClient();
  await client.notify("textDocument/didOpen", {});
  await client.take("window/logMessage");
  await client.notify("workspace/didChangeWatchedFiles", { changes: "all" });
  await client.take("window/logMessage");
  await client.open(A, "bad");
  expect(await client.findings(A)).toEqual(["0:0-0:3 bad-word: This is bad."]);
  await client.end();
});

test("a file in an unsaved text's place cannot be used, and the finding says why", async () => {
  const client = await startClient();
  await client.open("untitled:Untitled-1", 'use "b.finish"');
  expect(await client.findings("untitled:Untitled-1")).toEqual([
    '0:4-0:14 use-not-found: "b.finish" cannot be used: this text has not been saved yet, so it lies in no folder. Save it first.',
  ]);
  await client.end();
});

test("a text that changes while its findings wait for a file is asked about again", async () => {
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
  await client.open(A, 'use "b.finish"');
  const pulled = client.pull(A);
  await client.change(A, 2, 'use "b.finish"\nbad');
  // The outline waits for nothing, so its answer says that the change has arrived.
  await client.request("textDocument/documentSymbol", document);
  deliver({ text: "" });
  await expect(pulled).rejects.toMatchObject({ code: -32802, data: { retriggerRequest: true } });
  await client.end();
});

test("a cancelled question is answered as cancelled", async () => {
  const source = new CancellationTokenSource();
  source.cancel();
  const logged: string[] = [];
  const answer = guardRequest(
    "any",
    "fallback",
    () => "answer",
    (line) => logged.push(line),
  );
  expect(await answer({}, source.token)).toMatchObject({ code: -32800 });
  expect(logged).toEqual([]);
});

test("who waits for news is woken by news or by being called off", async () => {
  const changes = createChanges();
  const source = new CancellationTokenSource();
  const news = changes.after(0, source.token);
  changes.bump({ kind: "other" });
  await news;
  const calledOff = changes.after(1, source.token);
  source.cancel();
  await calledOff;
  expect(changes.generation).toBe(1);
});
