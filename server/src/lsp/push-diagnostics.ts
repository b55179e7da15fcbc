/**
 * Diagnostics for clients that do not ask for them: sent after every change, for the open files.
 *
 * A newer change starts the round over, so findings for a text that has changed meanwhile are never sent, and what a
 * client has already is not sent again. A file that uses another which is still being read is sent when that is done, and
 * holds up no other. A closed file is cleared at once.
 */

import type { FileId } from "../core/place.ts";
import type { Changes } from "./changes.ts";
import type { Connection } from "./connection.ts";
import type { DiagnosticCache } from "./diagnostic-cache.ts";
import type { Files } from "./files.ts";
import { type Log, yieldToMessages } from "./guard.ts";
import { fileIdOf } from "./uri.ts";

export interface PushedDiagnostics {
  closed(uri: string): void;
}

/** Whose findings are pushed, and to whom. */
interface Pushing {
  readonly connection: Connection;
  readonly files: Files;
  readonly changes: Changes;
  readonly diagnostics: DiagnosticCache;
  readonly log: Log;
}

export const pushDiagnostics = (session: Pushing): PushedDiagnostics => {
  const { files, diagnostics, changes } = session;
  let running = false;
  let again = false;

  /** Files that wait for others to be read. */
  const late = new Set<FileId>();
  const sendLater = (file: FileId): void => {
    if (late.has(file)) return;
    late.add(file);
    void files.settled(file).then(() => {
      late.delete(file);
      return run();
    });
  };

  const sendAll = async (): Promise<void> => {
    await yieldToMessages();
    const { generation } = changes;
    for (const file of files.openFiles) {
      if (changes.generation !== generation) return;
      if (!files.isSettled(file)) {
        sendLater(file);
        continue;
      }
      if (!(await diagnostics.prepare(file))) return;
      // It has been read by now, and may use what has not.
      if (!files.isSettled(file)) {
        sendLater(file);
        continue;
      }
      const { resultId, items } = diagnostics.of(file);
      const version = files.versionOf(file);
      if (diagnostics.delivered.get(file) !== resultId) {
        diagnostics.delivered.set(file, resultId);
        await session.connection.sendDiagnostics({ uri: files.uriOf(file), version, diagnostics: items });
      }
      await yieldToMessages();
    }
  };

  const run = async (): Promise<void> => {
    again = true;
    if (running) return;
    running = true;
    try {
      while (again) {
        again = false;
        await sendAll();
      }
    } catch (error) {
      session.log(`Sending diagnostics failed: ${String(error)}`);
    } finally {
      running = false;
    }
  };

  changes.listen(() => void run());
  return {
    closed(uri) {
      diagnostics.delivered.delete(fileIdOf(uri));
      session.connection
        .sendDiagnostics({ uri, diagnostics: [] })
        .catch((error: unknown) => session.log(String(error)));
    },
  };
};
