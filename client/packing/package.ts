/**
 * Makes `finishwright.vsix` of the bundles: lays the extension out in a folder of its own by the list, and packs that.
 *
 * It is packed once more, tighter. In that folder the manifest is that of the extension alone: what only npm reads is left out.
 */
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { createVSIX } from "@vscode/vsce";
import { ROOT } from "../bundles.ts";
import { pressZip } from "./press.ts";
import { knowsRepository, stageExtension } from "./stage.ts";

const packed = path.join(ROOT, "finishwright.vsix");
const folder = path.join(ROOT, ".cache", "extension");
stageExtension(folder);
await createVSIX({
  cwd: folder,
  packagePath: packed,
  dependencies: false,
  allowMissingRepository: true,
  // Pictures and documents of the README are not packed: they lie in the repository.
  rewriteRelativeLinks: knowsRepository(readFileSync(path.join(folder, "package.json"), "utf8")),
});
writeFileSync(packed, await pressZip(readFileSync(packed)));
