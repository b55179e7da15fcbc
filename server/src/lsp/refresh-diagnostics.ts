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
 * so an edit is looked at once more when it has been quiet, and what it has not asked for by then it is told of. The same
 * holds of a file that is opened under the name of one that was closed, as a new untitled text is: the client asks nothing
 * while its question about the one before is under way, and what it is told meanwhile it passes over. Nor need it hear what
 * it is told then, so that it is told a few times.
 */

import type { FileId } from "../core/place.ts";
import { yieldToMessages } from "./guard.ts";
import { METHODS } from "./protocol.ts";
import type { Session } from "./session.ts";

/** When more files than these are opened at once, each of them is looked at once and not after every one. */
const FEW = 20;
const PAUSE_MS = 50;
/** So long after the last edit a client that asks by itself has asked. */
const QUIET_MS = 2000;
/** A client that asks nothing however often it is told does not show the file. */
const MOST_TOLD = 3;
/** Between two looks there is so many times the time that one took. */
const REST = 4;

export const refreshDiagnostics = (session: Session): void => {
  const { changes, files, diagnostics, connection } = session;
  let waiting = false;
  /** How long it took to look at all files. */
  let lookedMs = 0;

  /** How often it was told since something changed. */
  let told = 0;

  /** It may have the findings of an earlier text of this name. */
  const isUnasked = (file: FileId): boolean => !diagnostics.asked.has(file) && diagnostics.doubtful.has(file);

  const tell = async (): Promise<void> => {
    told += 1;
    await connection.sendRequest(METHODS.refreshDiagnostics);
    if (told < MOST_TOLD) lookWhenQuiet();
  };

  const refresh = async (isQuiet = false): Promise<void> => {
    if (waiting) return;
    waiting = true;
    const isMany = files.openCount > FEW;
    if (isMany) await new Promise((resolve) => setTimeout(resolve, Math.max(PAUSE_MS, lookedMs * REST)));
    else await yieldToMessages();
    waiting = false;
    const began = performance.now();
    const asked = files.openFiles.filter((file) => diagnostics.delivered.has(file));
    if (isQuiet && files.openFiles.some(isUnasked)) return tell();
    for (const file of asked) {
      if (!files.isSettled(file)) continue;
      const isPrepared = await diagnostics.prepare(file);
      lookedMs = performance.now() - began;
      if (!isPrepared) return refresh(isQuiet);
      if (!files.isSettled(file)) continue;
      if (diagnostics.delivered.get(file) === diagnostics.of(file).resultId) continue;
      return tell();
    }
    // What comes in need not be a change of its own: a configuration that is not there, read again, says nothing new.
    const unsettled = asked.filter((file) => !files.isSettled(file));
    if (unsettled.length === 0) return;
    await Promise.race(unsettled.map((file) => files.settled(file)));
    await refresh(isQuiet);
  };

  const look = (isQuiet = false): void => {
    refresh(isQuiet).catch((error: unknown) =>
      session.log(`Refreshing diagnostics failed: ${String(error)}`),
    );
  };
  let quiet: ReturnType<typeof setTimeout> | undefined;
  const lookWhenQuiet = (): void => {
    clearTimeout(quiet);
    quiet = setTimeout(() => look(true), QUIET_MS);
    // Nothing to stay for: in a process it ends with its client.
    if (typeof quiet === "object") quiet.unref();
  };
  changes.listen((change) => {
    told = 0;
    if (change.kind === "edit" && diagnostics.asked.has(change.file)) return lookWhenQuiet();
    look();
    if (files.openFiles.some(isUnasked)) lookWhenQuiet();
  });
};
