/** The extension as it is installed, in a folder of its own. */
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { ROOT } from "../bundles.ts";
import { packedFiles } from "./list.ts";

/** Fields of package.json that an editor has no use for, and that would change what is packed. */
const OF_NPM: ReadonlySet<string> = new Set(["bin", "devDependencies", "exports", "files", "scripts"]);

/** Lays the extension out in `folder`, which is emptied first. The files of it, with `/`. */
export function stageExtension(folder: string): readonly string[] {
  const files = packedFiles("vsix");
  rmSync(folder, { recursive: true, force: true });
  for (const name of files) {
    mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
    cpSync(path.join(ROOT, name), path.join(folder, name));
  }
  const manifest = extensionManifest(path.join(ROOT, "package.json"));
  writeFileSync(path.join(folder, "package.json"), manifest);
  if (!knowsRepository(manifest)) {
    const readme = readFileSync(path.join(ROOT, "README.md"), "utf8");
    writeFileSync(path.join(folder, "README.md"), withoutRepository(readme));
  }
  return files;
}

/** Whether the packer can say where on the web relative links lead; it then writes them so. */
export const knowsRepository = (manifest: string): boolean => JSON.parse(manifest).repository !== undefined;

/**
 * The README of a package that nobody knows the repository of. What it links lies there: pictures would be broken, and links
 * lead nowhere, so the one are left out and of the others the text stays.
 */
export const withoutRepository = (readme: string): string =>
  readme
    .replace(/^!\[[^[\]\n]*\]\((?!https?:)[^()[\n]*\)\n\n?/gmu, "")
    .replace(/\[([^[\]\n]*)\]\((?!https?:|#)[^()[\n]*\)/gu, "$1");

function extensionManifest(file: string): string {
  const manifest: Readonly<Record<string, unknown>> = JSON.parse(readFileSync(file, "utf8"));
  const own = Object.entries(manifest).filter(([name]) => !OF_NPM.has(name));
  return `${JSON.stringify(Object.fromEntries(own), null, 2)}\n`;
}
