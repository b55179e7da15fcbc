/** What a server finds by itself below an open folder, on a real disk. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { listRecipes } from "../../server/src/entry/list-recipes.ts";

const root = mkdtempSync(path.join(tmpdir(), "finishwright-list-"));
afterAll(() => rmSync(root, { recursive: true, force: true }));

function folderOf(name: string, files: Readonly<Record<string, string>>): string {
  const folder = path.join(root, name);
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(folder, file)), { recursive: true });
    writeFileSync(path.join(folder, file), text);
  }
  return folder;
}

const list = (folder: string, limit = 100, exclude: readonly string[] = []) =>
  listRecipes(folder, { limit, exclude });

test("recipes in all folders, and nothing else: not those of packages, nor hidden ones, nor links", async () => {
  const folder = folderOf("all", {
    "a.finish": "",
    "tables/oak/b.finish": "",
    "notes.md": "",
    finish: "",
    "node_modules/pkg/c.finish": "",
    ".cache/d.finish": "",
    ".e.finish": "",
  });
  symlinkSync(path.join(folder, "tables"), path.join(folder, "linked"));
  symlinkSync(path.join(folder, "a.finish"), path.join(folder, "f.finish"));
  expect(await list(folder)).toEqual(["a.finish", "tables/oak/b.finish"]);
});

describe("what Git is told to leave out is left out", () => {
  test("by patterns for names, folders and places", async () => {
    const folder = folderOf("ignored", {
      ".gitignore": "# ours\n*.old.finish\nbuild/\n/top.finish\n",
      "top.finish": "",
      "deep/top.finish": "",
      "x.old.finish": "",
      "build/y.finish": "",
      "deep/build/z.finish": "",
      "kept.finish": "",
    });
    expect(await list(folder)).toEqual(["deep/top.finish", "kept.finish"]);
  });

  test("and what an inner list takes back in is there again", async () => {
    const folder = folderOf("nested", {
      ".gitignore": "*.draft.finish\n",
      "a.draft.finish": "",
      "mine/.gitignore": "!*.draft.finish\nsecret.finish\n",
      "mine/b.draft.finish": "",
      "mine/secret.finish": "",
      "secret.finish": "",
    });
    expect(await list(folder)).toEqual(["mine/b.draft.finish", "secret.finish"]);
  });
});

test("what the person excludes is left out, whatever Git says of it", async () => {
  const folder = folderOf("excluded", {
    ".gitignore": "!archive/\n",
    "archive/a.finish": "",
    "b.finish": "",
  });
  expect(await list(folder, 100, ["archive"])).toEqual(["b.finish"]);
});

test("no more are looked for than are of use, those nearest to the top first", async () => {
  const folder = folderOf("many", { "z.finish": "", "in/a.finish": "", "in/b.finish": "" });
  expect(await list(folder, 2)).toEqual(["in/a.finish", "z.finish"]);
});

test("a folder that is not there has none", async () => {
  expect(await list(path.join(root, "gone"))).toEqual([]);
});
