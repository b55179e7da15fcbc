/** One file, one spelling; and where a `use` line leads. */
import { expect, test } from "vitest";
import { fileIdOf, resolveUse } from "../../server/src/lsp/uri.ts";

test.each([
  ["file:///c%3A/Shop/a.finish", "file:///C:/Shop/a.finish"],
  ["file:///shop/o%281%29%20b.finish", "file:///shop/o(1) b.finish"],
  ["FILE:///shop/%C3%B6l.finish", "file:///shop/öl.finish"],
  ["file://Server/shop/a.finish", "file://server/shop/a.finish"],
  ["file:///shop/100%.finish", "file:///shop/100%25.finish"],
  ["file:/shop/a.finish", "file:///shop/a.finish"],
  ["memfs:/shop/%C3%B6l.finish", "memfs:/shop/öl.finish"],
])("%s is %s", (a, b) => {
  expect(fileIdOf(a)).toBe(fileIdOf(b));
});

test.each([
  ["file:///shop/jobs/a.finish", "b.finish", "file:///shop/jobs/b.finish"],
  ["file:///shop/jobs/a.finish", "../stock/./b.finish", "file:///shop/stock/b.finish"],
  ["file:///shop/jobs/a.finish", "..\\stock\\b.finish", "file:///shop/stock/b.finish"],
  ["file:///shop/jobs/a.finish", "../../../b.finish", "file:///b.finish"],
  ["file:///shop/a.finish", "/stock/b.finish", "file:///stock/b.finish"],
  ["file:///shop/a.finish", "C:/stock/b.finish", "file:///c%3A/stock/b.finish"],
  ["file:///shop/a.finish", "100% öl #2?.finish", "file:///shop/100%25%20%C3%B6l%20%232%3F.finish"],
  ["vscode-vfs://host/shop/a.finish", "b.finish", "vscode-vfs://host/shop/b.finish"],
  ["ftp://Mill.example/shop/a.finish", "../b.finish", "ftp://Mill.example/b.finish"],
  ["memfs:/shop/jobs/a.finish", "../b.finish", "memfs:/shop/b.finish"],
  ["memfs:/a.finish", "../b.finish", "memfs:/b.finish"],
])("in %s, %s is %s", (from, path, file) => {
  expect(resolveUse(from, path)).toBe(file);
});
