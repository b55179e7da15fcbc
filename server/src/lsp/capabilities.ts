/**
 * What the server tells a client that it can do, in one place.
 *
 * The list of handlers is in `server.ts`; `methodsOf` says which of them each declared capability promises, and
 * tests/lsp/capabilities.test.ts holds the two together, so that nothing is declared that is not answered, and
 * nothing answered that is not declared.
 */
import type { FileOperationRegistrationOptions, ServerCapabilities } from "vscode-languageserver";
import { TOKEN_MODIFIERS, TOKEN_TYPES } from "../features/types.ts";
import type { ClientFacts } from "./client-facts.ts";
import {
  BENCH,
  BENCH_EXPORT,
  CHANGED,
  COLOURED,
  FIND,
  PAGE,
  REPORT,
  RULES,
  WORKSHOP,
} from "./custom-requests.ts";
import {
  CodeActionKind,
  FileOperationPatternKind,
  PositionEncodingKind,
  TextDocumentSyncKind,
} from "./protocol.ts";

/** Characters after which completion opens without a letter typed: a line's first word calls for its value. */
const COMPLETION_TRIGGERS = [" ", '"', "/", "(", "."];

/** Of our own, below the kind that every client knows, so that a person can ask for it alone when a file is saved. */
export const FIX_ALL = `${CodeActionKind.SourceFixAll}.finishwright`;

/** A folder may have recipes in it, whatever its name. */
const MOVING_RECIPES: FileOperationRegistrationOptions["filters"] = [
  { pattern: { glob: "**/*.finish", matches: FileOperationPatternKind.file } },
  { pattern: { glob: "**", matches: FileOperationPatternKind.folder } },
];

const OWN_REQUESTS = [BENCH, BENCH_EXPORT, CHANGED, COLOURED, FIND, PAGE, REPORT, RULES, WORKSHOP];

export const serverCapabilities = (facts: ClientFacts): ServerCapabilities => ({
  positionEncoding: PositionEncodingKind.UTF16,
  textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
  hoverProvider: true,
  documentSymbolProvider: { label: "Finishwright" },
  completionProvider: { triggerCharacters: COMPLETION_TRIGGERS, resolveProvider: false },
  definitionProvider: true,
  referencesProvider: true,
  documentHighlightProvider: true,
  renameProvider: facts.preparesRename ? { prepareProvider: true } : true,
  workspaceSymbolProvider: { resolveProvider: false },
  documentLinkProvider: { resolveProvider: false },
  callHierarchyProvider: true,
  signatureHelpProvider: { triggerCharacters: ["(", ","], retriggerCharacters: [":", ")"] },
  semanticTokensProvider: {
    legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [...TOKEN_MODIFIERS] },
    range: true,
    full: { delta: true },
  },
  foldingRangeProvider: true,
  colorProvider: true,
  selectionRangeProvider: true,
  inlayHintProvider: { resolveProvider: false },
  codeLensProvider: { resolveProvider: false },
  documentFormattingProvider: true,
  documentRangeFormattingProvider: { rangesSupport: true },
  // A client without literals could only be offered commands, and there are none.
  ...(facts.codeActionLiterals && {
    codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, FIX_ALL], resolveProvider: false },
  }),
  // A client that does not pull gets its diagnostics pushed, and never both.
  ...(facts.pullsDiagnostics && {
    diagnosticProvider: {
      identifier: "finishwright",
      interFileDependencies: true,
      workspaceDiagnostics: true,
    },
  }),
  workspace: {
    workspaceFolders: { supported: true, changeNotifications: true },
    ...(facts.announcesRenamedFiles && { fileOperations: { willRename: { filters: MOVING_RECIPES } } }),
  },
  experimental: Object.fromEntries(OWN_REQUESTS.map((method) => [method, true])),
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
  ...when(capabilities.definitionProvider, ["textDocument/definition"]),
  ...when(capabilities.referencesProvider, ["textDocument/references"]),
  ...when(capabilities.documentHighlightProvider, ["textDocument/documentHighlight"]),
  ...when(capabilities.renameProvider, ["textDocument/rename"]),
  ...when(preparesRename(capabilities), ["textDocument/prepareRename"]),
  ...when(capabilities.workspaceSymbolProvider, ["workspace/symbol"]),
  ...when(capabilities.documentLinkProvider, ["textDocument/documentLink"]),
  ...when(capabilities.callHierarchyProvider, [
    "textDocument/prepareCallHierarchy",
    "callHierarchy/incomingCalls",
    "callHierarchy/outgoingCalls",
  ]),
  ...when(capabilities.workspace?.fileOperations?.willRename, ["workspace/willRenameFiles"]),
  ...when(capabilities.signatureHelpProvider, ["textDocument/signatureHelp"]),
  ...when(capabilities.semanticTokensProvider, [
    "textDocument/semanticTokens/full",
    "textDocument/semanticTokens/full/delta",
    "textDocument/semanticTokens/range",
  ]),
  ...when(capabilities.foldingRangeProvider, ["textDocument/foldingRange"]),
  ...when(capabilities.colorProvider, ["textDocument/documentColor", "textDocument/colorPresentation"]),
  ...when(capabilities.selectionRangeProvider, ["textDocument/selectionRange"]),
  ...when(capabilities.inlayHintProvider, ["textDocument/inlayHint"]),
  ...when(capabilities.codeLensProvider, ["textDocument/codeLens"]),
  ...when(capabilities.documentFormattingProvider, ["textDocument/formatting"]),
  ...when(capabilities.documentRangeFormattingProvider, [
    "textDocument/rangeFormatting",
    "textDocument/rangesFormatting",
  ]),
  ...when(capabilities.codeActionProvider, ["textDocument/codeAction"]),
  ...when(capabilities.diagnosticProvider, ["textDocument/diagnostic", "workspace/diagnostic"]),
  ...when(capabilities.workspace?.workspaceFolders, ["workspace/didChangeWorkspaceFolders"]),
  ...OWN_REQUESTS.flatMap((method) => when(capabilities.experimental?.[method], [method])),
];

const preparesRename = ({ renameProvider }: ServerCapabilities): boolean =>
  typeof renameProvider === "object" && renameProvider.prepareProvider === true;

const when = (declared: unknown, methods: readonly string[]): readonly string[] =>
  declared === undefined || declared === false ? [] : methods;
