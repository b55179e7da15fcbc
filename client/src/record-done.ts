/**
 * *Record as done now*: writes a line of the record with the time of the clock beside the editor, which the server does not know.
 */
import { commands, type Disposable, l10n, Position, WorkspaceEdit, window, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { RECORD_COMMAND, type RecordTarget } from "../../server/src/lsp/custom-requests.ts";

export const registerRecordDone = (client: BaseLanguageClient): Disposable =>
  commands.registerCommand(RECORD_COMMAND, (target: RecordTarget) => writeRecord(client, target));

const writeRecord = async (client: BaseLanguageClient, target: RecordTarget): Promise<void> => {
  const document = await workspace.openTextDocument(client.protocol2CodeConverter.asUri(target.uri));
  if (target.version !== null && document.version !== target.version) {
    void window.showWarningMessage(
      l10n.t("The recipe has changed meanwhile. Ask once more for what is next."),
    );
    return;
  }
  const { line, character } = target.at;
  const edit = new WorkspaceEdit();
  edit.insert(
    document.uri,
    new Position(line, character),
    `${target.before}${localTime(new Date())}${target.after}`,
  );
  await workspace.applyEdit(edit);
};

const two = (figure: number): string => String(figure).padStart(2, "0");

/** `2027-03-08 09:05`, as a record has it. */
const localTime = (at: Date): string =>
  `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${two(at.getHours())}:${two(at.getMinutes())}`;
