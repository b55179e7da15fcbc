/** All ways through the files for one analysis; the names are worked out when one of them is first taken. */
import { callItemsAt, incomingCalls, outgoingCalls } from "./call-hierarchy.ts";
import { definitionAt } from "./definition.ts";
import { editsForMoves, type Resolve } from "./moved-files.ts";
import type { Names } from "./names/names.ts";
import { highlightsAt, referencesAt } from "./references.ts";
import { renameAt, renameTargetAt } from "./rename/rename.ts";
import type { Navigation } from "./types.ts";
import { useLinksOf } from "./use-links.ts";
import { workspaceSymbols } from "./workspace-symbols.ts";

export function createNavigation(names: Names, resolve: Resolve): Navigation {
  const { program } = names;
  return {
    definition: (file, offset) => definitionAt(names, file, offset),
    references: (file, offset, withDeclaration) => referencesAt(names, file, offset, withDeclaration),
    highlights: (file, offset) => highlightsAt(names, file, offset),
    renameTarget: (file, offset) => renameTargetAt(names, file, offset),
    rename: (file, offset, newName) => renameAt(names, file, offset, newName),
    workspaceSymbols: (query) => workspaceSymbols(program, query),
    useLinks: (file) => useLinksOf(program, file),
    editsForMoves: (movedTo) => editsForMoves(program, resolve, movedTo),
    callItems: (file, offset) => callItemsAt(names, file, offset),
    incomingCalls: (file, offset) => incomingCalls(names, file, offset),
    outgoingCalls: (file, offset) => outgoingCalls(names, file, offset),
  };
}
