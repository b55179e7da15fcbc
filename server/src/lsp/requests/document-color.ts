/** `textDocument/documentColor` and `textDocument/colorPresentation`: the colours that a text gives as numbers. */
import type {
  ColorInformation,
  ColorPresentation,
  ColorPresentationParams,
  DocumentColorParams,
} from "vscode-languageserver";
import { colourText } from "../../features/text-colours.ts";
import type { Session } from "../session.ts";
import { toRange } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const documentColor = (
  session: Session,
  { textDocument }: DocumentColorParams,
): ColorInformation[] => {
  const file = fileIdOf(textDocument.uri);
  const snapshot = session.files.snapshot(file);
  const document = snapshot.document(file);
  if (document === undefined) return [];
  return snapshot.analysis.textColours(file).map(({ span, red, green, blue }) => ({
    range: toRange(document, span),
    color: { red, green, blue, alpha: 1 },
  }));
};

/** Finishes are opaque as far as the notation goes: how much shines through is not written. */
export const colorPresentation = ({ color, range }: ColorPresentationParams): ColorPresentation[] => {
  const label = colourText(color);
  return [{ label, textEdit: { range, newText: label } }];
};
