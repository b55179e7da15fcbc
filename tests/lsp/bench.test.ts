/** `finishwright/bench`: a job as data for the page beside its text, with the lines of what it shows. */
import { expect, test } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { BenchAnswer } from "../../server/src/lsp/custom-requests.ts";
import { FILES } from "../cli/bench.ts";
import { startClient } from "./harness.ts";

const URI = "file:///shop/job.finish";
const disk = new Map([
  [URI, FILES["job.finish"]],
  ["file:///shop/stock.finish", FILES["stock.finish"]],
]);

test("has the hours of the plan, the money, and the line of every coat", async () => {
  const client = await startClient({
    capabilities: { textDocument: { diagnostic: {} } },
    disk,
    host: { createAnalyst },
  });
  await client.open(URI, FILES["job.finish"]);
  const textDocument = { uri: URI };
  const ask = (): Promise<BenchAnswer | null> =>
    client.request("finishwright/bench", { textDocument, job: "shelf_job" });
  await expect.poll(async () => (await ask())?.bench?.plan).toBe("planned");
  const bench = (await ask())!.bench!;
  const [board] = bench.surfaces;
  // Begun at 09:00, dust for 30 min, coats at 09:30 and 11:45: tests/cli/bench.ts.
  expect(bench.startAt).toMatch(/T09:00/);
  expect(board!.bars.filter(({ kind }) => kind === "layer").map(({ start }) => start)).toEqual([0.5, 2.75]);
  expect(board!.coats.map(({ onAt }) => onAt)).toEqual([0.75, 3]);
  expect(bench.costs).toContainEqual({ name: "Cost", text: "37.00 EUR" });
  const lines = FILES["job.finish"].split("\n");
  const at = bench.places[board!.coats[0]!.at!]!;
  expect(at.uri).toBe(URI);
  expect(lines[at.line]).toContain("layer");

  const exported = (as: string): Promise<string | null> =>
    client.request("finishwright/benchExport", { textDocument, job: "shelf_job", as });
  expect(await exported("html")).toMatch(/^<!doctype html>/i);
  expect(await exported("markdown")).toContain("One shelf");
  expect(await exported("csv")).toContain("\r\n");
  const gone = { textDocument, job: "no_such_job", as: "csv" };
  expect(await client.request("finishwright/benchExport", gone)).toBeNull();
});

test("says what to write where there is no job, and answers null for a file that is not known", async () => {
  const client = await startClient({
    capabilities: { textDocument: { diagnostic: {} } },
    host: { createAnalyst },
  });
  const empty = "file:///shop/empty.finish";
  await client.open(empty, "# nothing yet\n");
  const answer = await client.request("finishwright/bench", { textDocument: { uri: empty } });
  expect(answer).toMatchObject({ jobs: [], notes: [expect.stringContaining("job NAME {")] });
  expect(answer).not.toHaveProperty("bench");
  const unknown = { textDocument: { uri: "file:///shop/other.finish" } };
  expect(await client.request("finishwright/bench", unknown)).toBeNull();
});
