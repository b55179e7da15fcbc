/**
 * What the editor tests ask of VS Code, in their own words: open, wait for findings, hover, complete.
 *
 * Waiting is always for an event. The limit only ends a wait for something that will not come.
 */
import {
  type CallHierarchyIncomingCall,
  type CallHierarchyItem,
  type CodeAction,
  CodeActionKind,
  type CodeLens,
  type Command,
  type CompletionList,
  commands,
  type Diagnostic,
  type DocumentHighlight,
  type DocumentLink,
  type DocumentSymbol,
  type Hover,
  type InlayHint,
  type Location,
  type LocationLink,
  languages,
  MarkdownString,
  type Position,
  Range,
  type SelectionRange,
  type SemanticTokens,
  type SemanticTokensLegend,
  type SignatureHelp,
  type SymbolInformation,
  TabInputCustom,
  type TextDocument,
  type TextEdit,
  type TextEditor,
  Uri,
  type WorkspaceEdit,
  window,
  workspace,
} from "vscode";

/** Turns of the editor before a wait is in vain: on an idle machine half a minute, on a busy one as long as they take. */
const MOST_TURNS = 600;

/** A file of the folder that is open. */
export const fileUri = (name: string): Uri => {
  const [folder] = workspace.workspaceFolders ?? [];
  if (folder === undefined) throw new Error("No folder is open.");
  return Uri.joinPath(folder.uri, name);
};

/** As a user opens it. A document opened by `openTextDocument` would stay open for minutes after its editor is closed. */
export const openFile = async (name: string): Promise<TextEditor> => {
  const uri = fileUri(name);
  await commands.executeCommand("vscode.open", uri, { preview: false });
  // The same file may be open beside itself.
  const editors = [window.activeTextEditor, ...window.visibleTextEditors];
  const editor = editors.find((each) => each?.document.uri.path === uri.path);
  if (editor === undefined) throw new Error(`${name} was not opened.`);
  return editor;
};

/** The place of `text` in the document, at its first letter. */
export const positionOf = (document: TextDocument, text: string): Position => {
  const offset = document.getText().indexOf(text);
  if (offset < 0) throw new Error(`${text} is not in ${document.uri.path}.`);
  return document.positionAt(offset);
};

/** Findings as `line rule`, from 1 as the editor shows them. */
export const drawFindings = (uri: Uri): readonly string[] =>
  languages.getDiagnostics(uri).map((finding) => `${finding.range.start.line + 1} ${ruleOf(finding)}`);

export const ruleOf = ({ code }: Diagnostic): string =>
  typeof code === "object" ? String(code.value) : String(code ?? "");

/** Waits until the findings of a file are as wanted. */
export const findingsUntil = (uri: Uri, isWanted: (findings: readonly string[]) => boolean): Promise<void> =>
  until(
    async () => isWanted(drawFindings(uri)),
    () => `the findings of ${uri.path} are ${drawFindings(uri).join(", ") || "none"}`,
  );

export const hoverText = async (document: TextDocument, position: Position): Promise<string> => {
  const hovers = await commands.executeCommand<Hover[]>(
    "vscode.executeHoverProvider",
    document.uri,
    position,
  );
  return hovers
    .flatMap(({ contents }) => contents)
    .map((content) => (content instanceof MarkdownString ? content.value : String(content)))
    .join("\n");
};

export const completionsAt = async (
  document: TextDocument,
  position: Position,
): Promise<readonly string[]> => {
  const { items } = await commands.executeCommand<CompletionList>(
    "vscode.executeCompletionItemProvider",
    document.uri,
    position,
  );
  return items.map(({ label }) => (typeof label === "string" ? label : label.label));
};

export const fixesAt = (document: TextDocument, position: Position): Thenable<readonly CodeAction[]> =>
  commands.executeCommand<CodeAction[]>(
    "vscode.executeCodeActionProvider",
    document.uri,
    new Range(position, position),
    CodeActionKind.QuickFix.value,
  );

/** A place as `file: text`, the file by its path in the folder. */
const drawPlace = async (uri: Uri, range: Range): Promise<string> => {
  const document = await workspace.openTextDocument(uri);
  return `${workspace.asRelativePath(uri)}: ${document.getText(range)}`;
};

