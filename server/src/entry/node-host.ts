/**
 * The machine under the language server, as Node shows it: files on disk, and the pages that came with the program.
 *
 * Reading answers with a reason instead of failing. Only plain files of a sensible size are read: a pipe or a device
 * named by a `use` line would never come to an end.
 */
import { existsSync } from "node:fs";
import { readFile, stat } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { createAnalyst } from "../features/analyst.ts";
import type { Host, ReadResult } from "../lsp/host.ts";
import { packageRoot, versionIn } from "./package-root.ts";

/** A recipe of a whole workshop has some hundred kilobytes. */
const MAX_BYTES = 4 * 1024 * 1024;

export const nodeHost = (): Host => {
  const root = packageRoot();
  return {
    version: versionIn(root),
    createAnalyst: (resolve) => createAnalyst({ resolve }),
    readText,
    rulePage(rule) {
      const page = path.join(root, "server", "docs", "rules", `${rule}.md`);
      return existsSync(page) ? pathToFileURL(page).href : undefined;
    },
  };
};

const readText = async (uri: string): Promise<ReadResult> => {
  try {
    const file = fileURLToPath(uri);
    const found = await stat(file);
    if (!found.isFile()) return { reason: "it is not a file" };
    if (found.size > MAX_BYTES) return { reason: `it is larger than ${MAX_BYTES / 1024 / 1024} MB` };
    return { text: withoutMark(await readFile(file, "utf8")) };
  } catch (error) {
    return { reason: reasonOf(error) };
  }
};

/** A byte order mark is not part of the text; editors take it off as well. */
const withoutMark = (text: string): string => (text.startsWith("\uFEFF") ? text.slice(1) : text);

const reasonOf = (error: unknown): string => {
  const code: unknown = error instanceof Error ? Reflect.get(error, "code") : undefined;
  if (code === "ENOENT" || code === "ENOTDIR") return "there is no such file";
  if (code === "EACCES" || code === "EPERM") return "it may not be read";
  return error instanceof Error ? error.message : String(error);
};
