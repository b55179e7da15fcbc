/** Colours, foldings, selections and help with arguments, as rich and plain clients get them. */
import { describe, expect, test } from "vitest";
import type {
  ClientCapabilities,
  FoldingRange,
  SelectionRange,
  SemanticTokens,
  SemanticTokensDelta,
} from "vscode-languageserver/node";
import { startClient, VSCODE } from "./harness.ts";

const A = "file:///shop/a.finish";
const textDocument = { uri: A };
const range = (line: number, start: number, endLine: number, end: number) => ({
  start: { line, character: start },
  end: { line: endLine, character: end },
});

const withText = (textDocumentCapabilities: ClientCapabilities["textDocument"]): ClientCapabilities => ({
  ...VSCODE,
  textDocument: { ...VSCODE.textDocument, ...textDocumentCapabilities },
});
const TOKENS = { requests: {}, tokenTypes: [], tokenModifiers: [], formats: [] };

describe("semantic tokens", () => {
  /** `event` is the last of sixteen types, `variable` the tenth; `declaration` is the first bit, `defaultLibrary` the fourth. */
  const BAD = [15, 0];
  const NAME = [9, 0b1001];
  const NUMBER = [6, 0];

  test("are counted from the token before, in UTF-16 units", async () => {
    const client = await startClient();
    await client.open(A, "\u{1FA91} bad name\n\n  42 bad");
    const { data } = await client.request<SemanticTokens>("textDocument/semanticTokens/full", {
      textDocument,
    });
    const expected = [
      [0, 3, 3, ...BAD],
      [0, 4, 4, ...NAME],
      [2, 2, 2, ...NUMBER],
      [0, 3, 3, ...BAD],
    ];
    expect(data).toEqual(expected.flat());
    await client.end();
  });

  test("a part is counted from the start of the text", async () => {
    const client = await startClient();
    await client.open(A, "bad\nbad\nbad");
    const part = { textDocument, range: range(1, 0, 1, 3) };
    expect(await client.request("textDocument/semanticTokens/range", part)).toEqual({
      data: [1, 0, 3, ...BAD],
    });
    await client.end();
  });

  test("a client that colours by itself gets the words alone", async () => {
    const client = await startClient({
      capabilities: withText({ semanticTokens: { ...TOKENS, augmentsSyntaxTokens: true } }),
    });
    await client.open(A, "42 bad");
    expect(await client.request("textDocument/semanticTokens/full", { textDocument })).toMatchObject({
      data: [0, 3, 3, ...BAD],
    });
    await client.end();
  });

  test("after an edit the change is sent, and everything where the client has nothing to change", async () => {
    const client = await startClient();
    await client.open(A, "bad bad bad");
    const first = await client.request<SemanticTokens>("textDocument/semanticTokens/full", { textDocument });
    const delta = (previousResultId: string | undefined) =>
      client.request<SemanticTokensDelta>("textDocument/semanticTokens/full/delta", {
        textDocument,
        previousResultId,
      });
    const same = await delta(first.resultId);
    expect(same.edits).toEqual([]);
    await client.change(A, 2, "bad name bad bad");
    const second = await delta(same.resultId);
    expect(applied(first.data, second)).toEqual(
      [
        [0, 0, 3, ...BAD],
        [0, 4, 4, ...NAME],
        [0, 5, 3, ...BAD],
        [0, 4, 3, ...BAD],
      ].flat(),
    );
    expect(second.edits).toHaveLength(1);
    expect(await delta(first.resultId)).toMatchObject({ data: expect.any(Array) });
    await client.close(A);
    await client.open(A, "bad");
    expect(await delta(second.resultId)).toMatchObject({ data: [0, 0, 3, ...BAD] });
    await client.end();
  });

  const applied = (data: readonly number[], { edits }: SemanticTokensDelta): readonly number[] =>
    edits.reduceRight<readonly number[]>(
      (numbers, edit) => numbers.toSpliced(edit.start, edit.deleteCount, ...(edit.data ?? [])),
      data,
    );

  test("are asked for again when something changes elsewhere", async () => {
    const client = await startClient({
      capabilities: {
        ...VSCODE,
        workspace: { ...VSCODE.workspace, semanticTokens: { refreshSupport: true } },
      },
    });
    await client.open(A, "bad");
    await client.take("workspace/semanticTokens/refresh");
    await client.end();
  });
});

