/** Work-done progress: what takes long shows in the editor that it is under way, for a client that shows it. */
import type { Connection } from "./connection.ts";
import { METHODS } from "./protocol.ts";

/** What is done sooner needs no word. */
export const SOON_MS = 700;

/** Until `work` is settled, however it ends. The client may refuse, and then nothing is shown. */
export const showProgress = (connection: Connection, title: string, work: Promise<unknown>): void => {
  const token = `finishwright ${crypto.randomUUID()}`;
  const tell = (value: object): Promise<void> =>
    connection.sendNotification(METHODS.progress, { token, value });
  let shown: Promise<unknown> | undefined;
  const timer = setTimeout(() => {
    shown = connection
      .sendRequest(METHODS.createProgress, { token })
      .then(() => tell({ kind: "begin", title }));
    shown.catch(() => {});
  }, SOON_MS);
  const end = (): void => {
    clearTimeout(timer);
    shown?.then(() => tell({ kind: "end" })).catch(() => {});
  };
  work.then(end, end);
};

/** Parts of an answer that a client has asked for with a token, before the rest. */
export const partsFor = (
  connection: Connection,
  { partialResultToken: token }: { readonly partialResultToken?: string | number },
): ((value: unknown) => void) | undefined =>
  token === undefined
    ? undefined
    : (value) => void connection.sendNotification(METHODS.progress, { token, value }).catch(() => {});
