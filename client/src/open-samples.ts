/**
 * *Open the Samples*: the reading room of the README as files of one's own, in a folder beside one's recipes, so that
 * anything may be tried out on them. What is there already is opened and never written over.
 */
import {
  commands,
  type Disposable,
  type ExtensionContext,
  FileType,
  l10n,
  Uri,
  window,
  workspace,
} from "vscode";
import { placeSamples, SAMPLES_FOLDER, type SampleFiles } from "./place-samples.ts";

/** The one that is opened: two jobs, stains, clears and paint. */
const FIRST = "reading-tables.finish";

export const registerOpenSamples = (context: ExtensionContext): Disposable =>
  commands.registerCommand("finishwright.openSamples", async () => {
    const folder = await folderForSamples();
    if (folder === undefined) return;
    const target = Uri.joinPath(folder, SAMPLES_FOLDER);
    const placed = await placeSamples(filesBetween(Uri.joinPath(context.extensionUri, "samples"), target));
    if ("failed" in placed) {
      await window.showErrorMessage(
        l10n.t(
          "The samples could not be put into {0}: {1}. Open a folder that can be written to, and try again.",
          target.path,
          placed.failed,
        ),
      );
      return;
    }
    const document = await workspace.openTextDocument(Uri.joinPath(target, FIRST));
    await window.showTextDocument(document, { preview: false });
  });

/** The first open folder; where none is open, the one that the person picks. */
const folderForSamples = async (): Promise<Uri | undefined> => {
  const [open] = workspace.workspaceFolders ?? [];
  if (open) return open.uri;
  const [picked] =
    (await window.showOpenDialog({
      title: l10n.t("Where should the folder “{0}” go?", SAMPLES_FOLDER),
      openLabel: l10n.t("Put the samples here"),
      canSelectFiles: false,
      canSelectFolders: true,
    })) ?? [];
  return picked;
};

const filesBetween = (source: Uri, target: Uri): SampleFiles => ({
  read: (name) => workspace.fs.readFile(Uri.joinPath(source, name)),
  write: (name, bytes) => workspace.fs.writeFile(Uri.joinPath(target, name), bytes),
  async isThere(name) {
    try {
      return (await workspace.fs.stat(Uri.joinPath(target, name))).type !== FileType.Unknown;
    } catch {
      return false;
    }
  },
});
