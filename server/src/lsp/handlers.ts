/**
 * Every message that a client may send after `initialize`, with what answers it.
 *
 * `server.ts` registers those that the declared capabilities promise (`methodsOf`), all of them behind the guard.
 */

import type {
  CallHierarchyIncomingCallsParams,
  CallHierarchyOutgoingCallsParams,
  CallHierarchyPrepareParams,
  CancellationToken,
  CodeActionParams,
  CodeLensParams,
  ColorPresentationParams,
  CompletionParams,
  DefinitionParams,
  DidChangeConfigurationParams,
  DidChangeTextDocumentParams,
  DidChangeWatchedFilesParams,
  DidCloseTextDocumentParams,
  DidOpenTextDocumentParams,
  DocumentColorParams,
  DocumentDiagnosticParams,
  DocumentFormattingParams,
  DocumentHighlightParams,
  DocumentLinkParams,
  DocumentRangeFormattingParams,
  DocumentRangesFormattingParams,
  DocumentSymbolParams,
  FoldingRangeParams,
  HoverParams,
  InlayHintParams,
  PrepareRenameParams,
  ReferenceParams,
  RenameFilesParams,
  RenameParams,
  SelectionRangeParams,
  SemanticTokensDeltaParams,
  SemanticTokensParams,
  SemanticTokensRangeParams,
  SignatureHelpParams,
  TextDocumentPositionParams,
  WorkspaceDiagnosticParams,
  WorkspaceSymbolParams,
} from "vscode-languageserver";
import { spokenLanguage } from "../../../grammar/src/translate.ts";
import { shownText } from "../escape/shown-text.ts";
import { pageInLanguage } from "../features/page-in-language.ts";
import type { Connection } from "./connection.ts";
import {
  BENCH,
  BENCH_EXPORT,
  type BenchExportParams,
  type BenchParams,
  CHANGED,
  type ChangedParams,
  COLOURED,
  type ColouredParams,
  FIND,
  type FindParams,
  PAGE,
  type Page,
  type PageParams,
  REPORT,
  type ReportParams,
  RULES,
  WORKSHOP,
} from "./custom-requests.ts";
import { changeFolders } from "./folder-files.ts";
import { guardNotification, guardRequest } from "./guard.ts";
import { changeSettings } from "./load-settings.ts";
import { wrongParams } from "./params.ts";
import { ErrorCodes, ResponseError } from "./protocol.ts";
import { bench, benchExport } from "./requests/bench.ts";
import { changed } from "./requests/changed.ts";
import { codeAction } from "./requests/code-action.ts";
import { codeLens } from "./requests/code-lens.ts";
import { coloured } from "./requests/coloured.ts";
import { completion } from "./requests/completion.ts";
import { definition } from "./requests/definition.ts";
import { colorPresentation, documentColor } from "./requests/document-color.ts";
import { documentDiagnostic } from "./requests/document-diagnostic.ts";
import { documentHighlight } from "./requests/document-highlight.ts";
import { documentLink } from "./requests/document-link.ts";
import { documentSymbol } from "./requests/document-symbol.ts";
import { find } from "./requests/find.ts";
import { foldingRange } from "./requests/folding-range.ts";
import { formatting } from "./requests/formatting.ts";
import { hover } from "./requests/hover.ts";
import { incomingCalls } from "./requests/incoming-calls.ts";
import { inlayHint } from "./requests/inlay-hint.ts";
import { outgoingCalls } from "./requests/outgoing-calls.ts";
import { prepareCallHierarchy } from "./requests/prepare-call-hierarchy.ts";
import { prepareRename } from "./requests/prepare-rename.ts";
import { references } from "./requests/references.ts";
import { rename } from "./requests/rename.ts";
import { report } from "./requests/report.ts";
import { rules } from "./requests/rules.ts";
import { selectionRange } from "./requests/selection-range.ts";
import { semanticTokens, semanticTokensDelta, semanticTokensRange } from "./requests/semantic-tokens.ts";
import { signatureHelp } from "./requests/signature-help.ts";
import { willRenameFiles } from "./requests/will-rename-files.ts";
import { workshop } from "./requests/workshop.ts";
import { workspaceDiagnostic } from "./requests/workspace-diagnostic.ts";
import { workspaceSymbol } from "./requests/workspace-symbol.ts";
import type { Session } from "./session.ts";
import { fileIdOf } from "./uri.ts";

export interface Handler {
  readonly method: string;
  register(connection: Connection, session: Session): void;
}

