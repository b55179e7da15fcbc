/**
 * Makes `finishwright.vsix` of the bundles: lays the extension out in a folder of its own by the list, and packs that.
 *
 * In that folder the manifest is that of the extension alone: what only npm reads is left out.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { createVSIX } from "@vscode/vsce";
import { ROOT } from "../bundles.ts";
import { knowsRepository, stageExtension } from "./stage.ts";

const folder = path.join(ROOT, ".cache", "extension");
stageExtension(folder);
await createVSIX({
  cwd: folder,
  packagePath: path.join(ROOT, "finishwright.vsix"),
  dependencies: false,
  allowMissingRepository: true,
  // Pictures and documents of the README are not packed: they lie in the repository.
  rewriteRelativeLinks: knowsRepository(readFileSync(path.join(folder, "package.json"), "utf8")),
});
