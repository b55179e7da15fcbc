/**
 * What the client at the other end can do, read once from `initialize`.
 *
 * Every optional part of an answer is decided by one of these flags, so that no request handler looks into the
 * nested capability object, and a client that says nothing gets the plainest answers.
 */
import type { InitializeParams } from "vscode-languageserver";
import * as z from "zod/mini";
import type { InitializationOptions } from "./custom-requests.ts";
import { TEXTS } from "./language.ts";
import { DiagnosticTag, MarkupKind } from "./protocol.ts";

export interface ClientFacts {
  /** Asks for diagnostics itself. Then none are pushed. */
  readonly pullsDiagnostics: boolean;
  readonly refreshesDiagnostics: boolean;
  readonly refreshesInlayHints: boolean;
  readonly refreshesCodeLenses: boolean;
  readonly refreshesSemanticTokens: boolean;
  /** Colours by a grammar of its own as well, so that only words are wanted. */
  readonly coloursItself: boolean;
  /** Can only hide whole lines. */
  readonly foldsLines: boolean;
  /** It shows no more foldings than this. */
  readonly foldingLimit: number;
  readonly signatureMarkdown: boolean;
  /** Wants a parameter as a part of the label, and not as words to be looked for in it. */
  readonly labelOffsets: boolean;
  /** Understands that no parameter is being given. */
  readonly noActiveParameter: boolean;
  readonly relatedInformation: boolean;
  readonly codeDescription: boolean;
  readonly unnecessaryTag: boolean;
  readonly hoverMarkdown: boolean;
  readonly completionMarkdown: boolean;
  readonly snippets: boolean;
  readonly labelDetails: boolean;
  readonly hierarchicalSymbols: boolean;
  readonly codeActionLiterals: boolean;
  readonly preferredActions: boolean;
  readonly versionedEdits: boolean;
  /** Puts the caret into a text that it writes. */
  readonly snippetEdits: boolean;
  /** Underlines the whole name that is followed, and shows the whole of what it leads to. */
  readonly definitionLinks: boolean;
  readonly preparesRename: boolean;
  readonly linkTooltips: boolean;
  /** Asks for edits before it renames files. */
  readonly announcesRenamedFiles: boolean;
  readonly configurationRequest: boolean;
  readonly configurationRegistration: boolean;
  readonly watchedFilesRegistration: boolean;
  readonly workspaceFolders: boolean;
  /** Answers `finishwright/findFiles` (see `folder-files.ts`). */
  readonly findsFiles: boolean;
  /** Answers `finishwright/readFile` (see `file-reader.ts`). */
  readonly readsFiles: boolean;
  /** Where the client shows the pages of the rules. */
  readonly rulePages: string | undefined;
  /** They are named by their titles there. */
  readonly pageTitles: boolean;
  /** Commands of the client's own that a lens may call. */
  readonly commands: ReadonlySet<string>;
  /** Shows reports, and wants to hear when they change. */
  readonly showsReports: boolean;
  /** Wants all findings of a line at one place (see `line-marks.ts`). */
  readonly marksLines: boolean;
  /** Shows how far long work is. */
  readonly showsProgress: boolean;
  /** Draws pictures in hovers, and folds away what is in `details`. */
  readonly hoverHtml: boolean;
  /** A packed table of texts in the client's language (see `language.ts`), from a client whose server lies beside none. */
  readonly texts: InitializationOptions["texts"];
  /** The folders that are open at first. */
  readonly openFolders: readonly string[];
  /** The person trusts them. A client that does not say so is not trusted. */
  readonly isTrusted: boolean;
}

const INITIALIZATION_OPTIONS: {
  readonly [K in keyof Required<InitializationOptions>]: z.ZodMiniType<InitializationOptions[K]>;
} = {
  findFiles: z.boolean(),
  readFile: z.boolean(),
  rulePages: z.string(),
  pageTitles: z.boolean(),
  commands: z.array(z.string()),
  reports: z.boolean(),
  marksLines: z.boolean(),
  hoverHtml: z.boolean(),
  trusted: z.boolean(),
  texts: TEXTS,
};

