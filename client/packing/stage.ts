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
  writeFileSync(path.join(folder, "package.json"), extensionManifest(path.join(ROOT, "package.json")));
  return files;
}

function extensionManifest(file: string): string {
  const manifest: Readonly<Record<string, unknown>> = JSON.parse(readFileSync(file, "utf8"));
  const own = Object.entries(manifest).filter(([name]) => !OF_NPM.has(name));
  return `${JSON.stringify(Object.fromEntries(own), null, 2)}\n`;
}
