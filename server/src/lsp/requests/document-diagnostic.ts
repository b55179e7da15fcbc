/**
 * `textDocument/diagnostic`: the findings of one file, when the client asks.
 *
 * The answer waits for used files that are being read, since a name of theirs would be called unknown. If the text
 * changes while it waits, the client is told to ask again: findings are never given for a text that is not there.
 */
import type {
  CancellationToken,
  DocumentDiagnosticParams,
  DocumentDiagnosticReport,
} from "vscode-languageserver";
import type { FileId } from "../../core/place.ts";
import { throwIfCancelled, yieldToMessages } from "../guard.ts";
import { DocumentDiagnosticReportKind, LSPErrorCodes, ResponseError } from "../protocol.ts";
import type { Session } from "../session.ts";
import { fileIdOf } from "../uri.ts";
import { awaitPlans } from "../whole-answers.ts";

const MOST_ATTEMPTS = 3;

export const documentDiagnostic = async (
  session: Session,
  params: DocumentDiagnosticParams,
  token: CancellationToken,
): Promise<DocumentDiagnosticReport> => {
  const { changes, diagnostics, files } = session;
  const file = fileIdOf(params.textDocument.uri);
  try {
    return await reportOf(session, file, params, token);
  } finally {
    // Whatever the answer is, a client that has closed the file may throw it away; see `doubtful`.
    if (files.versionOf(file) === undefined && !diagnostics.doubtful.has(file)) {
      diagnostics.doubtful.add(file);
      changes.bump({ kind: "other" });
    }
  }
};

const reportOf = async (
  session: Session,
  file: FileId,
  params: DocumentDiagnosticParams,
  token: CancellationToken,
): Promise<DocumentDiagnosticReport> => {
  const version = session.files.versionOf(file);
  const opening = session.diagnostics.openings.get(file);
  await yieldToMessages();
  for (let attempt = 1; ; attempt += 1) {
    await session.files.settledSoFar(file);
    // While other files change all the time, what is left of the work is done in one go.
    const isPrepared = attempt > MOST_ATTEMPTS || (await session.diagnostics.prepare(file));
    throwIfCancelled(token);
    if (session.files.versionOf(file) !== version) {
      const data = { retriggerRequest: true };
      throw new ResponseError(LSPErrorCodes.ServerCancelled, "The text has changed meanwhile.", data);
    }
    if (!isPrepared || !session.files.isSettled(file)) continue;
    if (session.facts.refreshesDiagnostics || !(await awaitPlans(session, file, token))) break;
  }
  const { resultId, items } = session.diagnostics.of(file);
  session.diagnostics.delivered.set(file, resultId);
  // A client that has closed the file since, and opened another of its name, throws the answer away.
  if (version !== undefined && session.diagnostics.openings.get(file) === opening)
    session.diagnostics.asked.add(file);
  return resultId === params.previousResultId
    ? { kind: DocumentDiagnosticReportKind.Unchanged, resultId }
    : { kind: DocumentDiagnosticReportKind.Full, resultId, items };
};
