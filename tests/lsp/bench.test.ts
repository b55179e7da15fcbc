/** `finishwright/bench`: a job as data for the page beside its text, with the lines of what it shows. */
import { describe, expect, test } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { BenchAnswer } from "../../server/src/lsp/custom-requests.ts";
import { FILES } from "../cli/bench.ts";
import { plainPng, tellingPng } from "../harness/pictures.ts";
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
  expect(bench.currency).toBe("EUR");
  expect(bench.costs).toContainEqual({ kind: "total", name: "Total", text: "37.00", sum: "", missing: [] });
  // 5.00 for the piece, 10.00 for a can, 2.00 for supplies, an hour at 20.00: tests/cli/bench.ts.
  expect(bench.worth?.rows[1]).toEqual({
    name: "redo",
    figures: ["17.00", "1 h", "20.00", "none", "-37.00"],
  });
  const lines = FILES["job.finish"].split("\n");
  const at = bench.places[board!.coats[0]!.at!]!;
  expect(at.uri).toBe(URI);
  expect(lines[at.line]).toContain("layer");

  const exported = (as: string): Promise<string | null> =>
    client.request("finishwright/benchExport", { textDocument, job: "shelf_job", as });
  expect(await exported("html")).toMatch(/^<!doctype html>/i);
  expect(await exported("markdown")).toContain("One shelf");
  expect(await exported("csv")).toContain("\r\n");
  // Sessions: dust with the first coat at 09:00, the second coat at 11:45.
  const calendar = (await exported("ics"))!;
  expect(calendar).toMatch(/^BEGIN:VCALENDAR\r\n/);
  expect(calendar).toContain("DTSTART:20270308T090000");
  expect(calendar).toContain("DTSTART:20270308T114500");
  expect(calendar).toMatch(/DTSTAMP:\d{8}T\d{6}Z\r\n/);
  expect(await exported("care")).toMatch(
    /^<!doctype html>[\s\S]*<h1>Shelf<\/h1>\n<p class="sort">Care card, /iu,
  );
  expect(await exported("recipe")).toContain("1. Take the dust off.\n2. 2 coats: Clear, by brush.");
  const priced = { textDocument, job: "shelf_job", with: ["prices"] };
  for (const as of ["care", "recipe"]) {
    expect(await exported(as)).not.toContain("37.00");
    expect(await client.request("finishwright/benchExport", { ...priced, as })).toContain("in all 37.00 EUR");
  }
  const gone = { textDocument, job: "no_such_job", as: "csv" };
  expect(await client.request("finishwright/benchExport", gone)).toBeNull();
});

test("the job at the line is drawn, else the one before, else the first", async () => {
  const client = await startClient({ disk, openFolders: ["file:///shop"], host: { createAnalyst } });
  const second = FILES["job.finish"].slice(FILES["job.finish"].indexOf("job shelf_job"));
  const text = `${FILES["job.finish"]}${second.replace("shelf_job", "second")}`;
  await client.open(URI, text);
  const lineOf = (part: string): number => text.slice(0, text.indexOf(part)).split("\n").length - 1;
  const drawn = async (more: object): Promise<string | undefined> => {
    const params = { textDocument: { uri: URI }, ...more };
    return (await client.request<BenchAnswer>("finishwright/bench", params)).bench?.name;
  };
  const inRecipe = { line: lineOf("  step   dust") };
  expect(await drawn(inRecipe)).toBe("shelf_job");
  expect(await drawn({ ...inRecipe, before: "second" })).toBe("second");
  expect(await drawn({ line: lineOf("job shelf_job") + 1, before: "second" })).toBe("shelf_job");
  expect(await drawn({ ...inRecipe, before: "gone" })).toBe("shelf_job");
});

test("there is no calendar of a job without dates", async () => {
  const client = await startClient({ disk, openFolders: ["file:///shop"], host: { createAnalyst } });
  await client.open(URI, FILES["job.finish"].replace("  start    2027-03-08 09:00\n", ""));
  const params = { textDocument: { uri: URI }, job: "shelf_job" };
  expect(await client.request("finishwright/benchExport", { ...params, as: "ics" })).toBeNull();
  expect(await client.request("finishwright/benchExport", { ...params, as: "csv" })).toContain("\r\n");
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

describe("the page of a job holds the pictures that its texts name", () => {
  const text = FILES["job.finish"].replace(
    "job shelf_job",
    "## ![Before](photos/a.png) ![Out](../../a.png)\njob shelf_job",
  );
  const params = { textDocument: { uri: URI }, job: "shelf_job", as: "html" };
  const embedded = `src="data:image/png;base64,${plainPng().toString("base64")}" alt="Before"`;

  test("from the disk", async () => {
    const asked: string[] = [];
    const client = await startClient({
      disk,
      openFolders: ["file:///shop"],
      host: {
        createAnalyst,
        async readPicture(uri) {
          asked.push(uri);
          return { bytes: tellingPng() };
        },
      },
    });
    await client.open(URI, text);
    const page = await client.request<string>("finishwright/benchExport", params);
    expect(asked).toEqual(["file:///shop/photos/a.png"]);
    expect(page).toContain(embedded);
    expect(page).toContain("Out (picture ../../a.png, which lies outside of the folders");
    const markdown = await client.request<string>("finishwright/benchExport", { ...params, as: "markdown" });
    expect(markdown).toContain("Before (picture photos/a.png)");
    expect(asked).toHaveLength(1);
  });

  test("as the client hands them out, or says why not", async () => {
    const virtual = (uri: string): string => uri.replace("file:///shop", "vscode-vfs://github/shop");
    const answers: Record<string, unknown> = {
      [virtual("file:///shop/photos/a.png")]: { base64: tellingPng().toString("base64") },
    };
    const client = await startClient({
      openFolders: ["vscode-vfs://github/shop"],
      host: { createAnalyst },
      handOut: async (uri) => answers[String(uri)] ?? { failure: "missing" },
    });
    const uri = virtual(URI);
    await client.open(
      uri,
      text.replace("../../a.png", "b.png").replace('use "stock.finish"\n', FILES["stock.finish"]),
    );
    const page = await client.request<string>("finishwright/benchExport", {
      ...params,
      textDocument: { uri },
    });
    expect(page).toContain(embedded);
    expect(page).toContain("Out (picture b.png, which does not exist)");
  });

  test("of a text without a place there are none", async () => {
    const client = await startClient({ host: { createAnalyst } });
    const uri = "untitled:Untitled-1";
    await client.open(uri, text.replace('use "stock.finish"\n', FILES["stock.finish"]));
    const page = await client.request<string>("finishwright/benchExport", {
      ...params,
      textDocument: { uri },
    });
    expect(page).toContain(
      "Before (picture photos/a.png, which has no place, as this text has not been saved yet)",
    );
  });
});
