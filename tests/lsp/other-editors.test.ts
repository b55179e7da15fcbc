/** A client that cannot list files: the server looks into the open folders by itself. */
import { describe, expect, test } from "vitest";
import type { WorkspaceDiagnosticReport, WorkspaceEdit } from "vscode-languageserver";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { Host } from "../../server/src/lsp/host.ts";
import { type Client, type Setup, startClient } from "./harness.ts";

const STOCK = "file:///shop/stock.finish";
const JOB = "file:///shop/tables/job.finish";
const disk = () =>
  new Map([
    [STOCK, "material mill_oil {\n  family drying oil\n}\n"],
    [JOB, 'use "../stock.finish"\n\nrecipe oiled {\n  layer mill_oil\n  layer gone\n}\n'],
  ]);

const asked: Parameters<NonNullable<Host["listRecipes"]>>[] = [];
const start = (more: Setup = {}): Promise<Client> =>
  startClient({
    disk: disk(),
    openFolders: ["file:///shop"],
    ...more,
    host: {
      createAnalyst,
      listRecipes: async (folder, listing) => {
        asked.push([folder, listing]);
        return listing.exclude.includes("tables") ? [STOCK] : [STOCK, JOB];
      },
    },
  });

const filesWithFindings = async (client: Client): Promise<readonly string[]> => {
  const { items } = await client.request<WorkspaceDiagnosticReport>("workspace/diagnostic", {
    previousResultIds: [],
  });
  return items.flatMap((item) => (item.kind === "full" && item.items.length > 0 ? [item.uri] : []));
};

describe("a client that cannot list files", () => {
  test("gets the findings of files that nobody opened", async () => {
    const client = await start();
    expect(await filesWithFindings(client)).toContain(JOB);
    expect(asked.at(-1)).toEqual(["file:///shop", { limit: 501, exclude: [] }]);
    await client.end();
  });

  test("renames in files that nobody opened", async () => {
    const client = await start();
    await client.open(STOCK, disk().get(STOCK)!);
    const edit = await client.request<WorkspaceEdit>("textDocument/rename", {
      textDocument: { uri: STOCK },
      position: { line: 0, character: 10 },
      newName: "linseed",
    });
    const changed = edit.documentChanges?.map((change) =>
      "textDocument" in change ? change.textDocument.uri : "",
    );
    expect(changed?.toSorted()).toEqual([STOCK, JOB]);
    await client.end();
  });

  test("says what is no part of the folders, from the start and later", async () => {
    const client = await start({ settings: { files: { exclude: ["tables"] } } });
    expect(await filesWithFindings(client)).not.toContain(JOB);
    client.setSettings({ files: { exclude: [] } });
    await client.notify("workspace/didChangeConfiguration", { settings: null });
    await expect.poll(() => filesWithFindings(client)).toContain(JOB);
    await client.end();
  });
});
