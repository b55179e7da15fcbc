/** `workspace/symbol`: what all files declare under a name with these letters, the best matches first. */
import type { SymbolInformation, WorkspaceSymbolParams } from "vscode-languageserver";
import { shownText } from "../../escape/shown-text.ts";
import { inParts } from "../parts.ts";
import type { Session } from "../session.ts";
import { SYMBOL, toLocation } from "../to-lsp.ts";

export const workspaceSymbol = async (
  session: Session,
  params: WorkspaceSymbolParams,
): Promise<SymbolInformation[]> => {
  await session.files.complete();
  const snapshot = session.files.snapshot();
  const found: SymbolInformation[] = snapshot.analysis
    .workspaceSymbols(params.query)
    .flatMap(({ name, kind, container, file, nameSpan }) => {
      const location = toLocation(snapshot, { file, span: nameSpan });
      if (location === undefined) return [];
      return {
        name: shownText(name),
        kind: SYMBOL[kind],
        location,
        ...(container !== undefined && { containerName: shownText(container) }),
      };
    });
  return inParts(session, params, found);
};