export const definitionsAt = async (
  document: TextDocument,
  position: Position,
): Promise<readonly string[]> => {
  const found = await commands.executeCommand<(Location | LocationLink)[]>(
    "vscode.executeDefinitionProvider",
    document.uri,
    position,
  );
  return Promise.all(
    found.map((place) =>
      "targetUri" in place
        ? drawPlace(place.targetUri, place.targetSelectionRange ?? place.targetRange)
        : drawPlace(place.uri, place.range),
    ),
  );
};

export const referencesAt = async (
  document: TextDocument,
  position: Position,
): Promise<readonly string[]> => {
  const found = await commands.executeCommand<Location[]>(
    "vscode.executeReferenceProvider",
    document.uri,
    position,
  );
  return Promise.all(found.map(({ uri, range }) => drawPlace(uri, range)));
};

export const highlightsAt = async (
  document: TextDocument,
  position: Position,
): Promise<readonly string[]> => {
  const found = await commands.executeCommand<DocumentHighlight[]>(
    "vscode.executeDocumentHighlights",
    document.uri,
    position,
  );
  return found.map(({ range, kind }) => `${kind} ${document.getText(range)}`);
};

/** The edits of a renaming; fails with the reason where there is one against it. */
export const renamingAt = (
  document: TextDocument,
  position: Position,
  newName: string,
): Thenable<WorkspaceEdit> =>
  commands.executeCommand<WorkspaceEdit>(
    "vscode.executeDocumentRenameProvider",
    document.uri,
    position,
    newName,
  );

export const symbolsFor = async (query: string): Promise<readonly string[]> => {
  const found = await commands.executeCommand<SymbolInformation[]>(
    "vscode.executeWorkspaceSymbolProvider",
    query,
  );
  return Promise.all(found.map(({ location: { uri, range } }) => drawPlace(uri, range)));
};

/** Where the links of a document lead. */
export const linksOf = async (document: TextDocument): Promise<readonly string[]> => {
  const found = await commands.executeCommand<DocumentLink[]>("vscode.executeLinkProvider", document.uri);
  return found.map(({ range, target }) => `${document.getText(range)}: ${target?.path.split("/").at(-1)}`);
};

/** Who does the steps of the recipe at a position. */
export const callersAt = async (document: TextDocument, position: Position): Promise<readonly string[]> => {
  const [item] = await commands.executeCommand<CallHierarchyItem[]>(
    "vscode.prepareCallHierarchy",
    document.uri,
    position,
  );
  if (item === undefined) return [];
  const found = await commands.executeCommand<CallHierarchyIncomingCall[]>(
    "vscode.provideIncomingCalls",
    item,
  );
  return found.map(({ from }) => from.name);
};

/** The outline, one symbol a line, what lies inside of another indented. */
export const outlineOf = async (document: TextDocument): Promise<readonly string[]> => {
  const draw = (symbol: DocumentSymbol, indent: string): readonly string[] => [
    indent + symbol.name,
    ...symbol.children.flatMap((child) => draw(child, `${indent}  `)),
  ];
  const symbols = await commands.executeCommand<DocumentSymbol[] | undefined>(
    "vscode.executeDocumentSymbolProvider",
    document.uri,
  );
  return (symbols ?? []).flatMap((symbol) => draw(symbol, ""));
};

/** What is shown behind the lines, as `line text`, from 1. */
export const hintsOf = async (document: TextDocument): Promise<readonly string[]> => {
  const hints = await commands.executeCommand<InlayHint[]>(
    "vscode.executeInlayHintProvider",
    document.uri,
    new Range(0, 0, document.lineCount, 0),
  );
  return hints.map(({ label, position }) => {
    const text = typeof label === "string" ? label : label.map(({ value }) => value).join("");
    return `${position.line + 1} ${text}`;
  });
};

/** The commands of the lenses of a file, in the order in which they are shown. */
export const lensCommandsOf = async (document: TextDocument): Promise<readonly Command[]> => {
  const lenses = await commands.executeCommand<CodeLens[]>("vscode.executeCodeLensProvider", document.uri);
  return lenses.flatMap(({ command }) => command ?? []);
};

/** As a click on a lens does. */
export const click = ({ command, arguments: given = [] }: Command): Thenable<unknown> =>
  commands.executeCommand(command, ...given);

/** What the tabs of all editors say, previews included. */
export const tabLabels = (): readonly string[] =>
  window.tabGroups.all.flatMap(({ tabs }) => tabs).map(({ label }) => label);

