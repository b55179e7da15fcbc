/**
 * Makes `finishwright.vsix` of the bundles: lays the extension out in a folder of its own by the list, and packs that.
 *
 * In that folder the manifest is that of the extension alone: what only npm reads is left out.
 */
import path from "node:path";
import { createVSIX } from "@vscode/vsce";
import { ROOT } from "../bundles.ts";
import { stageExtension } from "./stage.ts";

const folder = path.join(ROOT, ".cache", "extension");
stageExtension(folder);
await createVSIX({
  cwd: folder,
  packagePath: path.join(ROOT, "finishwright.vsix"),
  dependencies: false,
  allowMissingRepository: true,
  rewriteRelativeLinks: false,
});