/** Told to a client that asks for findings and cannot be given any: an empty answer would call the text sound. */
const NOT_CHECKED = new ResponseError(
  ErrorCodes.InternalError,
  "The findings could not be worked out. This is a bug in Finishwright, not in the recipe; the log says more.",
);

/** Asked only for the text that a person has before them. */
const LOOKS: ReadonlySet<string> = new Set([
  "textDocument/hover",
  "textDocument/completion",
  "textDocument/signatureHelp",
  "textDocument/documentHighlight",
]);

type RequestAnswer<P, R> = (session: Session, params: P, token: CancellationToken) => R | Promise<R>;

const request = <P, R>(
  method: string,
  fallback: R | ResponseError<unknown>,
  answer: RequestAnswer<P, R>,
): Handler => ({
  method,
  register(connection, session) {
    const handle = (params: P, token: CancellationToken) => answer(session, params, token);
    const guarded = guardRequest(method, fallback, handle, session.log);
    connection.onRequest(method, (...given: readonly unknown[]) => {
      session.turns.messageCame();
      const params = paramsIn(given);
      const wrong = wrongParams(method, params);
      if (wrong !== undefined) return new ResponseError(ErrorCodes.InvalidParams, wrong);
      if (LOOKS.has(method)) session.files.look((params as TextDocumentPositionParams).textDocument.uri);
      const done = session.host.watch?.(spokenOf(method, params));
      return guarded(params as P, given.at(-1) as CancellationToken).finally(done);
    });
  },
});

const notification = <P>(
  method: string,
  take: (session: Session, params: P) => void | Promise<void>,
): Handler => ({
  method,
  register(connection, session) {
    const handle = (params: P) => take(session, params);
    const guarded = guardNotification(method, handle, session.log);
    connection.onNotification(method, (...given: readonly unknown[]) => {
      session.turns.messageCame();
      const params = given.length > 1 ? given : given[0];
      const wrong = wrongParams(method, params);
      if (wrong !== undefined) return session.log(wrong);
      if (LOOKS.has(method)) session.files.look((params as TextDocumentPositionParams).textDocument.uri);
      const done = session.host.watch?.(spokenOf(method, params));
      return guarded(params as P).finally(done);
    });
  },
});

/** A handler gets the parameters, of which there may be none or a list, and a token behind them. */
const paramsIn = (given: readonly unknown[]): unknown =>
  given.length === 2 ? given[0] : given.length === 1 ? undefined : given.slice(0, -1);

/** `textDocument/hover of "file:///shop/table.finish"` */
const spokenOf = (method: string, params: unknown): string => {
  const document: unknown = Reflect.get(Object(params), "textDocument");
  const uri: unknown = Reflect.get(Object(document), "uri");
  return typeof uri === "string" ? `${method} of "${shownText(uri)}"` : method;
};

