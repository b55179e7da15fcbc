/** `source.fixAll`: all safe fixes of a text at once, only where somebody asks for it; and the colours of a text. */
import { expect, test } from "vitest";
import type { CodeAction, TextDocumentEdit, TextEdit } from "vscode-languageserver";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { startClient } from "./harness.ts";

const FILE = "file:///shop/shelf.finish";
/** Two comments that allow what is not found, which can be taken out safely; a misspelt field asks for a decision. */
const TEXT =
  "# allow grit-jump: the first\nmaterial oil {\n  family drying oil\n}\n\n# allow grit-jump: the second\nmaterial wax {\n  famly paste wax\n}\n";

const ask = async (only: string[] | undefined): Promise<readonly CodeAction[]> => {
  const client = await startClient({ host: { createAnalyst } });
  await client.open(FILE, TEXT);
  const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
  const actions = await client.request<CodeAction[]>("textDocument/codeAction", {
    textDocument: { uri: FILE },
    range,
    context: { diagnostics: [], ...(only && { only }) },
  });
  await client.end();
  return actions;
};

test.each([["source.fixAll.finishwright"], ["source.fixAll"], ["source"]])(
  "who asks for %s gets one action for the whole text",
  async (kind) => {
    const actions = await ask([kind]);
    expect(actions.map((action) => action.kind)).toEqual(["source.fixAll.finishwright"]);
    const [change] = (actions[0]!.edit?.documentChanges ?? []) as TextDocumentEdit[];
    const edits = (change?.edits ?? []) as TextEdit[];
    expect(edits.map(({ range, newText }) => `${range.start.line} ${newText}`)).toEqual(["0 ", "5 "]);
  },
);

test.each([[undefined], [["quickfix"]], [["source.organizeImports"]], [["sourcery"]]])(
  "who asks for %s does not",
  async (only) => {
    expect((await ask(only)).filter(({ kind }) => kind?.startsWith("source"))).toEqual([]);
  },
);

test("colours have a swatch, and what is picked is written as a number", async () => {
  const client = await startClient({ host: { createAnalyst } });
  await client.open(FILE, 'material oil {\n  colour "#ff0000"\n}\n');
  const [colour] = await client.request<object[]>("textDocument/documentColor", {
    textDocument: { uri: FILE },
  });
  const range = { start: { line: 1, character: 9 }, end: { line: 1, character: 18 } };
  expect(colour).toEqual({ range, color: { red: 1, green: 0, blue: 0, alpha: 1 } });
  expect(
    await client.request("textDocument/colorPresentation", {
      textDocument: { uri: FILE },
      color: { red: 0, green: 0.5, blue: 1, alpha: 1 },
      range,
    }),
  ).toEqual([{ label: '"#0080ff"', textEdit: { range, newText: '"#0080ff"' } }]);
  await client.end();
});
