/**
 * What an editor is told of files in which everything that anybody can write is hostile: at every place of the text, in
 * hovers, completion, signatures, hints, lenses, the outline, findings and the log.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import type {
  ClientCapabilities,
  CodeLens,
  CompletionList,
  Hover,
  InlayHint,
  SignatureHelp,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { hostileFiles, hostileTexts } from "../harness/hostile.ts";
import { expectInert, expectInertMarkdown } from "../harness/inert.ts";
import { type Client, MINIMAL, startClient, VSCODE } from "../lsp/harness.ts";

const MAIN = "file:///shop/n%1B%E2%80%AE.finish";
const USED = "file:///shop/stock.finish";

/** Every text in an answer; what an edit puts into a file is the file's own. */
function textsOf(answer: unknown, key = ""): readonly string[] {
  if (key === "newText" || key === "uri" || key === "target" || key === "data") return [];
  if (typeof answer === "string") return [answer];
  if (Array.isArray(answer)) return answer.flatMap((each) => textsOf(each, key));
  if (typeof answer !== "object" || answer === null) return [];
  return Object.entries(answer).flatMap(([name, value]) => textsOf(value, name));
}

/** All Markdown in an answer. */
function markdownOf(answer: unknown): readonly string[] {
  if (Array.isArray(answer)) return answer.flatMap(markdownOf);
  if (typeof answer !== "object" || answer === null) return [];
  const { kind, value } = answer as { readonly kind?: unknown; readonly value?: unknown };
  if (kind === "markdown" && typeof value === "string") return [value];
  return Object.values(answer).flatMap(markdownOf);
}

function expectInertAnswer(answer: unknown): void {
  for (const text of textsOf(answer)) expectInert(text);
  for (const markdown of new Set(markdownOf(answer))) expectInertMarkdown(markdown);
}

async function startHostile(
  texts: Parameters<typeof hostileFiles>[0],
  capabilities = VSCODE,
): Promise<{ readonly client: Client; readonly document: TextDocument }> {
  const files = hostileFiles(texts, { main: MAIN, used: "stock.finish" });
  const client = await startClient({
    disk: new Map([[USED, files["stock.finish"]!]]),
    host: { createAnalyst },
    capabilities,
  });
  await client.open(MAIN, files[MAIN]!);
  return { client, document: TextDocument.create(MAIN, "finish", 1, files[MAIN]!) };
}

const WHOLE = ["documentSymbol", "documentLink", "codeLens", "foldingRange", "diagnostic"];
const AT_PLACES = ["hover", "completion", "signatureHelp", "prepareCallHierarchy"];

test("every answer, at every word of the text", async () => {
  await fc.assert(
    fc.asyncProperty(hostileTexts, async (texts) => {
      const { client, document } = await startHostile(texts);
      const textDocument = { uri: MAIN };
      for (const method of WHOLE) {
        expectInertAnswer(await client.request(`textDocument/${method}`, { textDocument }));
      }
      expectInertAnswer(await client.request("workspace/symbol", { query: "" }));
      const range = { start: { line: 0, character: 0 }, end: document.positionAt(document.getText().length) };
      expectInertAnswer(await client.request("textDocument/inlayHint", { textDocument, range }));
      for (const { index } of document.getText().matchAll(/(?<![\p{L}_])[\p{L}_]+|[(,:]/gu)) {
        const position = document.positionAt(index + 1);
        for (const method of AT_PLACES) {
          expectInertAnswer(await client.request(`textDocument/${method}`, { textDocument, position }));
        }
      }
      for (const kind of ["schedule", "totals", "shopping", "sheet"]) {
        const text = await client.request<string>("finishwright/report", { textDocument, kind });
        if (kind === "sheet") expectInertMarkdown(text);
        else expectInert(text);
      }
      await client.end();
    }),
    { numRuns: 3, endOnFailure: true },
  );
});

const HOSTILE = {
  title: "![t](https://evil.example/t.png) $(check)",
  docs: ["[d](command:evil) <img src=https://evil.example/d.png>", "https://evil.example/"],
  words: "\u001b[31m\u202e",
};

const SIGNATURES: ClientCapabilities = {
  ...VSCODE,
  textDocument: {
    ...VSCODE.textDocument,
    signatureHelp: { signatureInformation: { documentationFormat: ["markdown"] } },
  },
};

/** The place behind a text in the document. */
const at = (document: TextDocument, text: string) =>
  document.positionAt(document.getText().indexOf(text) + text.length);

test("hovers, completion and signatures show hostile titles and documentation as characters", async () => {
  const { client, document } = await startHostile(HOSTILE, SIGNATURES);
  const textDocument = { uri: MAIN };
  const position = at(document, "apply clear_");
  const hover = await client.request<Hover>("textDocument/hover", { textDocument, position });
  const { value } = hover.contents as { readonly value: string };
  expect(value).toContain("\\!\\[t\\](https\\:\\/\\/evil.example/t.png)");
  expect(value).toContain("\\[d\\](command:evil) \\<img src=https\\:\\/\\/evil.example/d.png\\>");
  const { items } = await client.request<CompletionList>("textDocument/completion", {
    textDocument,
    position,
  });
  const recipe = items.find(({ label }) => label === "clear_coat");
  expect(markdownOf(recipe)).toEqual([expect.stringContaining("\\[d\\](command:evil)")]);
  const help = await client.request<SignatureHelp>("textDocument/signatureHelp", {
    textDocument,
    position: at(document, "apply clear_coat("),
  });
  expect(markdownOf(help)[0]).toContain("\\[d\\](command:evil)");
  await client.end();
});

test("hints and lenses are there, and draw no picture", async () => {
  const { client, document } = await startHostile(HOSTILE);
  const textDocument = { uri: MAIN };
  const range = { start: { line: 0, character: 0 }, end: document.positionAt(document.getText().length) };
  const hints = await client.request<InlayHint[]>("textDocument/inlayHint", { textDocument, range });
  expect(hints.length).toBeGreaterThan(0);
  const lenses = await client.request<CodeLens[]>("textDocument/codeLens", { textDocument });
  expect(lenses.length).toBeGreaterThan(0);
  for (const text of textsOf(lenses)) expect(text).not.toContain("$(");
  await client.end();
});

test("an editor that shows no marks gets the words without them and without escapes", async () => {
  const { client, document } = await startHostile({ ...HOSTILE, docs: ["See *a* `b` [c](d)."] }, MINIMAL);
  const hover = await client.request<Hover>("textDocument/hover", {
    textDocument: { uri: MAIN },
    position: at(document, "apply clear_"),
  });
  await client.take("textDocument/publishDiagnostics");
  const { kind, value } = hover.contents as { readonly kind: string; readonly value: string };
  expect(kind).toBe("plaintext");
  expect(value).toContain("“![t](https://evil.example/t.png) $(check)”");
  expectInert(value);
});
