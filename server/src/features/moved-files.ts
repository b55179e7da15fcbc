/**
 * Keeps `use` lines true when files are renamed or moved: the lines that name such a file, and the lines in it, whose
 * paths are relative to where it stands. A line that means the same afterwards is left as it is.
 */
import { absoluteSpan } from "../../../grammar/src/walk.ts";
import { isPackagePath } from "../core/model/package-path.ts";
import type { Program, ProgramFile, UseLink } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import type { FileEdit } from "../views/places/file-finding.ts";
import { relativePath } from "./relative-path.ts";

export type Resolve = (from: FileId, path: string) => FileId;

/** Edits of the files as they stand before the move. */
export function editsForMoves(
  program: Program,
  resolve: Resolve,
  movedTo: (file: FileId) => FileId,
): readonly FileEdit[] {
  return [...program.files.values()].flatMap((file) =>
    file.uses.flatMap((use) => editOf(file, use, resolve, movedTo) ?? []),
  );
}

function editOf(
  file: ProgramFile,
  { path, place, target }: UseLink,
  resolve: Resolve,
  movedTo: (file: FileId) => FileId,
): FileEdit | undefined {
  // The name of a package means the same wherever it is said.
  if (isPackagePath(path)) return undefined;
  const [from, to] = [movedTo(file.id), movedTo(target)];
  const tree = file.byKey.get(place.declaration)?.tree;
  if (!tree || (from === file.id && to === target) || resolve(from, path) === to) return undefined;
  const way = relativePath(from, to);
  if (way === undefined) return undefined;
  const written = path.startsWith("./") && !way.startsWith("../") ? `./${way}` : way;
  // Nothing that would lead astray is written; the finding at the line tells of it.
  if (resolve(from, written) !== to) return undefined;
  const span = absoluteSpan(tree, place.span);
  return { file: file.id, span, text: `"${written.replace(/["\\]/gu, "\\$&")}"` };
}
