/**
 * Reports: the schedule, the totals and the shopping list of a recipe's jobs, as read-only documents beside it.
 *
 * The server writes the text (`server/src/lsp/requests/report.ts`) and says when it has changed; a report that is open
 * follows the recipe. Nothing is written to disk.
 */
import {
  commands,
  Disposable,
  EventEmitter,
  Range,
  Selection,
  type TextDocumentContentProvider,
  TextEditorRevealType,
  Uri,
  ViewColumn,
  window,
  workspace,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import {
  type FindingTarget,
  LENS_COMMANDS,
  REPORT,
  REPORTS_CHANGED,
  type ReportKind,
  type ReportParams,
  type ReportTarget,
} from "../../server/src/lsp/custom-requests.ts";

const SCHEME = "finishwright-report";
const LANGUAGE = "finish";

/** Kinds of reports, with the commands that show them. */
const COMMANDS: Readonly<Record<ReportKind, string>> = {
  schedule: LENS_COMMANDS.schedule,
  totals: LENS_COMMANDS.totals,
  shopping: "finishwright.showShoppingList",
};

const TITLES: Readonly<Record<ReportKind, string>> = {
  schedule: "Schedule",
  totals: "Totals",
  shopping: "Shopping list",
};

/** What the client says of itself because of this module. */
export const SHOWN = { reports: true, commands: Object.values(LENS_COMMANDS) } as const;

export const registerReports = (client: BaseLanguageClient): Disposable => {
  const changes = new EventEmitter<Uri>();
  const provider: TextDocumentContentProvider = {
    onDidChange: changes.event,
    provideTextDocumentContent: (uri) => readReport(client, uri),
  };
  const kinds = Object.keys(COMMANDS) as readonly ReportKind[];
  return Disposable.from(
    changes,
    workspace.registerTextDocumentContentProvider(SCHEME, provider),
    client.onNotification(REPORTS_CHANGED, () => {
      for (const { uri } of workspace.textDocuments) if (uri.scheme === SCHEME) changes.fire(uri);
    }),
    ...kinds.map((kind) =>
      commands.registerCommand(COMMANDS[kind], (target?: ReportTarget) =>
        showReport(client, kind, target ?? activeRecipe(client)),
      ),
    ),
    commands.registerCommand(LENS_COMMANDS.findings, (target: FindingTarget) => showFinding(client, target)),
  );
};

const activeRecipe = (client: BaseLanguageClient): ReportTarget | undefined => {
  const document = window.activeTextEditor?.document;
  if (document?.languageId !== LANGUAGE) return undefined;
  return { uri: client.code2ProtocolConverter.asUri(document.uri) };
};

const showReport = async (
  client: BaseLanguageClient,
  kind: ReportKind,
  target: ReportTarget | undefined,
): Promise<void> => {
  if (target === undefined) {
    await window.showInformationMessage(
      `Open a finish recipe first: the ${TITLES[kind].toLowerCase()} is made of its jobs.`,
    );
    return;
  }
  const document = await workspace.openTextDocument(reportUri(client, kind, target));
  await window.showTextDocument(document, { viewColumn: ViewColumn.Beside, preview: true });
};

/** The path is what the tab says, without an extension, which would make a recipe of it; the query is what is asked for. */
const reportUri = (client: BaseLanguageClient, kind: ReportKind, target: ReportTarget): Uri => {
  const file = client.protocol2CodeConverter.asUri(target.uri).path.split("/").at(-1) ?? "";
  return Uri.from({
    scheme: SCHEME,
    path: `/${TITLES[kind]}: ${target.job ?? file.replace(/\.finish$/, "")}`,
    query: JSON.stringify({ kind, ...target }),
  });
};

const readReport = async (client: BaseLanguageClient, uri: Uri): Promise<string> => {
  const { kind, uri: recipe, job } = JSON.parse(uri.query) as ReportTarget & { readonly kind: ReportKind };
  const params: ReportParams = { kind, textDocument: { uri: recipe }, ...(job !== undefined && { job }) };
  const text = await client.sendRequest<string | null>(REPORT, params);
  return text ?? "The recipe of this report is not open any more.\n";
};

/** Puts the caret on a finding and opens the editor's own view of it, from which F8 goes on to the next. */
const showFinding = async (client: BaseLanguageClient, { uri, start }: FindingTarget): Promise<void> => {
  const at = client.protocol2CodeConverter.asPosition(start);
  const editor = await window.showTextDocument(client.protocol2CodeConverter.asUri(uri));
  editor.selection = new Selection(at, at);
  editor.revealRange(new Range(at, at), TextEditorRevealType.InCenterIfOutsideViewport);
  await commands.executeCommand("editor.action.marker.next");
};
