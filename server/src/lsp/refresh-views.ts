/**
 * Tells the client to ask again for what it draws into the text: hints, lenses, colours; and for the reports that it shows.
 *
 * It asks by itself for the text that the user edits. What it cannot know is that a used file came in late or changed on
 * disk, that a setting changed, or that an edit in one open file changes the figures of another. A report is a document
 * of its own, so every edit is news for it.
 */

import type { FileId } from "../core/place.ts";
import { REPORTS_CHANGED } from "./custom-requests.ts";
import { yieldToMessages } from "./guard.ts";
import { METHODS } from "./protocol.ts";
import type { Session } from "./session.ts";

/** Somebody who types makes news with every key; other files follow when they pause. */
const PAUSE_MS = 400;

export const refreshViews = (session: Session): void => {
  const { changes, connection, facts, files } = session;
  const ofPlans = [
    ...(facts.refreshesInlayHints ? [METHODS.refreshInlayHints] : []),
    ...(facts.refreshesCodeLenses ? [METHODS.refreshCodeLenses] : []),
  ];
  const requests = [...ofPlans, ...(facts.refreshesSemanticTokens ? [METHODS.refreshSemanticTokens] : [])];
  if (requests.length === 0 && !facts.showsReports) return;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let needsViews = false;

  const refresh = async (views: typeof requests): Promise<void> => {
    if (facts.showsReports) await connection.sendNotification(REPORTS_CHANGED);
    await Promise.all(views.map((method) => connection.sendRequest(method)));
  };

  const told = (refreshing: Promise<void>): void => {
    refreshing.catch((error: unknown) => session.log(`Refreshing the views failed: ${String(error)}`));
  };

  /** Files of which there are plans that the client has not been told of. */
  let planned = new Set<FileId>();
  /** An edit that came in just now is let in first: of its file the client asks again by itself. */
  const tellOfPlans = async (files: ReadonlySet<FileId>): Promise<void> => {
    const isAwaited = planned.size > 0;
    for (const file of files) planned.add(file);
    if (isAwaited) return;
    await yieldToMessages();
    const isNews = planned.size > 0;
    planned = new Set();
    if (isNews) await refresh(ofPlans);
  };

  changes.listen((change) => {
    const { kind } = change;
    if (change.kind === "plans") {
      told(tellOfPlans(change.files));
      return;
    }
    if (change.kind === "edit") planned.delete(change.file);
    const concernsOthers = kind !== "edit" || files.openCount >= 2;
    if (!concernsOthers && !facts.showsReports) return;
    needsViews ||= concernsOthers;
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      const isElsewhere = needsViews;
      needsViews = false;
      told(refresh(isElsewhere ? requests : []));
    }, PAUSE_MS);
  });
};
