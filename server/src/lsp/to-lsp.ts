/**
 * From the features' plain data to the protocol's types.
 *
 * Nothing is decided here but how a thing is written for this client: what it cannot show is left out or plainer.
 * A place in a file that the snapshot does not hold cannot be given a position, and is left out as well.
 */

import type {
  CallHierarchyItem,
  CodeAction,
  CompletionItem,
  Diagnostic,
  DiagnosticRelatedInformation,
  DocumentSymbol,
  Hover,
  Location,
  MarkupContent,
  Range,
  SymbolInformation,
  TextEdit,
  WorkspaceEdit,
} from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import { t } from "../../../grammar/src/translate.ts";
import type { Span } from "../../../grammar/src/tree.ts";
import type { Severity } from "../core/findings.ts";
import type { FileId } from "../core/place.ts";
import { shownLines, shownText } from "../escape/shown-text.ts";
import type {
  CallItem,
  CompletionEntry,
  CompletionKind,
  DocumentSymbolInfo,
  HoverInfo,
  SymbolKind as SymbolInfoKind,
} from "../features/types.ts";
import type { FileEdit, FileFinding, FileFix, FileSpan } from "../views/places/file-finding.ts";
import type { ClientFacts } from "./client-facts.ts";
import type { Snapshot } from "./files.ts";
import {
  CodeActionKind,
  CompletionItemKind,
  DiagnosticSeverity,
  DiagnosticTag,
  InsertTextFormat,
  MarkupKind,
  SymbolKind,
} from "./protocol.ts";

export const SOURCE = "finishwright";

/** Rules about text that does nothing; editors fade it. */
const UNNECESSARY: ReadonlySet<string> = new Set(["unused-name", "unused-suppression"]);

const SEVERITY: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** Editors say the kind in a word, beside its icon: of those that there are none that a finisher would stumble over. */
export const SYMBOL: Readonly<Record<SymbolInfoKind, SymbolKind>> = {
  material: SymbolKind.Constant,
  piece: SymbolKind.Object,
  surface: SymbolKind.Field,
  shop: SymbolKind.Module,
  recipe: SymbolKind.Function,
  job: SymbolKind.Event,
  use: SymbolKind.File,
  layer: SymbolKind.Property,
  step: SymbolKind.Method,
  wait: SymbolKind.Number,
};

const COMPLETION: Readonly<Record<CompletionKind, CompletionItemKind>> = {
  keyword: CompletionItemKind.Keyword,
  field: CompletionItemKind.Property,
  verb: CompletionItemKind.Method,
  word: CompletionItemKind.EnumMember,
  unit: CompletionItemKind.Unit,
  material: CompletionItemKind.Constant,
  piece: CompletionItemKind.Value,
  surface: CompletionItemKind.Field,
  shop: CompletionItemKind.Module,
  recipe: CompletionItemKind.Function,
  job: CompletionItemKind.Event,
  parameter: CompletionItemKind.Variable,
  file: CompletionItemKind.File,
};

/** What somebody has named is told apart by what it is, so that stands beside the name in the list. */
const NAMED: ReadonlySet<CompletionKind> = new Set([
  "material",
  "piece",
  "surface",
  "shop",
  "recipe",
  "job",
  "parameter",
]);

export const toRange = (document: TextDocument, span: Span): Range => ({
  start: document.positionAt(span.start),
  end: document.positionAt(Math.max(span.start, span.end)),
});

export const toLocation = (snapshot: Snapshot, place: FileSpan): Location | undefined => {
  const document = snapshot.document(place.file);
  return document && { uri: snapshot.uriOf(place.file), range: toRange(document, place.span) };
};

export const toDiagnostic = (
  finding: FileFinding,
  document: TextDocument,
  snapshot: Snapshot,
  facts: ClientFacts,
  rulePage: (rule: string) => string | undefined,
): Diagnostic => {
  const href = facts.codeDescription ? rulePage(finding.rule) : undefined;
  const related = facts.relatedInformation ? toRelated(finding, snapshot) : [];
  return {
    range: toRange(document, finding.span),
    severity: SEVERITY[finding.severity],
    code: finding.rule,
    source: SOURCE,
    message: toMessage(finding),
    ...(href !== undefined && { codeDescription: { href } }),
    ...(facts.unnecessaryTag && UNNECESSARY.has(finding.rule) && { tags: [DiagnosticTag.Unnecessary] }),
    ...(related.length > 0 && { relatedInformation: related }),
  };
};

export const toMessage = ({ message }: Pick<FileFinding, "message">): string => shownLines(quoted(message));

export const toHover = (hover: HoverInfo, document: TextDocument, facts: ClientFacts): Hover => ({
  contents: toMarkup(hover.markdown, facts.hoverMarkdown),
  range: toRange(document, hover.span),
});

export const toDocumentSymbol = (symbol: DocumentSymbolInfo, document: TextDocument): DocumentSymbol => ({
  // Clients refuse a symbol without a name, and one whose name lies outside of it.
  name: shownText(symbol.name) || symbol.kind,
  detail: shownText(symbol.detail),
  kind: SYMBOL[symbol.kind],
  range: toRange(document, symbol.span),
  selectionRange: toRange(document, within(symbol.nameSpan, symbol.span)),
  children: symbol.children.map((child) => toDocumentSymbol(child, document)),
});

export const toCallHierarchyItem = (item: CallItem, snapshot: Snapshot): CallHierarchyItem | undefined => {
  const document = snapshot.document(item.file);
  return (
    document && {
      name: shownText(item.name),
      kind: SYMBOL[item.kind],
      ...(item.title && { detail: shownText(item.title) }),
      uri: snapshot.uriOf(item.file),
      range: toRange(document, item.span),
      selectionRange: toRange(document, within(item.nameSpan, item.span)),
    }
  );
};

