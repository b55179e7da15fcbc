/**
 * The recipes below an open folder, for a client that cannot list them: without hidden folders and those of packages, without
 * links, without what the `.gitignore` files of the folder leave out, and without what the person excludes.
 */
import type { Dirent } from "node:fs";
import { readdir, readFile, stat } from "node:fs/promises";
import ignore, { type Ignore } from "ignore";
import { isLookedInto, isNamedAsRecipe, MAX_DEPTH } from "../reading/may-read.ts";

export interface Listing {
  /** More are not looked for. */
  readonly limit: number;
  /** Patterns as in a `.gitignore` file at the top of the folder. */
  readonly exclude: readonly string[];
}

/** No list of what is left out is longer. */
const MOST_PATTERN_BYTES = 100_000;
/** Folders beyond these are not looked into: such a tree is no workshop. */
const MOST_FOLDERS = 20_000;

interface Waiting {
  /** From the folder, with `/` at its end; empty at the top. */
  readonly below: string;
  readonly depth: number;
  /** From the top down, each with the folder that its patterns count from. */
  readonly rules: readonly { readonly from: string; readonly ignoring: Ignore }[];
}

/** Paths from the folder, with `/`, in order; what cannot be read has none. Never throws. */
export async function listRecipes(folder: string, { limit, exclude }: Listing): Promise<readonly string[]> {
  const excluding = ignore().add([...exclude]);
  const found: string[] = [];
  const waiting: Waiting[] = [{ below: "", depth: 0, rules: [] }];
  let folders = 0;
  for (let next = waiting.shift(); next !== undefined && found.length < limit; next = waiting.shift()) {
    folders += 1;
    if (folders > MOST_FOLDERS) break;
    const { below, depth } = next;
    const entries = await entriesOf(`${folder}/${below}`);
    const own = entries.some(({ name }) => name === ".gitignore")
      ? await patternsOf(`${folder}/${below}.gitignore`)
      : undefined;
    const rules =
      own === undefined ? next.rules : [...next.rules, { from: below, ignoring: ignore().add(own) }];
    for (const entry of entries) {
      const isFolder = entry.isDirectory();
      const path = `${below}${entry.name}${isFolder ? "/" : ""}`;
      if (isFolder ? !isLookedInto(entry.name) || depth >= MAX_DEPTH : !isRecipe(entry)) continue;
      if (excluding.ignores(path) || isLeftOut(path, rules)) continue;
      if (isFolder) waiting.push({ below: path, depth: depth + 1, rules });
      else found.push(path);
    }
  }
  return found.slice(0, limit).toSorted();
}

const isRecipe = (entry: Dirent): boolean => entry.isFile() && isNamedAsRecipe(entry.name);

/** As Git has it, the last list that says something decides, and the innermost list is the last (gitignore(5)). */
function isLeftOut(path: string, rules: Waiting["rules"]): boolean {
  let left = false;
  for (const { from, ignoring } of rules) {
    const { ignored, unignored } = ignoring.test(path.slice(from.length));
    if (ignored || unignored) left = ignored;
  }
  return left;
}

async function entriesOf(folder: string): Promise<readonly Dirent[]> {
  try {
    return (await readdir(folder, { withFileTypes: true })).toSorted((a, b) => (a.name < b.name ? -1 : 1));
  } catch {
    return [];
  }
}

async function patternsOf(file: string): Promise<string | undefined> {
  try {
    const { size } = await stat(file);
    return size > MOST_PATTERN_BYTES ? undefined : await readFile(file, "utf8");
  } catch {
    return undefined;
  }
}
