/**
 * What is handed out: the npm tarball by npm's own account, the extension by what vsce would pack of its folder, and the
 * terms of everything that is bundled. `npm run build` makes the bundles; `npm test` does that first.
 */
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { inflateRawSync } from "node:zlib";
import { listFiles, PackageManager } from "@vscode/vsce";
import { Uint8ArrayReader, Uint8ArrayWriter, ZipReader, ZipWriter } from "@zip.js/zip.js";
import type { Metafile } from "esbuild";
import { afterAll, describe, expect, test } from "vitest";
import { BUNDLES, ROOT } from "../../client/bundles.ts";
import { readAudit } from "../../client/packing/audit-report.ts";
import { bundledPackages, noticesText } from "../../client/packing/bundled.ts";
import { NOTICES, npmFiles, packedFiles, RULE_PAGES } from "../../client/packing/list.ts";
import { pressed, pressZip } from "../../client/packing/press.ts";
import { packedRulePages } from "../../client/packing/rule-pages.ts";
import { knowsRepository, stageExtension, withoutRepository } from "../../client/packing/stage.ts";
import { pageInLanguage } from "../../server/src/features/page-in-language.ts";
import { made, madeShort } from "../harness/bundles.ts";

const scratch = mkdtempSync(path.join(tmpdir(), "finishwright-packing-"));
afterAll(() => rmSync(scratch, { recursive: true }));

const manifest = JSON.parse(readFileSync(path.join(ROOT, "package.json"), "utf8"));

describe("the npm tarball", () => {
  test("has the files of the list by the manifest", () => {
    expect(manifest.files.toSorted()).toEqual(npmFiles().toSorted());
  });

  test("holds them and nothing else, no test and no source among them", () => {
    const answer = execFileSync("npm", ["pack", "--dry-run", "--json", "--ignore-scripts"], {
      cwd: ROOT,
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
    });
    const [{ files }] = JSON.parse(answer) as [{ readonly files: readonly { readonly path: string }[] }];
    const names = files.map((file) => file.path).toSorted();
    expect(names).toEqual(packedFiles("npm"));
    expect(names.filter((name) => /\.ts$|^tests\/|node_modules/.test(name))).toEqual([]);
    for (const name of [NOTICES, "LICENSE", manifest.bin.finishwright]) expect(names).toContain(name);
  });

  test("could be published: a dry run has nothing against it", () => {
    const argv = ["publish", "--dry-run", "--json", "--offline", "--ignore-scripts"];
    const answer = execFileSync("npm", argv, {
      cwd: ROOT,
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
    });
    expect(answer).toContain(`"finishwright@${manifest.version}"`);
    expect(manifest.scripts.prepublishOnly).toBe("npm test");
  });
});

