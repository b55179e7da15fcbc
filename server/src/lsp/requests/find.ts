/** `finishwright/find`, a request of our own: which recipes, jobs, pieces and surfaces are what is looked for. */
import type { CancellationToken } from "vscode-languageserver";
import { foundDetail } from "../../reports/found-text.ts";
import { findIn } from "../../views/find/find.ts";
import { readSaid } from "../../views/find/said.ts";
import type { FindAnswer, FindParams, FoundPlace } from "../custom-requests.ts";
import { throwIfCancelled, yieldToMessages } from "../guard.ts";
import type { Session } from "../session.ts";
import { fileNameOf } from "../uri.ts";

/** Nobody reads a longer list: one asks for more instead. */
const MOST_FOUND = 200;

/** Files are worked out one by one, and what a person asks for meanwhile, another search for instance, comes first. */
export const find = async (
  session: Session,
  { said }: FindParams,
  token: CancellationToken,
): Promise<FindAnswer> => {
  const read = readSaid(said);
  if ("refusal" in read) return { understood: [], refusal: read.refusal, found: [], more: 0 };
  const { query, understood } = read;
  if (understood.length === 0) return { understood, found: [], more: 0 };
  const { files } = session;
  await files.complete();
  for (const file of new Set(files.all)) {
    await yieldToMessages();
    throwIfCancelled(token);
    await session.diagnostics.prepare(file);
  }
  throwIfCancelled(token);
  const snapshot = files.snapshot();
  const { analysis } = snapshot;
  const found = findIn(analysis, [...analysis.files].toSorted(), query);
  const shown = found.slice(0, MOST_FOUND).flatMap((each): readonly FoundPlace[] => {
    const document = snapshot.document(each.file);
    if (document === undefined) return [];
    return [
      {
        kind: each.kind,
        title: each.title,
        detail: foundDetail(each),
        uri: snapshot.uriOf(each.file),
        file: fileNameOf(each.file),
        start: document.positionAt(each.offset),
      },
    ];
  });
  return { understood, found: shown, more: found.length - shown.length };
};