/** Each for itself: one that is not understood counts as not said, and the others hold. */
const optionOf = <K extends keyof InitializationOptions>(
  options: unknown,
  name: K,
): InitializationOptions[K] => {
  const said: unknown = Object.hasOwn(Object(options), name) ? Reflect.get(Object(options), name) : undefined;
  return INITIALIZATION_OPTIONS[name].safeParse(said).data;
};

/** Older clients know of one folder only. */
const openFoldersOf = ({ workspaceFolders, rootUri, rootPath }: InitializeParams): readonly string[] => {
  if (Array.isArray(workspaceFolders)) return workspaceFolders.map(({ uri }) => uri);
  const root = rootUri ?? rootPath;
  return typeof root === "string" ? [root] : [];
};

export const clientFacts = (params: InitializeParams): ClientFacts => {
  const { textDocument, workspace } = params.capabilities;
  const published = textDocument?.publishDiagnostics;
  const pulled = textDocument?.diagnostic;
  const signature = textDocument?.signatureHelp?.signatureInformation;
  const has = <T>(list: readonly T[] | undefined, value: T): boolean => list?.includes(value) ?? false;
  const option = <K extends keyof InitializationOptions>(name: K): InitializationOptions[K] =>
    optionOf(params.initializationOptions, name);
  return {
    pullsDiagnostics: pulled !== undefined,
    refreshesDiagnostics: workspace?.diagnostics?.refreshSupport === true,
    refreshesInlayHints: workspace?.inlayHint?.refreshSupport === true,
    refreshesCodeLenses: workspace?.codeLens?.refreshSupport === true,
    refreshesSemanticTokens: workspace?.semanticTokens?.refreshSupport === true,
    coloursItself: textDocument?.semanticTokens?.augmentsSyntaxTokens === true,
    foldsLines: textDocument?.foldingRange?.lineFoldingOnly === true,
    foldingLimit: textDocument?.foldingRange?.rangeLimit ?? Number.POSITIVE_INFINITY,
    signatureMarkdown: has(signature?.documentationFormat, MarkupKind.Markdown),
    labelOffsets: signature?.parameterInformation?.labelOffsetSupport === true,
    noActiveParameter: signature?.noActiveParameterSupport === true,
    // Since 3.18 a pulling client says these for itself; before, what it says about pushed ones holds for both.
    relatedInformation: (pulled?.relatedInformation ?? published?.relatedInformation) === true,
    codeDescription: (pulled?.codeDescriptionSupport ?? published?.codeDescriptionSupport) === true,
    unnecessaryTag: has((pulled?.tagSupport ?? published?.tagSupport)?.valueSet, DiagnosticTag.Unnecessary),
    hoverMarkdown: has(textDocument?.hover?.contentFormat, MarkupKind.Markdown),
    completionMarkdown: has(
      textDocument?.completion?.completionItem?.documentationFormat,
      MarkupKind.Markdown,
    ),
    snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    labelDetails: textDocument?.completion?.completionItem?.labelDetailsSupport === true,
    hierarchicalSymbols: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    codeActionLiterals: textDocument?.codeAction?.codeActionLiteralSupport !== undefined,
    preferredActions: textDocument?.codeAction?.isPreferredSupport === true,
    versionedEdits: workspace?.workspaceEdit?.documentChanges === true,
    snippetEdits: workspace?.workspaceEdit?.snippetEditSupport === true,
    definitionLinks: textDocument?.definition?.linkSupport === true,
    preparesRename: textDocument?.rename?.prepareSupport === true,
    linkTooltips: textDocument?.documentLink?.tooltipSupport === true,
    announcesRenamedFiles: workspace?.fileOperations?.willRename === true,
    configurationRequest: workspace?.configuration === true,
    configurationRegistration: workspace?.didChangeConfiguration?.dynamicRegistration === true,
    watchedFilesRegistration: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    workspaceFolders: workspace?.workspaceFolders === true,
    findsFiles: option("findFiles") === true,
    readsFiles: option("readFile") === true,
    rulePages: option("rulePages"),
    pageTitles: option("pageTitles") === true,
    commands: new Set(option("commands")),
    showsReports: option("reports") === true,
    showsProgress: params.capabilities.window?.workDoneProgress === true,
    marksLines: option("marksLines") === true,
    hoverHtml: option("hoverHtml") === true,
    openFolders: openFoldersOf(params),
    isTrusted: option("trusted") === true,
    texts: option("texts"),
  };
};
