/**
 * What the extension does wherever it runs: starts the language server, stops it, offers two commands about it, and
 * shows its reports.
 *
 * Everything that is known about recipes lives in the server, so this stays small. VS Code loads it when the first
 * finish recipe is opened and never before. How the server is started is the business of `extension.ts` on a machine
 * and of `extension-web.ts` in a browser.
 */
import { commands, type ExtensionContext, workspace } from "vscode";
import type { BaseLanguageClient, LanguageClientOptions } from "vscode-languageclient";
import type { InitializationOptions } from "../../server/src/lsp/custom-requests.ts";
import { registerReports, SHOWN } from "./reports.ts";
import { ANSWERED, answerAboutFiles } from "./workspace-files.ts";

export const ID = "finishwright";
export const NAME = "Finishwright";

/** What other extensions and the tests get from `activate`. */
export interface Finishwright {
  readonly client: BaseLanguageClient;
}

let client: BaseLanguageClient | undefined;

/** `saidOfHost` is what the server is told of this host beyond what every host answers. */
export const startExtension = async (
  context: ExtensionContext,
  createClient: (options: LanguageClientOptions) => BaseLanguageClient,
  saidOfHost: InitializationOptions = {},
): Promise<Finishwright> => {
  const started = createClient({
    documentSelector: documentSelector(),
    initializationOptions: { ...ANSWERED, ...SHOWN, ...saidOfHost } satisfies InitializationOptions,
    diagnosticPullOptions: { onChange: true },
  });
  client = started;
  context.subscriptions.push(
    commands.registerCommand("finishwright.restartServer", () => restart(started)),
    commands.registerCommand("finishwright.showOutput", () => started.outputChannel.show()),
    workspace.onDidChangeWorkspaceFolders(() => takeUpNewSchemes(started)),
    ...answerAboutFiles(started),
    registerReports(started),
  );
  await commands.executeCommand("setContext", "finishwright.active", true);
  await started.start();
  return { client: started };
};

export const stopExtension = async (): Promise<void> => {
  await client?.stop();
  client = undefined;
};

/** Starts afresh, also where the server has died or never came up. */
const restart = async (stopped: BaseLanguageClient): Promise<void> => {
  if (stopped.needsStop()) await stopped.stop();
  await stopped.start();
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
