/**
 * The protocol's types, and of its values those that are spoken here.
 *
 * The types are those of `vscode-languageserver`, which a bundle has nothing of; its values would bring all of it. What is
 * written here is held against its types.
 */
import type * as protocol from "vscode-languageserver";

export { ErrorCodes, ResponseError } from "vscode-jsonrpc";
export type * from "vscode-languageserver";

/** The methods that the server sends by itself. */
export const LOG_MESSAGE = "window/logMessage";
export const SHOW_MESSAGE = "window/showMessage";
export const PUBLISH_DIAGNOSTICS = "textDocument/publishDiagnostics";
export const REGISTER_CAPABILITY = "client/registerCapability";
export const CONFIGURATION = "workspace/configuration";
export const REFRESH_DIAGNOSTICS = "workspace/diagnostic/refresh";
export const REFRESH_CODE_LENSES = "workspace/codeLens/refresh";
export const REFRESH_INLAY_HINTS = "workspace/inlayHint/refresh";
export const REFRESH_SEMANTIC_TOKENS = "workspace/semanticTokens/refresh";

/** The protocol's own codes; those of JSON-RPC are `ErrorCodes`. */
export const LSPErrorCodes = {
  RequestFailed: -32803,
  ServerCancelled: -32802,
  ContentModified: -32801,
  RequestCancelled: -32800,
} as const satisfies Partial<typeof protocol.LSPErrorCodes>;

export const CodeActionKind = {
  QuickFix: "quickfix",
  SourceFixAll: "source.fixAll",
  Source: "source",
} as const satisfies Partial<typeof protocol.CodeActionKind>;

export const CompletionItemKind = {
  Text: 1,
  Method: 2,
  Function: 3,
  Constructor: 4,
  Field: 5,
  Variable: 6,
  Class: 7,
  Interface: 8,
  Module: 9,
  Property: 10,
  Unit: 11,
  Value: 12,
  Enum: 13,
  Keyword: 14,
  Snippet: 15,
  Color: 16,
  File: 17,
  Reference: 18,
  Folder: 19,
  EnumMember: 20,
  Constant: 21,
  Struct: 22,
  Event: 23,
  Operator: 24,
  TypeParameter: 25,
} as const satisfies typeof protocol.CompletionItemKind;
export type CompletionItemKind = protocol.CompletionItemKind;

export const DiagnosticSeverity = {
  Error: 1,
  Warning: 2,
  Information: 3,
  Hint: 4,
} as const satisfies typeof protocol.DiagnosticSeverity;
export type DiagnosticSeverity = protocol.DiagnosticSeverity;

export const DiagnosticTag = {
  Unnecessary: 1,
  Deprecated: 2,
} as const satisfies typeof protocol.DiagnosticTag;
export type DiagnosticTag = protocol.DiagnosticTag;

export const DocumentDiagnosticReportKind = {
  Full: "full",
  Unchanged: "unchanged",
} as const satisfies typeof protocol.DocumentDiagnosticReportKind;
export type DocumentDiagnosticReportKind = protocol.DocumentDiagnosticReportKind;

export const DocumentHighlightKind = {
  Text: 1,
  Read: 2,
  Write: 3,
} as const satisfies typeof protocol.DocumentHighlightKind;
export type DocumentHighlightKind = protocol.DocumentHighlightKind;

export const FileChangeType = {
  Created: 1,
  Changed: 2,
  Deleted: 3,
} as const satisfies typeof protocol.FileChangeType;
export type FileChangeType = protocol.FileChangeType;

export const FileOperationPatternKind = {
  file: "file",
  folder: "folder",
} as const satisfies typeof protocol.FileOperationPatternKind;
export type FileOperationPatternKind = protocol.FileOperationPatternKind;

export const FoldingRangeKind = {
  Comment: "comment",
  Imports: "imports",
  Region: "region",
} as const satisfies typeof protocol.FoldingRangeKind;
export type FoldingRangeKind = protocol.FoldingRangeKind;

export const InsertTextFormat = {
  PlainText: 1,
  Snippet: 2,
} as const satisfies typeof protocol.InsertTextFormat;
export type InsertTextFormat = protocol.InsertTextFormat;

export const MarkupKind = {
  PlainText: "plaintext",
  Markdown: "markdown",
} as const satisfies Partial<typeof protocol.MarkupKind>;
export type MarkupKind = protocol.MarkupKind;

export const MessageType = {
  Error: 1,
  Warning: 2,
  Info: 3,
  Log: 4,
} as const satisfies Partial<typeof protocol.MessageType>;
export type MessageType = protocol.MessageType;

export const PositionEncodingKind = {
  UTF16: "utf-16",
} as const satisfies Partial<typeof protocol.PositionEncodingKind>;

export const SymbolKind = {
  Module: 2,
  Namespace: 3,
  Class: 5,
  Method: 6,
  Property: 7,
  Field: 8,
  Function: 12,
  Constant: 14,
  Null: 21,
  Struct: 23,
  Event: 24,
  Operator: 25,
} as const satisfies Partial<typeof protocol.SymbolKind>;
export type SymbolKind = protocol.SymbolKind;

export const TextDocumentSyncKind = {
  None: 0,
  Full: 1,
  Incremental: 2,
} as const satisfies typeof protocol.TextDocumentSyncKind;
export type TextDocumentSyncKind = protocol.TextDocumentSyncKind;
