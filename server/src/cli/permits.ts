/**
 * What the command line reads beyond the files that it was given: what lies in the project of one of them.
 *
 * A project is the folder of the nearest project file above a file, else the nearest folder under version control, else
 * the file's own folder. A folder that was given counts, too, and so does one that the person adds with `--read-also`:
 * neither a recipe nor a project file can widen what is read.
 */
import path from "node:path";
import { folderKey, type Permit } from "../reading/may-read.ts";
import type { AskedFile } from "./find-files.ts";
import { type CliIo, UsageError } from "./io.ts";
import type { Packages } from "./packages.ts";
import { ASKED } from "./read-plain.ts";

const WIDEN = "allow its folder with `--read-also FOLDER`";

/** Allows recipes in these folders, given by absolute paths, and below. */
export function recipesIn(folders: readonly string[]): Permit {
  const keys = new Set(folders.map(folderKey));
  return { purpose: "recipe", allows: (key) => keys.has(key), widen: WIDEN };
}

/** The same, and recipes of the packages that `use` lines lead to. */
export const withPackages = (permit: Permit, packages: Pick<Packages, "allows">): Permit => ({
  ...permit,
  allows: (key) => permit.allows(key) || packages.allows(key),
});

/** A file that the person has named is read wherever it lies; one that was found, where it really lies in these folders. */
export const permitFor = ({ foundIn }: AskedFile, recipes: Permit): Permit =>
  foundIn === undefined ? ASKED : { ...recipes, purpose: "found" };

/** The absolute paths of the folders that `--read-also` names. */
export async function foldersToReadAlso(
  { files, cwd }: Pick<CliIo, "files" | "cwd">,
  given: readonly string[] = [],
): Promise<readonly string[]> {
  const folders: string[] = [];
  for (const folder of given) {
    const absolute = path.resolve(cwd, folder);
    if (folder === "" || (await files.kind(absolute)) !== "folder") {
      throw new UsageError(`\`--read-also\` takes a folder, and \`${folder}\` is none. Check the spelling.`);
    }
    folders.push(absolute);
  }
  return folders;
}
