/** Shows Markdown as it is meant to be read, beside what is being edited; as text where the editor has no preview. */
import { commands, type Uri, ViewColumn, window, workspace } from "vscode";

export const showMarkdown = async (uri: Uri): Promise<void> => {
  const isBeside = window.activeTextEditor !== undefined;
  try {
    await commands.executeCommand(isBeside ? "markdown.showPreviewToSide" : "markdown.showPreview", uri);
  } catch {
    const document = await workspace.openTextDocument(uri);
    await window.showTextDocument(document, {
      viewColumn: isBeside ? ViewColumn.Beside : ViewColumn.Active,
      preview: true,
    });
  }
};
