/**
 * Tells a client that pulls its diagnostics when to pull them again.
 *
 * It asks by itself for what the user edits, and then for the other files that it shows. It does neither where a text
 * changes that it does not show, as when a name is changed in several files at once; and it cannot know that a used file
 * came in late, changed on disk, or that a setting changed. It is told only if that made a difference to an open file that
 * it has asked about before, because a refresh makes it ask about all of them.
 */

import { yieldToMessages } from "./guard.ts";
import { METHODS } from "./protocol.ts";
import type { Session } from "./session.ts";

/** When more files than these are opened at once, each of them is looked at once and not after every one. */
const FEW = 20;
const PAUSE_MS = 50;
/** Between two looks there is so many times the time that one took. */
const REST = 4;

export const refreshDiagnostics = (session: Session): void => {
  const { changes, files, diagnostics, connection } = session;
  let waiting = false;
  /** How long it took to look at all files. */
  let lookedMs = 0;

  const refresh = async (): Promise<void> => {
    if (waiting) return;
    waiting = true;
    const isMany = files.openCount > FEW;
    if (isMany) await new Promise((resolve) => setTimeout(resolve, Math.max(PAUSE_MS, lookedMs * REST)));
    else await yieldToMessages();
    waiting = false;
    const began = performance.now();
    const asked = files.openFiles.filter((file) => diagnostics.delivered.has(file));
    for (const file of asked) {
      if (!files.isSettled(file)) continue;
      const isPrepared = await diagnostics.prepare(file);
      lookedMs = performance.now() - began;
      if (!isPrepared) return refresh();
      if (!files.isSettled(file)) continue;
      if (diagnostics.delivered.get(file) === diagnostics.of(file).resultId) continue;
      await connection.sendRequest(METHODS.refreshDiagnostics);
      return;
    }
    // What comes in need not be a change of its own: a configuration that is not there, read again, says nothing new.
    const unsettled = asked.filter((file) => !files.isSettled(file));
    if (unsettled.length === 0) return;
    await Promise.race(unsettled.map((file) => files.settled(file)));
    await refresh();
  };

  changes.listen((change) => {
    if (change.kind === "edit" && diagnostics.asked.has(change.file)) return;
    refresh().catch((error: unknown) => session.log(`Refreshing diagnostics failed: ${String(error)}`));
  });
};
