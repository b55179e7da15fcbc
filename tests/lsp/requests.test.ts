/** Hover, outline, completion and fixes, as they reach a rich client and a plain one. */
import { expect, test } from "vitest";
import type { CodeAction, CompletionList } from "vscode-languageserver/node";
import { MINIMAL, startClient } from "./harness.ts";

const A = "file:///shop/a.finish";
const at = (line: number, character: number) => ({ textDocument: { uri: A }, position: { line, character } });
const range = (line: number, start: number, end: number) => ({
  start: { line, character: start },
  end: { line, character: end },
});

test("hover has markup where it is understood", async () => {
  const client = await startClient();
  await client.open(A, "one\ntwo");
  expect(await client.request("textDocument/hover", at(1, 1))).toEqual({
    contents: { kind: "markdown", value: "**two** `code`" },
    range: range(1, 0, 3),
  });
  await client.end();
});

test("hover has plain words where it is not, and nothing where there is nothing", async () => {
  const client = await startClient({ capabilities: MINIMAL });
  await client.open(A, "one\n\n");
  await client.pushed();
  expect(await client.request("textDocument/hover", at(0, 0))).toEqual({
    contents: { kind: "plaintext", value: "one code" },
    range: range(0, 0, 3),
  });
  expect(await client.request("textDocument/hover", at(1, 0))).toBeNull();
  await client.end();
});

test("positions are counted in UTF-16 units, beyond the line's end too", async () => {
  const client = await startClient();
  // The chair takes two units, and so do both halves of what a reader counts as one.
  await client.open(A, "\u{1FA91} bad \u{1FA91}\r\nbad");
  expect(await client.findings(A)).toEqual([
    "0:3-0:6 bad-word: This is bad.",
    "1:0-1:3 bad-word: This is bad.",
  ]);
  expect(await client.request("textDocument/hover", at(0, 4))).toMatchObject({ range: range(0, 3, 6) });
  expect(await client.request("textDocument/hover", at(1, 999))).toMatchObject({ range: range(1, 0, 3) });
  await client.notify("textDocument/didChange", {
    textDocument: { uri: A, version: 2 },
    contentChanges: [
      { range: range(0, 3, 6), text: "fine" },
      { range: range(0, 0, 2), text: "bad" },
    ],
  });
  expect(await client.findings(A)).toEqual([
    "0:0-0:3 bad-word: This is bad.",
    "1:0-1:3 bad-word: This is bad.",
  ]);
  await client.end();
});

test("the outline is a tree that clients accept: every symbol named, every name inside its symbol", async () => {
  const client = await startClient();
  await client.open(A, "name oil");
  expect(await client.request("textDocument/documentSymbol", { textDocument: { uri: A } })).toEqual([
    {
      name: "oil",
      detail: "",
      kind: 12,
      range: range(0, 0, 8),
      selectionRange: range(0, 5, 8),
      children: [
        {
          name: "layer",
          detail: "",
          kind: 7,
          range: range(0, 5, 8),
          selectionRange: range(0, 5, 8),
          children: [],
        },
      ],
    },
  ]);
  await client.end();
});

test("the outline is a row for a client that shows no tree", async () => {
  const client = await startClient({ capabilities: MINIMAL });
  await client.open(A, "name oil");
  await client.pushed();
  expect(await client.request("textDocument/documentSymbol", { textDocument: { uri: A } })).toEqual([
    { name: "oil", kind: 12, location: { uri: A, range: range(0, 0, 8) } },
    { name: "layer", kind: 7, location: { uri: A, range: range(0, 5, 8) }, containerName: "oil" },
  ]);
  await client.end();
});

test("completion brings snippets where they are understood", async () => {
  const client = await startClient();
  await client.open(A, "");
  expect(await client.request("textDocument/completion", at(0, 0))).toEqual({
    isIncomplete: false,
    items: [
      {
        label: "name",
        kind: 14,
        sortText: "1",
        insertTextFormat: 2,
        // biome-ignore lint/suspicious/noTemplateCurlyInString: this is how a snippet is written
        textEdit: { range: range(0, 0, 0), newText: "name ${1:it} {\n  $0\n\\}" },
        documentation: { kind: "markdown", value: "**A** name." },
      },
      {
        label: "bad",
        kind: 14,
        sortText: "1",
        detail: "a word",
        textEdit: { range: range(0, 0, 0), newText: "bad" },
      },
      {
        label: "oil",
        kind: 21,
        sortText: "1",
        detail: "drying oil",
        labelDetails: { description: "drying oil" },
        textEdit: { range: range(0, 0, 0), newText: "oil" },
      },
    ],
  });
  await client.end();
});