/** The pages on rules and the language that tabs show as pages, by the titles of their tabs. */
export const shownPages = (): readonly string[] =>
  window.tabGroups.all
    .flatMap(({ tabs }) => tabs)
    .flatMap(({ input, label }) =>
      input instanceof TabInputCustom && input.viewType === "finishwright.page" ? [label] : [],
    );

/** Closes the tabs whose labels hold `text`. */
export const closeTab = async (text: string): Promise<void> => {
  const tabs = window.tabGroups.all
    .flatMap((group) => group.tabs)
    .filter(({ label }) => label.includes(text));
  await window.tabGroups.close(tabs);
};

/**
 * Asks again and again, since nothing tells of hints and lenses. The wait is measured in what the editor gets done: a turn
 * is a question to the workbench and its answer, which on a busy machine takes longer like everything else.
 */
export const until = async (
  isSo: () => Promise<boolean>,
  draw: () => string = () => "it never was so",
): Promise<void> => {
  for (let turn = 0; !(await isSo()); turn += 1) {
    if (turn === MOST_TURNS) throw new Error(`Waited in vain; ${draw()}.`);
    await commands.getCommands(true);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
};

/** Waits until the text of a document is as wanted. */
export const textUntil = (document: TextDocument, isWanted: (text: string) => boolean): Promise<void> =>
  until(
    async () => isWanted(document.getText()),
    () => `the text is\n${document.getText()}\n`,
  );

/** Tokens as `type.modifier text`. */
export const coloursOf = async (document: TextDocument): Promise<readonly string[]> => {
  const [legend, tokens] = await Promise.all([
    commands.executeCommand<SemanticTokensLegend>("vscode.provideDocumentSemanticTokensLegend", document.uri),
    commands.executeCommand<SemanticTokens>("vscode.provideDocumentSemanticTokens", document.uri),
  ]);
  let [line, character] = [0, 0];
  return Array.from({ length: tokens.data.length / 5 }, (_, idx) => {
    const [lines = 0, characters = 0, length = 0, type = 0, bits = 0] = tokens.data.slice(5 * idx);
    line += lines;
    character = lines === 0 ? character + characters : characters;
    const modifiers = legend.tokenModifiers.filter((_name, bit) => (bits & (1 << bit)) !== 0);
    const name = [legend.tokenTypes[type], ...modifiers].join(".");
    return `${name} ${document.getText(new Range(line, character, line, character + length))}`;
  });
};

/** What the selection grows to at a position. */
export const selectionsAt = async (
  document: TextDocument,
  position: Position,
): Promise<readonly string[]> => {
  const [innermost] = await commands.executeCommand<SelectionRange[]>(
    "vscode.executeSelectionRangeProvider",
    document.uri,
    [position],
  );
  const texts: string[] = [];
  for (let range = innermost; range !== undefined; range = range.parent) {
    texts.push(document.getText(range.range));
  }
  return texts;
};

/** The help with arguments: the label, and what of it is marked. */
export const signatureAt = async (
  document: TextDocument,
  position: Position,
): Promise<readonly [string, string] | undefined> => {
  const help = await commands.executeCommand<SignatureHelp | undefined>(
    "vscode.executeSignatureHelpProvider",
    document.uri,
    position,
    "(",
  );
  const signature = help?.signatures[help.activeSignature];
  if (help === undefined || signature === undefined) return undefined;
  const label = signature.parameters[signature.activeParameter ?? help.activeParameter]?.label;
  const marked = typeof label === "object" ? signature.label.slice(...label) : (label ?? "");
  return [signature.label, marked];
};

/** What formatting would change. */
export const formattingOf = async (document: TextDocument): Promise<readonly TextEdit[]> => {
  const options = { tabSize: 8, insertSpaces: false };
  const edits = await commands.executeCommand<TextEdit[] | undefined>(
    "vscode.executeFormatDocumentProvider",
    document.uri,
    options,
  );
  return edits ?? [];
};

export const writeFile = async (uri: Uri, text: string): Promise<void> =>
  workspace.fs.writeFile(uri, new TextEncoder().encode(text));

export const replaceText = async (editor: TextEditor, from: string, to: string): Promise<void> => {
  const start = positionOf(editor.document, from);
  const range = new Range(start, start.translate(0, from.length));
  await editor.edit((builder) => builder.replace(range, to));
};
