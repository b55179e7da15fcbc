/**
 * The samples through the server with the real analysis: every answer is one that a client takes.
 *
 * What the answers say is tested where it is worked out; here it is that positions lie in the text, that the outline
 * nests, and that no text, cut off anywhere, makes a request fail.
 */
import { globSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import type {
  CallHierarchyItem,
  ClientCapabilities,
  CompletionList,
  DocumentHighlight,
  DocumentLink,
  DocumentSymbol,
  Hover,
  Location,
  LocationLink,
  Range,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { type Client, startClient, VSCODE } from "./harness.ts";

const SAMPLES = path.join(import.meta.dirname, "../../samples");
const names = globSync("*.finish", { cwd: SAMPLES });
const textOf = (name: string): string => readFileSync(path.join(SAMPLES, name), "utf8");
const uriOf = (name: string): string => `file:///samples/${name}`;

/**
 * Cannot be told to ask again, so each answer is whole: whether the plans of a text are done before the next text comes,
 * which would change its findings once more, depends on how busy the machine is.
 */
const ASKS_ONCE: ClientCapabilities = {
  ...VSCODE,
  workspace: { ...VSCODE.workspace, diagnostics: { refreshSupport: false } },
};

const start = (): Promise<Client> =>
  startClient({
    capabilities: ASKS_ONCE,
    disk: new Map(names.map((name) => [uriOf(name), textOf(name)])),
    host: { createAnalyst },
  });

/** Fails unless the range lies in the text, in order, at places that exist. */
const expectIn = (document: TextDocument, range: Range): void => {
  for (const position of [range.start, range.end]) {
    expect(document.positionAt(document.offsetAt(position))).toEqual(position);
  }
  expect(document.offsetAt(range.start)).toBeLessThanOrEqual(document.offsetAt(range.end));
};

const expectNested = (document: TextDocument, symbol: DocumentSymbol): void => {
  expectIn(document, symbol.range);
  const [start, end] = [document.offsetAt(symbol.range.start), document.offsetAt(symbol.range.end)];
  for (const inner of [symbol.selectionRange, ...(symbol.children ?? []).map(({ range }) => range)]) {
    expect(document.offsetAt(inner.start)).toBeGreaterThanOrEqual(start);
    expect(document.offsetAt(inner.end)).toBeLessThanOrEqual(end);
  }
  for (const child of symbol.children ?? []) expectNested(document, child);
};

const documentOf = (uri: string, open: TextDocument): TextDocument =>
  uri === open.uri ? open : TextDocument.create(uri, "finish", 0, textOf(path.basename(uri)));

const askTheWay = async (client: Client, document: TextDocument, params: unknown): Promise<void> => {
  const links = await client.request<LocationLink[] | null>("textDocument/definition", params);
  for (const { targetUri, targetRange, targetSelectionRange, originSelectionRange } of links ?? []) {
    expectIn(documentOf(targetUri, document), targetRange);
    expectIn(documentOf(targetUri, document), targetSelectionRange);
    if (originSelectionRange) expectIn(document, originSelectionRange);
  }
  const context = { context: { includeDeclaration: true } };
  const found = await client.request<Location[]>("textDocument/references", Object.assign(context, params));
  for (const { uri, range } of found) expectIn(documentOf(uri, document), range);
  const marks = await client.request<DocumentHighlight[] | null>("textDocument/documentHighlight", params);
  for (const { range } of marks ?? []) expectIn(document, range);
  const items = await client.request<CallHierarchyItem[] | null>("textDocument/prepareCallHierarchy", params);
  for (const item of items ?? []) {
    await client.request("callHierarchy/incomingCalls", { item });
    await client.request("callHierarchy/outgoingCalls", { item });
  }
};

const askEverything = async (client: Client, uri: string, text: string): Promise<void> => {
  const document = TextDocument.create(uri, "finish", 1, text);
  const report = await client.pull(uri);
  for (const { range } of report.kind === "full" ? report.items : []) expectIn(document, range);
  const textDocument = { uri };
  const symbols = await client.request<DocumentSymbol[]>("textDocument/documentSymbol", { textDocument });
  for (const symbol of symbols) expectNested(document, symbol);
  const links = await client.request<DocumentLink[]>("textDocument/documentLink", { textDocument });
  for (const { range } of links) expectIn(document, range);
  for (let line = 0; line < document.lineCount; line += 1) {
    const character = (text.split("\n")[line]?.search(/\S/) ?? 0) + 1;
    const params = { textDocument, position: { line, character: Math.max(character, 0) } };
    const hover = await client.request<Hover | null>("textDocument/hover", params);
    if (hover?.range) expectIn(document, hover.range);
    await askTheWay(client, document, params);
    const completion = await client.request<CompletionList>("textDocument/completion", params);
    for (const { textEdit } of completion.items) {
      if (textEdit && "range" in textEdit) expectIn(document, textEdit.range);
    }
  }
};

test.each(names)("%s has an answer to everything, everywhere", async (name) => {
  const client = await start();
  await client.open(uriOf(name), textOf(name));
  await askEverything(client, uriOf(name), textOf(name));
  await client.end();
});

test("a text that is cut off, turned round or full of nonsense has an answer too", async () => {
  const client = await start();
  const whole = textOf("mistakes.finish");
  const spoilt = [
    "",
    "\uFEFF",
    "\u0000\uD800",
    "{".repeat(500),
    '"\n"'.repeat(50),
    whole.slice(0, whole.length / 2),
    whole.slice(whole.length / 3),
    whole.replaceAll("}", ""),
    whole.replaceAll("\n", "\r\n"),
    whole.split("\n").reverse().join("\n"),
    whole.replaceAll(" ", "\u{1FA91}"),
  ];
  await client.open(uriOf("spoilt.finish"), "");
  for (const [index, text] of spoilt.entries()) {
    await client.change(uriOf("spoilt.finish"), index + 2, text);
    await askEverything(client, uriOf("spoilt.finish"), text);
  }
  await client.end();
});

test("an editor that shows a message under its line gets it in lines that are not cut off", async () => {
  const clientOf = (marksLines: boolean) =>
    startClient({
      capabilities: ASKS_ONCE,
      disk: new Map(names.map((name) => [uriOf(name), textOf(name)])),
      host: { createAnalyst },
      initializationOptions: { marksLines },
    });
  const messagesOf = async (client: Client): Promise<readonly string[]> => {
    await client.open(uriOf("mistakes.finish"), textOf("mistakes.finish"));
    const report = await client.pull(uriOf("mistakes.finish"));
    await client.end();
    return report.kind === "full" ? report.items.map(({ message }) => String(message)).toSorted() : [];
  };
  const whole = await messagesOf(await clientOf(false));
  const short = await messagesOf(await clientOf(true));
  // A hover takes two thirds of half a window of 1280 points and more, in letters 8.4 points wide: 74 columns.
  expect(short.flatMap((message) => message.split("\n")).filter(({ length }) => length > 74)).toEqual([]);
  expect(whole.flatMap((message) => message.split("\n")).some(({ length }) => length > 74)).toBe(true);
  const joined = (messages: readonly string[]) => messages.map((message) => message.replaceAll("\n", " "));
  // What waits for the result of a lead test is on the page of the rule; nothing else is left out.
  const then = "What to do then: see the page of this rule.";
  const isWhole = (message: string): boolean => !message.includes(then);
  expect(joined(short).filter(isWhole)).toEqual(
    joined(whole).filter((message) => !/not tested /.test(message)),
  );
  const cut = joined(short).filter((message) => !isWhole(message));
  expect(cut).toHaveLength(2);
  for (const message of cut) {
    const [before = "", after = ""] = message.split(then);
    const same = joined(whole).find((each) => each.startsWith(before));
    expect(same).toMatch(/Where none is found.*Where lead is found/);
    expect(same!.endsWith(after)).toBe(true);
    expect(before).toContain("until a laboratory has tested");
  }
  // The editor shows so many lines of one finding without a scroll bar: `npm run picture -- --scenes`.
  const lines = short
    .filter((message) => /not tested/.test(message))
    .map((message) => message.split("\n").length);
  expect(Math.max(...lines)).toBeLessThanOrEqual(12);
});
