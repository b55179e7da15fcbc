/** `finishwright/workshop`: what the open files declare, at places as the client names them. */
import { expect, test } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { WorkshopItem } from "../../server/src/lsp/custom-requests.ts";
import { startClient } from "./harness.ts";

const BENCH = "file:///mill/bench.finish";
const TEXT = "piece bench {\n  surface seat {\n    shape area 1 m2\n    wood  oak\n  }\n}\n";

test("entries follow the text, and an empty list is an answer", async () => {
  const client = await startClient({ host: { createAnalyst } });
  const ask = () => client.request<readonly WorkshopItem[]>("finishwright/workshop", {});
  expect(await ask()).toEqual([]);
  await client.open(BENCH, TEXT);
  expect(await ask()).toEqual([
    {
      kind: "piece",
      name: "bench",
      title: "bench",
      detail: "1 surface",
      uri: BENCH,
      file: "bench.finish",
      start: { line: 0, character: 6 },
    },
  ]);
  await client.change(BENCH, 2, TEXT.replace("piece bench", 'piece bench "Reading bench"'));
  expect((await ask()).map(({ title }) => title)).toEqual(["Reading bench"]);
  await client.end();
});
