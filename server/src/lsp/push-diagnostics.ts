/**
 * Diagnostics for clients that do not ask for them: sent after every change, for the open files.
 *
 * A newer change starts the round over, so findings for a text that has changed meanwhile are never sent, and what a
 * client has already is not sent again. A closed file is cleared at once.
 */
import { yieldToMessages } from "./guard.ts";
import type { Session } from "./session.ts";
import { fileIdOf } from "./uri.ts";

export interface PushedDiagnostics {
  closed(uri: string): void;
}

export const pushDiagnostics = (session: Session): PushedDiagnostics => {
  const { files, reports, changes } = session;
  let running = false;
  let again = false;

  const sendAll = async (): Promise<void> => {
    await yieldToMessages();
    await files.settled();
    const { generation } = changes;
    for (const file of files.openFiles) {
      if (changes.generation !== generation) return;
      const { resultId, items } = reports.of(file);
      const version = files.versionOf(file);
      if (reports.delivered.get(file) !== resultId) {
        reports.delivered.set(file, resultId);
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
      reports.delivered.delete(fileIdOf(uri));
      session.connection
        .sendDiagnostics({ uri, diagnostics: [] })
        .catch((error: unknown) => session.log(String(error)));
    },
  };
};