export const HANDLERS: readonly Handler[] = [
  notification(
    "textDocument/didOpen",
    ({ diagnostics, files }, { textDocument }: DidOpenTextDocumentParams) => {
      const file = fileIdOf(textDocument.uri);
      diagnostics.asked.delete(file);
      diagnostics.openings.set(file, (diagnostics.openings.get(file) ?? 0) + 1);
      files.open(textDocument.uri, textDocument.version, textDocument.text);
      files.look(textDocument.uri);
    },
  ),
  notification(
    "textDocument/didChange",
    ({ files }, { textDocument, contentChanges }: DidChangeTextDocumentParams) => {
      files.look(textDocument.uri);
      files.change(textDocument.uri, textDocument.version, contentChanges);
    },
  ),
  notification("textDocument/didClose", (session, { textDocument }: DidCloseTextDocumentParams) => {
    const file = fileIdOf(textDocument.uri);
    session.diagnostics.asked.delete(file);
    session.diagnostics.doubtful.add(file);
    session.files.close(textDocument.uri);
    session.pushed?.closed(textDocument.uri);
    session.sentTokens.forget(textDocument.uri);
  }),
  notification("textDocument/didSave", ({ files }) => files.saved()),
  notification("workspace/didChangeWatchedFiles", ({ files }, params: DidChangeWatchedFilesParams) => {
    files.changedOnDisk(params.changes);
  }),
  notification("workspace/didChangeConfiguration", (session, params: DidChangeConfigurationParams) =>
    changeSettings(session, params.settings),
  ),
  notification("workspace/didChangeWorkspaceFolders", changeFolders),
  request("textDocument/hover", null, (session, params: HoverParams) => hover(session, params)),
  request("textDocument/documentSymbol", [], (session, params: DocumentSymbolParams) =>
    documentSymbol(session, params),
  ),
  request("textDocument/completion", null, (session, params: CompletionParams) =>
    completion(session, params),
  ),
  request("textDocument/definition", null, (session, params: DefinitionParams) =>
    definition(session, params),
  ),
  request("textDocument/references", null, (session, params: ReferenceParams) => references(session, params)),
  request("textDocument/documentHighlight", null, (session, params: DocumentHighlightParams) =>
    documentHighlight(session, params),
  ),
  request("textDocument/prepareRename", null, (session, params: PrepareRenameParams) =>
    prepareRename(session, params),
  ),
  request("textDocument/rename", null, (session, params: RenameParams, token) =>
    rename(session, params, token),
  ),
  request("workspace/willRenameFiles", null, (session, params: RenameFilesParams) =>
    willRenameFiles(session, params),
  ),
  request("workspace/symbol", [], (session, params: WorkspaceSymbolParams) =>
    workspaceSymbol(session, params),
  ),
  request("textDocument/documentLink", [], (session, params: DocumentLinkParams) =>
    documentLink(session, params),
  ),
  request("textDocument/prepareCallHierarchy", null, (session, params: CallHierarchyPrepareParams) =>
    prepareCallHierarchy(session, params),
  ),
  request("callHierarchy/incomingCalls", null, (session, params: CallHierarchyIncomingCallsParams) =>
    incomingCalls(session, params),
  ),
  request("callHierarchy/outgoingCalls", null, (session, params: CallHierarchyOutgoingCallsParams) =>
    outgoingCalls(session, params),
  ),
  request("textDocument/signatureHelp", null, (session, params: SignatureHelpParams) =>
    signatureHelp(session, params),
  ),
  request("textDocument/semanticTokens/full", null, (session, params: SemanticTokensParams) =>
    semanticTokens(session, params),
  ),
  request("textDocument/semanticTokens/full/delta", null, (session, params: SemanticTokensDeltaParams) =>
    semanticTokensDelta(session, params),
  ),
  request("textDocument/semanticTokens/range", null, (session, params: SemanticTokensRangeParams) =>
    semanticTokensRange(session, params),
  ),
  request("textDocument/foldingRange", [], (session, params: FoldingRangeParams) =>
    foldingRange(session, params),
  ),
  request("textDocument/documentColor", [], (session, params: DocumentColorParams) =>
    documentColor(session, params),
  ),
  request("textDocument/colorPresentation", [], (_, params: ColorPresentationParams) =>
    colorPresentation(params),
  ),
  request("textDocument/selectionRange", null, (session, params: SelectionRangeParams) =>
    selectionRange(session, params),
  ),
  request("textDocument/inlayHint", [], (session, params: InlayHintParams, token) =>
    inlayHint(session, params, token),
  ),
  request("textDocument/codeLens", [], (session, params: CodeLensParams, token) =>
    codeLens(session, params, token),
  ),
  request("textDocument/formatting", null, (session, { textDocument }: DocumentFormattingParams) =>
    formatting(session, textDocument),
  ),
  request(
    "textDocument/rangeFormatting",
    null,
    (session, { textDocument, range }: DocumentRangeFormattingParams) =>
      formatting(session, textDocument, [range]),
  ),
  request(
    "textDocument/rangesFormatting",
    null,
    (session, { textDocument, ranges }: DocumentRangesFormattingParams) =>
      formatting(session, textDocument, ranges),
  ),
  request("textDocument/codeAction", [], (session, params: CodeActionParams) => codeAction(session, params)),
  request("textDocument/diagnostic", NOT_CHECKED, (session, params: DocumentDiagnosticParams, token) =>
    documentDiagnostic(session, params, token),
  ),
  request("workspace/diagnostic", NOT_CHECKED, (session, params: WorkspaceDiagnosticParams, token) =>
    workspaceDiagnostic(session, params, token),
  ),
  request(REPORT, null, (session, params: ReportParams, token) => report(session, params, token)),
  request(BENCH, null, (session, params: BenchParams) => bench(session, params)),
  request(BENCH_EXPORT, null, (session, params: BenchExportParams, token) =>
    benchExport(session, params, token),
  ),
  request(
    PAGE,
    null,
    (_, params: PageParams): Page => ({ text: pageInLanguage(params.text), language: spokenLanguage() }),
  ),
  request(COLOURED, [], (_, params: ColouredParams) => coloured(params)),
  request(RULES, [], (session) => rules(session)),
  request(WORKSHOP, [], (session, _, token) => workshop(session, token)),
  request(FIND, null, (session, params: FindParams, token) => find(session, params, token)),
  request(CHANGED, null, (session, params: ChangedParams, token) => changed(session, params, token)),
];
