/**
 * The machine under the language server, as Node shows it: files on disk, and the pages that came with the program.
 *
 * Files are read as the command line reads them, so that what cannot be read is called the same in both.
 */

import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { t } from "../../../grammar/src/translate.ts";
import { findPackage } from "../cli/find-package.ts";
import { readPlain, readPlainBytes } from "../cli/read-plain.ts";
import { createAnalyst } from "../features/analyst.ts";
import type { Host } from "../lsp/host.ts";
import { reasonOf } from "../reading/reasons.ts";
import { listRecipes } from "./list-recipes.ts";
import { packageRoot, versionIn } from "./package-root.ts";
import { planInThread } from "./plan-thread.ts";

export const nodeHost = (): Host => {
  const root = packageRoot();
  return {
    version: versionIn(root),
    createAnalyst,
    planMaker: () => planInThread(),
    async readFromDisk(uri, permit) {
      const file = pathOf(uri);
      const read =
        file === undefined
          ? { reason: "has a name that leads nowhere. Fix the path" }
          : await readPlain(file, permit);
      if ("text" in read) return read;
      return { reason: t`it ${read.reason}`, isThere: read.reason !== reasonOf("missing") };
    },
    async readPicture(uri, permit) {
      const file = pathOf(uri);
      return file === undefined
        ? { reason: "has a name that leads nowhere. Fix the path" }
        : readPlainBytes(file, permit);
    },
    async listRecipes(uri, listing) {
      const folder = pathOf(uri);
      if (folder === undefined) return [];
      const found = await listRecipes(folder, listing);
      return found.map((name) => pathToFileURL(path.join(folder, name)).href);
    },
    findPackage(uri, name) {
      const folder = pathOf(uri);
      const found = folder === undefined ? undefined : findPackage(folder, name);
      return found === undefined ? undefined : pathToFileURL(found).href;
    },
    texts(tag) {
      try {
        return JSON.parse(readFileSync(path.join(root, "server", "dist", `texts.${tag}.json`), "utf8"));
      } catch {
        // There is no table for this language, so the texts stay English.
        return undefined;
      }
    },
    rulePage(rule) {
      const page = path.join(root, "server", "docs", "rules", `${rule}.md`);
      return existsSync(page) ? pathToFileURL(page).href : undefined;
    },
  };
};

/** A URI may name another machine, or have a slash in a name, and then there is no path for it. */
const pathOf = (uri: string): string | undefined => {
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
};
