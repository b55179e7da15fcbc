/**
 * The extension in a browser, where VS Code runs without a machine of its own.
 *
 * The language server runs in a Web Worker, joined by posted messages. It reaches no files, so it asks for them (see
 * `workspace-files.ts`). Nothing of Node is to be had.
 */
import { type ExtensionContext, env, l10n, Uri, window, workspace } from "vscode";
import { LanguageClient, type LanguageClientOptions } from "vscode-languageclient/browser";
import type { InitializationOptions } from "../../server/src/lsp/custom-requests.ts";
import type { FinishwrightApi } from "./api.ts";
import { ID, NAME, startExtension, stopExtension } from "./run-extension.ts";
import { endWorker, startWorker } from "./server-worker.ts";

/** Called by VS Code when the first finish recipe is opened, or a command is called before. */
export const activate = async (context: ExtensionContext): Promise<FinishwrightApi> => {
  const built = Uri.joinPath(context.extensionUri, "server", "dist");
  const script = Uri.joinPath(built, "worker.js").toString(true);
  return startExtension(context, (options) => clientOf(script, options), await textsIn(built));
};

/** The table of texts in the editor's language, which the worker cannot read by itself; the other texts are English. */
const textsIn = async (built: Uri): Promise<InitializationOptions["texts"]> => {
  const [tag = "en"] = env.language.split("-");
  if (tag === "en") return undefined;
  try {
    const bytes = await workspace.fs.readFile(Uri.joinPath(built, `texts.${tag}.json`));
    return JSON.parse(new TextDecoder().decode(bytes)) as InitializationOptions["texts"];
  } catch {
    return undefined;
  }
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
