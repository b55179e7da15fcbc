/** Where `use` lines lead in an editor, those into installed packages among them, and that these may be read. */
import { packagePath } from "../core/model/package-path.ts";
import type { FileId } from "../core/place.ts";
import type { Resolve } from "../features/moved-files.ts";
import type { AllowedFolders } from "./allowed-folders.ts";
import type { Host } from "./host.ts";
import { fileIdOf, fileIn, foldersOf, isDiskFile, resolveUse } from "./uri.ts";

/**
 * A package is looked for where there is a disk; elsewhere its recipes are those of the folder `node_modules` beside the
 * file. One that is not found is looked for again, since it may have been installed meanwhile.
 */
export function createResolve(
  host: Pick<Host, "findPackage">,
  allowed: Pick<AllowedFolders, "addPackage">,
): Resolve {
  const known = new Map<string, FileId>();
  const found = (folder: FileId, name: string): FileId | undefined => {
    const key = `${folder}\0${name}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const uri = isDiskFile(folder) ? host.findPackage?.(folder, name) : undefined;
    if (uri === undefined) return undefined;
    const file = fileIdOf(uri);
    known.set(key, file);
    allowed.addPackage(file);
    return file;
  };
  return (from, used) => {
    const asked = packagePath(used);
    const [own] = foldersOf(from);
    if (asked === undefined || own === undefined) return resolveUse(from, used);
    const { name, file } = asked;
    return fileIn(found(own, name) ?? fileIn(own, `node_modules/${name}`), file);
  };
}
