/**
 * Reports: the schedule, the totals and the shopping list of a recipe's jobs, as read-only documents beside it, and the
 * sheets for the bench, as the editor shows Markdown.
 *
 * The server writes the text (`server/src/lsp/requests/report.ts`) and says when it has changed; a report that is open
 * follows the recipe. Nothing is written to disk.
 */
import {
  commands,
  Disposable,
  EventEmitter,
  l10n,
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
  EXPLAIN_COMMAND,
  type FindingTarget,
  LENS_COMMANDS,
  RECORD_COMMAND,
  REPORT,
  type ReportKind,
  type ReportParams,
  type ReportTarget,
} from "../../server/src/lsp/custom-requests.ts";

import { targetOf } from "./active-recipe.ts";
import { createKeptPreview } from "./kept-preview.ts";
import { offerRecipe } from "./offer-recipe.ts";
import type { ReportsNews } from "./reports-changed.ts";

const SCHEME = "finishwright-report";

/** Kinds of reports, with the commands that show them. */
const COMMANDS: Readonly<Record<ReportKind, string>> = {
  schedule: LENS_COMMANDS.schedule,
  totals: LENS_COMMANDS.totals,
  shopping: "finishwright.showShoppingList",
  sheet: "finishwright.showBenchSheet",
};

const TITLES: Readonly<Record<ReportKind, string>> = {
  schedule: l10n.t("Schedule"),
  totals: l10n.t("Totals"),
  shopping: l10n.t("Shopping list"),
  sheet: l10n.t("Bench sheet"),
};

/** What the client says of itself because of this module. */
export const SHOWN = {
  reports: true,
  commands: [...Object.values(LENS_COMMANDS), EXPLAIN_COMMAND, RECORD_COMMAND],
} as const;

export const registerReports = (client: BaseLanguageClient, news: ReportsNews): Disposable => {
  const changes = new EventEmitter<Uri>();
  const provider: TextDocumentContentProvider = {
    onDidChange: changes.event,
    provideTextDocumentContent: (uri) => readReport(client, uri),
  };
  const kinds = Object.keys(COMMANDS) as readonly ReportKind[];
  return Disposable.from(
    changes,
    workspace.registerTextDocumentContentProvider(SCHEME, provider),
    news.onChange(async () => {
      for (const { uri } of workspace.textDocuments) if (uri.scheme === SCHEME) changes.fire(uri);
      await sheet.refresh();
    }),
    ...kinds.map((kind) =>
      commands.registerCommand(COMMANDS[kind], (given?: unknown) =>
        showReport(client, kind, targetOf(client, given)),
      ),
    ),
    commands.registerCommand(LENS_COMMANDS.findings, (target: FindingTarget) => showFinding(client, target)),
  );
};

const showReport = async (
  client: BaseLanguageClient,
  kind: ReportKind,
  target: ReportTarget | undefined,
): Promise<void> => {
  if (target === undefined) {
    return offerRecipe(l10n.t("{0} is made of it.", TITLES[kind]));
  }
  const uri = reportUri(client, kind, target);
  if (kind === "sheet") return sheet.show(uri);
  const document = await workspace.openTextDocument(uri);
  await window.showTextDocument(document, { viewColumn: ViewColumn.Beside, preview: true });
};

const sheet = createKeptPreview();

/**
 * The path is what the tab says, without the recipe's extension, which would make a recipe of it; the query is what is
 * asked for.
 */
const reportUri = (client: BaseLanguageClient, kind: ReportKind, target: ReportTarget): Uri => {
  const file = client.protocol2CodeConverter.asUri(target.uri).path.split("/").at(-1) ?? "";
  return Uri.from({
    scheme: SCHEME,
    path: `/${TITLES[kind]}: ${target.job ?? file.replace(/\.finish$/, "")}${kind === "sheet" ? ".md" : ""}`,
    query: JSON.stringify({ kind, ...target }),
  });
};

const readReport = async (client: BaseLanguageClient, uri: Uri): Promise<string> => {
  const { kind, uri: recipe, job } = JSON.parse(uri.query) as ReportTarget & { readonly kind: ReportKind };
  const params: ReportParams = { kind, textDocument: { uri: recipe }, ...(job !== undefined && { job }) };
  const text = await client.sendRequest<string | null>(REPORT, params);
  return text ?? `${l10n.t("The recipe of this report is not open any more.")}\n`;
};

/** Puts the caret on a finding and opens the editor's own view of it, from which F8 goes on to the next. */
const showFinding = async (client: BaseLanguageClient, { uri, start }: FindingTarget): Promise<void> => {
  const at = client.protocol2CodeConverter.asPosition(start);
  const editor = await window.showTextDocument(client.protocol2CodeConverter.asUri(uri));
  editor.selection = new Selection(at, at);
  editor.revealRange(new Range(at, at), TextEditorRevealType.InCenterIfOutsideViewport);
  await commands.executeCommand("editor.action.marker.next");
};
