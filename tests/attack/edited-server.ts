/** Takes a language server through states of open files, change by change, and asks it what it thinks of the last. */
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Answer } from "./ask-everything.ts";
import { startLocalServer } from "./local-server.ts";

/** Names of files with their texts; without one the file is closed. */
export type State = ReadonlyMap<string, string | undefined>;

const uriOf = (name: string): string => `file:///shop/${name}`;

export async function serverAnswers(states: readonly State[], offset: number): Promise<readonly Answer[]> {
  const server = await startLocalServer();
  const open = new Map<string, TextDocument>();
  try {
    for (const state of states) {
      for (const [name, text] of state) await bring(name, text);
      // Somebody looks in between, so that there is something to be kept.
      const [first] = open.values();
      if (first)
        await server.client.sendRequest("textDocument/diagnostic", { textDocument: { uri: first.uri } });
    }
    const answers: Answer[] = [];
    for (const [name, document] of [...open].toSorted(([a], [b]) => (a < b ? -1 : 1))) {
      const textDocument = { uri: document.uri };
      const position = document.positionAt(offset % (document.getText().length + 1));
      const range = { start: { line: 0, character: 0 }, end: document.positionAt(document.getText().length) };
      for (const [method, params] of [
        ["textDocument/diagnostic", {}],
        ["textDocument/documentSymbol", {}],
        ["textDocument/formatting", { options: { tabSize: 2, insertSpaces: true } }],
        ["textDocument/semanticTokens/full", {}],
        ["textDocument/inlayHint", { range }],
        ["textDocument/codeLens", {}],
        ["textDocument/foldingRange", {}],
        ["textDocument/documentLink", {}],
        ["textDocument/codeAction", { range, context: { diagnostics: [] } }],
        ["textDocument/hover", { position }],
        ["textDocument/completion", { position }],
        ["textDocument/definition", { position }],
        ["textDocument/documentHighlight", { position }],
        ["finishwright/report", { kind: "totals" }],
        ["finishwright/report", { kind: "sheet" }],
      ] as const) {
        const answer: unknown = await server.client.sendRequest(method, { textDocument, ...params });
        answers.push({ question: method, answer: withoutCounts(answer) });
      }
      answers.push({ question: `text of ${name}`, answer: document.getText() });
    }
    return [...answers, { question: "the log", answer: server.logged.map(firstLine) }];
  } finally {
    server.stop();
  }

  async function bring(name: string, text: string | undefined): Promise<void> {
    const before = open.get(name);
    if (text === undefined) {
      if (open.delete(name))
        await server.client.sendNotification("textDocument/didClose", { textDocument: { uri: uriOf(name) } });
      return;
    }
    if (!before) {
      const document = TextDocument.create(uriOf(name), "finish", 1, text);
      open.set(name, document);
      await server.client.sendNotification("textDocument/didOpen", {
        textDocument: { uri: document.uri, languageId: "finish", version: 1, text },
      });
    } else if (before.getText() !== text) {
      const change = changeOf(before, text);
      const document = TextDocument.create(before.uri, "finish", before.version + 1, text);
      open.set(name, document);
      await server.client.sendNotification("textDocument/didChange", {
        textDocument: { uri: document.uri, version: document.version },
        contentChanges: [change],
      });
    }
  }
}

/** The one range in which two texts differ. */
function changeOf(before: TextDocument, after: string) {
  const old = before.getText();
  let [start, end, newEnd] = [0, old.length, after.length];
  while (start < end && start < newEnd && old[start] === after[start]) start += 1;
  while (end > start && newEnd > start && old[end - 1] === after[newEnd - 1]) {
    end -= 1;
    newEnd -= 1;
  }
  // A place between the two halves of a line end is none that the protocol can name.
  while (start > 0 && "\r\n".includes(old[start - 1]!)) start -= 1;
  while (end < old.length && "\r\n".includes(old[end]!)) end += 1;
  newEnd = after.length - (old.length - end);
  const text = after.slice(start, newEnd);
  return { range: { start: before.positionAt(start), end: before.positionAt(end) }, text };
}

const firstLine = (text: string): string => text.split("\n")[0] ?? "";

/** Numbers that count what was sent differ from one way to the same texts to another. */
function withoutCounts(answer: unknown): unknown {
  return JSON.parse(
    JSON.stringify(answer, (key, value: unknown) =>
      key === "resultId" || key === "version" ? undefined : value,
    ),
  );
}
