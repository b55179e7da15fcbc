/**
 * `textDocument/codeAction`: the fixes of the findings at the caret.
 *
 * Findings below the level that the user asked for are not shown, so their fixes are not offered either.
 */
import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type Diagnostic,
} from "vscode-languageserver";
import { spanOf, touches } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { isShown } from "../settings.ts";
import { toCodeAction, toDiagnostic } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const codeAction = async (session: Session, params: CodeActionParams): Promise<CodeAction[]> => {
  if (!asksForFixes(params)) return [];
  const file = fileIdOf(params.textDocument.uri);
  await session.files.settled(file);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return [];
  const span = spanOf(document, params.range);
  return snapshot.analysis
    .findings(file)
    .filter((finding) => touches(finding.span, span) && isShown(finding.severity, session.settings))
    .flatMap((finding) => {
      if (finding.fixes.length === 0) return [];
      const { facts, rulePage } = session;
      const own = toDiagnostic(finding, document, snapshot, facts, rulePage);
      // The client's own copy of the diagnostic, so that it can tell which one the fix takes away.
      const answered = params.context.diagnostics.filter((known) => isSame(known, own));
      const diagnostics = answered.length > 0 ? answered : [own];
      return finding.fixes.map((fix) => toCodeAction(fix, diagnostics, snapshot, facts));
    });
};

/** Kinds are a tree: who asks for `quickfix`, or for everything, gets fixes. */
const asksForFixes = (params: CodeActionParams): boolean =>
  params.context.only?.some((kind) => kind === "" || kind === CodeActionKind.QuickFix) ?? true;

const isSame = (a: Diagnostic, b: Diagnostic): boolean =>
  a.code === b.code &&
  a.message === b.message &&
  a.range.start.line === b.range.start.line &&
  a.range.start.character === b.range.start.character;
