/** `finishwright/changed`: what changes of some texts mean, as `finishwright diff` tells it. */
import { expect, test } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { ChangedParams } from "../../server/src/lsp/custom-requests.ts";
import { JOB, STOCK } from "../cli/bench.ts";
import { startClient } from "./harness.ts";

const FOLDER = "file:///shop";
const JOB_FILE = "file:///shop/shelf/job.finish";
const STOCK_FILE = "file:///shop/shelf/stock.finish";
const OTHER = "file:///shop/other.finish";

async function opened(job = JOB, stock = STOCK) {
  const client = await startClient({ host: { createAnalyst }, openFolders: [FOLDER] });
  await client.open(STOCK_FILE, stock);
  await client.open(JOB_FILE, job);
  await client.open(OTHER, 'material wax "Wax" {\n  family paste wax\n}\n');
  const told = (before: ChangedParams["before"], renamed: ChangedParams["renamed"] = []) =>
    client.request<string>("finishwright/changed", { folder: FOLDER, before, renamed });
  return { client, told };
}

test("a change of a used file is told of the job that it reaches, in figures of the plan", async () => {
  const { client, told } = await opened(JOB, STOCK.replace("recoat 2 h", "recoat 3 h"));
  const markdown = await told([{ uri: STOCK_FILE, text: STOCK }]);
  expect(markdown).toContain("2 files change in meaning, of 3 files.");
  expect(markdown).toContain("### `shelf/job.finish`");
  // 30 min and 2 × (15 min + 2 h), against 2 × (15 min + 3 h).
  expect(markdown).toContain("| elapsed | 5 h | 7 h | +2 h |");
  expect(markdown).toContain("- recoat 2 h to 24 h\n+ recoat 3 h to 24 h");
  // What was planned for then leaves the findings of now alone.
  expect((await client.findings(JOB_FILE)).join("\n")).not.toContain("internal-error");
  await client.end();
});

test("new, removed and renamed files are told as such, and what is as it was is not", async () => {
  const { client, told } = await opened();
  expect(await told([{ uri: OTHER, text: null }])).toContain("### `other.finish` (new)");
  const gone = await told([
    { uri: "file:///shop/gone.finish", text: "material oil {\n  family drying oil\n}\n" },
  ]);
  expect(gone).toContain("### `gone.finish` (removed)");
  const old = "file:///shop/wax%20%231.finish";
  const renamed = await told(
    [
      { uri: old, text: 'material wax "Wax" {\n  family drying oil\n}\n' },
      { uri: OTHER, text: null },
    ],
    [{ from: old, to: OTHER }],
  );
  expect(renamed).toContain("### `other.finish` (renamed from `wax #1.finish`)");
  expect(await told([{ uri: OTHER, text: 'material   wax "Wax" {\nfamily paste wax\n}\n' }])).toContain(
    "No change of meaning in 3 files. 1 file in another layout.",
  );
  expect(await told([])).toContain("No change of meaning in 3 files.");
  await client.end();
});

test("files outside of the folder are not told of", async () => {
  const { client, told } = await opened();
  const markdown = await told([{ uri: "file:///elsewhere/a.finish", text: "material a {\n}\n" }]);
  expect(markdown).toContain("No change of meaning in 3 files.");
  await client.end();
});
