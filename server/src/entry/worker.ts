/**
 * The language server in a Web Worker: what the editor extension starts in a browser, bundled into `worker.js`.
 *
 * There is no disk, so the client is asked for files; and no process, so that the worker ends itself when it is told to
 * exit. An accident outside of any request is logged and outlived, as in a process. Plans are made in another worker of the
 * same script.
 */

import { BrowserMessageReader, BrowserMessageWriter } from "vscode-jsonrpc/browser";
import { errorText } from "../core/error-text.ts";
import type { ScheduleInput } from "../core/schedule/types.ts";
import { shownLines } from "../escape/shown-text.ts";
import { createAnalyst } from "../features/analyst.ts";
import { createConnection } from "../lsp/connection.ts";
import { WORKER_IS_READY } from "../lsp/custom-requests.ts";
import { withLifecycle } from "../lsp/lifecycle.ts";
import { runServer } from "../lsp/server.ts";
import { answerTo } from "./plan-elsewhere.ts";
import { PLANNER, planInWorker } from "./plan-worker.ts";

/** As much of the worker's own as is used here; the project's types are those of Node. */
interface WorkerScope {
  postMessage(message: unknown): void;
  addEventListener(type: "error" | "unhandledrejection", listener: (event: Accident) => void): void;
  close(): void;
  /** What its starter called it. */
  readonly name?: string;
  readonly location: { readonly href: string };
  onmessage: ((event: { readonly data: unknown }) => void) | null;
}

interface Accident {
  readonly error?: unknown;
  readonly reason?: unknown;
  preventDefault(): void;
}

declare const self: WorkerScope;

/** Put in when it is bundled: a worker cannot look into the package that it came with. */
declare const FINISHWRIGHT_VERSION: string;

if (self.name === PLANNER) plan();
else serve();

/** Below another worker of this script, which is the server. */
function plan(): void {
  self.onmessage = ({ data }) => self.postMessage(answerTo(data as ScheduleInput));
}

function serve(): void {
  const writer = new BrowserMessageWriter(self);
  const { reader } = withLifecycle(new BrowserMessageReader(self), writer);
  const connection = createConnection(reader, writer, () => self.close());
  const survive = (event: Accident): void => {
    event.preventDefault();
    const error = event.error ?? event.reason;
    const text = errorText(error);
    connection.error(shownLines(`Unexpected: ${text}`));
  };
  self.addEventListener("error", survive);
  self.addEventListener("unhandledrejection", survive);
  runServer(connection, {
    version: FINISHWRIGHT_VERSION,
    createAnalyst,
    planMaker: () => planInWorker(self.location.href),
    rulePage: () => undefined,
  });
  self.postMessage(WORKER_IS_READY);
}
