/** What long work shows of itself, and answers in parts. */
import { expect, test } from "vitest";
import type { SymbolInformation, WorkspaceDiagnosticReport } from "vscode-languageserver/node";
import { startClient, VSCODE } from "./harness.ts";

const A = "file:///shop/a.finish";
const B = "file:///shop/b.finish";
const capabilities = { ...VSCODE, window: { workDoneProgress: true } };

/** A listing that the test lets go. */
const held = () => {
  let resolve: (files: readonly string[]) => void = () => {};
  const promise = new Promise<readonly string[]>((settle) => {
    resolve = settle;
  });
  return { promise, resolve };
};

interface Progress {
  readonly token: string;
  readonly value: { readonly kind?: string; readonly title?: string; readonly items?: readonly unknown[] };
}

test("a folder whose listing takes long is told to be read until it is", async () => {
  const { promise, resolve } = held();
  const client = await startClient({ capabilities, folderFiles: promise });
  const { token } = await client.take<{ readonly token: string }>("window/workDoneProgress/create");
  expect(await client.take<Progress>("$/progress")).toEqual({
    token,
    value: { kind: "begin", title: "Reading the recipes of the folder" },
  });
  resolve([]);
  expect(await client.take<Progress>("$/progress")).toEqual({ token, value: { kind: "end" } });
  await client.end();
});

test("one that is listed at once is not, nor is anything to a client that shows none", async () => {
  const quick = await startClient({ capabilities, folderFiles: [] });
  await quick.request("workspace/symbol", { query: "" });
  await quick.end();
  const { promise, resolve } = held();
  const other = await startClient({ folderFiles: promise });
  await new Promise((wake) => setTimeout(wake, 1000));
  resolve([]);
  await other.end();
});

test("the findings of a folder come file by file, and what has come is not in the answer again", async () => {
  const client = await startClient();
  await client.open(A, "bad");
  await client.open(B, "bad bad");
  const ask = (previousResultIds: readonly unknown[]) =>
    client.request<WorkspaceDiagnosticReport>("workspace/diagnostic", {
      previousResultIds,
      partialResultToken: "t",
    });
  const answer = await ask([]);
  const told = [await client.take<Progress>("$/progress"), await client.take<Progress>("$/progress")];
  expect(told.map(({ token }) => token)).toEqual(["t", "t"]);
  const items = told.flatMap(({ value }) => value.items as WorkspaceDiagnosticReport["items"]);
  expect(items.map(({ uri, kind }) => `${uri} ${kind}`)).toEqual([`${A} full`, `${B} full`]);
  expect(answer.items).toEqual([]);
  // One of them changes: the other is unchanged, and the answer says so.
  await client.change(B, 2, "good");
  const previous = items.map(({ uri, resultId }) => ({ uri, value: resultId }));
  const next = await ask(previous);
  const { value } = await client.take<Progress>("$/progress");
  expect(
    (value.items as WorkspaceDiagnosticReport["items"]).map(({ uri, kind }) => `${uri} ${kind}`),
  ).toEqual([`${B} full`]);
  expect(next.items.map(({ uri, kind }) => `${uri} ${kind}`)).toEqual([`${A} unchanged`]);
  await client.end();
});

test("a long list of symbols comes in parts, a short one whole", async () => {
  const client = await startClient();
  const names = Array.from({ length: 250 }, (_, i) => `name n${i}`);
  await client.open(A, names.join("\n"));
  const params = { query: "", partialResultToken: "s" };
  expect(await client.request<SymbolInformation[]>("workspace/symbol", params)).toEqual([]);
  const parts: number[] = [];
  let left = 250;
  while (left > 0) {
    const { value } = await client.take<{ readonly value: readonly unknown[] }>("$/progress");
    parts.push(value.length);
    left -= value.length;
  }
  expect(parts).toEqual([100, 100, 50]);
  await client.change(A, 2, "name only");
  expect(await client.request<SymbolInformation[]>("workspace/symbol", params)).toHaveLength(1);
  await client.end();
});
