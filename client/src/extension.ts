/**
 * The extension on a machine of its own: VS Code on the desktop, and its remote servers.
 *
 * The language server runs in a process of its own, joined by Node's message channel, so a slow check cannot hold up
 * the editor.
 */
import { type ExtensionContext, Uri } from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import type { FinishwrightApi } from "./api.ts";
import { ID, NAME, startExtension, stopExtension } from "./run-extension.ts";

/** Called by VS Code when the first finish recipe is opened, or a command is called before. */
export const activate = (context: ExtensionContext): FinishwrightApi => {
  const module = Uri.joinPath(context.extensionUri, "server", "dist", "server.cjs").fsPath;
  return startExtension(
    context,
    (options) => new LanguageClient(ID, NAME, { module, transport: TransportKind.ipc }, options),
  );
};

/** Called by VS Code before it unloads the extension. */
export const deactivate = (): Promise<void> => stopExtension();