describe("folding", () => {
  const text = "{\na\n}\n{ b }\n{\n}";

  test("hides what is between the braces", async () => {
    const client = await startClient();
    await client.open(A, text);
    const folds = await client.request<FoldingRange[]>("textDocument/foldingRange", { textDocument });
    expect(folds).toEqual([
      { startLine: 0, startCharacter: 1, endLine: 2, endCharacter: 0 },
      { startLine: 0, startCharacter: 1, endLine: 2, endCharacter: 0, kind: "imports" },
      { startLine: 4, startCharacter: 1, endLine: 5, endCharacter: 0 },
      { startLine: 4, startCharacter: 1, endLine: 5, endCharacter: 0, kind: "imports" },
    ]);
    await client.end();
  });

  test("keeps the closing brace where only lines can be hidden, and no more than the client shows", async () => {
    const client = await startClient({
      capabilities: withText({ foldingRange: { lineFoldingOnly: true, rangeLimit: 2 } }),
    });
    await client.open(A, text);
    expect(await client.request("textDocument/foldingRange", { textDocument })).toEqual([
      { startLine: 0, endLine: 1 },
      { startLine: 0, endLine: 2, kind: "imports" },
    ]);
    await client.end();
  });
});

test("a selection grows from each caret to the whole text", async () => {
  const client = await startClient();
  await client.open(A, "one\ntwo ");
  const positions = [
    { line: 0, character: 1 },
    { line: 1, character: 4 },
  ];
  expect(
    await client.request<SelectionRange[]>("textDocument/selectionRange", { textDocument, positions }),
  ).toEqual([
    { range: range(0, 0, 0, 3), parent: { range: range(0, 0, 1, 4) } },
    { range: range(0, 0, 1, 4) },
  ]);
  await client.end();
});

describe("signature help", () => {
  const at = (character: number, context?: object) => ({
    textDocument,
    position: { line: 0, character },
    ...(context && { context }),
  });

  test("marks the parameter in the label, with markup", async () => {
    const client = await startClient({
      capabilities: withText({
        signatureHelp: {
          signatureInformation: {
            documentationFormat: ["markdown"],
            parameterInformation: { labelOffsetSupport: true },
            noActiveParameterSupport: true,
          },
        },
      }),
    });
    await client.open(A, "mix(?");
    const it = { kind: "markdown", value: "`it`" };
    const help = (active: number | null) => ({
      signatures: [
        {
          label: "mix(bad, dull)",
          documentation: { kind: "markdown", value: "**Two** of them." },
          parameters: [
            { label: [4, 7], documentation: it },
            { label: [9, 12], documentation: it },
          ],
          activeParameter: active,
        },
        { label: "mix()", parameters: [] },
      ],
      activeSignature: 0,
      activeParameter: active,
    });
    expect(await client.request("textDocument/signatureHelp", at(4))).toEqual(help(1));
    expect(await client.request("textDocument/signatureHelp", at(5))).toEqual(help(null));
    expect(await client.request("textDocument/signatureHelp", at(2))).toBeNull();
    await client.end();
  });

  test("keeps the signature that the user has gone to", async () => {
    const client = await startClient();
    await client.open(A, "mix(");
    const context = { isRetrigger: true, activeSignatureHelp: { signatures: [], activeSignature: 1 } };
    const help = await client.request("textDocument/signatureHelp", at(4, context));
    expect(help).toMatchObject({ activeSignature: 1 });
    expect(help).not.toHaveProperty("activeParameter");
    await client.end();
  });

  test("is plain for a plain client", async () => {
    const client = await startClient();
    await client.open(A, "mix(?");
    expect(await client.request("textDocument/signatureHelp", at(5))).toMatchObject({
      signatures: [
        {
          documentation: { kind: "plaintext", value: "Two of them." },
          parameters: [{ label: "bad", documentation: { value: "it" } }, { label: "dul" }],
          // One that is not there, so that none is marked.
          activeParameter: 2,
        },
        { label: "mix()" },
      ],
    });
    await client.end();
  });
});
