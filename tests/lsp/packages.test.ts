/** Recipes of installed packages in an editor. */
import { expect, test } from "vitest";
import type { DocumentDiagnosticReport, Hover, Location, MarkupContent } from "vscode-languageserver";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { Host } from "../../server/src/lsp/host.ts";
import { startClient } from "./harness.ts";

const TOPS = "file:///shop/node_modules/shared/tops.finish";
const JOB = "file:///shop/tables/job.finish";
const TEXT = 'use "pkg:shared/tops.finish"\n\nrecipe again {\n  follow clear_top\n}\n';
const disk = () =>
  new Map([
    [TOPS, 'use "clears/hall.finish"\nrecipe clear_top {\n  layer hall_clear\n}\n'],
    [
      "file:///shop/node_modules/shared/clears/hall.finish",
      "material hall_clear {\n  family waterborne polyurethane\n}\n",
    ],
  ]);

/** What use-not-found says of the job, and where the recipe of the package is declared. */
async function seen(host: Partial<Host>, openFolders: readonly string[]) {
  const client = await startClient({
    disk: disk(),
    openFolders: [...openFolders],
    host: { createAnalyst, ...host },
  });
  await client.open(JOB, TEXT);
  const report = await client.request<DocumentDiagnosticReport>("textDocument/diagnostic", {
    textDocument: { uri: JOB },
  });
  const definition = await client.request<Location | Location[] | null>("textDocument/definition", {
    textDocument: { uri: JOB },
    position: { line: 3, character: 12 },
  });
  await client.end();
  const unread = report.kind === "full" ? report.items.filter(({ code }) => code === "use-not-found") : [];
  return { unread, definition: JSON.stringify(definition) };
}

test("a package is read from where it is installed, though that folder is not open", async () => {
  const asked: (readonly [string, string])[] = [];
  const { unread, definition } = await seen(
    {
      findPackage: (folder, name) => {
        asked.push([folder, name]);
        return "file:///shop/node_modules/shared";
      },
    },
    ["file:///shop/tables"],
  );
  expect(unread).toEqual([]);
  expect(definition).toContain(TOPS);
  expect(new Set(asked.map((each) => each.join(" ")))).toEqual(new Set(["file:///shop/tables shared"]));
});

test("the hover of a use line tells what the package and the head of the file say of themselves", async () => {
  const files = disk();
  files.set(TOPS, `# Tops that are written on.\n# Tried in the mill, winter 2026.\n\n${files.get(TOPS)}`);
  const manifest = "file:///shop/node_modules/shared/package.json";
  const client = await startClient({
    disk: files,
    openFolders: ["file:///shop/tables"],
    host: { createAnalyst, findPackage: () => "file:///shop/node_modules/shared" },
  });
  const told = async (): Promise<string> => {
    const answer = await client.request<Hover | null>("textDocument/hover", {
      textDocument: { uri: JOB },
      position: { line: 0, character: 10 },
    });
    return answer === null ? "" : (answer.contents as MarkupContent).value;
  };
  await client.open(JOB, TEXT);
  const without = await told();
  expect(without).toContain(
    "**use** pkg:shared/tops.finish\n\nTops that are written on.  \nTried in the mill, winter 2026.",
  );
  files.set(
    manifest,
    JSON.stringify({
      version: "1.2.0",
      description: "Clears of the *reading room*",
      author: "The town library <hall@example.org> (https://example.org)",
      license: "CC-BY-4.0",
    }),
  );
  expect(await told()).toBe(
    without.replace(
      "\n\nTops",
      "\n\nClears of the \\*reading room\\*\n\nversion 1.2.0, by The town library, CC-BY-4.0\n\nTops",
    ),
  );
  for (const text of ["{", "[]", "null", '{ "author": 7, "license": ["MIT"], "private": "yes" }']) {
    files.set(manifest, text);
    expect(await told()).toBe(without);
  }
  await client.end();
});

test("one that is not there is told, and nothing else is read in its place", async () => {
  const { unread, definition } = await seen({ findPackage: () => undefined }, ["file:///shop"]);
  expect(unread).toHaveLength(1);
  expect(definition).not.toContain(TOPS);
});
