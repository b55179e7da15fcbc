/** `finishwright.config.json` in the editor: found above the file, heeded, followed when it changes, never in the way. */
import { expect, test } from "vitest";
import { foldersOf } from "../../server/src/lsp/uri.ts";
import { type Client, startClient } from "./harness.ts";

const A = "file:///shop/jobs/a.finish";
const NEAR = "file:///shop/jobs/finishwright.config.json";
const FAR = "file:///shop/finishwright.config.json";
const UNKNOWN = "0:5-0:8 unknown-name: Nothing is called oil.";
const off = JSON.stringify({ rules: { "unknown-name": "off" } });
const hint = JSON.stringify({ rules: { "unknown-name": "hint" } });

const severities = async (client: Client): Promise<unknown> => {
  const report = await client.pull(A);
  return report.kind === "full" ? report.items.map(({ severity }) => severity) : "unchanged";
};

test("the nearest one above a file holds, from the first answer on", async () => {
  const client = await startClient({
    disk: new Map([
      [NEAR, hint],
      [FAR, off],
    ]),
  });
  await client.open(A, "want oil");
  expect(await severities(client)).toEqual([4]);
  await client.open("file:///shop/b.finish", "want oil");
  expect(await client.findings("file:///shop/b.finish")).toEqual([]);
  await client.end();
});

test("it is followed when it comes, changes and goes", async () => {
  const disk = new Map([[FAR, off]]);
  const client = await startClient({ disk });
  const watched = async (type: 1 | 2 | 3): Promise<void> => {
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: NEAR, type }] });
    await client.take("workspace/diagnostic/refresh");
  };
  await client.open(A, "want oil");
  expect(await severities(client)).toEqual([]);
  disk.set(NEAR, hint);
  await watched(1);
  expect(await severities(client)).toEqual([4]);
  disk.set(NEAR, "{}");
  await watched(2);
  expect(await client.findings(A)).toEqual([UNKNOWN]);
  disk.delete(NEAR);
  await watched(3);
  expect(await severities(client)).toEqual([]);
  await client.end();
});

test("what is wrong in it is said once, and the findings are there all the same", async () => {
  const client = await startClient({ disk: new Map([[FAR, "{ rules: }"]]) });
  await client.open(A, "want oil");
  await client.open("file:///shop/b.finish", "want oil");
  expect(await client.findings(A)).toEqual([UNKNOWN]);
  expect(await client.take("window/logMessage")).toMatchObject({
    type: 2,
    message: expect.stringMatching(/^file:\/\/\/shop\/finishwright\.config\.json: .*not valid JSON/),
  });
  await client.end();
});

test("folders are named from the nearest, and unsaved texts lie in none", () => {
  expect(foldersOf(A)).toEqual(["file:///shop/jobs", "file:///shop", "file:///"]);
  expect(foldersOf("untitled:Untitled-1")).toEqual([]);
});
