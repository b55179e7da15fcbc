/**
 * `workspace/diagnostic`: the findings of all files that the server knows, opened or not.
 *
 * Clients ask for this again as soon as it is answered, so an answer without news is kept back until there are some:
 * an idle editor costs nothing. Only the first question, which names no earlier result, is always answered at once. To a
 * client that takes partial results the findings of each file go as soon as they are known.
 */
import type {
  CancellationToken,
  WorkspaceDiagnosticParams,
  WorkspaceDiagnosticReport,
  WorkspaceDocumentDiagnosticReport,
  WorkspaceFullDocumentDiagnosticReport,
} from "vscode-languageserver";
import type { FileId } from "../../core/place.ts";
import { throwIfCancelled, yieldToMessages } from "../guard.ts";
import { partsFor } from "../progress.ts";
import { DocumentDiagnosticReportKind } from "../protocol.ts";
import type { Session } from "../session.ts";
import { fileIdOf } from "../uri.ts";

/** Somebody who types makes news with every key; the whole folder is looked at when they pause. */
const PAUSE_MS = 150;

interface Earlier {
  readonly uri: string;
  readonly resultId: string;
}

export const workspaceDiagnostic = async (
  session: Session,
  params: WorkspaceDiagnosticParams,
  token: CancellationToken,
): Promise<WorkspaceDiagnosticReport> => {
  const earlier = new Map<FileId, Earlier>(
    params.previousResultIds.map(({ uri, value }) => [fileIdOf(uri), { uri, resultId: value }]),
  );
  const tell = partsFor(session.connection, params);
  let wasTold = false;
  const tellFile =
    tell &&
    ((item: WorkspaceFullDocumentDiagnosticReport): void => {
      tell({ items: [item] });
      wasTold = true;
    });
  const isFirst = earlier.size === 0;
  for (;;) {
    const { generation } = session.changes;
    const { items, told, isWhole } = await reportAll(session, earlier, token, tellFile);
    const hasNews = wasTold || items.some((item) => item.kind === DocumentDiagnosticReportKind.Full);
    if (session.changes.generation === generation && (hasNews || isFirst)) {
      for (const file of told) takeAsTold(session, file);
      return { items };
    }
    const news = session.changes.after(generation, token);
    await (isWhole ? news : Promise.race([news, session.files.settled()]));
    await pause(session, token);
  }
};

const reportAll = async (
  session: Session,
  earlier: Map<FileId, Earlier>,
  token: CancellationToken,
  tell?: (item: WorkspaceFullDocumentDiagnosticReport) => void,
): Promise<Report> => {
  const { delivered, doubtful } = session.diagnostics;
  const files = new Set(session.files.all);
  const items: WorkspaceDocumentDiagnosticReport[] = [];
  const told: FileId[] = [];
  let isWhole = true;
  for (const file of files) {
    await yieldToMessages();
    throwIfCancelled(token);
    // A file that waits for another to be read comes in a later answer, and holds up no other.
    if (!session.files.isSettled(file)) {
      isWhole = false;
      continue;
    }
    if (!(await session.diagnostics.prepare(file))) return { items: [], told: [], isWhole: true };
    // It has been read by now, and may use what has not.
    if (!session.files.isSettled(file)) {
      isWhole = false;
      continue;
    }
    const { resultId, items: diagnostics } = session.diagnostics.of(file);
    const common = {
      uri: session.files.uriOf(file),
      version: session.files.versionOf(file) ?? null,
      resultId,
    };
    if (earlier.get(file)?.resultId === resultId && !doubtful.has(file)) {
      items.push({ kind: DocumentDiagnosticReportKind.Unchanged, ...common });
      continue;
    }
    const full = { kind: DocumentDiagnosticReportKind.Full, ...common, items: diagnostics };
    if (tell) {
      tell(full);
      takeAsTold(session, file);
      // What the client has now.
      earlier.set(file, { uri: common.uri, resultId });
    } else {
      items.push(full);
      told.push(file);
    }
  }
  // What the client was told of a file that is gone since, here or by a document's own report, is taken back by an
  // empty report without a name, so that it is not asked about again.
  for (const file of new Set([...earlier.keys(), ...delivered.keys(), ...doubtful])) {
    if (files.has(file)) continue;
    told.push(file);
    const uri = earlier.get(file)?.uri ?? session.files.uriOf(file);
    items.push({ kind: DocumentDiagnosticReportKind.Full, uri, version: null, items: [] });
  }
  return { items, told, isWhole };
};

interface Report {
  readonly items: WorkspaceDocumentDiagnosticReport[];
  /** Files that `items` says everything of, which counts once it is sent: something may change before that. */
  readonly told: readonly FileId[];
  /** Nothing is left out because it waits for a read. */
  readonly isWhole: boolean;
}

/** Of an open file a client may still ask by itself, so that the doubt stays until it is closed. */
const takeAsTold = ({ diagnostics, files }: Session, file: FileId): void => {
  if (files.versionOf(file) === undefined) diagnostics.doubtful.delete(file);
  if (!files.isKnown(file)) diagnostics.delivered.delete(file);
};

/** Waits until nothing has changed for a moment. */
const pause = async (session: Session, token: CancellationToken): Promise<void> => {
  for (;;) {
    throwIfCancelled(token);
    const { generation } = session.changes;
    await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
    if (session.changes.generation === generation) return;
  }
};