describe("the extension", () => {
  test("vsce packs what was laid out, and nothing else", async () => {
    const folder = path.join(scratch, "extension");
    const staged = stageExtension(folder);
    const listed = await listFiles({ cwd: folder, packageManager: PackageManager.None });
    expect(listed.map((name) => name.split(path.sep).join("/")).toSorted()).toEqual(staged);
    expect(staged).toEqual(packedFiles("vsix"));
    expect(staged).toContain(NOTICES);
  });

  test("packs no picture of the README, and its page shows no broken one", () => {
    const readme = readFileSync(path.join(ROOT, "README.md"), "utf8");
    const pictures = [...readme.matchAll(/^!\[([^\]]+)\]\(([^)]+)\)$/gmu)];
    expect(pictures.length).toBeGreaterThanOrEqual(4);
    for (const [, alt, file] of pictures) {
      // They lie in the repository, where relative links of a README lead on a host.
      expect(readFileSync(path.join(ROOT, file!)).length).toBeGreaterThan(1000);
      expect(alt!.length).toBeGreaterThan(30);
      expect([...packedFiles("vsix"), ...packedFiles("npm")]).not.toContain(file);
    }
    const packed = readFileSync(path.join(scratch, "extension", "README.md"), "utf8");
    if (knowsRepository(JSON.stringify(manifest))) expect(packed).toBe(readme);
    else expect(packed).not.toMatch(/\]\((?!https?:|#)/u);
  });

  test("without a repository the README has no picture, and of a link its text", () => {
    const readme =
      "a\n\n![A picture](client/media/a.png)\n\nb [c](d/e.md) [f](https://example.org/) [g](#h)\n";
    expect(withoutRepository(readme)).toBe("a\n\nb c [f](https://example.org/) [g](#h)\n");
  });

  test("has every bundle that one of its bundles loads", () => {
    const packed = packedFiles("vsix");
    const programs = packed.filter((name) => /^(?:server|client)\/dist\/.*\.cjs$/.test(name));
    const loaded = programs.flatMap((name) =>
      [...readFileSync(path.join(ROOT, name), "utf8").matchAll(/["'](?:\.\/)?([a-z-]+\.cjs)["']/gu)].flatMap(
        ([, file]) => (file === "server.cjs" ? [] : [`${path.posix.dirname(name)}/${file}`]),
      ),
    );
    expect(loaded).toContain("client/dist/extension-web.cjs");
    for (const name of ["answers", "job-reports", "language-server", "planning", "record"])
      expect(loaded).toContain(`server/dist/${name}.cjs`);
    for (const name of loaded) expect(packed).toContain(name);
  });

  test("has the page of every rule in one file", () => {
    const pages = JSON.parse(readFileSync(path.join(ROOT, RULE_PAGES), "utf8"));
    expect(pages).toEqual(JSON.parse(packedRulePages()));
    const rule = "waterborne-over-uncured-oil.md";
    const [writtenBy, ...page] = readFileSync(path.join(ROOT, "server/docs/rules", rule), "utf8").split("\n");
    expect(writtenBy).toContain("do not edit");
    // The server puts in again what it finds in the examples.
    expect(`\n${pageInLanguage(pages[rule])}`).toBe(page.join("\n"));
    expect(Object.keys(pages)).toContain("index.md");
  });

  test("is pressed without loss", async () => {
    const text = new TextEncoder().encode("Sand with the grain, then dust. ".repeat(200));
    expect(new Uint8Array(inflateRawSync(await pressed(text)))).toEqual(text);
    const zip = new ZipWriter(new Uint8ArrayWriter());
    await zip.add("a/steps.txt", new Uint8ArrayReader(text));
    await zip.add("empty", new Uint8ArrayReader(new Uint8Array()));
    const entries = await new ZipReader(new Uint8ArrayReader(await pressZip(await zip.close()))).getEntries();
    const read = entries.map(async (entry) => [
      entry.filename,
      entry.directory ? undefined : await entry.getData(new Uint8ArrayWriter()),
    ]);
    expect(await Promise.all(read)).toEqual([
      ["a/steps.txt", text],
      ["empty", new Uint8Array()],
    ]);
  });

  test("takes less than 1 500 000 bytes, as it is packed", { timeout: 240_000 }, async () => {
    const bundles = new Set(BUNDLES.map(({ out }) => out));
    const packed: number[] = [];
    for (const name of packedFiles("vsix")) {
      const bytes = bundles.has(name)
        ? (await madeShort(name)).outputFiles[0]!.contents
        : readFileSync(path.join(ROOT, name));
      // A zip names each file twice, with what its sums and its place take.
      packed.push((await pressed(bytes)).length + 2 * name.length + 150);
    }
    expect(packed.reduce((sum, bytes) => sum + bytes)).toBeLessThan(1_500_000);
  });

  test("its manifest is the project's without what only npm reads", () => {
    const own = JSON.parse(readFileSync(path.join(scratch, "extension", "package.json"), "utf8"));
    const {
      bin: _bin,
      devDependencies: _tools,
      exports: _library,
      files: _files,
      scripts: _scripts,
      ...kept
    } = manifest;
    expect(own).toEqual(kept);
  });
});

/** A folder with one package, and esbuild's account of a bundle of it. */
function installed(
  name: string,
  files: Readonly<Record<string, string>>,
  bytesInOutput = 10,
): { readonly root: string; readonly metafile: Metafile } {
  const root = mkdtempSync(path.join(scratch, "root-"));
  const folder = path.join(root, "node_modules", name);
  mkdirSync(folder, { recursive: true });
  for (const [file, text] of Object.entries(files)) writeFileSync(path.join(folder, file), text);
  const inputs = {
    [`node_modules/${name}/lib/a.js`]: { bytesInOutput },
    "server/src/own.ts": { bytesInOutput },
  };
  const output = { bytes: 20, inputs, imports: [], exports: [] };
  return { root, metafile: { inputs: {}, outputs: { "out.js": output } } };
}

const MIT = '{ "name": "@a/b", "version": "1.2.3", "license": "MIT", "homepage": "https://example.org/b" }';

describe("the terms of what is bundled", () => {
  test("go along, notices of theirs included", () => {
    const { root, metafile } = installed("@a/b", {
      "package.json": MIT,
      "LICENSE.md": "Do as you like.\r\nBut say so.\n",
      "thirdpartynotices.txt": "With thanks to c.",
      "README.md": "no terms",
    });
    const [only, ...others] = bundledPackages([metafile], root);
    expect(others).toEqual([]);
    expect(only).toMatchObject({ name: "@a/b", version: "1.2.3", licence: "MIT" });
    const text = noticesText([only!]);
    for (const part of [
      "@a/b 1.2.3 (MIT)",
      "https://example.org/b",
      "Do as you like.\nBut say so.",
      "With thanks to c.",
    ]) {
      expect(text).toContain(part);
    }
    expect(text).not.toContain("no terms");
  });

  test("a package of which nothing was taken has none to go along", () => {
    const { root, metafile } = installed("gone", {}, 0);
    expect(bundledPackages([metafile], root)).toEqual([]);
  });

  test.each([
    ["a licence that is not known", { "package.json": MIT.replace("MIT", "GPL-3.0-only"), LICENSE: "x" }],
    ["no licence", { "package.json": '{ "name": "@a/b" }', LICENSE: "x" }],
    ["no text of the licence", { "package.json": MIT, "README.md": "x" }],
    ["an empty text", { "package.json": MIT, LICENSE: "\n" }],
  ])("%s ends the build", (_, files) => {
    const { root, metafile } = installed("@a/b", files);
    expect(() => bundledPackages([metafile], root)).toThrow(/^@a\/b is bundled/);
  });

  test("of this project are all known, and stand in the file that is packed", async () => {
    const metafiles = await Promise.all(BUNDLES.map(async ({ out }) => (await made(out)).metafile));
    const names = bundledPackages(metafiles).map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(["commander", "vscode-jsonrpc", "zod"]));
    const text = readFileSync(path.join(ROOT, NOTICES), "utf8");
    for (const name of names) expect(text).toContain(`\n${name} `);
  });
});

describe("the audit", () => {
  const bundled = new Set(["zod", "commander"]);
  const advisory = (name: string) => ({
    [name]: {
      severity: "high",
      range: "<1",
      via: [{ title: "It hangs", url: "https://example.org/1" }, "other"],
    },
  });

  test("a bundled package with a weak spot fails", () => {
    const { lines, status } = readAudit(JSON.stringify({ vulnerabilities: advisory("zod") }), "", bundled);
    expect(status).toBe(1);
    expect(lines).toEqual([
      "high in zod <1",
      "  It hangs https://example.org/1",
      "1 of 2 bundled packages have known weak spots; 0 of the tools, which reach nobody.",
    ]);
  });

  test("one of a tool is counted", () => {
    const { lines, status } = readAudit(JSON.stringify({ vulnerabilities: advisory("vite") }), "", bundled);
    expect({ lines, status }).toEqual({
      status: 0,
      lines: ["0 of 2 bundled packages have known weak spots; 1 of the tools, which reach nobody."],
    });
  });

  test.each([
    ["an error of npm", '{ "message": "405 Method Not Allowed" }', "", "(405 Method Not Allowed)"],
    ["another shape of it", '{ "error": { "summary": "no lockfile" } }', "", "(no lockfile)"],
    ["no answer", "", "npm error network\nmore", "(npm error network)"],
    ["nothing at all", "", "", "(no answer)"],
  ])("%s is not taken for a clean bill", (_, stdout, stderr, reason) => {
    const { lines, status } = readAudit(stdout, stderr, bundled);
    expect(status).toBe(2);
    expect(lines[0]).toContain(reason);
  });
});
