/**
 * The VS Code extension: starts the language server, stops it, and offers two commands about it.
 *
 * Everything that is known about recipes lives in the server, so this stays small. VS Code loads it when the first
 * finish recipe is opened and never before. The server runs in a process of its own, joined by Node's message channel,
 * so a slow check cannot hold up the editor.
 */
import { commands, type Disposable, type ExtensionContext, Uri, workspace } from "vscode";
import { LanguageClient, type LanguageClientOptions, TransportKind } from "vscode-languageclient/node";

/** What the server may ask this client for beyond the protocol: see `server/src/lsp/folder-files.ts`. */
const FIND_FILES = "finishwright/findFiles";

interface FindFilesParams {
  readonly limit: number;
}

/** What other extensions and the tests get from `activate`. */
export interface Finishwright {
  readonly client: LanguageClient;
}

let client: LanguageClient | undefined;

/** Called by VS Code when the first finish recipe is opened. */
export async function activate(context: ExtensionContext): Promise<Finishwright> {
  const server = Uri.joinPath(context.extensionUri, "server", "dist", "server.cjs").fsPath;
  const started = new LanguageClient(
    "finishwright",
    "Finishwright",
    { module: server, transport: TransportKind.ipc },
    clientOptions(),
  );
  client = started;
  context.subscriptions.push(
    commands.registerCommand("finishwright.restartServer", () => restart(started)),
    commands.registerCommand("finishwright.showOutput", () => started.outputChannel.show()),
    answerFindFiles(started),
  );
  await commands.executeCommand("setContext", "finishwright.active", true);
  await started.start();
  return { client: started };
}

/** Called by VS Code before it unloads the extension. */
export async function deactivate(): Promise<void> {
  await client?.stop();
  client = undefined;
}

/** Starts afresh, also where the server has died or never came up. */
const restart = async (stopped: LanguageClient): Promise<void> => {
  if (stopped.needsStop()) await stopped.stop();
  await stopped.start();
};

/** Real files, unsaved ones, and files of a virtual folder; not the read-only sides of a comparison. */
const clientOptions = (): LanguageClientOptions => ({
  documentSelector: ["file", "untitled", "vscode-vfs"].map((scheme) => ({ scheme, language: "finish" })),
  initializationOptions: { findFiles: true },
  diagnosticPullOptions: { onChange: true },
});

/** Lists the recipes of the open folders, leaving out what the user hides from the explorer and from search. */
const answerFindFiles = (asked: LanguageClient): Disposable =>
  asked.onRequest(FIND_FILES, async ({ limit }: FindFilesParams): Promise<readonly string[]> => {
    const found = await workspace.findFiles("**/*.finish", undefined, limit);
    return found.map((uri) => asked.code2ProtocolConverter.asUri(uri));
  });
