/** `textDocument/hover`: the figures behind a word, and where they come from. */
import type { Hover, HoverParams } from "vscode-languageserver";
import { offsetOf } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { toHover } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const hover = async (session: Session, params: HoverParams): Promise<Hover | null> => {
  const file = fileIdOf(params.textDocument.uri);
  await session.files.settled(file);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return null;
  const info = snapshot.analysis.hover(file, offsetOf(document, params.position));
  return info === undefined ? null : toHover(info, document, session.facts);
};
