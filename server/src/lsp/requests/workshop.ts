/** `finishwright/workshop`, a request of our own: what the files that the server knows declare, for a tree beside the text. */
import type { CancellationToken } from "vscode-languageserver";
import type { WorkshopItem } from "../custom-requests.ts";
import { throwIfCancelled, yieldToMessages } from "../guard.ts";
import type { Session } from "../session.ts";
import { shownLevels } from "../settings.ts";
import { fileNameOf } from "../uri.ts";

/** Files are worked out one by one, and what a person asks for meanwhile comes first; edits on the way are for the next time. */
export const workshop = async (
  session: Session,
  token: CancellationToken,
): Promise<readonly WorkshopItem[]> => {
  const { files, settings } = session;
  await files.complete();
  for (const file of new Set(files.all)) {
    await yieldToMessages();
    throwIfCancelled(token);
    await session.diagnostics.prepare(file);
  }
  throwIfCancelled(token);
  const snapshot = files.snapshot();
  const levels = shownLevels(settings);
  const known = [...snapshot.analysis.files].toSorted();
  return snapshot.analysis.workshop(known, levels).flatMap((entry): readonly WorkshopItem[] => {
    const { kind, name, title, file, span, detail, brief, notes, findings } = entry;
    const document = snapshot.document(file);
    if (document === undefined) return [];
    return [
      {
        kind,
        name,
        title,
        detail,
        ...(brief === undefined ? {} : { brief }),
        ...(notes === undefined ? {} : { notes: notes.map((note) => note.replaceAll("`", "")) }),
        uri: snapshot.uriOf(file),
        file: fileNameOf(file),
        start: document.positionAt(span.start),
        ...(findings && {
          findings: {
            text: findings.text,
            severity: findings.severity,
            start: document.positionAt(findings.first.start),
          },
        }),
      },
    ];
  });
};
