/** The one decision about every file that a text or a setting can name. */
import { describe, expect, test } from "vitest";
import {
  folderKey,
  MAX_DEPTH,
  MAX_PATH_LENGTH,
  type Permit,
  type Purpose,
  refusalOf,
} from "../../server/src/reading/may-read.ts";

const inFolders = (folders: readonly string[], purpose: Purpose = "recipe"): Permit => {
  const keys = new Set(folders.map(folderKey));
  return { purpose, allows: (key) => keys.has(key), widen: "ask" };
};

const SHOP = inFolders(["file:///shop"]);

test.each([
  ["file:///shop/a.finish", SHOP],
  ["file:///shop/jobs/May/a.finish", SHOP],
  ["FILE:///shop/A.FINISH", SHOP],
  ["/shop/a.finish", SHOP],
  ["file:///c%3A/Shop/a.finish", inFolders(["C:\\shop"])],
  ["c:\\SHOP\\jobs\\a.finish", inFolders(["file:///C:/shop"])],
  ["file://nas/shop/a.finish", inFolders(["file://NAS/shop"])],
  ["\\\\nas\\shop\\a.finish", inFolders(["\\\\nas\\shop"])],
  ["vscode-vfs://github/mill/a.finish", inFolders(["vscode-vfs://github/mill"])],
  ["memfs:/a.finish", inFolders(["memfs:/"])],
  ["file:///shop/finishwright.config.json", inFolders(["file:///shop"], "project")],
  ["file:///shop/photos/before.JPG", inFolders(["file:///shop"], "picture")],
  ["vscode-vfs://github/mill/after.png", inFolders(["vscode-vfs://github/mill"], "picture")],
  ["file:///elsewhere/notes.txt", inFolders([], "asked")],
])("%s is read", (name, permit) => {
  expect(refusalOf(name, permit)).toBeUndefined();
  expect(refusalOf(name, permit, "file")).toBeUndefined();
});

describe("is not read", () => {
  test.each([
    ["a file of another name", "file:///shop/id_rsa", "does not end in `.finish`"],
    ["a name that is nothing but the ending", "file:///shop/.finish", "does not end in `.finish`"],
    ["what only begins like a recipe", "file:///shop/a.finish.txt", "does not end in `.finish`"],
    ["a folder beside", "file:///shop-of-another/a.finish", "outside of the folders"],
    ["the folder above", "file:///a.finish", "outside of the folders"],
    ["a way out by dots", "file:///shop/%2e%2e/etc/a.finish", "outside of the folders"],
    [
      "a way out by slashes that are written otherwise",
      "file:///shop/..%2F..%2Fetc%2Fa.finish",
      "outside of",
    ],
    ["a way out by backslashes", "file:///shop/..%5C..%5Cetc%5Ca.finish", "outside of the folders"],
    ["another host", "file://nas/shop/a.finish", "outside of the folders"],
    ["another scheme", "vscode-vfs://github/shop/a.finish", "outside of the folders"],
    ["the network, as a text names it", "//nas/shop/a.finish", "by way of another computer"],
    ["the network, as an address", "file:////nas/shop/a.finish", "by way of another computer"],
    ["the network, in another spelling", "file:///%2Fnas/shop/a.finish", "outside of the folders"],
    ["a zero", "file:///shop/a%00.finish", "no file name can have"],
    ["half of a letter", "file:///shop/\ud83d.finish", "no file name can have"],
    ["no folder", "untitled:Untitled-1", "lies in no folder"],
    ["a long path", `file:///shop/${"a".repeat(MAX_PATH_LENGTH)}.finish`, "more than 4096 characters"],
    ["a deep path", `file:///shop/${"a/".repeat(MAX_DEPTH)}b.finish`, "folders deep"],
  ])("%s", (_, name, reason) => {
    expect(refusalOf(name, SHOP)).toContain(reason);
  });

  test("another stream of a file, where there are drives", () => {
    expect(refusalOf("file:///c%3A/shop/a.txt%3Ab.finish", inFolders(["c:/shop"]))).toContain("a colon");
  });

  test.each(["a.svg", "a.finish", ".png", "a.png.exe", "png"])("a picture by the name %s", (name) => {
    expect(refusalOf(`file:///shop/${name}`, inFolders(["file:///shop"], "picture"))).toContain(
      "is not a picture",
    );
  });

  test("a project file by another name", () => {
    expect(refusalOf("file:///shop/a.json", inFolders(["file:///shop"], "project"))).toContain(
      "is not a project file",
    );
  });

  test.each([
    ["folder", "is a folder, not a file"],
    ["other", "is not a plain file but a device, a pipe or a socket"],
    ["link", "where it leads cannot be seen"],
  ] as const)("a %s, whoever names it", (kind, reason) => {
    expect(refusalOf("file:///shop/a.finish", SHOP, kind)).toContain(reason);
    expect(refusalOf("/dev/zero", inFolders([], "asked"), kind)).toContain(reason);
  });
});

test("every refusal says what to do", () => {
  for (const name of ["file:///shop/x", "file:///x.finish", "//nas/x.finish", "file:///shop/a%00.finish"]) {
    expect(refusalOf(name, SHOP)).toMatch(/[.,:] (?:Name|Move|Copy|Take)|, or ask$/);
  }
});
