/** Formatting over the protocol: the whole text, a range, several ranges. */
import { expect, test } from "vitest";
import { startClient } from "./harness.ts";

const A = "file:///shop/a.finish";
const textDocument = { uri: A };
const options = { tabSize: 8, insertSpaces: false };
const range = (line: number, start: number, end: number) => ({
  start: { line, character: start },
  end: { line, character: end },
});
const edit = (line: number, start: number, end: number) => ({ range: range(line, start, end), newText: " " });

test("the answer is the changes alone, whatever the client's tabs are", async () => {
  const client = await startClient();
  await client.open(A, "a  b\r\n\u{1FA91}   d\r\ne   f");
  expect(await client.request("textDocument/formatting", { textDocument, options })).toEqual([
    edit(0, 1, 3),
    edit(1, 2, 5),
    edit(2, 1, 4),
  ]);
  const ofRange = { textDocument, options, range: range(1, 0, 9) };
  expect(await client.request("textDocument/rangeFormatting", ofRange)).toEqual([edit(1, 2, 5)]);
  const ofRanges = { textDocument, options, ranges: [range(2, 0, 4), range(0, 0, 4)] };
  expect(await client.request("textDocument/rangesFormatting", ofRanges)).toEqual([
    edit(0, 1, 3),
    edit(2, 1, 4),
  ]);
  await client.end();
});

test("a file that is not open has no answer", async () => {
  const client = await startClient();
  expect(await client.request("textDocument/formatting", { textDocument, options })).toBeNull();
  await client.end();
});
