/**
 * References: everywhere that a thing is named, in all files, also where its name is handed on as an argument; and for
 * the path of a `use` line, every `use` line that brings the same file in.
 */
import type { FileId } from "../core/place.ts";
import type { FileSpan } from "../views/places/file-finding.ts";
import { spanOfPlace } from "../views/places/to-absolute.ts";
import { type Names, usePathAt } from "./names/names.ts";
import type { HighlightInfo } from "./types.ts";

export function referencesAt(
  names: Names,
  file: FileId,
  offset: number,
  withDeclaration: boolean,
): readonly FileSpan[] {
  const occurrence = names.at(file, offset);
  if (!occurrence) return useLinesOf(names, file, offset);
  return names
    .meaning(occurrence.referents)
    .filter(({ isDeclaration }) => withDeclaration || !isDeclaration)
    .map(({ file: where, span }) => ({ file: where, span }));
}

/** The same within one file, declarations as places that write. */
export function highlightsAt(names: Names, file: FileId, offset: number): readonly HighlightInfo[] {
  const keys = new Set(names.at(file, offset)?.referents.map(({ key }) => key));
  return names
    .inFile(file)
    .filter(({ referents }) => referents.some(({ key }) => keys.has(key)))
    .map(({ span, isDeclaration }) => ({ span, kind: isDeclaration ? "write" : "read" }));
}

function useLinesOf({ program }: Names, file: FileId, offset: number): readonly FileSpan[] {
  const target = usePathAt(program, file, offset)?.target;
  if (target === undefined) return [];
  return [...program.files.values()].flatMap(({ uses }) =>
    uses.filter((use) => use.target === target).flatMap(({ place }) => spanOfPlace(program, place) ?? []),
  );
}
