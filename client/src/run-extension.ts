/**
 * What the extension does wherever it runs: starts the language server, stops it, and offers its commands.
 *
 * Everything that is known about recipes lives in the server, so this stays small. VS Code loads it when the first
 * finish recipe is opened or a command is called, and never before. How the server is started is the business of `extension.ts` on a machine
 * and of `extension-web.ts` in a browser.
 */
import { commands, type ExtensionContext, version as editorVersion, env, workspace } from "vscode";
import { type BaseLanguageClient, type LanguageClientOptions, State } from "vscode-languageclient";
import type { InitializationOptions } from "../../server/src/lsp/custom-requests.ts";
import type { FinishwrightApi } from "./api.ts";
import { registerBenchView } from "./bench-view.ts";
import { registerCheckTask } from "./check-task.ts";
import { registerExplainFinding } from "./explain-finding.ts";
import { registerFindRecipes } from "./find-recipes.ts";
import { goingOn } from "./go-on.ts";
import { registerLanguagePage } from "./language-page.ts";
import { registerNewRecipe } from "./new-recipe.ts";
import { registerOpenSamples } from "./open-samples.ts";
import { registerPageView } from "./page-view.ts";
import { registerRecordDone } from "./record-done.ts";
import { registerReports, SHOWN } from "./reports.ts";
import { listenForReports } from "./reports-changed.ts";
import { RULE_PAGES, serveRulePages } from "./rule-pages.ts";
import { registerSaveExports } from "./save-export.ts";
import { registerShowChanges } from "./show-changes.ts";
import { registerStatus } from "./status.ts";
import { slowText, startedText } from "./timings.ts";
import { registerWorkshopTree } from "./workshop-tree.ts";
import { ANSWERED, answerAboutFiles } from "./workspace-files.ts";

export const ID = "finishwright";
export const NAME = "Finishwright";

let client: BaseLanguageClient | undefined;

/** The server is not waited for, so that the editor gets on; the client says itself when it cannot be started. */
export const startExtension = (
  context: ExtensionContext,
  createClient: (options: LanguageClientOptions) => BaseLanguageClient,
  /** For a server that lies beside no texts; the one on a machine finds its own. */
  texts?: InitializationOptions["texts"],
): FinishwrightApi => {
  const started: BaseLanguageClient = createClient({
    documentSelector: documentSelector(),
    // Asked for at every start, since trust may have been given in between.
    initializationOptions: () =>
      ({
        ...ANSWERED,
        ...SHOWN,
        rulePages: RULE_PAGES,
        pageTitles: true,
        marksLines: true,
        hoverHtml: true,
        trusted: workspace.isTrusted,
        ...(texts && { texts }),
      }) satisfies InitializationOptions,
    diagnosticPullOptions: { onChange: true },
    middleware: {
      provideCompletionItem: async (document, position, context, token, next) =>
        goingOn(await next(document, position, context, token)),
      async sendRequest(type, param, token, next) {
        const began = performance.now();
        try {
          return await next(type, param, token);
        } finally {
          const slow = slowText(typeof type === "string" ? type : type.method, performance.now() - began);
          if (slow !== undefined) started.info(slow);
        }
      },
    },
    // For `details`; the editor lets through what is harmless alone, and what recipes say is escaped.
    markdown: { supportHtml: true },
  });
  client = started;
  const news = listenForReports(started);
  context.subscriptions.push(
    commands.registerCommand("finishwright.restartServer", () => restart(started)),
    commands.registerCommand("finishwright.showOutput", () => started.outputChannel.show()),
    workspace.onDidGrantWorkspaceTrust(() => restart(started)),
    workspace.onDidChangeWorkspaceFolders(() => takeUpNewSchemes(started)),
    serveRulePages(context.extensionUri),
    registerPageView(context, started),
    ...answerAboutFiles(started),
    news,
    registerReports(started, news),
    registerBenchView(context, started, news),
    registerSaveExports(started),
    registerExplainFinding(started),
    registerRecordDone(started),
    registerFindRecipes(started, news),
    registerShowChanges(started, news),
    registerNewRecipe(),
    registerOpenSamples(context),
    registerLanguagePage(),
    registerStatus(started),
    registerWorkshopTree(started, news),
    registerCheckTask(started),
  );
  void commands.executeCommand("setContext", "finishwright.active", true);
  const began = performance.now();
  const ready = started.start();
  ready.then(
    () => {
      const { version } = context.extension.packageJSON as { readonly version: string };
      const folders = workspace.workspaceFolders?.length ?? 0;
      const ms = performance.now() - began;
      started.info(startedText({ version, editor: env.appName, editorVersion, folders, ms }));
    },
    () => {},
  );
  return { version: 1, ready };
};

export const stopExtension = async (): Promise<void> => {
  if (client !== undefined) await stop(client);
  client = undefined;
};

/** Starts afresh, also where the server has died or never came up. */
const restart = async (stopped: BaseLanguageClient): Promise<void> => {
  await stop(stopped);
  await stopped.start();
};

/** A client that is just starting refuses to be stopped, so its start is waited for. */
const stop = async (running: BaseLanguageClient): Promise<void> => {
  if (running.state === State.Starting) await running.start().catch(() => {});
  if (running.needsStop()) await running.stop();
};

/** Real files, unsaved ones, and those of the open folders, which may be virtual; not the read-only sides of a comparison. */
const documentSelector = (): { readonly scheme: string; readonly language: string }[] => {
  const folders = (workspace.workspaceFolders ?? []).map(({ uri }) => uri.scheme);
  return [...new Set(["file", "untitled", "vscode-vfs", ...folders])].map((scheme) => ({
    scheme,
    language: "finish",
  }));
};

/** What the client looks after is settled when it starts, so a folder of another kind means a fresh start. */
const takeUpNewSchemes = async (started: BaseLanguageClient): Promise<void> => {
  const selector = documentSelector();
  if (JSON.stringify(selector) === JSON.stringify(started.clientOptions.documentSelector)) return;
  started.clientOptions.documentSelector = selector;
  await restart(started);
};
