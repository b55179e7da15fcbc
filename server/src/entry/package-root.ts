/**
 * The folder that this program was installed in, and the version that stands there: the nearest folder above with a
 * package.json. True for the sources as well as for the bundles.
 */
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

export function packageRoot(): string {
  let folder = path.dirname(fileURLToPath(import.meta.url));
  while (!existsSync(path.join(folder, "package.json")) && folder !== path.dirname(folder)) {
    folder = path.dirname(folder);
  }
  return folder;
}

/** The version in the package.json of a folder; `unknown` where there is none. */
export function versionIn(root: string): string {
  try {
    const manifest: unknown = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8"));
    const version: unknown =
      typeof manifest === "object" && manifest ? Reflect.get(manifest, "version") : undefined;
    return typeof version === "string" ? version : "unknown";
  } catch {
    return "unknown";
  }
}
