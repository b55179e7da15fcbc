/**
 * Tells a client that pulls its diagnostics when to pull them again.
 *
 * It asks by itself for what the user edits, and then for the other files that it shows. It does neither where a text
 * changes that it does not show, as when a name is changed in several files at once; and it cannot know that a used file
 * came in late, changed on disk, or that a setting changed. It is told only if that made a difference to an open file that
 * it has asked about before, because a refresh makes it ask about all of them.
 *
 * What it asks about by itself it is given time for. VS Code's client drops a question about a file whose tab it takes for
 * hidden just then, or that it has put off behind one under way, and on a busy machine that leaves old findings standing:
 * so an edit is looked at once more when it has been quiet, and what it has not asked for by then it is told of.
 */

import { yieldToMessages } from "./guard.ts";
import { METHODS } from "./protocol.ts";
import type { Session } from "./session.ts";

/** When more files than these are opened at once, each of them is looked at once and not after every one. */
const FEW = 20;
const PAUSE_MS = 50;
/** So long after the last edit a client that asks by itself has asked. */
const QUIET_MS = 2000;
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

  const look = (): void => {
    refresh().catch((error: unknown) => session.log(`Refreshing diagnostics failed: ${String(error)}`));
  };
  let quiet: ReturnType<typeof setTimeout> | undefined;
  changes.listen((change) => {
    if (change.kind !== "edit" || !diagnostics.asked.has(change.file)) return look();
    clearTimeout(quiet);
    quiet = setTimeout(look, QUIET_MS);
    // Nothing to stay for: in a process it ends with its client.
    if (typeof quiet === "object") quiet.unref();
  });
};
