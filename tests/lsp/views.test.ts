/** Hints and lenses, as the client gets them, switched off, and asked for again when something changes elsewhere. */
import { expect, test } from "vitest";
import type { ClientCapabilities, InlayHint } from "vscode-languageserver/node";
import { createChanges } from "../../server/src/lsp/changes.ts";
import { yieldToMessages } from "../../server/src/lsp/guard.ts";
import { refreshViews } from "../../server/src/lsp/refresh-views.ts";
import type { Session } from "../../server/src/lsp/session.ts";
import { type Client, startClient, VSCODE } from "./harness.ts";

const A = "file:///shop/a.finish";
const B = "file:///shop/b.finish";
const range = (line: number, start: number, end: number) => ({
  start: { line, character: start },
  end: { line, character: end },
});

const REFRESHED: ClientCapabilities = {
  ...VSCODE,
  workspace: {
    ...VSCODE.workspace,
    inlayHint: { refreshSupport: true },
    codeLens: { refreshSupport: true },
  },
};

/** Resolves when the client was told to ask again, which it is after a pause. */
const told = async (client: Client): Promise<void> => {
  await client.take("workspace/inlayHint/refresh");
  await client.take("workspace/codeLens/refresh");
};

test("hints stand apart from the text, with their reason, in the part that is asked for", async () => {
  const client = await startClient({
    capabilities: REFRESHED,
    settings: { inlayHints: { elapsed: false, waits: false } },
  });
  await client.open(A, "dull\nbad\ndull");
  await told(client);
  const ask = () =>
    client.request<InlayHint[]>("textDocument/inlayHint", {
      textDocument: { uri: A },
      range: range(1, 0, 3),
    });
  expect(await ask()).toEqual([
    {
      position: { line: 1, character: 3 },
      label: [{ value: "litres bad", tooltip: { kind: "markdown", value: "**Why**" } }],
      paddingLeft: true,
    },
  ]);
  client.setSettings({ inlayHints: { elapsed: true, litres: false, waits: true } });
  await client.notify("workspace/didChangeConfiguration", { settings: null });
  await told(client);
  expect(await ask()).toMatchObject([
    { label: [{ value: "waits bad" }, { value: " · " }, { value: "elapsed bad" }] },
  ]);
  await client.end();
});

test("a lens counts the findings that are shown, and can be switched off", async () => {
  const client = await startClient({
    capabilities: REFRESHED,
    settings: { findings: { lowest: "warning" } },
  });
  await client.open(A, "name one");
  await told(client);
  const ask = () => client.request("textDocument/codeLens", { textDocument: { uri: A } });
  expect(await ask()).toEqual([
    { range: range(0, 5, 8), command: { title: "some day · some money · error, warning", command: "" } },
  ]);
  client.setSettings({ codeLens: { jobs: false } });
  await client.notify("workspace/didChangeConfiguration", { settings: null });
  await told(client);
  expect(await ask()).toEqual([]);
  await client.end();
});

test("a client with commands for it gets a lens for each part, which leads on; one that lacks a command reads it", async () => {
  const client = await startClient({
    initializationOptions: { commands: ["finishwright.showSchedule", "finishwright.showFinding"] },
  });
  await client.open(A, "name one");
  expect(await client.request("textDocument/codeLens", { textDocument: { uri: A } })).toEqual([
    {
      range: range(0, 5, 8),
      command: {
        title: "some day",
        command: "finishwright.showSchedule",
        arguments: [{ uri: A, job: "one" }],
      },
    },
    { range: range(0, 5, 8), command: { title: "some money", command: "" } },
    {
      range: range(0, 5, 8),
      command: {
        title: "error, warning, information, hint",
        command: "finishwright.showFinding",
        arguments: [{ uri: A, start: { line: 0, character: 0 } }],
      },
    },
  ]);
  await client.end();
});

test("the client is told to ask again after an edit in another open file and after a new setting", async () => {
  const client = await startClient({ capabilities: REFRESHED });
  await client.open(A, 'use "b.finish"');
  await client.open(B, "name one");
  await told(client);
  await client.change(B, 2, "name two");
  await told(client);
  client.setSettings({ codeLens: { jobs: false } });
  await client.notify("workspace/didChangeConfiguration", { settings: null });
  await told(client);
  await client.end();
});

test.each([
  ["an edit of the file that was planned, of which the client asks again by itself", A, []],
  ["an edit of another file", B, ["workspace/inlayHint/refresh"]],
])("plans that end just before %s", async (_, edited, expected) => {
  const sent: string[] = [];
  const changes = createChanges();
  const session = {
    changes,
    facts: { refreshesInlayHints: true },
    files: { openCount: 1 },
    connection: { sendRequest: async (method: string) => void sent.push(method) },
  };
  refreshViews(session as unknown as Session);
  changes.bump({ kind: "plans", files: new Set([A]) });
  changes.bump({ kind: "edit", file: edited });
  for (let turn = 0; turn < 3; turn += 1) await yieldToMessages();
  expect(sent).toEqual(expected);
});
