/** `finishwright/report`: the plan, the totals and the shopping list as text, and the word that they have changed. */
import { expect, test } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { FILES } from "../cli/bench.ts";
import { type Client, startClient } from "./harness.ts";

const URI = "file:///shop/job.finish";
const STOCK = "file:///shop/stock.finish";
const disk = new Map([
  [URI, FILES["job.finish"]],
  [STOCK, FILES["stock.finish"]],
]);

const start = (initializationOptions?: Readonly<Record<string, unknown>>): Promise<Client> =>
  startClient({
    // Pulls its diagnostics, so that nothing is sent that nobody asked for.
    capabilities: { textDocument: { diagnostic: {} } },
    disk,
    host: { createAnalyst },
    ...(initializationOptions && { initializationOptions }),
  });

const reports = (client: Client) => {
  const of =
    (kind: string) =>
    (uri: string, job?: string): Promise<string | null> =>
      client.request("finishwright/report", { kind, textDocument: { uri }, job });
  return { schedule: of("schedule"), totals: of("totals"), shopping: of("shopping"), sheet: of("sheet") };
};

test("are those of the command line, without colours, for the job that is asked for", async () => {
  const client = await start();
  await client.open(URI, FILES["job.finish"]);
  const { schedule, totals, shopping } = reports(client);
  // Dust 30 min, coats at 09:30 and 11:45, two hours each: tests/cli/bench.ts.
  expect(await schedule(URI, "shelf_job")).toMatch(
    /^shelf_job “One shelf”\n[\s\S]*09:30 to 09:45 +board +clear_coat/u,
  );
  expect(await totals(URI, "shelf_job")).toMatch(
    /^shelf_job “One shelf” {2}job\.finish\n[\s\S]* total +37\.00 EUR\n/u,
  );
  expect(await shopping(URI)).toBe(
    "Shopping list for shelf_job\n\nclear_coat  0.44 L    1 × 0.5 L  10.00 EUR\ntogether                         10.00 EUR\n\nAlso needed, by the lines of the recipes:\n  to put it on: brush\n  to wear: dust mask\n",
  );
  await client.end();
});

test("say what the plan has nothing of where the folder of the file is not open", async () => {
  const told =
    "The plan has the jobs of open files and of what they use. Open the folder to plan with all its jobs.\n";
  for (const [folderFiles, isTold] of [
    [undefined, true],
    [[], true],
    [[...disk.keys()], false],
    // The list comes when the plan has long been asked for.
    [new Promise<string[]>((list) => setTimeout(list, 200, [...disk.keys()])), false],
  ] as const) {
    const client = await startClient({
      capabilities: { textDocument: { diagnostic: {} } },
      disk,
      host: { createAnalyst },
      ...(folderFiles && { folderFiles }),
    });
    await client.open(URI, FILES["job.finish"]);
    const { schedule, totals, shopping } = reports(client);
    for (const text of [await schedule(URI), await totals(URI)]) expect(text?.endsWith(told)).toBe(isTold);
    expect(await shopping(URI)).not.toContain("plan");
    await client.end();
  }
});

test("sheets are Markdown, of one job or of all that the file has", async () => {
  const client = await start();
  await client.open(URI, FILES["job.finish"]);
  await client.open(STOCK, FILES["stock.finish"]);
  const { sheet } = reports(client);
  const one = await sheet(URI, "shelf_job");
  expect(one).toMatch(/^# One shelf\n\nJob sheet, `shelf_job` in job\.finish/u);
  expect(one).toMatch(/^2\. \[ \] \*\*Coat 1 of 2: Clear, by brush\*\*$/mu);
  // Its one recipe has a sheet within the job's.
  expect(await sheet(URI)).toBe(one);
  expect(await sheet(STOCK)).toBe(
    "stock.finish has neither jobs nor recipes, so there is no sheet. A job says: job NAME \\{\n",
  );
  expect(await sheet(STOCK, "shelf_job")).toBe("stock.finish has no job shelf\\_job any more.\n");
  await client.end();
});

test("of a file without jobs are those of the files that use it", async () => {
  const client = await start();
  await client.open(URI, FILES["job.finish"]);
  await client.open(STOCK, FILES["stock.finish"]);
  expect(await reports(client).shopping(STOCK)).toContain("Shopping list for shelf_job");
  await client.end();
});

test("say why there is nothing to show", async () => {
  const client = await start();
  await client.open(STOCK, FILES["stock.finish"]);
  const { totals } = reports(client);
  expect(await totals(STOCK)).toBe(
    "stock.finish has no jobs, and no file that uses it has one. A job says: job NAME {\n",
  );
  expect(await totals(STOCK, "shelf_job")).toBe("stock.finish has no job shelf_job any more.\n");
  expect(await totals("file:///shop/gone.finish")).toBeNull();
  await client.end();
});

test("say of a file with errors that they may be wrong", async () => {
  const client = await start();
  await client.open(URI, `${FILES["job.finish"]}shop broken {\n  crw 2\n}\n`);
  expect(await reports(client).totals(URI)).toMatch(
    /^job\.finish has an error, so what follows may be wrong\.\n\nshelf_job/u,
  );
  await client.end();
});

test("a client that shows them is told when they change, whatever else it is told", async () => {
  const client = await start({ reports: true });
  await client.open(URI, FILES["job.finish"]);
  await client.take("finishwright/reportsChanged");
  await client.change(URI, 2, FILES["job.finish"].replace("labour   20.00", "labour   30.00"));
  await client.take("finishwright/reportsChanged");
  expect(await reports(client).totals(URI)).toContain("47.00 EUR");
  // The report asked for a plan, and there it is.
  await client.take("finishwright/reportsChanged");
  expect(await reports(client).totals(URI)).not.toContain("being planned");
  await client.end();
});