test("completion brings the same text without marks where they are not", async () => {
  const client = await startClient({ capabilities: MINIMAL });
  await client.open(A, "");
  await client.pushed();
  const list = await client.request<CompletionList>("textDocument/completion", at(0, 0));
  expect(list.items.some((item) => "labelDetails" in item || "insertTextFormat" in item)).toBe(false);
  expect(list).toMatchObject({
    items: [
      {
        textEdit: { newText: "name it {\n  \n}" },
        documentation: { kind: "plaintext", value: "A name." },
      },
      { textEdit: { newText: "bad" } },
      { detail: "drying oil" },
    ],
  });
  await client.end();
});

test("a fix names the finding that it takes away and the version that it is meant for", async () => {
  const client = await startClient();
  await client.open(A, "so bad");
  const report = await client.pull(A);
  const diagnostics = report.kind === "full" ? report.items : [];
  const ask = (only?: readonly string[], diagnosticsShown: readonly unknown[] = diagnostics) =>
    client.request("textDocument/codeAction", {
      textDocument: { uri: A },
      range: range(0, 4, 4),
      context: { diagnostics: diagnosticsShown, only },
    });
  const fix = {
    title: "Make it good",
    kind: "quickfix",
    isPreferred: true,
    diagnostics,
    edit: {
      documentChanges: [
        { textDocument: { uri: A, version: 1 }, edits: [{ range: range(0, 3, 6), newText: "good" }] },
      ],
    },
  };
  const allow = {
    title: "Allow bad-word here, with a reason",
    kind: "quickfix",
    diagnostics,
    edit: {
      documentChanges: [
        {
          textDocument: { uri: A, version: 1 },
          edits: [{ range: range(0, 0, 0), newText: "# allow bad-word: \n" }],
        },
      ],
    },
  };
  expect(await ask()).toEqual([fix, allow]);
  expect(await ask(["quickfix"], [])).toEqual([fix, allow]);
  expect(await ask(["refactor"])).toEqual([]);
  await client.end();
});

test("every finding is explained and allowed where it stands, the gravest first", async () => {
  const client = await startClient({
    capabilities: {
      workspace: { workspaceEdit: { documentChanges: true, snippetEditSupport: true } },
      textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } },
    },
    initializationOptions: { commands: ["finishwright.explainFinding"] },
  });
  await client.open(A, "dull bad want wax");
  await client.pushed();
  const actions = await client.request<CodeAction[]>("textDocument/codeAction", {
    textDocument: { uri: A },
    range: range(0, 0, 17),
    context: { diagnostics: [] },
  });
  expect(actions.map(({ title }) => title)).toEqual([
    "Make it good",
    "Explain unknown-name",
    "Allow unknown-name here, with a reason",
    "Explain bad-word",
    "Allow bad-word here, with a reason",
    "Explain dull-word",
    "Allow dull-word here, with a reason",
  ]);
  expect(actions[1]?.command).toMatchObject({
    command: "finishwright.explainFinding",
    arguments: ["unknown-name"],
  });
  // The caret goes to where the reason is to be written.
  expect(actions[2]?.edit?.documentChanges).toMatchObject([
    { edits: [{ range: range(0, 0, 0), snippet: { kind: "snippet", value: "# allow unknown-name: $0\n" } }] },
  ]);
  await client.end();
});

test("a fix is written plainly for a client that knows no versions", async () => {
  const client = await startClient({
    capabilities: {
      textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } },
    },
  });
  await client.open(A, "so bad");
  await client.pushed();
  expect(
    await client.request("textDocument/codeAction", {
      textDocument: { uri: A },
      range: range(0, 4, 4),
      context: { diagnostics: [] },
    }),
  ).toMatchObject([
    { edit: { changes: { [A]: [{ range: range(0, 3, 6), newText: "good" }] } } },
    { edit: { changes: { [A]: [{ range: range(0, 0, 0), newText: "# allow bad-word: \n" }] } } },
  ]);
  await client.end();
});
