/**
 * The Web Worker that the language server runs in: one for a window, started again when the server is.
 *
 * A worker whose script cannot be loaded says so by an event and nothing else, and the client would wait for its first
 * answer for ever. So the server posts a word of its own when it is there, and only then is the worker handed on.
 */
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  type MessageTransports,
} from "vscode-languageclient/browser";
import { WORKER_IS_READY } from "../../server/src/lsp/custom-requests.ts";

/** As much of the browser's own as is used here; the project's types are those of Node. */
declare class Worker {
  constructor(script: string, options: { readonly name: string });
  onmessage: ((event: { readonly data: unknown }) => void) | null;
  onerror: ((event: { readonly message?: string }) => void) | null;
  terminate(): void;
}

let running: Worker | undefined;

/**
 * Resolves when the server in it listens. The worker before, if there is one still, is ended. What comes back is the two
 * ways of talking and not the worker, since the editor puts a `Worker` of its own in the place of the browser's, and the
 * client would not know it again.
 */
export const startWorker = (script: string): Promise<MessageTransports> => {
  endWorker();
  const worker = new Worker(script, { name: "Finishwright language server" });
  running = worker;
  return new Promise((resolve, reject) => {
    worker.onmessage = ({ data }) => {
      if (data !== WORKER_IS_READY) return;
      resolve({ reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) });
    };
    worker.onerror = ({ message }) => {
      reject(new Error(`The language server could not be loaded from ${script}. ${message ?? ""}`.trim()));
    };
  });
};

export const endWorker = (): void => {
  running?.terminate();
  running = undefined;
};
