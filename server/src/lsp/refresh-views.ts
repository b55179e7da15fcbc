/**
 * Tells the client to ask again for what it draws into the text: hints, lenses, colours.
 *
 * It asks by itself for the text that the user edits. What it cannot know is that a used file came in late or changed on
 * disk, that a setting changed, or that an edit in one open file changes the figures of another.
 */
import { CodeLensRefreshRequest, InlayHintRefreshRequest } from "vscode-languageserver";
import type { Session } from "./session.ts";

/** Somebody who types makes news with every key; other files follow when they pause. */
const PAUSE_MS = 400;

export const refreshViews = (session: Session): void => {
  const { changes, connection, facts, files } = session;
  const requests = [
    ...(facts.refreshesInlayHints ? [InlayHintRefreshRequest.type] : []),
    ...(facts.refreshesCodeLenses ? [CodeLensRefreshRequest.type] : []),
  ];
  if (requests.length === 0) return;
  let waiting: ReturnType<typeof setTimeout> | undefined;

  const refresh = async (): Promise<void> => {
    await files.settled();
    await Promise.all(requests.map((type) => connection.sendRequest(type)));
  };

  changes.listen((kind) => {
    if (kind === "edit" && files.openFiles.length < 2) return;
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      refresh().catch((error: unknown) => session.log(`Refreshing the views failed: ${String(error)}`));
    }, PAUSE_MS);
  });
};
