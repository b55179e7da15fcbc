/**
 * The extension in a browser, where VS Code runs without a machine of its own.
 *
 * The language server runs in a Web Worker, joined by posted messages. It reaches no files, so it asks for them (see
 * `workspace-files.ts`). Nothing of Node is to be had.
 */
import { type ExtensionContext, l10n, Uri, window } from "vscode";
import { LanguageClient, type LanguageClientOptions } from "vscode-languageclient/browser";
import type { FinishwrightApi } from "./api.ts";
import { ID, NAME, startExtension, stopExtension } from "./run-extension.ts";
import { endWorker, startWorker } from "./server-worker.ts";

/** Called by VS Code when the first finish recipe is opened, or a command is called before. */
export const activate = (context: ExtensionContext): FinishwrightApi => {
  const script = Uri.joinPath(context.extensionUri, "server", "dist", "worker.js").toString(true);
  return startExtension(context, (options) => clientOf(script, options));
};

const clientOf = (script: string, options: LanguageClientOptions): LanguageClient => {
  const client: LanguageClient = new LanguageClient(
    ID,
    NAME,
    () =>
      startWorker(script, {
        busy: (methods) => client.warn(`The server has been busy for a while with: ${methods.join(", ")}.`),
        ended: (methods) => {
          client.error(
            `The server did not answer any more and was ended. It was asked for: ${methods.join(", ")}.`,
          );
          void window.showWarningMessage(
            l10n.t(
              "Finishwright stopped answering and was restarted. If it happens again, close the file that you edited last.",
            ),
          );
        },
      }),
    options,
  );
  return client;
};

/** Called by VS Code before it unloads the extension. */
export const deactivate = async (): Promise<void> => {
  await stopExtension();
  endWorker();
};
