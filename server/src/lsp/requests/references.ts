/** `textDocument/references`: everywhere that a thing is named, in all files of the folders. */
import type { Location, ReferenceParams } from "vscode-languageserver";
import { offsetOf } from "../from-lsp.ts";
import { inParts } from "../parts.ts";
import type { Session } from "../session.ts";
import { toLocation } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const references = async (session: Session, params: ReferenceParams): Promise<Location[] | null> => {
  await session.files.complete();
  const file = fileIdOf(params.textDocument.uri);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return null;
  const found = snapshot.analysis
    .references(file, offsetOf(document, params.position), params.context.includeDeclaration)
    .flatMap((place) => toLocation(snapshot, place) ?? []);
  return inParts(session, params, found);
};
