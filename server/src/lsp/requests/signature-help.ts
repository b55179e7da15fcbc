/** `textDocument/signatureHelp`: what the recipe of a call takes, and which of it is being given. */
import type { SignatureHelp, SignatureHelpParams, SignatureInformation } from "vscode-languageserver";
import { shownText } from "../../escape/shown-text.ts";
import type { SignatureInfo } from "../../features/types.ts";
import type { ClientFacts } from "../client-facts.ts";
import { offsetOf } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { toMarkup } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const signatureHelp = (
  session: Session,
  { textDocument, position, context }: SignatureHelpParams,
): SignatureHelp | null => {
  const file = fileIdOf(textDocument.uri);
  const { analysis, document: documentOf } = session.files.snapshot();
  const document = documentOf(file);
  if (document === undefined) return null;
  const found = analysis.signatures(file, offsetOf(document, position));
  if (found.length === 0) return null;
  const signatures = found.map((signature) => toSignature(signature, session.facts));
  // The one that the user has gone to stays in sight.
  const chosen = context?.activeSignatureHelp?.activeSignature ?? 0;
  const activeSignature = chosen < signatures.length ? chosen : 0;
  const activeParameter = activeOf(found[activeSignature]!, session.facts);
  return { signatures, activeSignature, ...(activeParameter !== undefined && { activeParameter }) };
};

const toSignature = (signature: SignatureInfo, facts: ClientFacts): SignatureInformation => {
  const { markdown, parameters } = signature;
  // Every character is shown as one, so the places of the parameters still hold.
  const label = shownText(signature.label);
  const active = activeOf(signature, facts);
  return {
    label,
    ...(markdown !== "" && { documentation: toMarkup(markdown, facts.signatureMarkdown) }),
    parameters: parameters.map(({ span, markdown: documentation }) => ({
      label: facts.labelOffsets ? [span.start, span.end] : label.slice(span.start, span.end),
      documentation: toMarkup(documentation, facts.signatureMarkdown),
    })),
    ...(active !== undefined && { activeParameter: active }),
  };
};

/** A client that does not know that there may be none marks the first, unless it is sent to one that is not there. */
const activeOf = ({ active, parameters }: SignatureInfo, facts: ClientFacts): number | null | undefined => {
  if (parameters.length === 0) return undefined;
  return active ?? (facts.noActiveParameter ? null : parameters.length);
};
