/**
 * `textDocument/definition`: from a name to what it means.
 *
 * A client that takes links underlines the whole name and shows the whole of what is meant; others get the place of the
 * name alone.
 */
import type { DefinitionParams, Location, LocationLink } from "vscode-languageserver";
import { offsetOf } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { toLocation, toRange } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const definition = async (
  session: Session,
  params: DefinitionParams,
): Promise<Location[] | LocationLink[] | null> => {
  const file = fileIdOf(params.textDocument.uri);
  await session.files.settled(file);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return null;
  const found = snapshot.analysis.definition(file, offsetOf(document, params.position));
  if (found === undefined) return null;
  if (!session.facts.definitionLinks) {
    return found.targets.flatMap(
      (target) => toLocation(snapshot, { file: target.file, span: target.nameSpan }) ?? [],
    );
  }
  return found.targets.flatMap((target) => {
    const targetDocument = snapshot.document(target.file);
    if (targetDocument === undefined) return [];
    return {
      originSelectionRange: toRange(document, found.origin),
      targetUri: snapshot.uriOf(target.file),
      targetRange: toRange(targetDocument, target.span),
      targetSelectionRange: toRange(targetDocument, target.nameSpan),
    };
  });
};
