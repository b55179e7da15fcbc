/**
 * The constants of the protocol that the server writes and compares, and the error that answers a request.
 *
 * They are held to the library's own (`satisfies`), and stand here since the library's are in one piece with the rest of
 * it: every start would load and run 130 kB of features that this server answers by itself.
 */
import type * as lsp from "vscode-languageserver";

export { ResponseError } from "vscode-jsonrpc";

export const ErrorCodes = {
  ParseError: -32700,
  InvalidRequest: -32600,
  InvalidParams: -32602,
  InternalError: -32603,
  ServerNotInitialized: -32002,
} as const satisfies Partial<typeof lsp.ErrorCodes>;

export const LSPErrorCodes = {
  RequestFailed: -32803,
  ContentModified: -32801,
  RequestCancelled: -32800,
  ServerCancelled: -32802,
} as const satisfies Partial<typeof lsp.LSPErrorCodes>;

export const MessageType = {
  Error: 1,
  Warning: 2,
  Info: 3,
  Log: 4,
} as const satisfies Partial<typeof lsp.MessageType>;

export const CodeActionKind = {
  QuickFix: "quickfix",
  SourceFixAll: "source.fixAll",
} as const satisfies Partial<typeof lsp.CodeActionKind>;

export const PositionEncodingKind = { UTF16: "utf-16" } as const satisfies Partial<
  typeof lsp.PositionEncodingKind
>;

export const TextDocumentSyncKind = { Incremental: 2 } as const satisfies Partial<
  typeof lsp.TextDocumentSyncKind
>;

export const FileOperationPatternKind = { file: "file", folder: "folder" } as const satisfies Partial<
  typeof lsp.FileOperationPatternKind
>;

export const FileChangeType = { Deleted: 3 } as const satisfies Partial<typeof lsp.FileChangeType>;

export type DiagnosticSeverity = lsp.DiagnosticSeverity;
export const DiagnosticSeverity = {
  Error: 1,
  Warning: 2,
  Information: 3,
  Hint: 4,
} as const satisfies typeof lsp.DiagnosticSeverity;

export const DiagnosticTag = { Unnecessary: 1 } as const satisfies Partial<typeof lsp.DiagnosticTag>;

export const DocumentDiagnosticReportKind = {
  Full: "full",
  Unchanged: "unchanged",
} as const satisfies typeof lsp.DocumentDiagnosticReportKind;

export const DocumentHighlightKind = { Read: 2, Write: 3 } as const satisfies Partial<
  typeof lsp.DocumentHighlightKind
>;

export type FoldingRangeKind = lsp.FoldingRangeKind;
export const FoldingRangeKind = {
  Comment: "comment",
  Imports: "imports",
  Region: "region",
} as const satisfies typeof lsp.FoldingRangeKind;

export const InsertTextFormat = { Snippet: 2 } as const satisfies Partial<typeof lsp.InsertTextFormat>;

export const MarkupKind = {
  PlainText: "plaintext",
  Markdown: "markdown",
} as const satisfies Omit<typeof lsp.MarkupKind, "is">;

export type SymbolKind = lsp.SymbolKind;
export const SymbolKind = {
  File: 1,
  Module: 2,
  Method: 6,
  Property: 7,
  Field: 8,
  Function: 12,
  Constant: 14,
  Number: 16,
  Object: 19,
  Event: 24,
} as const satisfies Partial<typeof lsp.SymbolKind>;

export type CompletionItemKind = lsp.CompletionItemKind;
export const CompletionItemKind = {
  Method: 2,
  Function: 3,
  Field: 5,
  Variable: 6,
  Module: 9,
  Property: 10,
  Unit: 11,
  Value: 12,
  Keyword: 14,
  File: 17,
  EnumMember: 20,
  Constant: 21,
  Event: 23,
} as const satisfies Partial<typeof lsp.CompletionItemKind>;

/** The messages that do not go to a handler of `handlers.ts`. */
export const METHODS: {
  readonly initialize: typeof lsp.InitializeRequest.method;
  readonly initialized: typeof lsp.InitializedNotification.method;
  readonly shutdown: typeof lsp.ShutdownRequest.method;
  readonly exit: typeof lsp.ExitNotification.method;
  readonly log: typeof lsp.LogMessageNotification.method;
  readonly show: typeof lsp.ShowMessageNotification.method;
  readonly publish: typeof lsp.PublishDiagnosticsNotification.method;
  readonly configuration: typeof lsp.ConfigurationRequest.method;
  readonly configurationChanged: typeof lsp.DidChangeConfigurationNotification.method;
  readonly filesChanged: typeof lsp.DidChangeWatchedFilesNotification.method;
  readonly register: typeof lsp.RegistrationRequest.method;
  readonly createProgress: typeof lsp.WorkDoneProgressCreateRequest.method;
  readonly progress: "$/progress";
  readonly refreshDiagnostics: typeof lsp.DiagnosticRefreshRequest.method;
  readonly refreshInlayHints: typeof lsp.InlayHintRefreshRequest.method;
  readonly refreshCodeLenses: typeof lsp.CodeLensRefreshRequest.method;
  readonly refreshSemanticTokens: typeof lsp.SemanticTokensRefreshRequest.method;
} = {
  initialize: "initialize",
  initialized: "initialized",
  shutdown: "shutdown",
  exit: "exit",
  log: "window/logMessage",
  show: "window/showMessage",
  publish: "textDocument/publishDiagnostics",
  configuration: "workspace/configuration",
  configurationChanged: "workspace/didChangeConfiguration",
  filesChanged: "workspace/didChangeWatchedFiles",
  register: "client/registerCapability",
  createProgress: "window/workDoneProgress/create",
  progress: "$/progress",
  refreshDiagnostics: "workspace/diagnostic/refresh",
  refreshInlayHints: "workspace/inlayHint/refresh",
  refreshCodeLenses: "workspace/codeLens/refresh",
  refreshSemanticTokens: "workspace/semanticTokens/refresh",
};
