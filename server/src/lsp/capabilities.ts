/**
 * What the server tells a client that it can do, in one place.
 *
 * The list of handlers is in `server.ts`; `methodsOf` says which of them each declared capability promises, and
 * tests/lsp/capabilities.test.ts holds the two together, so that nothing is declared that is not answered, and
 * nothing answered that is not declared.
 */
import {
  CodeActionKind,
  PositionEncodingKind,
  type ServerCapabilities,
  TextDocumentSyncKind,
} from "vscode-languageserver";
import type { ClientFacts } from "./client-facts.ts";

/** Characters after which completion opens without a letter typed: a line's first word calls for its value. */
const COMPLETION_TRIGGERS = [" ", '"', "/", "(", "."];

export const serverCapabilities = (facts: ClientFacts): ServerCapabilities => ({
  positionEncoding: PositionEncodingKind.UTF16,
  textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
  hoverProvider: true,
  documentSymbolProvider: { label: "Finishwright" },
  completionProvider: { triggerCharacters: COMPLETION_TRIGGERS, resolveProvider: false },
  inlayHintProvider: { resolveProvider: false },
  codeLensProvider: { resolveProvider: false },
  // A client without literals could only be offered commands, and there are none.
  ...(facts.codeActionLiterals && {
    codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix], resolveProvider: false },
  }),
  // A client that does not pull gets its diagnostics pushed, and never both.
  ...(facts.pullsDiagnostics && {
    diagnosticProvider: {
      identifier: "finishwright",
      interFileDependencies: true,
      workspaceDiagnostics: true,
    },
  }),
  workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
});

/** The methods that a client may call because of what was declared. */
export const methodsOf = (capabilities: ServerCapabilities): readonly string[] => [
  // Every client may send these two, whatever is declared; they come because of what was registered or configured.
  "workspace/didChangeConfiguration",
  "workspace/didChangeWatchedFiles",
  ...when(capabilities.textDocumentSync, [
    "textDocument/didOpen",
    "textDocument/didChange",
    "textDocument/didClose",
    "textDocument/didSave",
  ]),
  ...when(capabilities.hoverProvider, ["textDocument/hover"]),
  ...when(capabilities.documentSymbolProvider, ["textDocument/documentSymbol"]),
  ...when(capabilities.completionProvider, ["textDocument/completion"]),
  ...when(capabilities.inlayHintProvider, ["textDocument/inlayHint"]),
  ...when(capabilities.codeLensProvider, ["textDocument/codeLens"]),
  ...when(capabilities.codeActionProvider, ["textDocument/codeAction"]),
  ...when(capabilities.diagnosticProvider, ["textDocument/diagnostic", "workspace/diagnostic"]),
  ...when(capabilities.workspace?.workspaceFolders, ["workspace/didChangeWorkspaceFolders"]),
];

const when = (declared: unknown, methods: readonly string[]): readonly string[] =>
  declared === undefined || declared === false ? [] : methods;