/** For clients that know no tree: every symbol of it in a row, with the name of the one around it. */
export const toSymbolInformation = (
  symbol: DocumentSymbolInfo,
  document: TextDocument,
  uri: string,
  containerName?: string,
): readonly SymbolInformation[] => [
  {
    name: shownText(symbol.name) || symbol.kind,
    kind: SYMBOL[symbol.kind],
    location: { uri, range: toRange(document, symbol.span) },
    ...(containerName !== undefined && { containerName: shownText(containerName) }),
  },
  ...symbol.children.flatMap((child) => toSymbolInformation(child, document, uri, symbol.name)),
];

export const toCompletionItem = (
  entry: CompletionEntry,
  document: TextDocument,
  facts: ClientFacts,
): CompletionItem => {
  const asSnippet = entry.snippet && facts.snippets;
  const detail = entry.detail === undefined ? undefined : shownText(entry.detail);
  const newText = entry.snippet && !asSnippet ? plainText(entry.insert) : entry.insert;
  return {
    label: shownText(entry.label),
    kind: COMPLETION[entry.kind],
    sortText: entry.sort,
    textEdit: { range: toRange(document, entry.replace), newText },
    ...(detail !== undefined && { detail }),
    ...(facts.labelDetails && NAMED.has(entry.kind) && { labelDetails: { description: detail } }),
    ...(entry.documentation !== undefined && {
      documentation: toMarkup(entry.documentation, facts.completionMarkdown),
    }),
    ...(asSnippet && { insertTextFormat: InsertTextFormat.Snippet }),
  };
};

export const toCodeAction = (
  fix: FileFix,
  diagnostics: Diagnostic[],
  snapshot: Snapshot,
  facts: ClientFacts,
): CodeAction => ({
  title: shownText(quoted(fix.title)),
  kind: CodeActionKind.QuickFix,
  diagnostics,
  edit: toWorkspaceEdit(fix.edits, snapshot, facts),
  ...(fix.kind === "safe" && facts.preferredActions && { isPreferred: true }),
});

/** The snippet's text as somebody without snippets would type it: of a choice the first, of a place what stands there. */
export function plainText(snippet: string): string {
  let text = "";
  let open = 0;
  for (let at = 0; at < snippet.length; at += 1) {
    const place = placeAt(snippet, at);
    if (place) {
      at += place[0].length - 1;
      if (place[1] === ":") open += 1;
      if (place[1] !== "|") continue;
      const end = snippet.indexOf("}", at);
      text += snippet.slice(at + 1, end < 0 ? undefined : end).split(/[,|]/)[0]!;
      at = end < 0 ? snippet.length : end;
    } else if (snippet[at] === "\\" && /[$}\\]/.test(snippet[at + 1] ?? "")) {
      text += snippet[at + 1]!;
      at += 1;
    } else if (snippet[at] === "}" && open > 0) open -= 1;
    else text += snippet[at]!;
  }
  return text;
}

/** `$1`, `${1}`, `${1:`, or `${1|`, with its last sign. */
const PLACE = /\$(?:\d+|\{\d+([:|}]))/y;

function placeAt(snippet: string, at: number): RegExpExecArray | null {
  PLACE.lastIndex = at;
  return PLACE.exec(snippet);
}

const toRelated = (finding: FileFinding, snapshot: Snapshot): DiagnosticRelatedInformation[] =>
  finding.related.flatMap(({ message, ...place }) => {
    const location = toLocation(snapshot, place);
    return location === undefined ? [] : [{ location, message: shownLines(quoted(message)) }];
  });

/** With the versions of the texts that the edits are meant for, where the client looks at them. */
export const toWorkspaceEdit = (
  edits: readonly FileEdit[],
  snapshot: Snapshot,
  facts: ClientFacts,
): WorkspaceEdit => {
  const byFile = new Map<FileId, TextEdit[]>();
  for (const { file, span, text } of edits) {
    const document = snapshot.document(file);
    if (document === undefined) continue;
    const list = byFile.get(file) ?? [];
    list.push({ range: toRange(document, span), newText: text });
    byFile.set(file, list);
  }
  if (!facts.versionedEdits) {
    return { changes: Object.fromEntries([...byFile].map(([file, list]) => [snapshot.uriOf(file), list])) };
  }
  return {
    documentChanges: [...byFile].map(([file, list]) => ({
      textDocument: { uri: snapshot.uriOf(file), version: snapshot.versionOf(file) ?? null },
      edits: list,
    })),
  };
};

/** Findings and titles are shown as they are, marks and all, so names in backticks get quotation marks there. */
const quoted = (text: string): string => text.replace(/`([^`\n]+)`/g, (_, name: string) => t`“${name}”`);

/** Markdown, or the same in plain words. */
export const toMarkup = (text: string, markdown: boolean): MarkupContent => ({
  kind: markdown ? MarkupKind.Markdown : MarkupKind.PlainText,
  value: shownLines(markdown ? text : withoutMarks(text)),
});

/** Markdown as it reads where marks are shown as they are: without the emphasis and without escapes. */
const withoutMarks = (markdown: string): string =>
  markdown.replace(/\\([!-/:-@[-`{-~])|\*\*|`/g, (_, escaped: string | undefined) => escaped ?? "");

const within = (inner: Span, outer: Span): Span => {
  const start = Math.min(Math.max(inner.start, outer.start), outer.end);
  return { start, end: Math.min(Math.max(inner.end, start), outer.end) };
};
